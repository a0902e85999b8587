"""Single weights of fruit, typed one after the other at the scale."""

from PySide6.QtCore import Qt

from growlog.desktop.entry_form.chips import ChipLine
from growlog.desktop.entry_form.display_units import METRIC, display_unit
from growlog.desktop.look.widgets import Field
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.look.widgets.number_text import NotANumber, number_text, parse_number
from growlog.records.problems import check_quantity
from growlog.words import say, say_count


class WeightsField(Field):
    """Weights in g. Enter adds the typed one, Backspace on the empty line strikes the last."""

    def __init__(self, label: str, system: str = METRIC, name: str = "weights_g") -> None:
        self.chip_line = ChipLine(say("Weight, then Enter"))
        super().__init__(label, self.chip_line, "", name)
        self._display = display_unit("weight_g", system)
        self._weights_g: tuple[float, ...] = ()
        self.sum_label = TextLabel("", "small")
        self.chip_line.line.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.chip_line.line.setAccessibleName(f"{label} {self._display.unit}")
        self.chip_line.line.setObjectName(f"{name}.line")
        layout = self.layout()
        if layout is not None:
            layout.addWidget(self.sum_label)
        self.set_label(f"{label}, {self._display.unit}")
        self.chip_line.entered.connect(self._entered)
        self.chip_line.struck.connect(self._struck)
        self.chip_line.line.textEdited.connect(self._typing)
        self._show()

    def value(self) -> tuple[float, ...]:
        """The weights in g, in the order typed."""
        return self._weights_g

    def set_value(self, weights_g: tuple[float, ...]) -> None:
        """Shows weights without emitting value_changed."""
        self._weights_g = tuple(weights_g)
        self._show()

    def check(self) -> bool:
        """False while a weight is typed but not added."""
        left = self.chip_line.line.text().strip()
        self.clear_message()
        if left:
            self.show_problem(self._wrong_with(left) or say("Press Enter to add this weight, or empty the line."))
        return not self.is_refused

    def take_typed(self) -> None:
        """Adds what still stands in the line, as Enter does."""
        if self.chip_line.line.text().strip():
            self._entered(self.chip_line.line.text().strip())

    def _entered(self, text: str) -> None:
        refusal = self._wrong_with(text)
        if refusal:
            self.show_problem(refusal)
            return
        self._weights_g += (self._kept(text),)
        self.chip_line.line.clear()
        self._changed()

    def _wrong_with(self, text: str) -> str:
        try:
            weight_g = self._kept(text)
        except NotANumber:
            return say("Write a weight, for example 86.5.")
        return " ".join(p.sentence for p in check_quantity("weight_g", weight_g) if not p.asks)

    def _kept(self, text: str) -> float:
        typed = parse_number(text)
        if typed is None:
            raise NotANumber(text)
        return self._display.kept(typed)

    def _struck(self, place: int) -> None:
        self._weights_g = self._weights_g[:place] + self._weights_g[place + 1 :]
        self.chip_line.line.setFocus(Qt.FocusReason.OtherFocusReason)
        self._changed()

    def _typing(self) -> None:
        self.clear_message()

    def _changed(self) -> None:
        self.clear_message()
        self._show()
        self.value_changed.emit()

    def _show(self) -> None:
        self.chip_line.show_chips([self._text(w) for w in self._weights_g])
        count = len(self._weights_g)
        total = f"{self._text(sum(self._weights_g))}\u2009{self._display.unit}"
        one, many = "{n} fruit weighed, {total}", "{n} fruit weighed, {total} together"
        self.sum_label.setText(say_count(one, many, count, total=total) if count else say("None weighed singly"))

    def _text(self, weight_g: float) -> str:
        return number_text(self._display.shown(weight_g), self._display.decimals).removesuffix(".0")
