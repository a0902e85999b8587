"""The actions of the window as one table; menus, keys and tool tips are made from it."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenuBar, QWidget

from growlog.words import mark, say


@dataclass(frozen=True)
class ActionRow:
    """One action: its name in code, the menu it stands in, its words, its key, and whether it writes."""

    name: str
    menu: str
    text: str
    key: str = ""
    writes: bool = False
    needs_crop: bool = False


LOGBOOK, CROP, DAY, VIEW = mark("Logbook"), mark("Crop"), mark("Day"), mark("View")

TABLE = (
    ActionRow("new_logbook", LOGBOOK, mark("New logbook…"), "Ctrl+Shift+N"),
    ActionRow("open_logbook", LOGBOOK, mark("Open a logbook…"), "Ctrl+O"),
    ActionRow("undo", LOGBOOK, mark("Undo"), "Ctrl+Z", writes=True),
    ActionRow("redo", LOGBOOK, mark("Redo"), "Ctrl+Shift+Z", writes=True),
    ActionRow("room", LOGBOOK, mark("Room…"), "Ctrl+R"),
    ActionRow("back_up", LOGBOOK, mark("Keep a copy now"), "Ctrl+S", writes=True),
    ActionRow("preferences", LOGBOOK, mark("Preferences…"), "Ctrl+,"),
    ActionRow("quit", LOGBOOK, mark("Quit"), "Ctrl+Q"),
    ActionRow("new_crop", CROP, mark("New crop…"), "Ctrl+N", writes=True),
    ActionRow("change_crop", CROP, mark("Correct the crop…"), "Ctrl+E", writes=True, needs_crop=True),
    ActionRow("clear_crop", CROP, mark("Clear the crop…"), "", writes=True, needs_crop=True),
    ActionRow("reopen_crop", CROP, mark("Reopen the crop"), "", writes=True, needs_crop=True),
    ActionRow("add_photos", CROP, mark("Add photos…"), "Ctrl+I", writes=True),
    ActionRow("paste_photos", CROP, mark("Paste photos"), "Ctrl+V", writes=True),
    ActionRow("previous_day", DAY, mark("Day before"), "Alt+Left", needs_crop=True),
    ActionRow("next_day", DAY, mark("Day after"), "Alt+Right", needs_crop=True),
    ActionRow("compare", DAY, mark("Compare with another day…"), "Ctrl+D", needs_crop=True),
    ActionRow("open_photo", DAY, mark("Photo in the whole window"), "Ctrl+Return", needs_crop=True),
    ActionRow("axis_age", VIEW, mark("By plant age"), "Ctrl+1", needs_crop=True),
    ActionRow("axis_calendar", VIEW, mark("By calendar"), "Ctrl+2", needs_crop=True),
    ActionRow("theme", VIEW, mark("Light or dark"), "Ctrl+T"),
)


class Actions:
    """The QActions of the table by name, each connected to its handler."""

    def __init__(self, window: QWidget, handlers: dict[str, Callable[[], None]]) -> None:
        self.by_name: dict[str, QAction] = {}
        for row in TABLE:
            action = QAction(say(row.text), window)
            action.setObjectName(row.name)
            if row.key:
                action.setShortcut(QKeySequence(row.key))
            action.triggered.connect(handlers[row.name])
            window.addAction(action)
            self.by_name[row.name] = action

    def fill(self, bar: QMenuBar) -> None:
        """Puts the actions into their menus."""
        for title in (LOGBOOK, CROP, DAY, VIEW):
            menu = bar.addMenu(say(title))
            for row in TABLE:
                if row.menu == title:
                    menu.addAction(self.by_name[row.name])

    def allow(self, *, is_open: bool, writable: bool, has_crop: bool) -> None:
        """Switches off what cannot be done now."""
        always = {"new_logbook", "open_logbook", "preferences", "quit", "theme"}
        for row in TABLE:
            fits = is_open and (writable or not row.writes) and (has_crop or not row.needs_crop)
            self.by_name[row.name].setEnabled(row.name in always or fits)
