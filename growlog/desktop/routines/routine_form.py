"""The form of a routine; only the fields of its rule are shown."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeyEvent, Qt
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    DayField,
    Field,
    FormGrid,
    TextField,
    TextLabel,
    check_all,
    limited_number_field,
)
from growlog.desktop.routines.wording import done_by_words
from growlog.records.problems import Problem
from growlog.records.routine import Routine, RoutineFor, RoutineWhen
from growlog.services.due import ANSWERS
from growlog.words import say

_RHYTHM = (RoutineWhen.EVERY_DAYS, RoutineWhen.WHILE_FEMALES_OPEN, RoutineWhen.WHILE_FLOWERING)


class RoutineForm(Card):
    """Announces the routine as it stands once nothing is wrong with it. Escape leaves it."""

    confirmed = Signal(object)
    left = Signal()

    def __init__(self, routine: Routine, crops: Sequence[tuple[str, str]], today: date, is_new: bool) -> None:
        """crops: id and name of those it may be for."""
        super().__init__()
        self.routine = routine
        rules = [(when.value, say(when.label)) for when in RoutineWhen]
        self.name = TextField(say("What is to be done"), routine.name, required=True, name="name")
        self.whom = ChoiceField(say("For"), _whom(crops), _whom_key(routine), name="who")
        self.when = ChoiceField(say("It comes"), rules, routine.when.value, name="when")
        self.every = limited_number_field("every_days")
        self.age = limited_number_field("at_age")
        self.from_day = DayField(say("From"), routine.from_day, near=today, name="from_day")
        self.until_day = DayField(say("Until"), routine.until_day, near=today, name="until_day")
        answers = [(kind, done_by_words(kind)) for kind in ANSWERS]
        self.by = ChoiceField(say("Done by"), answers, routine.entry_kind, name="entry_kind")
        self.morning = QCheckBox(say("in the morning"))
        self.note = TextField(say("Note"), routine.note, name="note")
        self.rest_label = TextLabel("", "message", "problem", wraps=True)
        self.write_button = Button(say("Add it") if is_new else say("Change it"), "primary", name="write")
        self.leave_button = Button(say("Go back"), name="leave")
        self._fill()
        self._place()
        self._show_rule()
        self._connect()

    def begin(self) -> None:
        """Typing begins at the name."""
        self.name.setFocus(Qt.FocusReason.OtherFocusReason)

    def value(self) -> Routine:
        """The routine in the fields."""
        when = RoutineWhen(self.when.value() or RoutineWhen.EVERY_DAYS)
        who, _, crop_id = (self.whom.value() or "").partition(":")
        every, age = self.every.value(), self.age.value()
        return replace(
            self.routine,
            name=self.name.value(),
            who=RoutineFor(who or RoutineFor.EACH_CROP),
            crop_id=crop_id or None,
            when=when,
            every_days=int(every) if every is not None and when in _RHYTHM else None,
            at_age=int(age) if age is not None and when is RoutineWhen.AT_AGE else None,
            from_day=self.from_day.value(),
            until_day=self.until_day.value() if when in _RHYTHM else None,
            entry_kind=self.by.value() or "",
            in_the_morning=self.morning.isChecked(),
            note=self.note.value(),
        )

    def write(self) -> None:
        """Announces the routine, or shows what is wrong."""
        if not check_all(self._fields()):
            return
        routine = self.value()
        problems = routine.problems()
        self.show_problems(problems)
        if not any(not p.asks for p in problems):
            self.confirmed.emit(routine)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Sentences beside their fields, the rest below."""
        fields, rest = {f.objectName(): f for f in self._fields()}, []
        for problem in (p for p in problems if not p.asks):
            if problem.field in fields:
                fields[problem.field].show_problem(problem.sentence)
            else:
                rest.append(problem.sentence)
        self.rest_label.setText(" ".join(rest))
        self.rest_label.setVisible(bool(rest))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter writes, Escape leaves it."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.write()
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def _fields(self) -> list[Field]:
        asked = {RoutineWhen.AT_AGE.value: [self.age], RoutineWhen.ON_DAY.value: []}.get(
            self.when.value() or "", [self.every, self.until_day]
        )
        return [self.name, self.whom, self.when, *asked, self.from_day, self.by, self.note]

    def _fill(self) -> None:
        self.every.set_value(self.routine.every_days)
        self.age.set_value(self.routine.at_age)
        self.morning.setChecked(self.routine.in_the_morning)
        self.morning.setObjectName("in_the_morning")

    def _place(self) -> None:
        grid = FormGrid(3)
        grid.add(self.name, span=2)
        grid.add(self.whom, self.when, _one_of(self.every, self.age), self.by)
        grid.add(self.from_day, self.until_day, _beside_fields(self.morning))
        grid.add(self.note, span=3)
        self.body.addWidget(grid)
        self.rest_label.hide()
        self.body.addWidget(self.rest_label)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.write_button)
        row.addWidget(self.leave_button)
        row.addStretch(1)
        self.body.addLayout(row)

    def _connect(self) -> None:
        self.when.value_changed.connect(self._show_rule)
        self.write_button.clicked.connect(self.write)
        self.leave_button.clicked.connect(self.left)

    def _show_rule(self) -> None:
        when = RoutineWhen(self.when.value() or RoutineWhen.EVERY_DAYS)
        self.every.setVisible(when in _RHYTHM)
        self.age.setVisible(when is RoutineWhen.AT_AGE)
        self.until_day.setVisible(when in _RHYTHM)
        self.from_day.set_label(say("Day") if when is RoutineWhen.ON_DAY else say("From"))


def _whom(crops: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    fixed = [(RoutineFor.EACH_CROP.value, say("each crop")), (RoutineFor.ROOM.value, say("the room"))]
    return fixed + [(f"{RoutineFor.CROP.value}:{crop_id}", name) for crop_id, name in crops]


def _whom_key(routine: Routine) -> str:
    return f"{routine.who.value}:{routine.crop_id}" if routine.who is RoutineFor.CROP else routine.who.value


def _one_of(*fields: QWidget) -> QWidget:
    """One place for fields of which one is shown at a time."""
    place = QWidget()
    column = QVBoxLayout(place)
    column.setContentsMargins(0, 0, 0, 0)
    for field in fields:
        column.addWidget(field)
    return place


def _beside_fields(box: QCheckBox) -> QWidget:
    """A box on the line of the editors beside it, which have their label above."""
    place = QWidget()
    column = QVBoxLayout(place)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    column.addWidget(TextLabel(" ", "field-label"))
    column.addWidget(box)
    return place
