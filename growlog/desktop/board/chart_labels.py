"""The words in the yield chart, placed so that they cover neither each other nor, where there is room, the curve."""

from collections.abc import Iterator
from dataclasses import dataclass

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF

from growlog.desktop.board import chart_items
from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.curve_steps import DrawnCurve, value_on
from growlog.desktop.board.placing import beside, best_place
from growlog.desktop.look.theme import current

_MARGIN_PX = 4  # around a text item's words
_ROW_PX = 7


@dataclass(frozen=True)
class ChartSpace:
    """The plot in pixels of the chart, the axis on it and the value at its top."""

    area: QRectF
    axis: AgeAxis
    highest: float

    def y(self, value: float) -> float:
        """The pixel of a value."""
        return self.area.bottom() - self.area.height() * value / self.highest

    def value(self, y: float) -> float:
        """The value at a pixel."""
        return self.highest * (self.area.bottom() - y) / max(self.area.height(), 1)

    def crosses(self, curve: DrawnCurve | None, box: QRectF) -> bool:
        """Whether a curve, which never falls, passes through a box."""
        if curve is None or box.left() > self.axis.x(float(curve.whole.ages[-1])):
            return False
        start = value_on(curve.whole, self.axis.age(box.left()))
        end = value_on(curve.whole, self.axis.age(box.right()))
        return self.y(end) - 2 < box.bottom() and self.y(start) + 2 > box.top()


class ChartLabels:
    """Places labels one after the other; each keeps off those before it."""

    def __init__(self) -> None:
        self.taken: list[QRectF] = []
        self._space = ChartSpace(QRectF(0, 0, 1, 1), AgeAxis.over(0, 1), 1.0)
        self._curves: list[DrawnCurve] = []

    def begin(self, space: ChartSpace, curves: list[DrawnCurve], taken: list[QRectF]) -> None:
        """Forgets all labels; what is taken from the outset stays free."""
        self._space, self._curves, self.taken = space, curves, list(taken)

    def beside_line(self, plot: pg.PlotWidget, words: tuple[str, str, str], age: float, top: float) -> QRectF:
        """Words (first line, second line, token of the first) beside an upright line; where they came to stand."""
        width, height = _size(words)
        x, tops = self._space.axis.x(age), self._tops(top, height)
        return self._put(plot, words, list(beside(x, tops, width, height, current().px(4))), x)

    def at_end(self, plot: pg.PlotWidget, words: tuple[str, str, str], at: QPointF, above: bool) -> QRectF:
        """Words at a curve's end: to its right where that fits, else above or below it."""
        width, height = _size(words)
        gap, left = current().px(3), at.x() - width
        places = [QRectF(at.x() + gap, at.y() - height / 2, width, height)]
        first = at.y() - height - gap if above else at.y() + gap
        sides = [first, *self._tops(first, height)]
        places += [
            QRectF(left - shift, top, width, height) for top in sides for shift in (0, width / 2, width, 2 * width)
        ]
        return self._put(plot, words, places)

    def _tops(self, top: float, height: float) -> Iterator[float]:
        """The wanted height, then ever farther ones, upwards before downwards."""
        area = self._space.area
        step = current().px(_ROW_PX)
        yield top
        for number in range(1, int(area.height() / step) + 1):
            for candidate in (top - number * step, top + number * step):
                if area.top() <= candidate <= area.bottom() - height:
                    yield candidate

    def _put(
        self, plot: pg.PlotWidget, words: tuple[str, str, str], places: list[QRectF], line_x: float | None = None
    ) -> QRectF:
        """Adds the words at the best place; left of a line they end at it."""
        space = self._space
        place = best_place(places, self.taken, space.area, self.covered_curve)
        self.taken.append(place)
        to_left = line_x is not None and place.right() <= line_x
        item = _item(words, to_left)
        plot.addItem(item, ignoreBounds=True)
        x = place.right() + _MARGIN_PX if to_left else place.left() - _MARGIN_PX
        item.setPos(space.axis.age(x), space.value(place.top() - _MARGIN_PX))
        return place

    def covered_curve(self, box: QRectF) -> float:
        """What it costs to lie over a curve, for `best_place`."""
        crossed = sum(self._space.crosses(curve, box) for curve in self._curves)
        return 0.5 * crossed * box.width() * box.height()


def _item(words: tuple[str, str, str], to_left: bool = False) -> pg.TextItem:
    first, second, token = words
    width = max(chart_items.words_width(first), chart_items.words_width(second)) + 2 * _MARGIN_PX
    return chart_items.words(first, second, current(), (1 if to_left else 0, 0), width, token)


def _size(words: tuple[str, str, str]) -> tuple[float, float]:
    """Width and height of the words alone."""
    item = _item(words)  # owns its text: it must outlive the measuring
    box = item.textItem.boundingRect()
    return box.width() - 2 * _MARGIN_PX, box.height() - 2 * _MARGIN_PX
