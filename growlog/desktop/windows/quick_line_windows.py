"""Joins the quick line to the desk: what it knows, what the logbook says to a line, and how it is written."""

from PySide6.QtCore import QObject
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.logbook_page import LogbookPage
from growlog.desktop.quick_line.help_dialog import QuickLineHelp
from growlog.desktop.quick_line.panel import QuickLinePanel
from growlog.desktop.windows.placing import open_beside
from growlog.records.entry import Owner, OwnerKind
from growlog.records.problems import Problem
from growlog.services.day_sheet import DaySheet
from growlog.services.quick_line import LineReading, check_line, context_of, words_of, write_line


class QuickLineWindows(QObject):
    """The quick line of the day sheet and its page of words."""

    def __init__(self, desk: Desk, page: LogbookPage) -> None:
        super().__init__(page)
        self._desk = desk
        self._page = page
        self.panel = QuickLinePanel(self._check, self._write)
        self.help: QuickLineHelp | None = None
        page.day_sheet.place_quick_line(self.panel)
        self.panel.help_wanted.connect(self.open_help)
        self.panel.left.connect(self._leave)
        desk.board_changed.connect(self._learn)
        desk.sheet_changed.connect(self._show_day)
        desk.undo_stack.written.connect(self._taken_back)
        self._show_day(desk.sheet)

    def start(self) -> None:
        """Puts the cursor into the line."""
        if self.panel.isVisible():
            self.panel.start()

    def open_help(self) -> None:
        """Shows the words of the quick line."""
        if self.help is None or not isValid(self.help):
            self.help = QuickLineHelp(self._page)
        open_beside(self.help, self._page)

    def _learn(self, _board: object) -> None:
        """Reads the mixes and words again after a change, not while a line is typed."""
        days = self._desk.days
        context = context_of(self._desk.log)
        self.panel.show_context(context, words_of(context, () if days is None else days.entries))

    def _show_day(self, sheet: DaySheet | None) -> None:
        self.panel.setVisible(sheet is not None and self._desk.log.writable)
        self.panel.ask_again()

    def _check(self, reading: LineReading) -> list[Problem]:
        sheet = self._desk.sheet
        return [] if sheet is None else check_line(self._desk.log, reading, _owner(sheet), sheet.day)

    def _write(self, reading: LineReading) -> bool:
        sheet = self._desk.sheet
        return sheet is not None and self._desk.write(write_line, reading, _owner(sheet), sheet.day) is not None

    def _taken_back(self, _change: object) -> None:
        self.panel.taken_back()

    def _leave(self) -> None:
        self._page.board.setFocus()


def _owner(sheet: DaySheet) -> Owner:
    return Owner(OwnerKind.CROP, sheet.crop.id)
