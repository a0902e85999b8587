"""The routines: a list, a form, and an offered set where there is none yet."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, DialogFrame
from growlog.desktop.look.widgets.emptied import empty_layout
from growlog.desktop.routines.offered_set import OfferedSet
from growlog.desktop.routines.routine_form import RoutineForm
from growlog.desktop.routines.routine_row import RoutineRow
from growlog.records.problems import Problem
from growlog.records.routine import Routine
from growlog.services.due import Offered, new_routine
from growlog.words import say


class RoutinesDialog(DialogFrame):
    """Announces what is to be written; each goes in at once, and `show_routines` is called with what there is then."""

    added = Signal(object)  # list[Routine]
    changed = Signal(object)  # Routine
    removed = Signal(object)  # Routine

    def __init__(self, today: date, crops: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        """crops: id and name of those that grow."""
        super().__init__(say("Routines"), say("What is due today comes from these."), parent, 720)
        self.setObjectName("routinesDialog")
        self._today = today
        self._crops = list(crops)
        self.rows: list[RoutineRow] = []
        self.offered: OfferedSet | None = None
        self.form: RoutineForm | None = None
        self._list = QVBoxLayout()
        self._list.setSpacing(8)
        self._list_place = QWidget()
        self._list_place.setLayout(self._list)
        self._list.setContentsMargins(0, 0, 0, 0)
        self._below = QVBoxLayout()
        self.add_button_ = Button(say("A routine of your own"), "", "plus", "addRoutine")
        self.body.addWidget(self._list_place)
        self.body.addLayout(self._below)
        self.body.addWidget(self.add_button_, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addStretch(1)
        self.set_note(
            say("An entry or photo of the day does its routine by itself. Undo takes back what is changed here.")
        )
        self.close_button = self.add_button(say("Close"), name="close")
        self.add_button_.clicked.connect(self.new)
        self.close_button.clicked.connect(self.close)

    def show_routines(self, routines: Sequence[Routine], offered: Sequence[Offered]) -> None:
        """All routines; where there is none the set to choose from. A form that was open is done with."""
        self._put_form_away()
        empty_layout(self._list)
        names = dict(self._crops)
        self.rows = [RoutineRow(routine, names) for routine in routines]
        for row in self.rows:
            row.switched.connect(self._switch)
            row.change_wanted.connect(self.change)
            row.remove_wanted.connect(self.removed)
            self._list.addWidget(row)
        self.offered = None
        if not routines:
            self.offered = OfferedSet(offered)
            self.offered.chosen.connect(self.added)
            self._list.addWidget(self.offered)

    def new(self) -> None:
        """Opens an empty form."""
        self._open(new_routine(self._today), is_new=True)

    def change(self, routine: Routine) -> None:
        """Opens the form of a routine."""
        self._open(routine, is_new=False)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What was refused, beside its field."""
        if self.form is not None:
            self.form.show_problems(problems)

    def _open(self, routine: Routine, is_new: bool) -> None:
        self._put_form_away()
        self.form = RoutineForm(routine, self._crops_for(routine), self._today, is_new)
        self.form.confirmed.connect(self._add if is_new else self.changed)
        self.form.left.connect(self._put_form_away)
        self._below.addWidget(self.form)
        self.form.show()
        self._list_place.hide()  # the form stands in its place, so that it is seen however long the list is
        self.add_button_.hide()
        self.form.begin()

    def _crops_for(self, routine: Routine) -> list[tuple[str, str]]:
        known = {crop_id for crop_id, _ in self._crops}
        gone = routine.crop_id is not None and routine.crop_id not in known
        return self._crops + ([(routine.crop_id or "", say("a crop that is gone"))] if gone else [])

    def _add(self, routine: Routine) -> None:
        self.added.emit([routine])

    def _switch(self, routine: Routine, is_on: bool) -> None:
        self.changed.emit(replace(routine, is_on=is_on))

    def _put_form_away(self) -> None:
        self.form = None
        empty_layout(self._below)
        self._list_place.show()
        self.add_button_.show()
