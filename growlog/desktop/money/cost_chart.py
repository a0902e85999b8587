"""The cost so far over plant age, one kind stacked on the other."""

from collections.abc import Mapping, Sequence
from itertools import accumulate

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QPen
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from growlog.desktop.charts import Band, ChartData
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.money.kinds import kind_brush, kind_colour, kind_token
from growlog.records.money import decimals_of
from growlog.services.money.costs import CropCosts
from growlog.services.money.lines import CostKind
from growlog.words import say

_LEAST_PX = 210


class CostChart(QWidget):
    """A picture to look at; the same figures stand in the table beside it."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("costChart")
        self._costs: CropCosts | None = None
        self._crop_name = ""
        self.plot = pg.PlotWidget(self, background=None)
        self.plot.setFrameShape(QFrame.Shape.NoFrame)
        self.plot.setStyleSheet("background: transparent; border: none;")
        self.plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        item = self.plot.getPlotItem()
        item.setMenuEnabled(False)
        item.hideButtons()
        item.setMouseEnabled(False, False)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.plot)
        self.setMinimumHeight(current().px(_LEAST_PX))
        theme_signal().changed.connect(self._draw)

    def show_costs(self, costs: CropCosts | None, crop_name: str = "") -> None:
        """Another crop's cost."""
        self._costs = costs
        self._crop_name = crop_name
        self._draw()

    def data(self) -> ChartData | None:
        """The chart as values, to be saved; None without a cost."""
        if self._costs is None or not self._costs.days:
            return None
        first, last, stacks = stacked(self._costs)
        ages = list(range(first, last + 1))
        below, bands = [0.0] * len(ages), []
        for number, (kind, values) in enumerate(stacks.items()):
            above = [low + value for low, value in zip(below, values, strict=True)]
            bands.append(Band(say(kind.label), ages, below, above, kind_token(kind), number % 2 == 1, steps=True))
            below = above
        title = say("{crop}: cost so far", crop=self._crop_name)
        return ChartData(title, say("plant age, days"), self._money_words(), (), bands)

    def _money_words(self) -> str:
        currency = "" if self._costs is None else self._costs.currency
        return say("cost so far, {currency}", currency=currency) if currency else say("cost so far")

    def _draw(self) -> None:
        self.plot.clear()
        self._dress()
        if self._costs is None or not self._costs.days:
            return
        first, last, stacks = stacked(self._costs)
        ages = np.arange(first, last + 2)
        below = np.zeros(len(ages))
        for kind, values in stacks.items():
            above = below + np.append(values, values[-1])
            lines = [_steps(ages, heights, kind) for heights in (below, above)]
            self.plot.addItem(pg.FillBetweenItem(*lines, brush=kind_brush(kind)))
            self.plot.addItem(lines[1])
            below = above
        self.plot.setXRange(first, max(last + 1, first + 7), padding=0.01)
        self.plot.setYRange(0, max(float(below.max()), 0.01) * 1.06, padding=0)
        spoken = say("Cost so far by kind, {first} to {last} days of plant age", first=first, last=last)
        self.setAccessibleName(spoken)

    def _dress(self) -> None:
        look, item = current(), self.plot.getPlotItem()
        for side, text in (("left", self._money_words()), ("bottom", say("plant age, days"))):
            axis = item.getAxis(side)
            axis.setPen(QPen(look.colour("edge"), 1))
            axis.setTextPen(look.colour("mute"))
            axis.setStyle(tickFont=look.font(11))
            style = {"color": look.palette.mute, "font-size": f"{look.px(11)}px",
                     "font-family": f"'{look.font().family()}'"}  # fmt: skip
            axis.enableAutoSIPrefix(False)
            axis.setLabel(text, **style)


def stacked(costs: CropCosts) -> tuple[int, int, Mapping[CostKind, Sequence[float]]]:
    """First and last plant age, and for each kind its cost so far on each of them, in the currency's main unit."""
    first, last = min(0, costs.days[0].age), max(0, costs.days[-1].age)
    unit = 10 ** decimals_of(costs.currency)
    found: dict[CostKind, Sequence[float]] = {}
    for kind in CostKind:
        daily = np.zeros(last - first + 1)
        for day in costs.days:
            daily[day.age - first] += day.by_kind.get(kind, 0) / unit
        if daily.any():
            found[kind] = list(accumulate(daily.tolist()))
    return first, last, found


def _steps(ages: "np.ndarray[tuple[int], np.dtype[np.int64]]", heights: object, kind: CostKind) -> pg.PlotCurveItem:
    pen = QPen(kind_colour(kind), 1.2)
    pen.setCosmetic(True)
    values = np.asarray(heights)
    xs = np.repeat(ages, 2)[1:-1]
    ys = np.repeat(values[:-1], 2)
    return pg.PlotCurveItem(xs, ys, pen=pen, antialias=False)
