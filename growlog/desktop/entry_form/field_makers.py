"""Makes the editor of a field from its line in the table, and lays an answer to a question below it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Protocol, cast

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QSizePolicy, QVBoxLayout, QWidget

from growlog.desktop.entry_form.codes_field import CodesField
from growlog.desktop.entry_form.culls_field import CullsField
from growlog.desktop.entry_form.display_units import METRIC
from growlog.desktop.entry_form.kind_fields import FieldSpec, Sort
from growlog.desktop.entry_form.light_meter_fields import LampKindField, LuxField
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.entry_form.plain_fields import TickField, WordsChoice
from growlog.desktop.entry_form.tags_field import TaggedFruitField, TagsField, TagsSeenField
from growlog.desktop.entry_form.weights_field import WeightsField
from growlog.desktop.look.widgets import ChoiceField, DayField, Field, TextField, TimeField
from growlog.records.recipe import Mix
from growlog.words import say


class _Valued(Protocol):
    def value(self) -> Any: ...

    def set_value(self, value: Any) -> None: ...


@dataclass(frozen=True)
class Surroundings:
    """What fields need beside their entry. mix_used: the version an earlier feed points at."""

    mixes: tuple[Mix, ...] = ()
    mix_used: str | None = None
    units: str = METRIC
    species: str = ""


class Cell(QWidget):
    """A field and, below it, the tick that answers its question."""

    changed = Signal()

    def __init__(self, name: str, field: Field) -> None:
        super().__init__()
        self.name = name
        self.field = field
        self.touched = False
        self.answer_box = QCheckBox(say("Yes, it is right"))
        self.answer_box.setObjectName(f"{name}.answer")
        self.answer_box.hide()
        field.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)  # its sentence may wrap
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(field)
        column.addWidget(self.answer_box)
        self.setFocusProxy(field)
        field.value_changed.connect(self._touched)
        field.editing_finished.connect(self._typed)
        self.answer_box.toggled.connect(self.changed)
        self._asked = ""
        self._typing = False

    def value(self) -> Any:
        """What the field holds."""
        return cast(_Valued, self.field).value()

    def set_value(self, value: Any) -> None:
        """Shows a value."""
        cast(_Valued, self.field).set_value(value)

    def can_be_read(self) -> bool:
        """Takes back what was said before and lets the field judge what stands in it."""
        self.field.clear_message()
        fit = self.field.check()
        if self._typing and isinstance(self.field, (DayField, TimeField)):  # "8:" may yet become "8:05"
            self.field.clear_message()
        return fit

    def take_typed(self) -> None:
        """Typing has ended; what still stands in a line of chips is added."""
        self._typing = False
        if isinstance(self.field, (CodesField, WeightsField)):
            self.field.take_typed()

    def refuse(self, sentence: str) -> None:
        """Says what is wrong, and that there is nothing to answer."""
        self._ask("")
        self.field.show_problem(sentence)

    def ask(self, sentence: str) -> None:
        """Asks, with a tick to answer; another question than before wants another tick."""
        self._ask(sentence)
        self.field.show_question(sentence)

    @property
    def is_answered(self) -> bool:
        """Whether nothing is asked, or the answer is yes."""
        return not self._asked or self.answer_box.isChecked()

    def _ask(self, sentence: str) -> None:
        if sentence != self._asked:
            self.answer_box.blockSignals(True)
            self.answer_box.setChecked(False)
            self.answer_box.blockSignals(False)
            self.answer_box.setAccessibleDescription(sentence)
        self._asked = sentence
        self.answer_box.setVisible(bool(sentence))

    def _touched(self) -> None:
        self.touched = True
        self._typing = True
        self.changed.emit()

    def _typed(self) -> None:
        self._typing = False
        self.changed.emit()


def make_cell(spec: FieldSpec, around: Surroundings) -> Cell:
    """The cell of a line of the table."""
    return Cell(spec.name, _MAKERS[spec.sort](spec, around))


def _measure(spec: FieldSpec, around: Surroundings) -> Field:
    field = MeasureField(spec.name, say(spec.label) if spec.label else "", around.units)
    if spec.hint:
        field.line.setPlaceholderText(say(spec.hint))
    return field


def _words(spec: FieldSpec, around: Surroundings) -> Field:
    return TextField(say(spec.label), placeholder=say(spec.hint) if spec.hint else "", name=spec.name)


def _tick(spec: FieldSpec, around: Surroundings) -> Field:
    return TickField(say(spec.label), spec.name)


def _choice(spec: FieldSpec, around: Surroundings) -> Field:
    none = say(spec.none) if spec.none else ""
    return ChoiceField(say(spec.label), _translated(spec), none=none, name=spec.name)


def _few(spec: FieldSpec, around: Surroundings) -> Field:
    return WordsChoice(say(spec.label), _translated(spec), spec.name)


def _time(spec: FieldSpec, around: Surroundings) -> Field:
    return TimeField(say(spec.label), name=spec.name)


def _mix(spec: FieldSpec, around: Surroundings) -> Field:
    choices = [(mix.id, ", ".join(p for p in (mix.name, mix.doses()) if p)) for mix in around.mixes]
    if around.mix_used is not None and around.mix_used not in dict(choices):
        choices.append((around.mix_used, say("the version used then")))
    return ChoiceField(say(spec.label), choices, none=say(spec.none), name=spec.name)


def _weights(spec: FieldSpec, around: Surroundings) -> Field:
    return WeightsField(say(spec.label), around.units, spec.name)


def _culls(spec: FieldSpec, around: Surroundings) -> Field:
    return CullsField(say(spec.label), around.units, spec.name)


def _codes(spec: FieldSpec, around: Surroundings) -> Field:
    return CodesField(say(spec.label), around.species, spec.name)


def _tags(spec: FieldSpec, around: Surroundings) -> Field:
    return TagsField(say(spec.label), say(spec.hint), spec.name)


def _tags_seen(spec: FieldSpec, around: Surroundings) -> Field:
    return TagsSeenField(spec.name)


def _tagged(spec: FieldSpec, around: Surroundings) -> Field:
    return TaggedFruitField(say(spec.label), around.units, spec.name)


def _translated(spec: FieldSpec) -> list[tuple[str, str]]:
    return [(key, say(words)) for key, words in spec.choices]


def _lux(spec: FieldSpec, around: Surroundings) -> Field:
    return LuxField(around.units, spec.name)


def _lamp_kind(spec: FieldSpec, around: Surroundings) -> Field:
    return LampKindField(say(spec.label), spec.name)


_MAKERS: dict[Sort, Callable[[FieldSpec, Surroundings], Field]] = {
    Sort.MEASURE: _measure,
    Sort.WORDS: _words,
    Sort.TICK: _tick,
    Sort.CHOICE: _choice,
    Sort.FEW: _few,
    Sort.TIME: _time,
    Sort.MIX: _mix,
    Sort.WEIGHTS: _weights,
    Sort.CULLS: _culls,
    Sort.CODES: _codes,
    Sort.TAGS: _tags,
    Sort.TAGS_SEEN: _tags_seen,
    Sort.TAGGED: _tagged,
    Sort.LUX: _lux,
    Sort.LAMP_KIND: _lamp_kind,
}
