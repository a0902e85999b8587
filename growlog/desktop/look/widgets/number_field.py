"""A number with its unit: refused or asked about while it is typed."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from growlog.desktop.look.widgets.field import Field
from growlog.desktop.look.widgets.number_text import NotANumber, number_text, parse_number, typed_decimals
from growlog.records.limits import limit
from growlog.records.problems import check_quantity
from growlog.words import say, say_count

Judge = Callable[[float], str]


class NumberField(Field):
    """Takes a number with a decimal comma or point; an empty field is None.

    refuse and ask are given a number and return a sentence, or nothing if all is well.
    """

    def __init__(
        self,
        label: str,
        unit: str = "",
        minimum: float | None = None,
        maximum: float | None = None,
        decimals: int = 0,
        refuse: Judge | None = None,
        ask: Judge | None = None,
        name: str = "",
        required: bool = False,
        beside: bool = False,
    ) -> None:
        self.line = QLineEdit()
        super().__init__(label, self.line, unit, name, beside)
        self.line.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.line.setMinimumWidth(72)
        self._minimum = minimum
        self._maximum = maximum
        self._decimals = decimals
        self._refuse = refuse
        self._ask = ask
        self.required = required
        self._value: float | None = None
        self.line.textEdited.connect(self._typed)
        self.line.editingFinished.connect(self._finished)

    def value(self) -> float | int | None:
        """The number; None where nothing, or nothing acceptable, stands."""
        if self._value is None or self.is_refused:
            return None
        return int(self._value) if self._decimals == 0 else self._value

    def set_value(self, value: float | None) -> None:
        """Shows a number without emitting value_changed."""
        self.line.setText(number_text(value, self._decimals))
        self._read(final=True)

    def clear(self) -> None:
        """Empties the field."""
        self.line.clear()
        self._value = None
        self.clear_message()

    def check(self) -> bool:
        """Judges what stands there as if typing had ended; false if it is refused."""
        self._read(final=True)
        return not self.is_refused

    def is_empty(self) -> bool:
        """Whether nothing stands there."""
        return not self.line.text().strip()

    def set_range(self, minimum: float | None, maximum: float | None) -> None:
        """Another range from now on."""
        self._minimum = minimum
        self._maximum = maximum
        self._read(final=True)

    def _typed(self) -> None:
        self._read(final=self.is_refused)
        self.value_changed.emit()

    def _finished(self) -> None:
        self._read(final=True)
        self.editing_finished.emit()

    def _read(self, final: bool) -> None:
        text = self.line.text()
        try:
            self._value = parse_number(text)
        except NotANumber:
            self._value = None
            self.show_problem("" if text in "-\u2212+" and not final else say("Write a number, for example 1.5."))
            return
        if self._value is None:
            self.show_problem(say("A number is needed here.") if self.required and final else "")
            return
        self._judge(self._value, typed_decimals(text), final)

    def _judge(self, value: float, decimals: int, final: bool) -> None:
        refusal = self._refusal_of(value, decimals, final)
        if refusal:
            self.show_problem(refusal)
        else:
            self.show_question(self._ask(value) if self._ask is not None and final else "")

    def _refusal_of(self, value: float, decimals: int, final: bool) -> str:
        if decimals > self._decimals:
            return self._too_fine()
        if self._maximum is not None and value > self._maximum:
            return say("At most {limit}.", limit=self._with_unit(self._maximum))
        if not final:  # "1" may yet become "15"
            return ""
        if self._minimum is not None and value < self._minimum:
            return say("At least {limit}.", limit=self._with_unit(self._minimum))
        return self._refuse(value) if self._refuse is not None else ""

    def _too_fine(self) -> str:
        if self._decimals == 0:
            return say("A whole number is needed here, without a sign for thousands.")
        return say_count("At most {n} decimal place.", "At most {n} decimal places.", self._decimals)

    def _with_unit(self, value: float) -> str:
        text = number_text(value, 3 if value != int(value) else 0)
        unit = self.unit_label.text()
        return f"{text}\u2009{unit}" if unit else text


def limited_number_field(key: str, label: str = "", name: str = "", beside: bool = False) -> NumberField:
    """A field for a quantity of the table of limits: its label, unit, decimals, range and questions."""
    bound = limit(key)

    def refuse(value: float) -> str:
        return " ".join(problem.sentence for problem in check_quantity(key, value) if not problem.asks)

    def ask(value: float) -> str:
        return " ".join(problem.sentence for problem in check_quantity(key, value) if problem.asks)

    return NumberField(
        label or say(bound.label),
        bound.unit,
        decimals=bound.decimals,
        refuse=refuse,
        ask=ask,
        name=name or key,
        beside=beside,
    )
