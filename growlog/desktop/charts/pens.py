"""The pens and grounds of a chart's parts."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QPen

from growlog.desktop.charts.chart_data import Band, Line
from growlog.desktop.look.theme import Look

_DASHES = {"": Qt.PenStyle.SolidLine, "dash": Qt.PenStyle.DashLine, "dot": Qt.PenStyle.DotLine,
           "dash-dot": Qt.PenStyle.DashDotLine}  # fmt: skip


def line_pen(look: Look, line: Line) -> QPen:
    """The pen of a line."""
    pen = QPen(look.colour(line.token), line.width * look.scale, _DASHES[line.dash])
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def band_brush(look: Look, band: Band) -> QBrush:
    """The ground of a band."""
    colour = QColor(look.colour(band.token))
    colour.setAlphaF(0.5 if band.hatched else 0.18)
    return QBrush(colour, Qt.BrushStyle.BDiagPattern if band.hatched else Qt.BrushStyle.SolidPattern)
