"""Opens the tagged flowers of the chosen crop and writes what became of them."""

from datetime import date

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.desk import Desk
from growlog.desktop.flower_tags.flower_tags_dialog import FlowerTagsDialog
from growlog.desktop.settings import Settings
from growlog.desktop.windows.entry_windows import EntryWindows
from growlog.desktop.windows.placing import open_beside
from growlog.services.flower_tags import TagOutcome, tag_book, write_outcomes


class TagWindows(QObject):
    """Tagged flowers."""

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, entries: EntryWindows) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._entries = entries
        self._crop_id = ""
        self.dialog: FlowerTagsDialog | None = None

    def open(self) -> None:
        """Opens them as of the chosen day."""
        sheet = self._desk.sheet
        if sheet is None:
            return
        self._crop_id = sheet.crop.id
        book = tag_book(self._desk.log, sheet.crop.id, sheet.day)
        self.dialog = FlowerTagsDialog(book, sheet.day, self._settings.text("units"), self._window)
        self.dialog.write_button.setEnabled(self._desk.log.writable)
        self.dialog.confirmed.connect(self._write)
        self.dialog.pollination_wanted.connect(self._pollinate)
        open_beside(self.dialog, self._window)

    def _write(self, day: date, outcomes: list[TagOutcome]) -> None:
        if self.dialog is None:
            return
        shown = self.dialog.show_problems
        if self._desk.write(write_outcomes, self._crop_id, day, outcomes, on_problems=shown) is not None:
            self.dialog.accept()

    def _pollinate(self) -> None:
        if self.dialog is not None:
            self.dialog.accept()
        self._entries.add("pollination")
