"""A chart as plain values: lines, bands and upright marks over one axis, with what the axes measure."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import isfinite


@dataclass(frozen=True)
class Line:
    """A line through points. steps: each value holds until the next point. token: its colour; dash: "" or "dash",
    "dot", "dash-dot", so that colour never tells alone."""

    name: str
    xs: Sequence[float]
    ys: Sequence[float]
    token: str = "pick"
    dash: str = ""
    steps: bool = False
    width: float = 2.0


@dataclass(frozen=True)
class Band:
    """The ground between two lines. hatched: with strokes instead of a plain ground."""

    name: str
    xs: Sequence[float]
    low: Sequence[float]
    high: Sequence[float]
    token: str = "pick"
    hatched: bool = False
    steps: bool = False


@dataclass(frozen=True)
class Upright:
    """A vertical line at an x, with words beside it."""

    x: float
    words: str
    token: str = "mute"


@dataclass(frozen=True)
class ChartData:
    """x_title, y_title: with their units. x_text: the words of a tick, numbers where None. notes: lines below.

    x_range: first and last x, as far as the data reach where None. whole_y: ticks of whole numbers only.
    """

    title: str
    x_title: str
    y_title: str
    lines: Sequence[Line] = ()
    bands: Sequence[Band] = ()
    uprights: Sequence[Upright] = ()
    notes: Sequence[str] = ()
    x_range: tuple[float, float] | None = None
    x_text: Callable[[float], str] | None = None
    whole_y: bool = False

    @property
    def parts(self) -> list["Line | Band"]:
        """Lines, then bands."""
        return [*self.lines, *self.bands]

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to draw."""
        return not any(len(part.xs) for part in self.parts)

    def x_bounds(self) -> tuple[float, float]:
        """First and last x."""
        if self.x_range is not None:
            return self.x_range
        found = [x for part in self.parts for x in part.xs]
        low, high = min(found, default=0.0), max(found, default=1.0)
        return (low, high) if high > low else (low - 0.5, high + 0.5)

    def y_bounds(self) -> tuple[float, float]:
        """Lowest and highest y, 0 always within."""
        found = [y for line in self.lines for y in line.ys if isfinite(y)]
        found += [y for band in self.bands for side in (band.low, band.high) for y in side if isfinite(y)]
        return min([0.0, *found]), max([*found, 0.0]) or (0.0 if min([0.0, *found]) < 0 else 1.0)

    def rows(self) -> list[list[str]]:
        """The values as a table in long form, its heading first: name, x, y, low, high."""
        rows = [["series", self.x_title, self.y_title, "low", "high"]]
        for line in self.lines:
            rows += [[line.name, _cell(x), _cell(y), "", ""] for x, y in zip(line.xs, line.ys, strict=True)]
        for band in self.bands:
            edges = zip(band.xs, band.low, band.high, strict=True)
            rows += [[band.name, _cell(x), "", _cell(low), _cell(high)] for x, low, high in edges]
        rows += [[mark.words, _cell(mark.x), "", "", ""] for mark in self.uprights]
        return rows


def _cell(value: float) -> str:
    """With a point and no more digits than matter."""
    return f"{round(float(value), 6):g}" if abs(value) < 1e6 else str(round(float(value), 3))
