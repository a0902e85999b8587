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
    ActionRow("light_plan", LOGBOOK, mark("Light programme…")),
    ActionRow("logger", LOGBOOK, mark("Logger readings in…")),
    ActionRow("room_sheet", LOGBOOK, mark("Room sheet…"), "Ctrl+P"),
    ActionRow("shelf", LOGBOOK, mark("Shelf…"), "Ctrl+B"),
    ActionRow("waters", LOGBOOK, mark("Source waters…")),
    ActionRow("routines", LOGBOOK, mark("Routines…"), "Ctrl+U", writes=True),
    ActionRow("calendar_file", LOGBOOK, mark("Calendar file…")),
    ActionRow("old_notes", LOGBOOK, mark("Old notes in…"), "Ctrl+Shift+I", writes=True),
    ActionRow("export", LOGBOOK, mark("Export…")),
    ActionRow("back_up", LOGBOOK, mark("Keep a copy now"), "Ctrl+S", writes=True),
    ActionRow("preferences", LOGBOOK, mark("Preferences…"), "Ctrl+,"),
    ActionRow("quit", LOGBOOK, mark("Quit"), "Ctrl+Q"),
    ActionRow("new_crop", CROP, mark("New crop…"), "Ctrl+N", writes=True),
    ActionRow("change_crop", CROP, mark("Correct the crop…"), "Ctrl+E", writes=True, needs_crop=True),
    ActionRow("clear_crop", CROP, mark("Clear the crop…"), "", writes=True, needs_crop=True),
    ActionRow("reopen_crop", CROP, mark("Reopen the crop"), "", writes=True, needs_crop=True),
    ActionRow("feeding_round", CROP, mark("Feeding round…"), "Ctrl+Shift+F", writes=True),
    ActionRow("mixer", CROP, mark("Nutrient mixer…"), "Ctrl+M"),
    ActionRow("feed_plan", CROP, mark("Feed plan…"), needs_crop=True),
    ActionRow("tank_care", CROP, mark("Tank care…"), "Ctrl+Shift+T", writes=True),
    ActionRow("climate", CROP, mark("Climate…"), needs_crop=True),
    ActionRow("money", CROP, mark("What it cost…"), "Ctrl+Shift+M"),
    ActionRow("figures", CROP, mark("All figures…"), "Ctrl+Shift+A", needs_crop=True),
    ActionRow("yield_view", CROP, mark("What the picks say…"), "Ctrl+Shift+Y", needs_crop=True),
    ActionRow("keep_or_clear", CROP, mark("Keep or clear…"), "Ctrl+Shift+K", needs_crop=True),
    ActionRow("side_by_side", CROP, mark("Side by side…"), "Ctrl+Shift+B", needs_crop=True),
    ActionRow("review", CROP, mark("Crop review…"), "Ctrl+Shift+R", needs_crop=True),
    ActionRow("decide", CROP, mark("Decide…"), writes=True, needs_crop=True),
    ActionRow("what_if", CROP, mark("What if…"), needs_crop=True),
    ActionRow("share_review", CROP, mark("Share the review…"), needs_crop=True),
    ActionRow("time_lapse", CROP, mark("Time-lapse…"), needs_crop=True),
    ActionRow("print_review", CROP, mark("Print the review…"), "Ctrl+Shift+P", needs_crop=True),
    ActionRow("flower_tags", CROP, mark("Tagged flowers…"), "Ctrl+G", needs_crop=True),
    ActionRow("add_photos", CROP, mark("Add photos…"), "Ctrl+I", writes=True),
    ActionRow("paste_photos", CROP, mark("Paste photos"), "Ctrl+V", writes=True),
    ActionRow("session_tally", DAY, mark("Session tally…"), "Ctrl+L", writes=True),
    ActionRow("quick_line", DAY, mark("Quick line"), "Ctrl+K", writes=True, needs_crop=True),
    ActionRow("quick_line_help", DAY, mark("Words of the quick line…"), needs_crop=True),
    ActionRow("previous_day", DAY, mark("Day before"), "Alt+Left", needs_crop=True),
    ActionRow("next_day", DAY, mark("Day after"), "Alt+Right", needs_crop=True),
    ActionRow("compare", DAY, mark("Compare with another day…"), "Ctrl+D", needs_crop=True),
    ActionRow("open_photo", DAY, mark("Photo in the whole window"), "Ctrl+Return", needs_crop=True),
    ActionRow("due_list", VIEW, mark("What is due today"), "F9"),
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
