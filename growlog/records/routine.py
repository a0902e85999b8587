"""Routines of the grower, and what was answered when one of them was due."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import mark, say


class RoutineWhen(StrEnum):
    """The rule by which a routine comes due."""

    EVERY_DAYS = "every-days"
    AT_AGE = "at-age"
    ON_DAY = "on-day"
    WHILE_FEMALES_OPEN = "while-females-open"
    WHILE_FLOWERING = "while-flowering"

    @property
    def label(self) -> str:
        """The rule in words, to be translated where shown."""
        return _WHEN_LABELS[self]


_WHEN_LABELS = {
    RoutineWhen.EVERY_DAYS: mark("every so many days"),
    RoutineWhen.AT_AGE: mark("at a plant age"),
    RoutineWhen.ON_DAY: mark("on a day"),
    RoutineWhen.WHILE_FEMALES_OPEN: mark("while female flowers are open"),
    RoutineWhen.WHILE_FLOWERING: mark("while it flowers"),
}


class RoutineFor(StrEnum):
    """Whom a routine is for."""

    EACH_CROP = "each-crop"
    CROP = "crop"
    ROOM = "room"


@dataclass(frozen=True)
class Routine:
    """Something to be done again and again, or once at a plant age or on a day.

    crop_id: the crop where it is for one. every_days: also the rhythm of the flowering rules, 1 if not stated.
    from_day: nothing falls due before it; the day itself for the rule ON_DAY. until_day: the last day of asking.
    entry_kind: the kind of entry that does it; "photo" for a photo, "" where only a tick does.
    """

    id: str
    name: str
    who: RoutineFor = RoutineFor.EACH_CROP
    when: RoutineWhen = RoutineWhen.EVERY_DAYS
    crop_id: str | None = None
    every_days: int | None = None
    at_age: int | None = None
    from_day: date | None = None
    until_day: date | None = None
    entry_kind: str = ""
    in_the_morning: bool = False
    is_on: bool = True
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it: a name, and what its rule needs."""
        found = [] if self.name.strip() else [Problem("name", say("Say what is to be done."))]
        found += check_line("name", self.name)
        found += check_quantity("every_days", self.every_days) + check_quantity("at_age", self.at_age)
        if self.who is RoutineFor.CROP and self.crop_id is None:
            found.append(Problem("crop_id", say("Say which crop it is for.")))
        return found + self._rule_problems()

    def _rule_problems(self) -> list[Problem]:
        if self.when is RoutineWhen.EVERY_DAYS and self.every_days is None:
            return [Problem("every_days", say("Say after how many days it comes again."))]
        if self.when is RoutineWhen.AT_AGE and self.at_age is None:
            return [Problem("at_age", say("Say at which plant age."))]
        if self.when is RoutineWhen.ON_DAY and self.from_day is None:
            return [Problem("from_day", say("Say on which day."))]
        if self.from_day and self.until_day and self.until_day < self.from_day:
            return [Problem("until_day", say("It ends before it begins."))]
        if self.who is RoutineFor.ROOM and self.when not in (RoutineWhen.EVERY_DAYS, RoutineWhen.ON_DAY):
            return [Problem("when", say("A room has no plant age and no flowers: choose another rule."))]
        return []


class DueOutcome(StrEnum):
    """What became of something due."""

    DONE = "done"
    PUT_OFF = "put-off"
    LEFT_OUT = "left-out"


@dataclass(frozen=True)
class DueAnswer:
    """What was said when something was due.

    due_key: names what was due, stable over days ("routine:<id>:<crop>", "maturity:<crop>", "clearing:<crop>" …).
    due_day: the day on which it stood in the list when it was answered; what is late stands there each day.
    until_day: to which day it was put off. entry_id: the entry that did it; with it goes the answer.
    """

    id: str
    due_key: str
    due_day: date
    outcome: DueOutcome
    crop_id: str | None = None
    until_day: date | None = None
    reason: str = ""
    entry_id: str | None = None
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        if self.outcome is DueOutcome.PUT_OFF and (self.until_day is None or self.until_day <= self.due_day):
            return [Problem("until_day", say("Say to which later day it is put off."))]
        if self.outcome is DueOutcome.LEFT_OUT and not self.reason.strip():
            return [Problem("reason", say("Say why it is left out; a word is enough."))]
        return []
