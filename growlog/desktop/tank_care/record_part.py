"""What was done to a tank, as it goes into the logbook."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.widgets import (
    DayField,
    Field,
    FormGrid,
    NoteField,
    SectionTitle,
    TextLabel,
    TimeField,
    check_all,
)
from growlog.desktop.mixer.wording import QuietNumberField
from growlog.records.entry import Entry, Owner, OwnerKind, TankCare, TankDose, TankWork
from growlog.records.problems import Problem
from growlog.services.open_logbook import new_id
from growlog.words import say

MEASURES = ("volume_before_l", "ec_before_ms_per_cm", "water_added_l", "drained_l", "ec_after_ms_per_cm",
             "ph_before", "ph_after")  # fmt: skip


class RecordPart(QWidget):
    """Fields of a tank care entry; filled in from a proposal, corrected to what was really done."""

    changed = Signal()

    def __init__(self, today: date, units: str, name: str, measures: Sequence[str] = MEASURES) -> None:
        """measures: which quantities are asked for, by their names in the record."""
        super().__init__()
        self.setObjectName(name)
        self.day_field = DayField(say("Day"), today, latest=today, near=today, required=True, name=f"{name}.day")
        self.time_field = TimeField(say("Time"), name=f"{name}.time")
        self.fields = {key: MeasureField(key, system=units, name=f"{name}.{key}") for key in measures}
        self.minutes_field = MeasureField("labour_minutes", say("Labour"), units, f"{name}.minutes")
        self.note_field = NoteField(say("Note"), lines=2, name=f"{name}.note")
        self.message = TextLabel("", tone="problem", wraps=True)
        self.doses: list[tuple[TankDose, QuietNumberField]] = []
        self._dose_place = QVBoxLayout()
        self._dose_content: QWidget | None = None
        self._name = name
        grid = FormGrid(4, 110)
        grid.add(self.day_field, self.time_field, *self.fields.values(), self.minutes_field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(grid)
        column.addLayout(self._dose_place)
        column.addWidget(self.note_field)
        column.addWidget(self.message)
        self.message.hide()

    def show_doses(self, doses: Sequence[TankDose]) -> None:
        """What went in, each with its amount to be corrected."""
        if self._dose_content is not None:
            self._dose_content.hide()
            self._dose_content.deleteLater()
            self._dose_content = None
        self.doses = []
        if not doses:
            return
        self._dose_content = QWidget()
        grid = QGridLayout(self._dose_content)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setColumnStretch(0, 1)
        grid.addWidget(SectionTitle(say("What went in")), 0, 0)
        for row, dose in enumerate(doses, 1):
            field = QuietNumberField("", dose.unit, 0, 100_000, decimals=2, name=f"{self._name}.dose.{row}")
            field.editor.setAccessibleName(dose.product)
            field.set_value(round(dose.dose_amount, 2))
            grid.addWidget(TextLabel(dose.product, wraps=True), row, 0)
            grid.addWidget(field, row, 1, Qt.AlignmentFlag.AlignRight)
            self.doses.append((dose, field))
        self._dose_place.addWidget(self._dose_content)

    def entry(self, tank_id: str, work: TankWork, mix_id: str | None = None) -> Entry | None:
        """The entry as it stands; None where a field cannot be read."""
        fields: list[Field] = [self.day_field, self.time_field, *self.fields.values(), self.minutes_field,
                               self.note_field, *(field for _, field in self.doses)]  # fmt: skip
        day = self.day_field.value()
        if not check_all(fields) or day is None:
            return None
        shown = {key: field.value() for key, field in self.fields.items()}
        taken = [(dose, field.value()) for dose, field in self.doses]
        doses = tuple(
            TankDose(dose.product, float(amount), dose.unit, dose.product_id) for dose, amount in taken if amount
        )
        minutes = self.minutes_field.value()
        detail = TankCare(work=work, mix_id=mix_id, doses=doses, **shown)
        return Entry(
            new_id(), Owner(OwnerKind.TANK, tank_id), day, detail, self.time_field.value(),
            None if minutes is None else int(minutes), self.note_field.value(),
        )  # fmt: skip

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Each beside its field; the rest below."""
        left = []
        for problem in problems:
            field = self.day_field if problem.field == "day" else self.fields.get(problem.field)
            if field is not None:
                field.show_problem(problem.sentence)
            else:
                left.append(problem.sentence)
        self.message.setText(" ".join(left))
        self.message.setVisible(bool(left))
