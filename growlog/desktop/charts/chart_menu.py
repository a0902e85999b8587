"""The small button beside a chart that saves or copies it."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QToolButton, QWidget

from growlog.desktop.charts.chart_data import ChartData
from growlog.desktop.charts.chart_export import copy_chart
from growlog.desktop.look.icons import IconButton
from growlog.words import say


class ChartMenu(IconButton):
    """chart: gives the chart as it stands, None where there is none. Whoever knows about files saves what is wanted."""

    save_wanted = Signal(object, str)  # ChartData, png svg or csv
    copied = Signal()

    def __init__(self, chart: Callable[[], ChartData | None], parent: QWidget | None = None) -> None:
        super().__init__("export", say("Save or copy this chart"), parent)
        self.setObjectName("chartMenu")
        self._chart = chart
        self._menu = QMenu(self)
        for key, words in (
            ("png", say("Save as a picture (PNG)…")),
            ("svg", say("Save as a drawing (SVG)…")),
            ("csv", say("Save the values (CSV)…")),
            ("copy", say("Copy")),
        ):
            action = self._menu.addAction(words)
            action.setObjectName(key)
            action.setData(key)
        self.setMenu(self._menu)
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self._menu.aboutToShow.connect(self._allow)
        self._menu.triggered.connect(self._chosen)

    def action(self, key: str) -> QAction:
        """png, svg, csv or copy."""
        return next(a for a in self._menu.actions() if a.data() == key)

    def _allow(self) -> None:
        data = self._chart()
        for action in self._menu.actions():
            action.setEnabled(data is not None and not data.is_empty)

    def _chosen(self, action: QAction) -> None:
        data = self._chart()
        if data is None or data.is_empty:
            return
        if action.data() == "copy":
            copy_chart(data)
            self.copied.emit()
        else:
            self.save_wanted.emit(data, str(action.data()))
