"""The one object that the panels share: which crop, which civil day. Panels listen to it and tell it choices."""

from datetime import date

from PySide6.QtCore import QObject, Signal


class Selection(QObject):
    """The chosen crop and day; each signal comes once per change."""

    crop_changed = Signal(str)
    day_changed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._crop_id = ""
        self._day: date | None = None

    @property
    def crop_id(self) -> str:
        """The chosen crop, "" if none."""
        return self._crop_id

    @property
    def day(self) -> date | None:
        """The chosen civil day."""
        return self._day

    def choose_crop(self, crop_id: str) -> None:
        """Another crop; who chooses it chooses the day next."""
        if crop_id != self._crop_id:
            self._crop_id = crop_id
            self._day = None
            self.crop_changed.emit(crop_id)

    def choose_day(self, day: date) -> None:
        """Another day of the chosen crop."""
        if day != self._day:
            self._day = day
            self.day_changed.emit(day)
