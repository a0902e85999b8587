"""Opens the routines and writes what is changed there; and writes what is due into a calendar file."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.routines import RoutinesDialog
from growlog.desktop.windows.placing import open_beside
from growlog.records.routine import Routine
from growlog.services.due import Offered, add_routines, change_routine, remove_routine, routines_of, starting_routines
from growlog.services.due.calendar import CALENDAR_DAYS, write_calendar
from growlog.services.open_logbook import LogbookProblem
from growlog.words import say, say_count


class RoutineWindows(QObject):
    """The routines' dialog follows what is written and what is undone."""

    def __init__(self, desk: Desk, window: QWidget, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._files = files
        self._messages = messages
        self.dialog: RoutinesDialog | None = None
        desk.due_changed.connect(self._show)

    def open(self) -> None:
        """Opens the routines beside the board."""
        if self.dialog is not None and isValid(self.dialog):
            self.dialog.close()
        crops = [(c.crop.id, c.crop.name) for c in self._desk.crops if c.crop.growing]
        self.dialog = RoutinesDialog(self._desk.log.today(), crops, self._window)
        self.dialog.added.connect(self._add)
        self.dialog.changed.connect(self._change)
        self.dialog.removed.connect(self._remove)
        self._show()
        open_beside(self.dialog, self._window)

    def show_offered(self) -> None:
        """Shows the set to choose from as if there were no routine."""
        if self.dialog is not None and isValid(self.dialog):
            self.dialog.show_routines([], self._offered())

    def write_calendar(self) -> None:
        """Asks for a file and writes what is due in the days to come into it."""
        filters = [say("Calendar files") + " (*.ics)"]
        target = self._files.file_to_save(say("Save what is due as a calendar file"), "growing-room.ics", filters)
        if target is None:
            return
        try:
            count = write_calendar(self._desk.log, target, CALENDAR_DAYS, replace=True)
        except LogbookProblem as problem:
            self._messages.problem(str(problem))
            return
        one, many = "{n} thing to do written to {file}.", "{n} things to do written to {file}."
        self._messages.inform(say_count(one, many, count, file=target.name))

    def _show(self, _due: object = None) -> None:
        if self.dialog is None or not isValid(self.dialog):
            return
        self.dialog.show_routines(routines_of(self._desk.log), self._offered())

    def _offered(self) -> list[Offered]:
        habits = [c.cultivar.habit for c in self._desk.crops if c.crop.growing]
        return starting_routines(habits, self._desk.log.today())

    def _add(self, routines: list[Routine]) -> None:
        if self.dialog is not None:
            self._desk.write(add_routines, routines, on_problems=self.dialog.show_problems)

    def _change(self, routine: Routine) -> None:
        if self.dialog is not None:
            self._desk.write(change_routine, routine, on_problems=self.dialog.show_problems)

    def _remove(self, routine: Routine) -> None:
        if self._desk.write(remove_routine, routine.id) is not None:
            self._messages.inform(say("The routine was removed."), say("Undo"), self._desk.undo)
