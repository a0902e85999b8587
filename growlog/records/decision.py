"""What was decided about a finished crop, and the figures as they stood that day."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from growlog.records.problems import Problem
from growlog.words import mark, say


class Verdict(StrEnum):
    """Whether it is grown again."""

    REGROW = "regrow"
    REGROW_WITH_CHANGES = "regrow-with-changes"
    DO_NOT_REGROW = "do-not-regrow"

    @property
    def label(self) -> str:
        """The verdict in words, to be translated where shown."""
        return _VERDICT_LABELS[self]


_VERDICT_LABELS = {
    Verdict.REGROW: mark("regrow"),
    Verdict.REGROW_WITH_CHANGES: mark("regrow with changes"),
    Verdict.DO_NOT_REGROW: mark("do not regrow"),
}


@dataclass(frozen=True)
class QuotedFigure:
    """A figure as it stood on the day of the decision. value_text: as shown, with its unit."""

    figure_key: str
    label: str
    value_text: str


@dataclass(frozen=True)
class Decision:
    """A verdict on a crop. A later decision on the same crop stands beside it; the newest counts."""

    id: str
    crop_id: str
    decided_on: date
    verdict: Verdict
    reasons: str = ""
    changes: str = ""
    figures: tuple[QuotedFigure, ...] = ()
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.reasons.strip() else [Problem("reasons", say("Say why; a sentence is enough."))]
        if self.verdict is Verdict.REGROW_WITH_CHANGES and not self.changes.strip():
            found.append(Problem("changes", say("Say what is to change.")))
        return found


@dataclass(frozen=True)
class ReviewPhoto:
    """A photo that the grower chose for the review of a crop, at a place in its story."""

    id: str
    crop_id: str
    photo_use_id: str
    place: int
    version: int = 1
    removed_at: datetime | None = None
