"""Opens the feeding round and writes what it confirms."""

from datetime import date
from functools import partial

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.desk import Desk
from growlog.desktop.feeding_round.feeding_round_dialog import FeedingRoundDialog
from growlog.desktop.settings import Settings
from growlog.desktop.windows.placing import open_beside
from growlog.records.entry import Entry
from growlog.services.entries import check_entry
from growlog.services.feeding_round import mix_for_round, round_rows, write_round
from growlog.services.mixes import mixes_of
from growlog.words import say


class FeedingWindows(QObject):
    """One feed for several crops."""

    def __init__(self, desk: Desk, window: QWidget, settings: Settings) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self.dialog: FeedingRoundDialog | None = None

    def open(self) -> None:
        """Opens a round for today; the day can be changed in it."""
        if not self._desk.log.writable:
            return
        log, day = self._desk.log, self._desk.log.today()
        rows = round_rows(log, day)
        check = partial(check_entry, log)
        self.dialog = FeedingRoundDialog(
            day, rows, mixes_of(log), mix_for_round(log, rows), check, self._settings.text("units"), self._window
        )
        self.dialog.confirmed.connect(self._write)
        self.dialog.day_chosen.connect(self._show_day)
        open_beside(self.dialog, self._window)

    def _show_day(self, day: date) -> None:
        if self.dialog is not None:
            self.dialog.show_rows(round_rows(self._desk.log, day))

    def _write(self, entries: list[Entry]) -> None:
        if self.dialog is None:
            return
        if self._desk.write(write_round, entries) is not None:
            self.dialog.accept()
        else:
            self.dialog.refuse(say("It was not written. What you typed is still here."))
