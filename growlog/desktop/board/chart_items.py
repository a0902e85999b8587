"""The moving parts of the yield chart as pyqtgraph items: curves, hatching and labels in the program's look."""

from collections.abc import Sequence
from html import escape

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPen

from growlog.desktop.board.curve_steps import DrawnCurve, Steps
from growlog.desktop.look.theme import Look, current


def curve_pen(look: Look, token: str, width: float, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """A pen that keeps its width whatever the zoom."""
    pen = QPen(look.colour(token), width * look.scale, style)
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen


def line_of(steps: Steps, pen: QPen) -> pg.PlotCurveItem:
    """A step curve."""
    return pg.PlotCurveItem(steps.ages, steps.values, pen=pen, antialias=True)


def fill_of(steps: Steps, look: Look) -> pg.PlotCurveItem:
    """The ground below a curve."""
    colour = QColor(look.colour("pick"))
    colour.setAlphaF(0.14)
    return pg.PlotCurveItem(steps.ages, steps.values, pen=QPen(Qt.PenStyle.NoPen), fillLevel=0, brush=QBrush(colour))


def hatching_of(drawn: DrawnCurve, look: Look) -> pg.FillBetweenItem:
    """The part between what was weighed and the whole."""
    none = QPen(Qt.PenStyle.NoPen)
    colour = QColor(look.colour("pick"))
    colour.setAlphaF(0.55)
    brush = QBrush(colour, Qt.BrushStyle.BDiagPattern)
    return pg.FillBetweenItem(line_of(drawn.weighed, none), line_of(drawn.whole, none), brush=brush)


def rules_at(values: Sequence[float], first_age: float, last_age: float, look: Look) -> pg.PlotCurveItem:
    """Hairlines across the chart."""
    ages = [age for _ in values for age in (first_age, last_age)]
    heights = [value for value in values for _ in range(2)]
    return pg.PlotCurveItem(ages, heights, pen=curve_pen(look, "rule", 1 / look.scale), connect="pairs")


def upright(age: float, top: float, pen: QPen) -> pg.PlotCurveItem:
    """A vertical line from the ground to a value."""
    return pg.PlotCurveItem([age, age], [0, top], pen=pen)


def words(
    first: str, second: str, look: Look, anchor: tuple[float, float], width: float, first_token: str = "ink"
) -> pg.TextItem:
    """One or two lines of text, the first one bold."""
    align = "right" if anchor[0] > 0.5 else "left"
    size = f"font-size:{look.px(11)}px; font-family:'{look.font().family()}'"
    text = f"<span style='color:{look.palette.colour(first_token)}; font-weight:600'>{escape(first)}</span>"
    if second:
        text += f"<br><span style='color:{look.palette.mute}'>{escape(second)}</span>"
    item = pg.TextItem(html=f'<div style="{size}; text-align:{align}">{text}</div>', anchor=anchor)
    item.setTextWidth(width)
    return item


def words_width(text: str) -> float:
    """The width of a label's line in pixels."""
    return QFontMetricsF(current().font(11, QFont.Weight.DemiBold)).horizontalAdvance(text) + current().px(4)
