"""What is still to come, over the yield chart: the fitted curve, its band, and the picks of the next days."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QPen

from growlog.calculations.coming_picks import ComingPicks
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.spoken_amount import amount_band
from growlog.calculations.yield_forecast import YieldForecast
from growlog.desktop.board import chart_items
from growlog.desktop.board.curve_steps import Numbers, Steps
from growlog.desktop.look.theme import Look
from growlog.services.board import Board
from growlog.services.yield_view.outlook import Outlook
from growlog.words import say

_BAND_ALPHA, _COMING_ALPHA = 0.16, 0.5


@dataclass(frozen=True)
class AheadBand:
    """A band over the ages ahead, from the curve's end on."""

    ages: Numbers
    low: Numbers
    middle: Numbers
    high: Numbers


@dataclass(frozen=True)
class DrawnOutlook:
    """fit: the curve through the picks so far. band: to the forecast's end. coming: the next days' picks."""

    fit: Steps | None
    band: AheadBand | None
    coming: AheadBand | None

    @property
    def highest(self) -> float:
        """The highest value drawn."""
        return max((float(b.high.max()) for b in (self.band, self.coming) if b is not None), default=0.0)


def drawn_outlook(outlook: Outlook, board: Board, by_count: bool) -> DrawnOutlook:
    """The outlook in the chart's measure, beginning where the crop's own curve ends.

    Coming picks are fruit; by weight each counts with the mean weight of those weighed so far.
    """
    total = board.total
    so_far = float(total.fruit_count) if by_count else total.weight_g
    told = outlook.fruit if by_count else outlook.grams
    one = 1.0 if by_count else total.mean_fruit_g
    coming = None
    if isinstance(outlook.coming, ComingPicks) and one is not None:
        days = [(d.age, d.low, d.middle, d.high) for d in outlook.coming.days]
        start = (days[0][0] - 1, 0, 0, 0)
        coming = _band([(age, *(so_far + one * v for v in of_day)) for age, *of_day in (start, *days)])
    if not isinstance(told, YieldForecast):
        return DrawnOutlook(None, None, coming)
    shift = so_far - told.so_far
    band = _band([(p.age, p.low + shift, p.middle + shift, p.high + shift) for p in told.curve])
    ages = np.linspace(told.fit.start_age, told.as_of_age, 60)
    fit = Steps(ages, np.array([told.fit.picked_by(float(age)) for age in ages]))
    return DrawnOutlook(fit, band, coming)


def outlook_items(drawn: DrawnOutlook, look: Look) -> list[pg.GraphicsObject]:
    """The items to put under the crop's own curve."""
    items: list[pg.GraphicsObject] = []
    if drawn.band is not None:
        items.append(_ground(drawn.band, look, _BAND_ALPHA, Qt.BrushStyle.SolidPattern))
        dashed = chart_items.curve_pen(look, "pick", 1.4, Qt.PenStyle.DashLine)
        items.append(chart_items.line_of(Steps(drawn.band.ages, drawn.band.middle), dashed))
    if drawn.coming is not None:
        items.append(_ground(drawn.coming, look, _COMING_ALPHA, Qt.BrushStyle.FDiagPattern))
    if drawn.fit is not None:
        items.append(chart_items.line_of(drawn.fit, chart_items.curve_pen(look, "pick", 1.2, Qt.PenStyle.DotLine)))
    return items


def tell_ahead(outlook: Outlook, age: int) -> list[str]:
    """What is foreseen up to a day that has not come, in words."""
    lines = []
    if isinstance(outlook.coming, ComingPicks):
        day = next((d for d in outlook.coming.days if d.age == age), None)
        if day is not None:
            lines.append(say("coming picks: {amount}", amount=amount_band(day.low, day.high, Measure.FRUIT)))
    for told in (outlook.fruit, outlook.grams):
        if isinstance(told, YieldForecast):
            point = next((p for p in told.curve if p.age == age and age > told.as_of_age), None)
            if point is not None:
                amount = amount_band(point.low - told.so_far, point.high - told.so_far, told.measure)
                lines.append(say("{amount} more, in four cases out of five", amount=amount))
    return lines


def _band(points: Sequence[tuple[float, ...]]) -> AheadBand:
    ages, low, middle, high = np.array(points, dtype=float).T
    return AheadBand(ages, low, middle, high)


def _ground(band: AheadBand, look: Look, alpha: float, style: Qt.BrushStyle) -> pg.FillBetweenItem:
    none = QPen(Qt.PenStyle.NoPen)
    colour = QColor(look.colour("pick"))
    colour.setAlphaF(alpha)
    edges = [chart_items.line_of(Steps(band.ages, values), none) for values in (band.low, band.high)]
    return pg.FillBetweenItem(*edges, brush=QBrush(colour, style))
