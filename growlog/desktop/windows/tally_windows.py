"""Opens the session tally beside the board, keeps it as one goes, and writes it."""

from dataclasses import replace
from datetime import date, datetime

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.messages import Messages
from growlog.desktop.settings import Settings
from growlog.desktop.tally.session_tally import SessionTally
from growlog.desktop.windows.placing import open_beside
from growlog.services.open_logbook import LogbookProblem
from growlog.services.tally import (
    FoundDraft,
    Tally,
    TallyCrop,
    drop_draft,
    find_draft,
    new_tally,
    save_draft,
    tally_crops,
    write_tally,
)
from growlog.words import say


class TallyWindows(QObject):
    """One tally at a time; an unfinished one is offered again."""

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._messages = messages
        self.dialog: SessionTally | None = None
        desk.written.connect(self._logbook_changed)

    def open(self) -> None:
        """Opens the tally, or comes back to the open one."""
        if not self._desk.log.writable:
            return
        if self._is_open and self.dialog is not None:
            self.dialog.raise_()
            self.dialog.activateWindow()
            return
        self._open(find_draft(self._desk.log), self._new())

    def remind(self) -> None:
        """Says in the window that a tally was not finished, or that it could not be read."""
        found = find_draft(self._desk.log)
        if found.tally is not None:
            self._messages.inform(found.sentence, say("Go on with it"), self.open)
        elif found.sentence:
            self._messages.inform(found.sentence)

    def put_away(self) -> bool:
        """Closes the tally before the logbook is closed; False, once, where what stands in it cannot be kept."""
        if self._is_open and self.dialog is not None:
            self.dialog.close()
        if self._is_open:
            return False
        self.dialog = None
        return True

    @property
    def _is_open(self) -> bool:
        return self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible()

    def _open(self, found: FoundDraft, tally: Tally) -> None:
        if found.tally is None and found.sentence:
            self._messages.inform(found.sentence)
        self.dialog = SessionTally(
            tally,
            self._crops,
            self._now,
            self._keep,
            today=self._desk.log.today(),
            system=self._settings.text("units"),
            offered=found.tally,
            offer=found.sentence,
            parent=self._window,
        )
        self.dialog.write_wanted.connect(self._write)
        self.dialog.written_off.connect(self._let_go)
        open_beside(self.dialog, self._window)

    def _new(self) -> Tally:
        """An empty tally that begins at the crop on the board."""
        return replace(new_tally(self._desk.log, self._now()), chosen=self._desk.selection.crop_id)

    def _now(self) -> datetime:
        return self._desk.log.clock.now().astimezone()

    def _crops(self, day: date, also: list[str]) -> list[TallyCrop]:
        return tally_crops(self._desk.log, day, also)

    def _keep(self, tally: Tally) -> str:
        try:
            save_draft(self._desk.log, tally)
        except LogbookProblem as problem:
            return str(problem)
        return ""

    def _let_go(self) -> None:
        try:
            drop_draft(self._desk.log)
        except LogbookProblem as problem:
            self._messages.problem(str(problem))

    def _write(self, tally: Tally) -> None:
        if self.dialog is None:
            return
        change = self._desk.write(write_tally, tally, on_problems=self.dialog.show_problems)
        if change is None:
            self.dialog.refuse(say("Nothing was written. What you tallied still stands here."))
            return
        self.dialog.finish()
        self.dialog = None
        self._let_go()
        self._show_day(tally)
        self._messages.inform(say("{what} was written.", what=change.title), say("Undo"), self._desk.undo)

    def _show_day(self, tally: Tally) -> None:
        """The day on the board, at one of the crops that were tallied."""
        crops = [c.crop_id for c in tally.crops]
        if self._desk.selection.crop_id not in crops:
            self._desk.selection.choose_crop(crops[0])
        self._desk.selection.choose_day(tally.day)

    def _logbook_changed(self, _change: object) -> None:
        if self._is_open and self.dialog is not None:
            self.dialog.model.refresh()
