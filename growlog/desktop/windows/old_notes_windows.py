"""Opens the dialog that carries old notes in, and puts what it wrote on the undo stack."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.old_notes.old_notes_dialog import OldNotesDialog
from growlog.desktop.old_notes.work import OldNotesServices
from growlog.desktop.windows.placing import open_beside
from growlog.records.change import Change
from growlog.services.old_notes.carrying import carry_in, save_refused
from growlog.services.old_notes.column_use import proposed_map
from growlog.services.old_notes.old_table import read_old_notes
from growlog.services.old_notes.planning import plan_entries
from growlog.words import say


class OldNotesWindows(QObject):
    """One dialog at a time."""

    def __init__(self, desk: Desk, window: QWidget, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._files = files
        self._messages = messages
        self.dialog: OldNotesDialog | None = None

    def open(self, path: Path | None = None) -> None:
        """Opens the dialog, with a file where one is named."""
        log = self._desk.log
        if self.dialog is None or not self.dialog.isVisible():
            services = OldNotesServices(
                read_old_notes,
                partial(proposed_map, log),
                partial(plan_entries, log),
                partial(carry_in, log),
                save_refused,
            )
            crops = [summary.crop for summary in self._desk.crops]
            chosen = self._desk.selection.crop_id or None
            self.dialog = OldNotesDialog(self._desk.runner, services, crops, chosen, self._files, self._window)
            self.dialog.carried_in.connect(self._carried_in)
        open_beside(self.dialog, self._window)
        if path is not None:
            self.dialog.read(path)

    def put_away(self) -> None:
        """Before the logbook is closed."""
        if self.dialog is not None:
            self.dialog.stop_and_wait()

    def _carried_in(self, change: Change) -> None:
        self._desk.take(change)
        self._messages.inform(say("Carried in: {what}.", what=change.title), say("Undo"), self._desk.undo)
