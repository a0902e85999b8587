"""Opens the room sheet and writes what it asks for."""

from datetime import date
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.printing import Printing, SystemPrinting
from growlog.desktop.room_sheet.room_sheet_dialog import RoomSheetDialog
from growlog.desktop.settings import Settings
from growlog.desktop.windows.page_printer import PagePrinter
from growlog.desktop.windows.placing import open_beside
from growlog.services.room_sheet import Paper, RoomSheet, room_sheet_pictures, write_room_sheet
from growlog.words import say


class SheetWindows(QObject):
    """The room sheet on paper."""

    def __init__(
        self, desk: Desk, window: QWidget, settings: Settings, files: FileChoice, messages: Messages,
        printing: Printing | None = None,
    ) -> None:  # fmt: skip
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._files = files
        self._messages = messages
        self._written = Path()
        self.printer = PagePrinter(desk.runner, messages, printing or SystemPrinting(window), self)
        self.dialog: RoomSheetDialog | None = None

    def open(self) -> None:
        """Asks which week, on which paper."""
        self.dialog = RoomSheetDialog(self._desk.log.today(), self._settings.text("paper"), self._window)
        self.dialog.wanted.connect(self._save)
        self.dialog.print_wanted.connect(self._print)
        open_beside(self.dialog, self._window)

    def _save(self, first_day: date, paper: Paper) -> None:
        self._settings.set("paper", paper.value)
        suggested = say("room-sheet-{day}", day=first_day.isoformat()) + ".pdf"
        path = self._files.file_to_save(say("Save the room sheet"), suggested, [f"{say('PDF')} (*.pdf)"])
        if path is None or self.dialog is None:
            return
        self.dialog.accept()
        work = (write_room_sheet, self._desk.log, path, first_day, paper)
        self._desk.runner.run(*work, on_done=self._say_written, on_failed=self._say_failed)

    def _print(self, first_day: date, paper: Paper) -> None:
        self._settings.set("paper", paper.value)
        pages = partial(room_sheet_pictures, self._desk.log, first_day)
        self.printer.print_pages(say("Room sheet"), paper, pages)

    def _say_written(self, sheet: RoomSheet) -> None:
        self._written = sheet.path
        self._messages.inform(say("The room sheet is in {file}.", file=sheet.path.name), say("Show it"), self._show)

    def _say_failed(self, error: Exception) -> None:
        if not isinstance(error, OSError):
            raise error
        reason = error.strerror or str(error)
        self._messages.problem(say("The room sheet could not be written: {reason}.", reason=reason))

    def _show(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._written)))
