"""Charts as values: one painter draws them on the screen, into a picture, and into SVG; the values go into CSV."""

from growlog.desktop.charts.chart_data import Band, ChartData, Line, Upright
from growlog.desktop.charts.chart_menu import ChartMenu
from growlog.desktop.charts.chart_view import ChartView

__all__ = ["Band", "ChartData", "ChartMenu", "ChartView", "Line", "Upright"]
