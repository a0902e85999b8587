"""The logbook itself: its name and its currency."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.problems import Problem, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class LogbookFacts:
    """One row in each logbook. currency: ISO 4217 code, "" until the grower says; money is minor units of it.

    An hour of labour may be worth nothing (0); None until the grower says.
    """

    id: str
    name: str
    currency: str = ""
    labour_rate_minor_per_h: int | None = None
    water_price_minor_per_m3: int | None = None
    made_at: datetime | None = None
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.name.strip() else [Problem("name", say("Give the logbook a name."))]
        if self.currency and not (len(self.currency) == 3 and self.currency.isalpha() and self.currency.isupper()):
            found.append(Problem("currency", say("A currency is three capital letters, as in ISO 4217.")))
        for key in ("labour_rate_minor_per_h", "water_price_minor_per_m3"):
            found += check_quantity(key, getattr(self, key))
        return found
