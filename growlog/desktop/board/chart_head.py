"""The head of the yield chart: weight or count, what is to come, and the button that saves the chart."""

from collections.abc import Callable

from PySide6.QtCore import QRect, QRectF
from PySide6.QtWidgets import QWidget

from growlog.desktop.board.outlook_strip import OutlookStrip
from growlog.desktop.charts import ChartData, ChartMenu
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import SegmentSwitch
from growlog.words import say

ROOMY_PX = 170  # a plot that is high enough for a second row of switches
_BUTTON_PX, _LEFT_PX = 26, 8


class ChartHead:
    """Lays its parts over the top of the plot; a strip that has no room beside the switch goes below it."""

    def __init__(self, chart: QWidget, chart_data: Callable[[], ChartData | None]) -> None:
        self.switch = SegmentSwitch(
            [("weight", say("weight")), ("count", say("count"))], "weight", say("The curve counts by")
        )
        self.switch.setParent(chart)
        self.switch.setObjectName("yield-unit")
        self.strip = OutlookStrip(chart)
        self.export_menu = ChartMenu(chart_data, chart)
        self.export_menu.hide()
        self._extra_px = 0

    @property
    def extra_px(self) -> int:
        """How much higher a second row makes it."""
        return self._extra_px if not self.strip.isHidden() else 0

    def show_for(self, has_curve: bool, has_outlook: bool) -> None:
        """Shows what there is something to do with."""
        self.switch.setVisible(has_curve)
        self.export_menu.setVisible(has_curve)
        self.strip.setVisible(has_curve and has_outlook)

    def place(self, plot: QRect) -> None:
        """At the top of the plot."""
        self.switch.adjustSize()
        self.switch.move(plot.left() + current().px(_LEFT_PX), plot.top() + 2)
        side = current().px(_BUTTON_PX)
        self.export_menu.setGeometry(plot.right() - side, self.switch.y(), side, side)
        roomy = plot.height() >= current().px(ROOMY_PX)
        self._extra_px = self.strip.place(self.switch.geometry(), plot.right() - side - 8, roomy)
        for part in (self.switch, self.export_menu, self.strip):
            part.raise_()

    def places(self) -> list[QRectF]:
        """Where its parts are."""
        return [QRectF(p.geometry()) for p in (self.switch, self.strip, self.export_menu) if not p.isHidden()]

    def bottom_at(self, x: float) -> float:
        """How far down it reaches at a pixel; 0 where nothing of it is."""
        return max((p.bottom() for p in self.places() if p.left() - 2 <= x <= p.right() + 2), default=0.0)
