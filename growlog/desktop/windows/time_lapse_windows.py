"""Opens the time-lapse of a crop and has it written in the background."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.background import Lane, Task
from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.review.time_lapse_dialog import TimeLapseDialog
from growlog.desktop.review.wording import file_stem
from growlog.desktop.windows.file_ending import write_with_ending
from growlog.desktop.windows.placing import open_beside
from growlog.desktop.windows.shared_work import SharedWork
from growlog.services.open_logbook import LogbookProblem
from growlog.services.time_lapse import TimeLapseChoice, TimeLapsePlan, time_lapse_plan, write_time_lapse
from growlog.words import say


class TimeLapseWindows(QObject):
    """One time-lapse at a time."""

    def __init__(self, desk: Desk, window: QWidget, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk, self._window, self._files, self._messages = desk, window, files, messages
        self._crop_id = ""
        self._written = Path()
        self._planning: Task | None = None
        self.work = SharedWork(desk.runner, self)
        self.dialog: TimeLapseDialog | None = None

    def open(self, crop_id: str = "") -> None:
        """Asks what the time-lapse of a crop, the chosen one if none is named, shows."""
        self._crop_id = crop_id or self._desk.selection.crop_id or ""
        summary = next((c for c in self._desk.crops if c.crop.id == self._crop_id), None)
        if summary is None:
            return
        if self._is_open and self.dialog is not None:
            self.dialog.close()
        self.dialog = TimeLapseDialog(summary.crop.name, max(summary.age_days, 0), self._window)
        self.dialog.asked.connect(self._plan)
        self.dialog.wanted.connect(self._save)
        self.dialog.stopped.connect(self.work.stop)
        self.dialog.finished.connect(self.work.stop)
        open_beside(self.dialog, self._window)
        self.dialog.ask()

    @property
    def _is_open(self) -> bool:
        return self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible()

    def _plan(self, choice: TimeLapseChoice) -> None:
        if self._planning is not None and isValid(self._planning):
            self._planning.cancel()
        work = (_planned, self._desk, self._crop_id, choice)
        self._planning = self._desk.runner.run(*work, on_done=self._show_plan, lane=Lane.DATABASE)

    def _show_plan(self, plan: TimeLapsePlan | str) -> None:
        if self._is_open and self.dialog is not None:
            if isinstance(plan, str):
                self.dialog.say_problem(plan)
            else:
                self.dialog.show_plan(plan)

    def _save(self, choice: TimeLapseChoice) -> None:
        name = next((c.crop.name for c in self._desk.crops if c.crop.id == self._crop_id), "")
        path = self._files.file_to_save(say("Save the film"), f"{file_stem(name)}.mp4", [f"{say('Film')} (*.mp4)"])
        if path is not None:
            write_with_ending(path, ".mp4", self._messages, partial(self._write, choice))

    def _write(self, choice: TimeLapseChoice, path: Path) -> None:
        if self.dialog is not None:
            self._written = path
            work = (write_time_lapse, self._desk.log, self._crop_id, path, choice)
            self.work.run(self.dialog, *work, on_done=self._say_written)

    def _say_written(self, _plan: TimeLapsePlan) -> None:
        if self.dialog is not None:
            self.dialog.accept()
        said = say("The film is in {file}.", file=self._written.name)
        self._messages.inform(said, say("Show it"), self._show)

    def _show(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._written)))


def _planned(desk: Desk, crop_id: str, choice: TimeLapseChoice) -> TimeLapsePlan | str:
    """The plan, or the sentence why there is none: a crop without photos is no failure of the program."""
    try:
        return time_lapse_plan(desk.log, crop_id, choice)
    except LogbookProblem as problem:
        return str(problem)
