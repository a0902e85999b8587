"""The one axis of the board: plant age to pixels and back, zoom, pan and where labels stand."""

from dataclasses import dataclass, replace
from datetime import date
from math import ceil, floor

from growlog.calculations.plant_age import age_on, day_at

LEAST_SPAN_DAYS = 7.0


@dataclass(frozen=True)
class AgeAxis:
    """Shows the plant ages start to end on width pixels from left on; lowest and highest bound what can be shown."""

    lowest: float
    highest: float
    start: float
    end: float
    left: float = 0.0
    width: float = 100.0

    @classmethod
    def over(cls, first_age: int, last_age: int) -> "AgeAxis":
        """The whole of a crop with a little room on both sides."""
        span = max(last_age - first_age, 1)
        lowest, highest = first_age - max(0.6, span * 0.006), last_age + max(1.0, span * 0.03)
        return cls(lowest, highest, lowest, highest)

    @property
    def pixels_per_day(self) -> float:
        """How wide a day is."""
        return self.width / (self.end - self.start)

    @property
    def right(self) -> float:
        """The right edge in pixels."""
        return self.left + self.width

    @property
    def is_whole(self) -> bool:
        """Whether everything is in view."""
        return self.end - self.start >= self.highest - self.lowest - 1e-9

    def x(self, age: float) -> float:
        """The pixel of a plant age."""
        return self.left + (age - self.start) * self.pixels_per_day

    def age(self, x: float) -> float:
        """The plant age at a pixel."""
        return self.start + (x - self.left) / self.pixels_per_day

    def day(self, x: float) -> int:
        """The whole day nearest to a pixel."""
        return floor(self.age(x) + 0.5)

    def placed(self, left: float, width: float) -> "AgeAxis":
        """The same ages on other pixels."""
        return replace(self, left=left, width=max(width, 1.0))

    def fitted(self) -> "AgeAxis":
        """Everything in view."""
        return replace(self, start=self.lowest, end=self.highest)

    def zoomed(self, factor: float, about_x: float) -> "AgeAxis":
        """Closer (factor over 1) or farther, the age at about_x staying where it is as far as the bounds allow."""
        whole = self.highest - self.lowest
        span = min(max((self.end - self.start) / factor, min(LEAST_SPAN_DAYS, whole)), whole)
        share = min(max((about_x - self.left) / self.width, 0.0), 1.0)
        return self._from(self.age(self.left + share * self.width) - share * span, span)

    def panned(self, pixels: float) -> "AgeAxis":
        """Moved along; positive pixels show later days."""
        return self._from(self.start + pixels / self.pixels_per_day, self.end - self.start)

    def showing(self, age: float) -> "AgeAxis":
        """Moved as little as needed for an age to be in view."""
        span = self.end - self.start
        if self.start <= age <= self.end:
            return self
        return self._from(age - span * 0.02 if age < self.start else age - span * 0.98, span)

    def showing_what(self, other: "AgeAxis") -> "AgeAxis":
        """The ages that another axis shows, as far as the bounds allow."""
        return self._from(other.start, min(other.end - other.start, self.highest - self.lowest))

    def age_ticks(self, least_px: float) -> list[int]:
        """Plant ages to label, at least least_px apart: every day, else multiples of one, two, four weeks."""
        step = 1 if self.pixels_per_day >= least_px else 7
        while step * self.pixels_per_day < least_px:
            step *= 2
        first = ceil(self.start / step) * step
        return list(range(first, floor(self.end) + 1, step))

    def calendar_ticks(self, day_zero: date, least_px: float) -> list[int]:
        """Plant ages to label by their date, least_px apart: days, Mondays, else firsts of months or of quarters."""
        ages = range(ceil(self.start), floor(self.end) + 1)
        if self.pixels_per_day >= least_px:
            return list(ages)
        days = [(age, day_at(day_zero, age)) for age in ages]
        if 7 * self.pixels_per_day >= least_px:
            return [age for age, day in days if day.weekday() == 0]
        months = next((m for m in (1, 3, 6) if 28 * m * self.pixels_per_day >= least_px), 12)
        return [age_on(day_zero, day) for _, day in days if day.day == 1 and (day.month - 1) % months == 0]

    def week_ticks(self, offset: int, least_px: float) -> list[int]:
        """Every seventh day from an offset on; none where they would stand closer than least_px."""
        if 7 * self.pixels_per_day < least_px:
            return []
        first = ceil((self.start - offset) / 7) * 7 + offset
        return list(range(first, floor(self.end) + 1, 7))

    def _from(self, start: float, span: float) -> "AgeAxis":
        start = min(max(start, self.lowest), max(self.highest - span, self.lowest))
        return replace(self, start=start, end=min(start + span, self.highest))
