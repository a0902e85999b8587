"""The curve of cumulative yield as SVG: a step for each pick, no scripts, no styles from elsewhere."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import ceil, floor, log10
from xml.sax.saxutils import escape, quoteattr

INK, MUTE, RULE, PICK, GREY = "#23302B", "#5F6963", "#DDD7C9", "#C04A00", "#8A938D"
_FILL_OPACITY = "0.12"


@dataclass(frozen=True)
class ChartCurve:
    """Cumulative values by plant age, drawn as steps up to last_age."""

    name: str
    points: tuple[tuple[int, float], ...]
    last_age: int


@dataclass(frozen=True)
class YieldChart:
    """own: drawn strong and filled. others: in grey. packet_age: a dashed line, None for none. tick: a value's words.

    title: what the picture shows, for those who cannot see it. day_word, packet_word: as written beside the axis.
    """

    own: ChartCurve
    others: tuple[ChartCurve, ...]
    packet_age: int | None
    tick: Callable[[float], str]
    title: str
    day_word: str
    packet_word: str


@dataclass(frozen=True)
class ChartSize:
    """In units of the picture; text_size: of the words in the same units."""

    width: int
    height: int
    text_size: float


WIDE = ChartSize(880, 300, 12.5)
NARROW = ChartSize(420, 300, 14.0)


def yield_chart_svg(chart: YieldChart, size: ChartSize = WIDE) -> str:
    """The picture as one svg element; all words in it are escaped."""
    return _Drawing(chart, size).svg()


def axis_steps(highest: float, most: int = 4) -> list[float]:
    """Round values from 0 up, at most so many above 0, the last of them below or at the highest."""
    if highest <= 0:
        return [0.0]
    rough = highest / most
    power = 10.0 ** floor(log10(rough))
    step = next(power * f for f in (1, 2, 5, 10) if power * f >= rough - 1e-12)
    return [step * i for i in range(int(highest / step + 1e-9) + 1)]


def day_steps(last_age: int, most: int) -> list[int]:
    """Ages in whole weeks from 0 up, at most so many."""
    weeks = max(1, ceil(max(last_age, 1) / 7 / most))
    return list(range(0, last_age + 1, weeks * 7))


class _Drawing:
    """One picture while it is drawn."""

    def __init__(self, chart: YieldChart, size: ChartSize) -> None:
        self._chart, self._size = chart, size
        curves = (chart.own, *chart.others)
        self._last_age = max([c.last_age for c in curves] + [chart.packet_age or 0, 1])
        self._highest = max([value for c in curves for _, value in c.points], default=0.0)
        self._top = (self._highest or 1.0) * 1.08
        self._left, self._right = size.text_size * 3.9, size.width - size.text_size * 0.8
        self._upper, self._lower = size.text_size * 1.6, size.height - size.text_size * 1.9

    def svg(self) -> str:
        """The whole element."""
        width, height = self._size.width, self._size.height
        parts = [*self._grid(), *self._days(), *self._packet(), *self._others(), *self._own()]
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}" height="{height}"'
            f' role="img" aria-label={quoteattr(self._chart.title)} font-family="\'Logbook Sans\', sans-serif"'
            f' font-size="{_n(self._size.text_size)}">' + "".join(parts) + "</svg>"
        )

    def _x(self, age: float) -> float:
        return self._left + (self._right - self._left) * age / self._last_age

    def _y(self, value: float) -> float:
        return self._lower - (self._lower - self._upper) * value / self._top

    def _grid(self) -> Iterator[str]:
        for value in axis_steps(self._highest):
            y = self._y(value)
            colour = MUTE if value == 0 else RULE
            yield _line(self._left, y, self._right, y, colour, 1)
            yield _text(self._left - 7, y + self._size.text_size * 0.35, self._chart.tick(value), MUTE, "end")

    def _days(self) -> Iterator[str]:
        y = self._size.height - self._size.text_size * 0.45
        yield _text(self._left - 7, y, self._chart.day_word, MUTE, "end")
        steps = day_steps(self._last_age, 9 if self._size.width > 600 else 5)
        if self._x(self._last_age) - self._x(steps[-1]) > 2.5 * self._size.text_size:
            steps.append(self._last_age)
        for age in steps:
            yield _text(self._x(age), y, str(age), MUTE, "end" if age == self._last_age else "middle")

    def _packet(self) -> Iterator[str]:
        age = self._chart.packet_age
        if age is None:
            return
        x, near_left = self._x(age), self._x(age) < self._size.width / 2.6
        yield _line(x, self._upper - self._size.text_size * 0.8, x, self._lower, MUTE, 1.2, ' stroke-dasharray="4 4"')
        side = ("start", 6) if near_left else ("end", -6)
        yield _text(x + side[1], self._upper - self._size.text_size * 0.1, self._chart.packet_word, MUTE, side[0], 600)

    def _others(self) -> Iterator[str]:
        taken: list[float] = []
        for curve in self._chart.others:
            yield f'<path d="{self._steps(curve)}" fill="none" stroke="{GREY}" stroke-width="1.6"/>'
            value = curve.points[-1][1] if curve.points else 0.0
            y = self._free(self._y(value) - 6, taken)
            x = min(self._x(curve.last_age), self._right)
            yield _text(x, y, _shortened(curve.name), MUTE, "end", 600)

    def _own(self) -> Iterator[str]:
        curve = self._chart.own
        if not curve.points:
            return
        steps = self._steps(curve)
        end = f" L{_n(self._x(curve.last_age))} {_n(self._lower)} L{_n(self._x(0))} {_n(self._lower)} Z"
        yield f'<path d="{steps}{end}" fill="{PICK}" fill-opacity="{_FILL_OPACITY}" stroke="none"/>'
        yield f'<path d="{steps}" fill="none" stroke="{PICK}" stroke-width="2.6" stroke-linejoin="miter"/>'

    def _steps(self, curve: ChartCurve) -> str:
        path, value = [f"M{_n(self._x(0))} {_n(self._y(0))}"], 0.0
        for age, after in curve.points:
            path.append(f"L{_n(self._x(age))} {_n(self._y(value))} L{_n(self._x(age))} {_n(self._y(after))}")
            value = after
        path.append(f"L{_n(self._x(curve.last_age))} {_n(self._y(value))}")
        return " ".join(path)

    def _free(self, y: float, taken: list[float]) -> float:
        """A height for words at which no other words stand yet."""
        apart = self._size.text_size * 1.25
        while any(abs(y - other) < apart for other in taken):
            y -= apart
        if y < self._size.text_size:
            y = max(taken, default=self._upper) + apart
        taken.append(y)
        return y


def _line(x1: float, y1: float, x2: float, y2: float, colour: str, width: float, more: str = "") -> str:
    ends = f'x1="{_n(x1)}" y1="{_n(y1)}" x2="{_n(x2)}" y2="{_n(y2)}"'
    return f'<line {ends} stroke="{colour}" stroke-width="{_n(width)}"{more}/>'


def _text(x: float, y: float, words: str, colour: str, anchor: str, weight: int = 400) -> str:
    heavy = f' font-weight="{weight}"' if weight != 400 else ""
    place = f'x="{_n(x)}" y="{_n(y)}" text-anchor="{anchor}"'
    return f'<text {place} fill="{colour}"{heavy}>{escape(words)}</text>'


def _shortened(name: str, most: int = 28) -> str:
    return name if len(name) <= most else name[: most - 1] + "…"


def _n(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
