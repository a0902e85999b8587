"""Growth stages seen, changes of the light, and plain notes."""

import re
from dataclasses import dataclass
from datetime import time
from typing import ClassVar

from growlog.records.entry.base import Detail
from growlog.records.entry.wording import joined, measured
from growlog.records.problems import Problem
from growlog.words import mark, say

_BBCH_CODE = re.compile(r"\d{2,3}")


@dataclass(frozen=True)
class StageSeen(Detail):
    """BBCH codes (two or three digits) as seen that day; several may run at once."""

    kind: ClassVar[str] = "stage"
    label: ClassVar[str] = mark("Growth stage")

    codes: tuple[str, ...] = ()

    def own_problems(self) -> list[Problem]:
        """Codes are BBCH codes."""
        if not self.codes:
            return [Problem("codes", say("Say at least one BBCH code, such as 13 or 61."))]
        wrong = [c for c in self.codes if not _BBCH_CODE.fullmatch(c)]
        return [Problem("codes", say("{code} is not a BBCH code of two or three digits.", code=c)) for c in wrong]

    def summary(self) -> str:
        """The codes as the scale writes them."""
        return say("Growth stage {codes}", codes="/".join(self.codes))


@dataclass(frozen=True)
class LightChange(Detail):
    """The light from this day on. Lamps on at `on_at` for photoperiod_h hours; PPFD at the canopy."""

    kind: ClassVar[str] = "light"
    label: ClassVar[str] = mark("Light change")

    photoperiod_h: float | None = None
    on_at: time | None = None
    dimming_percent: float | None = None
    canopy_ppfd_umol: float | None = None

    def own_problems(self) -> list[Problem]:
        """The hours are stated: every sum of light follows them."""
        if self.photoperiod_h is None:
            return [Problem("photoperiod_h", say("Say how many hours a day the lamps are on."))]
        return []

    def summary(self) -> str:
        """Hours and lamp output."""
        hours = measured("", self.photoperiod_h, 0 if (self.photoperiod_h or 0) % 1 == 0 else 2, "h")
        return say("Light {hours} a day", hours=hours)

    def second_line(self) -> str:
        """When on, how far dimmed, how much arrives."""
        return joined(
            say("on at {time}", time=self.on_at.strftime("%H:%M")) if self.on_at else "",
            measured(say("lamps at"), self.dimming_percent, 0, "%"),
            measured(say("canopy"), self.canopy_ppfd_umol, 0, "µmol/m²/s"),
        )


@dataclass(frozen=True)
class Note(Detail):
    """Nothing but its note, which every entry has."""

    kind: ClassVar[str] = "note"
    label: ClassVar[str] = mark("Note")

    def summary(self) -> str:
        """A heading; the note itself is the entry's."""
        return say("Note")
