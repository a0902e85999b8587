"""What can be written on this day: a button for each usual kind with its key, the rest in a menu."""

from functools import partial

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QMenu, QVBoxLayout, QWidget

from growlog.desktop.look.marks import mark_icon
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Button, FlowLayout
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.records.entry import KINDS
from growlog.words import say

KIND_KEYS = {
    "feed": "F",
    "pick": "K",
    "pollination": "P",
    "training": "T",
    "reading": "R",
    "stage": "S",
    "note": "N",
}


class AddRow(QWidget):
    """Says which kind of entry is wanted. Its keys work while the focus is anywhere within `keys_within`."""

    add_wanted = Signal(str)

    def __init__(self, keys_within: QWidget) -> None:
        super().__init__()
        self.setObjectName("addEntry")
        self.hint = TextLabel(say("Write what happened, or press its key"), "small", wraps=True)
        self.buttons = {kind: self._button(kind, key) for kind, key in KIND_KEYS.items()}
        self.more_button = Button(say("More\u2026"), "chip", name="add.more")
        self.menu = QMenu(self)
        self._shortcuts = [self._shortcut(keys_within, kind, key) for kind, key in KIND_KEYS.items()]
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.hint)
        flow = QWidget()
        row = FlowLayout(flow, 6)
        for button in self.buttons.values():
            row.addWidget(button)
        row.addWidget(self.more_button)
        column.addWidget(flow)
        self._draw_marks()
        theme_signal().changed.connect(self._draw_marks)
        self.more_button.clicked.connect(self._open_menu)

    def set_writable(self, writable: bool) -> None:
        """Hides itself and rests its keys where nothing can be written."""
        self.setVisible(writable)
        for shortcut in self._shortcuts:
            shortcut.setEnabled(writable)

    def _button(self, kind: str, key: str) -> Button:
        words = say(KINDS[kind].label)
        button = Button(f" {words}  {key}", "chip", name=f"add.{kind}")
        button.setToolTip(say("Add: {kind} (key {key})", kind=words, key=key))
        button.setAccessibleName(say("Add: {kind} (key {key})", kind=words, key=key))
        button.clicked.connect(partial(self.add_wanted.emit, kind))
        return button

    def _shortcut(self, within: QWidget, kind: str, key: str) -> QShortcut:
        shortcut = QShortcut(QKeySequence(key), within, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.activated.connect(partial(self.add_wanted.emit, kind))
        return shortcut

    def _draw_marks(self) -> None:
        side = current().px(12)
        for kind, button in self.buttons.items():
            button.setIcon(mark_icon(kind, 12))
            button.setIconSize(QSize(side, side))
        self.menu.clear()
        for kind, detail in KINDS.items():
            if kind not in KIND_KEYS:
                action = self.menu.addAction(mark_icon(kind), say(detail.label))
                action.triggered.connect(partial(self.add_wanted.emit, kind))

    def _open_menu(self) -> None:
        self.menu.popup(self.more_button.mapToGlobal(QPoint(0, self.more_button.height())))
