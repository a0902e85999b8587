"""Opens the climate of a crop and reads what it asks for off the window's thread."""

from collections.abc import Callable

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.background import Lane, Task
from growlog.desktop.climate.climate_dialog import ClimateDialog
from growlog.desktop.desk import Desk
from growlog.desktop.settings import Settings
from growlog.desktop.windows.placing import open_beside
from growlog.services.climate.book import ClimateBook, DegreeDayWay, climate_book
from growlog.services.open_logbook import LogbookProblem

HUMID_ABOVE = "humid_above_percent"


class ClimateWindows(QObject):
    """One dialog at a time; it follows what is written and what is undone."""

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, open_logger: Callable[[], None]) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._open_logger = open_logger
        self._reading: Task | None = None
        self.dialog: ClimateDialog | None = None
        desk.written.connect(self._read_again)

    def open(self) -> None:
        """Opens the climate of the chosen crop."""
        if self.dialog is not None and isValid(self.dialog):
            self.dialog.close()
        crops = [(summary.crop.id, summary.crop.name) for summary in self._desk.crops]
        chosen = self._desk.selection.crop_id or ""
        humid = self._settings.number(HUMID_ABOVE)
        self.dialog = ClimateDialog(crops, chosen, humid, self._settings.text("units"), self._window)
        self.dialog.wanted.connect(self._read)
        self.dialog.logger_wanted.connect(self._open_logger)
        open_beside(self.dialog, self._window)
        self.dialog.ask()

    @property
    def _is_open(self) -> bool:
        return self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible()

    def _read_again(self, _change: object) -> None:
        if self._is_open and self.dialog is not None:
            self.dialog.ask()

    def _read(self, crop_id: str, humid_above_percent: float, way: DegreeDayWay | None) -> None:
        self._settings.set(HUMID_ABOVE, int(humid_above_percent))
        if self._reading is not None and isValid(self._reading):
            self._reading.cancel()
        work = (climate_book, self._desk.log, crop_id, humid_above_percent, way)
        self._reading = self._desk.runner.run(*work, on_done=self._show, on_failed=self._failed, lane=Lane.DATABASE)

    def _show(self, book: ClimateBook) -> None:
        if self._is_open and self.dialog is not None:
            self.dialog.show_book(book)

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, LogbookProblem):
            raise error
        self._desk.refused.emit(str(error))
