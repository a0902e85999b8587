"""The tally of one session in the room: its day, what was done at each crop, and the time it took."""

from dataclasses import dataclass, field, replace
from datetime import date, datetime, time

from growlog.records.problems import check_quantity
from growlog.services.tally.crop_tally import CannotTally, CropTally
from growlog.services.tally.stopwatch import Stopwatch
from growlog.words import say


@dataclass(frozen=True)
class Tally:
    """started_at: civil date and local time at which it was begun. day: the day that its entries get.

    crops: those touched so far. chosen: the crop that was in hand. typed: a weight not yet entered, as it stands in
    the field. minutes_typed: labour of the whole session as the grower says, instead of the stopwatch.
    """

    id: str
    started_at: datetime
    day: date
    crops: tuple[CropTally, ...] = ()
    chosen: str = ""
    typed: str = ""
    stopwatch: Stopwatch = field(default_factory=Stopwatch)
    minutes_typed: int | None = None

    @property
    def is_touched(self) -> bool:
        """Whether anything would be lost with it."""
        timed = self.stopwatch != Stopwatch() or self.minutes_typed is not None
        return timed or bool(self.typed) or any(c.is_touched for c in self.crops)

    @property
    def is_of_its_day(self) -> bool:
        """Whether it is kept on the day it is about, so that the clock's time is the time of the work."""
        return self.day == self.started_at.date()

    @property
    def at(self) -> time | None:
        """The time of its entries: when it was begun, None where it is written up on another day."""
        return self.started_at.time().replace(second=0, microsecond=0) if self.is_of_its_day else None

    def of(self, crop_id: str) -> CropTally:
        """What was done at a crop; an empty one if nothing."""
        return next((c for c in self.crops if c.crop_id == crop_id), CropTally(crop_id))

    def with_crop(self, crop: CropTally) -> "Tally":
        """With a crop's next state."""
        if crop == self.of(crop.crop_id):
            return self
        others = [c for c in self.crops if c.crop_id != crop.crop_id]
        kept = [crop] if crop.is_touched else []
        places = [c.crop_id for c in self.crops]
        at = places.index(crop.crop_id) if crop.crop_id in places else len(others)
        return replace(self, crops=(*others[:at], *kept, *others[at:]))

    def with_day(self, day: date) -> "Tally":
        """About another day. The times that the clock gave belong to the day it was begun, and go."""
        moved = replace(self, day=day)
        if moved.is_of_its_day:
            return moved
        return replace(moved, crops=tuple(c.without_own_time() for c in self.crops))

    def with_minutes_typed(self, minutes: int | None) -> "Tally":
        """With the session's labour as the grower says; None: as the stopwatch has it."""
        firm = [p.sentence for p in check_quantity("labour_minutes", minutes) if not p.asks]
        if firm:
            raise CannotTally(" ".join(firm))
        return replace(self, minutes_typed=minutes)

    def measured_s(self, now: datetime) -> int | None:
        """Seconds of labour of the session, None where neither typed nor timed. A doubtful run does not count."""
        if self.minutes_typed is not None:
            return self.minutes_typed * 60
        if self.stopwatch == Stopwatch():
            return None
        return self.stopwatch.run_s if self.stopwatch.is_doubtful(now) else self.stopwatch.elapsed_s(now)

    @property
    def given_minutes(self) -> int:
        """Minutes given to crops."""
        return sum(c.minutes or 0 for c in self.crops)

    def left_over_s(self, now: datetime) -> int | None:
        """Seconds not given to a crop, negative where more was given than measured; None where none was measured."""
        measured = self.measured_s(now)
        return None if measured is None else measured - self.given_minutes * 60

    def shared_equally(self, now: datetime) -> "Tally":
        """With whole minutes given in equal parts to the crops that were worked at; what does not divide is left over.

        CannotTally where nothing was measured, no crop was worked at, or the stopwatch was probably left on.
        """
        if self.minutes_typed is None and self.stopwatch.is_doubtful(now):
            raise CannotTally(say("Say first whether the stopwatch was left on."))
        measured = self.measured_s(now)
        worked = [c.crop_id for c in self.crops if c.is_worked]
        if not measured:
            raise CannotTally(say("There are no minutes to share yet: start the stopwatch or type them."))
        if not worked:
            raise CannotTally(say("No crop was worked at yet, so there is nobody to give minutes to."))
        each = measured // 60 // len(worked)
        shared = (c.with_minutes(each or None) if c.crop_id in worked else c for c in self.crops)
        return replace(self, crops=tuple(shared))
