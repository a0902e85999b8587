"""The feed plan of a crop: which mix at which strength from which plant age."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.problems import Problem, check_quantity


@dataclass(frozen=True)
class FeedStep:
    """From plant age from_age on, the mix at a strength, until the next step. volume_l: usual volume of a feed."""

    id: str
    crop_id: str
    from_age: int
    mix_id: str
    strength_percent: float = 100.0
    volume_l: float | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = check_quantity("at_age", self.from_age, "from_age")
        found += check_quantity("strength_percent", self.strength_percent)
        return found + check_quantity("volume_l", self.volume_l)
