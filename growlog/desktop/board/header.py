"""The board's header: which crop, what it is, and how the axis is shown."""

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QSpacerItem, QToolButton, QWidget

from growlog.desktop.board.lanes_menu import LanesMenu
from growlog.desktop.board.wording import description
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import ElidedLabel, SegmentSwitch
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.services.board import Board
from growlog.words import say

_WIDE_PX = 640
_MIDDLE_PX = 440
_HALF_PX = 350
_LEAST_PX = 260
_LOW = "QComboBox { padding-top: 1px; padding-bottom: 1px; min-height: 0; }"
# row, column, rows, columns of name, description, other curve, icons and switch
_PLACES = {
    "wide": ((0, 0, 1, 1), (1, 0, 1, 5), (0, 1, 1, 1), (0, 2, 1, 1), (0, 3, 1, 1)),
    "middle": ((0, 0, 1, 1), (1, 0, 1, 2), (1, 2, 1, 2), (0, 1, 1, 1), (0, 2, 1, 2)),
    "half": ((0, 0, 1, 3), (4, 0, 1, 5), (1, 2, 1, 2), (0, 3, 1, 1), (1, 0, 1, 2)),
    "narrow": ((0, 0, 1, 5), (4, 0, 1, 5), (3, 0, 1, 2), (1, 0, 1, 2), (2, 0, 1, 2)),
}


class UnderlayBox(CalmComboBox):
    """The choice of a crop whose curve is laid under this one."""

    opened = Signal()
    chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("underlay")
        self.setAccessibleName(say("Lay another curve under"))
        self.setToolTip(say("Lay another crop's yield under this one, at the same plant age"))
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.setMinimumContentsLength(12)
        self.setStyleSheet(_LOW)
        self.setSizeAdjustPolicy(CalmComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.set_choices([])
        self.activated.connect(self._activated)

    def set_choices(self, choices: Sequence[tuple[str, str]]) -> None:
        """Crop id and name of each; the first line stands for none."""
        was = self.currentData()
        with QSignalBlocker(self):
            self.clear()
            self.addItem(say("No other curve"), "")
            for crop_id, name in choices:
                self.addItem(name, crop_id)
            self.setCurrentIndex(max(self.findData(was), 0))

    def show_chosen(self, crop_id: str) -> None:
        """Stands on a crop without telling anyone."""
        with QSignalBlocker(self):
            self.setCurrentIndex(max(self.findData(crop_id), 0))

    def showPopup(self) -> None:
        """Says first that choices are wanted."""
        self.opened.emit()
        super().showPopup()

    def _activated(self, index: int) -> None:
        self.chosen.emit(str(self.itemData(index) or ""))


class Header(QWidget):
    """Name and description at the left, tools at the right; in more rows where it is narrow."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.name = ElidedLabel("", "title")
        self.name.setObjectName("crop-name")
        self.about = ElidedLabel("", "small", "mute")
        self.about.setObjectName("crop-about")
        self.mode = SegmentSwitch(
            [("age", say("plant age")), ("calendar", say("calendar"))], "age", say("The axis shows")
        )
        self.mode.setObjectName("axis-mode")
        self.underlay = UnderlayBox()
        self.zoom_out = _tool("zoom-out", say("Show more days"), "zoom-out")
        self.zoom_in = _tool("zoom-in", say("Show fewer days"), "zoom-in")
        self.zoom_fit = _tool("zoom-fit", say("Show the whole crop"), "zoom-fit")
        self.lanes = _tool("show-lane", say("Show, hide and move lanes"), "lanes")
        self.menu = LanesMenu(self)
        self.lanes.setMenu(self.menu)
        self.lanes.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self._icons = self._icon_row()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(0, 1)
        spring = QSpacerItem(0, 0, QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        self._grid.addItem(spring, 5, 4)  # keeps everything at the left where there is room to spare
        self.setMinimumWidth(_LEAST_PX)  # else the widest arrangement would keep the window from getting narrower
        self._shape = ""
        self._arrange()
        theme_signal().changed.connect(self._arrange)

    def show_board(self, board: Board) -> None:
        """Names the crop and describes it."""
        self.name.setText(board.crop.name)
        self.about.setText(description(board))
        self.name.setToolTip(f"{board.crop.name}: {self.about.text()}")

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Takes more rows where it is narrow."""
        self._arrange()

    def _icon_row(self) -> QWidget:
        row = QWidget()
        row.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        layout = QHBoxLayout(row)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        for button in (self.zoom_out, self.zoom_in, self.zoom_fit, self.lanes):
            layout.addWidget(button)
        return row

    def _arrange(self) -> None:
        scale = current().px
        widths = {"wide": _WIDE_PX, "middle": _MIDDLE_PX, "half": _HALF_PX, "narrow": 0}
        shape = next(name for name, least in widths.items() if self.width() >= scale(least))
        if shape == self._shape:
            return
        self._shape = shape
        parts = (self.name, self.about, self.underlay, self._icons, self.mode)
        for widget in parts:
            self._grid.removeWidget(widget)
        for widget, place in zip(parts, _PLACES[shape], strict=True):
            self._grid.addWidget(widget, *place)
        self.about.setVisible(shape in ("wide", "middle"))
        if shape == "narrow":
            self._grid.setAlignment(self._icons, Qt.AlignmentFlag.AlignLeft)
        if shape in ("middle", "half"):
            self._grid.setAlignment(self.underlay, Qt.AlignmentFlag.AlignRight)


def _tool(icon: str, text: str, name: str) -> IconButton:
    button = IconButton(icon, text)
    button.setObjectName(name)
    return button
