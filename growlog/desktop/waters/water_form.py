"""An analysis of source water as the report states it."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout

from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    DayField,
    Field,
    FormGrid,
    NoteField,
    NumberField,
    SectionTitle,
    TextField,
    TextLabel,
    check_all,
)
from growlog.records.problems import Problem
from growlog.records.source_water import WATER_ELEMENTS, SourceWater
from growlog.services.waters import ALKALINITY_UNITS, alkalinity_of
from growlog.words import say

Check = Callable[[SourceWater], list[Problem]]
_NAMES = {"ca": "Ca", "mg": "Mg", "na": "Na", "cl": "Cl", "so4": "SO₄", "k": "K", "no3_n": "NO₃–N"}
_UNIT_WORDS = {"mg/L CaCO3": "mg/L CaCO₃", "mg/L HCO3": "mg/L HCO₃", "°dH": "°dH", "meq/L": "meq/L"}


class WaterForm(Card):
    """Emits the water; stays until it is put away."""

    confirmed = Signal(object)  # SourceWater
    left = Signal()

    def __init__(self, water: SourceWater, today: date, check: Check) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("waterForm")
        self._water = water
        self._check = check
        self.name_field = TextField(say("Name"), water.name, required=True, longest=80, name="water_name")
        self.day_field = DayField(say("Analysed on"), water.analysed_on, latest=today, near=today, name="analysed_on")
        self.ec_field = NumberField(say("EC"), "mS/cm", decimals=3, name="water_ec")
        self.ph_field = NumberField(say("pH"), "", decimals=2, name="water_ph")
        self.alkalinity_field = NumberField(say("Alkalinity"), "", decimals=3, name="alkalinity")
        units = [(unit, _UNIT_WORDS[unit]) for unit in ALKALINITY_UNITS]
        self.unit_field = ChoiceField(say("stated in"), units, ALKALINITY_UNITS[0], name="alkalinity_unit")
        self.as_caco3_label = TextLabel("", "small")
        self.elements = {
            key: NumberField(_NAMES[key], "mg/L", decimals=3, name=f"water.{key}") for key in WATER_ELEMENTS
        }
        self.note_field = NoteField(say("Note"), water.note, lines=2, name="water_note")
        self.message = TextLabel("", tone="problem", wraps=True)
        self.leave_button = Button(say("Cancel"), name="leaveForm")
        self.write_button = Button(f"{say('Keep this water')}  Ctrl \u23ce", "primary", name="writeForm")
        self._fill()
        self._show(water)
        self._connect()

    def water(self) -> SourceWater:
        """The analysis as it stands."""
        contents: dict[str, Any] = {f"{key}_mg_per_l": field.value() for key, field in self.elements.items()}
        return replace(
            self._water,
            name=self.name_field.value(),
            analysed_on=self.day_field.value(),
            ec_ms_per_cm=self.ec_field.value(),
            ph=self.ph_field.value(),
            alkalinity_mg_per_l_caco3=self._alkalinity(),
            note=self.note_field.value(),
            **contents,
        )

    def confirm(self) -> None:
        """Emits it where nothing stands against it."""
        if not check_all(self._fields()):
            return
        problems = self._check(self.water())
        self.show_problems(problems)
        if not any(not p.asks for p in problems):
            self.confirmed.emit(self.water())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Each beside its field."""
        fields: dict[str, Field] = {
            "name": self.name_field, "ec_ms_per_cm": self.ec_field, "ph": self.ph_field,
            "alkalinity_mg_per_l_caco3": self.alkalinity_field,
            **{f"{key}_mg_per_l": field for key, field in self.elements.items()},
        }  # fmt: skip
        left = []
        for problem in problems:
            field = fields.get(problem.field)
            if field is None:
                left.append(problem.sentence)
            elif problem.asks:
                field.show_question(problem.sentence)
            else:
                field.show_problem(problem.sentence)
        self.message.setText(" ".join(left))
        self.message.setVisible(bool(left))

    def begin(self) -> None:
        """Puts the cursor into the name."""
        self.name_field.setFocus()
        self.name_field.line.selectAll()

    def _fields(self) -> list[Field]:
        return [self.name_field, self.day_field, self.ec_field, self.ph_field, self.alkalinity_field, self.unit_field,
                *self.elements.values(), self.note_field]  # fmt: skip

    def _fill(self) -> None:
        top, middle, contents = FormGrid(4, 110), FormGrid(4, 110), FormGrid(4, 110)
        top.add(self.name_field, self.day_field, span=2)
        middle.add(self.ec_field, self.ph_field, self.alkalinity_field, self.unit_field)
        contents.add(*self.elements.values())
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.write_button)
        self.body.setSpacing(12)
        self.body.addWidget(top)
        self.body.addWidget(middle)
        self.body.addWidget(self.as_caco3_label)
        self.body.addWidget(SectionTitle(say("In the water")))
        hint = say("Leave empty what was not measured. Nothing at all is rain or reverse osmosis.")
        self.body.addWidget(TextLabel(hint, "small", wraps=True))
        self.body.addWidget(contents)
        self.body.addWidget(self.note_field)
        self.body.addWidget(self.message)
        self.body.addLayout(buttons)
        self.message.hide()

    def _show(self, water: SourceWater) -> None:
        self.ec_field.set_value(water.ec_ms_per_cm)
        self.ph_field.set_value(water.ph)
        self.alkalinity_field.set_value(water.alkalinity_mg_per_l_caco3)
        for key, field in self.elements.items():
            field.set_value(getattr(water, f"{key}_mg_per_l"))
        self._show_alkalinity()

    def _connect(self) -> None:
        self.alkalinity_field.value_changed.connect(self._show_alkalinity)
        self.unit_field.value_changed.connect(self._show_alkalinity)
        self.leave_button.clicked.connect(self.left)
        self.write_button.clicked.connect(self.confirm)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _alkalinity(self) -> float | None:
        value = self.alkalinity_field.value()
        return None if value is None else alkalinity_of(float(value), self.unit_field.value() or ALKALINITY_UNITS[0])

    def _show_alkalinity(self) -> None:
        """What is kept, where the report states it in another unit."""
        value = self._alkalinity()
        other = value is not None and self.unit_field.value() != ALKALINITY_UNITS[0]
        self.as_caco3_label.setText(say("Alkalinity is {value} mg/L as CaCO₃.", value=round(value or 0.0, 1)))
        self.as_caco3_label.setVisible(other)
