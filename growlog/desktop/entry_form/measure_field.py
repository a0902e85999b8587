"""A number of the table of limits, typed in the unit of display and kept in the unit of the record."""

from growlog.desktop.entry_form.display_units import METRIC, display_unit
from growlog.desktop.look.widgets import NumberField
from growlog.desktop.look.widgets.number_text import number_text
from growlog.records.limits import limit
from growlog.words import say

_FINEST = 4


class MeasureField(NumberField):
    """value() and set_value() speak the record's unit. A number that was not touched comes back as it was."""

    def __init__(self, key: str, label: str = "", system: str = METRIC, name: str = "") -> None:
        self._display = display_unit(key, system)
        self._untouched: float | None = None
        self._untouched_text = ""
        bound = limit(key)
        super().__init__(
            label or say(bound.label), self._display.unit, decimals=self._display.decimals, name=name or key
        )

    def value(self) -> float | int | None:
        """The quantity in the record's unit."""
        if self._untouched is not None and self.line.text() == self._untouched_text:
            return self._untouched
        typed = super().value()
        if typed is None:
            return None
        kept = self._display.kept(typed)
        return int(kept) if isinstance(typed, int) and kept == int(kept) else kept

    def set_value(self, value: float | None) -> None:
        """Shows a quantity given in the record's unit."""
        super().set_value(None if value is None else self._display.shown(value))
        if value is not None and self._is_finer(value):
            self.line.setText(number_text(value, _FINEST))
            self.clear_message()
        self._untouched = value
        self._untouched_text = self.line.text()

    def text_of(self, value: float | None) -> str:
        """A quantity in the record's unit as this field would show it; "" for None."""
        return "" if value is None else number_text(self._display.shown(value), self._display.decimals)

    def check(self) -> bool:
        """What was kept before is not refused for its decimals."""
        if self._untouched is not None and self.line.text() == self._untouched_text:
            self.clear_message()
            return True
        return super().check()

    def _is_finer(self, value: float) -> bool:
        """Whether rounding for the screen would tell another number, in the record's own unit."""
        return self._display.shown(value) == value and round(value, self._display.decimals) != value
