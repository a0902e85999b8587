"""One step of a feed plan: from which plant age, which mix, how strong, how much."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    Field,
    FormGrid,
    NumberField,
    TextField,
    check_all,
)
from growlog.records.feed_plan import FeedStep
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from growlog.words import say


class StepForm(Card):
    """Emits the step; stays until it is put away."""

    confirmed = Signal(object)  # FeedStep
    left = Signal()

    def __init__(self, step: FeedStep, mixes: Sequence[Mix], units: str) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("stepForm")
        self._step = step
        self.age_field = NumberField(say("From plant age"), say("days"), 0, 2000, name="from_age", required=True)
        self.mix_field = ChoiceField(say("Mix"), [(m.id, m.name) for m in mixes], step.mix_id or None, name="step_mix")
        self.strength_field = MeasureField("strength_percent", system=units, name="step_strength")
        self.volume_field = MeasureField("volume_l", say("Usual volume"), units, "step_volume")
        self.note_field = TextField(say("Note"), step.note, name="step_note")
        self.leave_button = Button(say("Cancel"), name="leaveForm")
        self.write_button = Button(f"{say('Keep this step')}  Ctrl \u23ce", "primary", name="writeForm")
        self.age_field.set_value(step.from_age)
        self.strength_field.set_value(step.strength_percent)
        self.volume_field.set_value(step.volume_l)
        grid = FormGrid(4, 120)
        grid.add(self.mix_field, span=2)
        grid.add(self.age_field, self.strength_field, self.volume_field)
        grid.add(self.note_field, span=3)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.write_button)
        self.body.setSpacing(12)
        self.body.addWidget(grid)
        self.body.addLayout(buttons)
        self.leave_button.clicked.connect(self.left)
        self.write_button.clicked.connect(self.confirm)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def step(self) -> FeedStep:
        """The step as it stands."""
        strength = self.strength_field.value()
        return replace(
            self._step,
            from_age=int(self.age_field.value() or 0),
            mix_id=self.mix_field.value() or "",
            strength_percent=100.0 if strength is None else float(strength),
            volume_l=self.volume_field.value(),
            note=self.note_field.value(),
        )

    def confirm(self) -> None:
        """Emits it where every field can be read."""
        fields: list[Field] = [self.mix_field, self.age_field, self.strength_field, self.volume_field]
        if not check_all(fields):
            return
        self.show_problems(self.step().problems())
        if not any(field.is_refused for field in fields):
            self.confirmed.emit(self.step())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Each beside its field."""
        fields: dict[str, Field] = {
            "mix_id": self.mix_field, "strength_percent": self.strength_field, "volume_l": self.volume_field,
        }  # fmt: skip
        for problem in problems:
            field = fields.get(problem.field, self.age_field)
            if problem.asks:
                field.show_question(problem.sentence)
            else:
                field.show_problem(problem.sentence)

    def begin(self) -> None:
        """Puts the cursor into the first field."""
        self.mix_field.setFocus()
