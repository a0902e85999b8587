"""Doses, amounts and contents as the mixer writes them."""

from collections.abc import Iterable

from growlog.desktop.look.widgets import NumberField
from growlog.desktop.look.widgets.field import Field
from growlog.records.display import THIN
from growlog.records.problems import Problem
from growlog.words import mark, say, show_number

_AMOUNT_WORDS = {
    "tsp": mark("US tsp"), "tsp_metric": mark("5 mL tsp"), "tbsp": mark("US tbsp"),
    "tbsp_metric": mark("15 mL tbsp"), "fl_oz": mark("US fl oz"), "fl_oz_imp": mark("imp. fl oz"),
}  # fmt: skip
_VOLUME_WORDS = {
    "L": "L", "100L": "100\u2009L", "1000L": "1000\u2009L", "gal_us": mark("US gal"), "100gal_us": mark("100 US gal"),
    "gal_imp": mark("imp. gal"), "100gal_imp": mark("100 imp. gal"), "tank": mark("tank"),
}  # fmt: skip
USUAL_UNITS = (
    "mL/L", "g/L", "mg/L", "mL/tank", "g/tank", "mL/gal_us", "g/gal_us", "tsp/gal_us", "tbsp/gal_us", "fl_oz/gal_us",
    "oz/100gal_us", "mL/gal_imp", "g/gal_imp", "fl_oz_imp/gal_imp", "tsp_metric/L", "tsp_metric/tank", "tsp/tank",
    "mL/100L", "g/100L", "g/1000L", "kg/1000L",
)  # fmt: skip


def unit_words(unit: str) -> str:
    """A dose's unit as a person reads it: "mL/L", "mL/US gal", "g/tank"."""
    amount, _, volume = unit.partition("/")
    amount_words = say(_AMOUNT_WORDS[amount]) if amount in _AMOUNT_WORDS else amount
    return f"{amount_words}/{say(_VOLUME_WORDS.get(volume, volume))}"


def unit_choices(present: str) -> list[tuple[str, str]]:
    """The usual units to choose from, and the one that stands there."""
    units = USUAL_UNITS if present in USUAL_UNITS else (*USUAL_UNITS, present)
    return [(unit, unit_words(unit)) for unit in units]


def amount_text(amount: float, unit: str = "") -> str:
    """An amount to measure out: finer where it is small."""
    decimals = 0 if amount >= 100 else 1 if amount >= 10 else 2 if amount >= 0.1 else 3
    text = show_number(amount, decimals)
    return f"{text}{THIN}{unit}" if unit else text


def content_text(amount: float) -> str:
    """An element's content to two or three figures."""
    if amount == 0:
        return "0"
    return show_number(amount, 0 if amount >= 20 else 1 if amount >= 2 else 2 if amount >= 0.1 else 3)


def tell(field: Field, problems: Iterable[Problem]) -> None:
    """Says beside a field what the mixer finds of it; what the field finds of itself goes before."""
    field.clear_message()
    field.check()
    if field.is_refused:
        return
    found = list(problems)
    firm = " ".join(p.sentence for p in found if not p.asks)
    if firm:
        field.show_problem(firm)
    else:
        field.show_question(" ".join(p.sentence for p in found))


class QuietNumberField(NumberField):
    """A number in a table: what is wrong with it is said by the row, below all its cells."""

    _exact: float | None = None
    _exact_text = ""

    def show_exact(self, value: float, decimals: int) -> None:
        """Shows a number rounded; as long as it is not touched it is taken as it was."""
        self.set_value(round(value, decimals))
        self._exact, self._exact_text = value, self.line.text()

    def typed(self) -> float | None:
        """The number that stands there, even one that the mixer refuses."""
        if self._exact is not None and self.line.text() == self._exact_text:
            return self._exact
        return None if self._value is None else float(self._value)

    def _say(self, refusal: str, question: str) -> None:
        super()._say(refusal, question)
        self.message_label.hide()
