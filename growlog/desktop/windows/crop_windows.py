"""Opens the dialogs of crops, and writes what they confirm."""

from datetime import date
from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.crop_form.clear_dialog import ClearDialog
from growlog.desktop.crop_form.crop_dialog import CropDialog
from growlog.desktop.desk import Desk
from growlog.desktop.messages import Messages
from growlog.desktop.windows.placing import open_beside
from growlog.records.crop import Crop, Placement
from growlog.records.cultivar import Cultivar
from growlog.services.crops import add_crop, change_crop, clear_crop, crop_and_cultivar, remove_crop, reopen_crop
from growlog.services.decisions import decisions_for_cultivar
from growlog.services.money.prices import prices_of
from growlog.services.rooms import place_crop, placements_of, rooms_of
from growlog.words import say


class CropWindows(QObject):
    """New, corrected, cleared and reopened crops."""

    def __init__(self, desk: Desk, window: QWidget, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._messages = messages
        self.dialog: Any = None

    def new(self) -> None:
        """Opens an empty crop form."""
        log = self._desk.log
        currency = prices_of(log).currency
        self._show(CropDialog(log.today(), rooms_of(log), parent=self._window, currency=currency))
        self.dialog.confirmed.connect(self._write_new)
        self.dialog.cultivar_typed.connect(self._show_past)

    def correct(self, crop_id: str = "") -> None:
        """Opens the form of a crop, the chosen one if none is named."""
        log, chosen = self._desk.log, crop_id or self._desk.selection.crop_id
        if not chosen:
            return
        placements = placements_of(log, chosen)
        known = crop_and_cultivar(log, chosen)
        last = placements[-1] if placements else None
        currency = prices_of(log).currency
        self._show(CropDialog(log.today(), rooms_of(log), known, last, self._window, currency))
        self.dialog.confirmed.connect(self._write_changed)

    def clear(self, crop_id: str = "") -> None:
        """Asks for the day on which a crop is cleared."""
        chosen = crop_id or self._desk.selection.crop_id
        summary = next((c for c in self._desk.crops if c.crop.id == chosen), None)
        if summary is not None and summary.crop.growing:
            self._show(ClearDialog(summary.crop, self._desk.log.today(), self._window))
            self.dialog.cleared.connect(self._write_cleared)

    def reopen(self, crop_id: str = "") -> None:
        """Makes a cleared crop a growing one again."""
        self._desk.write(reopen_crop, crop_id or self._desk.selection.crop_id)

    def remove(self, crop_id: str) -> None:
        """Puts a crop into the bin; one click brings it back."""
        if self._desk.write(remove_crop, crop_id) is not None:
            self._messages.inform(
                say("The crop was removed, with its entries and photos."), say("Undo"), self._desk.undo
            )

    def _show_past(self, species: str, name: str) -> None:
        if self.dialog is not None:
            self.dialog.past.show_decisions(decisions_for_cultivar(self._desk.log, species, name))

    def _show(self, dialog: Any) -> None:
        if self.dialog is not None:
            self.dialog.close()
        self.dialog = dialog
        open_beside(dialog, self._window)

    def _close(self) -> None:
        if self.dialog is not None:
            self.dialog.close()
            self.dialog = None

    def _write_new(self, crop: Crop, cultivar: Cultivar, placement: Placement | None) -> None:
        if self._desk.write(add_crop, crop, cultivar, placement, on_problems=self.dialog.show_problems) is not None:
            self._close()
            self._desk.selection.choose_crop(crop.id)

    def _write_changed(self, crop: Crop, cultivar: Cultivar, placement: Placement | None) -> None:
        if self._desk.write(change_crop, crop, cultivar, on_problems=self.dialog.show_problems) is None:
            return
        if placement is not None and placement not in placements_of(self._desk.log, crop.id):
            self._desk.write(
                place_crop,
                crop.id,
                placement.room_id,
                placement.from_day,
                floor_share=placement.floor_share,
                tank_id=placement.tank_id,
            )
        self._close()

    def _write_cleared(self, crop_id: str, day: date) -> None:
        if self._desk.write(clear_crop, crop_id, day) is not None:
            self._close()
