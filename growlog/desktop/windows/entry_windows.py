"""Opens the form of an entry and writes what it confirms."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.entry_form.dialog import EntryDialog
from growlog.desktop.entry_form.form import EntryForm
from growlog.desktop.messages import Messages
from growlog.desktop.settings import Settings
from growlog.desktop.windows.placing import open_beside
from growlog.records.change import Change
from growlog.records.entry import Entry
from growlog.services.crops import crop_and_cultivar
from growlog.services.entries import add_entry, check_entry, correct_entry, owners_for, remove_entry
from growlog.services.repeats import last_like, mixes_by_use, starting_entry
from growlog.words import say

# Whose an entry of a kind is at first where that stands by the crop; else the crop's.
_USUAL_OWNER = {"light": "room", "calibration": "room", "meter": "room", "tank-care": "tank"}


class EntryWindows(QObject):
    """Add, correct and remove entries of the chosen day."""

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._messages = messages
        self.dialog: EntryDialog | None = None

    def add(self, kind: str) -> None:
        """Opens an empty form of a kind on the chosen day."""
        sheet = self._desk.sheet
        if sheet is None:
            return
        owners = owners_for(self._desk.log, sheet.crop.id, sheet.day)
        usual = _USUAL_OWNER.get(kind, "crop")
        own = next((o for o in owners if o.owner.kind.value == usual), owners[0])
        entry = starting_entry(self._desk.log, own.owner, sheet.day, kind)
        self._open(entry, self._write_new, last_like(self._desk.log, entry))

    def open_draft(self, entry: Entry) -> None:
        """Opens the form of an entry that was drafted elsewhere, for the chosen crop and day."""
        self._open(entry, self._write_new)

    def correct(self, entry_id: str) -> None:
        """Opens the form of an entry of the chosen day."""
        entry = self._find(entry_id)
        if entry is not None:
            self._open(entry, self._write_corrected)

    def remove(self, entry_id: str) -> None:
        """Puts an entry into the bin; one click brings it back."""
        if self._desk.write(remove_entry, entry_id) is not None:
            self._messages.inform(say("The entry was removed."), say("Undo"), self._desk.undo)

    def _find(self, entry_id: str) -> Entry | None:
        sheet = self._desk.sheet
        found = [] if sheet is None else [e.entry for e in sheet.entries if e.entry.id == entry_id]
        return found[0] if found else None

    def _open(self, entry: Entry, on_confirmed: object, earlier: Entry | None = None) -> None:
        sheet = self._desk.sheet
        if sheet is None:
            return
        if self.dialog is not None and isValid(self.dialog):
            self.dialog.close()
        log = self._desk.log
        owners = owners_for(log, sheet.crop.id, sheet.day)
        cultivar = crop_and_cultivar(log, sheet.crop.id)[1]
        form = EntryForm(
            entry,
            owners,
            mixes_by_use(log, entry.owner, entry.day),
            partial(check_entry, log),
            units=self._settings.text("units"),
            species=cultivar.species,
            habit=cultivar.habit,
        )
        subtitle = say("{crop}, day {age}", crop=sheet.crop.name, age=sheet.age)
        self.dialog = EntryDialog(form, subtitle, self._window, earlier)
        form.confirmed.connect(on_confirmed)
        open_beside(self.dialog, self._window)

    def _write_new(self, entry: Entry) -> None:
        self._write(add_entry, entry)

    def _write_corrected(self, entry: Entry) -> None:
        self._write(correct_entry, entry)

    def _write(self, service: Callable[..., Change], entry: Entry) -> None:
        went_in = self._desk.write(service, entry) is not None
        if self.dialog is None or not isValid(self.dialog):
            return
        if not went_in:
            self.dialog.refuse(say("It was not written. What you typed is still here."))
            return
        self.dialog.finish()
        self.dialog = None
        self._desk.selection.choose_day(entry.day)
