"""How strong the water was that the plants took, from two readings of a recirculating tank."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import Card, ChoiceField, FormGrid, TextLabel
from growlog.records.display import fixed
from growlog.services.tank_care import UptakeView
from growlog.words import say, show_number


class UptakePage(QWidget):
    """Two readings to choose, and what lies between them."""

    asked = Signal(str, str)  # ids of the earlier and the later entry

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("uptakePage")
        self.earlier_field = ChoiceField(say("From"), [], name="uptake.earlier")
        self.later_field = ChoiceField(say("To"), [], name="uptake.later")
        self.result = Card(margin_px=12)
        self.words_label = TextLabel("", "strong", wraps=True)
        self.water_label = TextLabel("", "", "mute", wraps=True)
        self.elements_label = TextLabel("", "", wraps=True)
        self.explain_button = ExplanationButton()
        self.nothing_label = TextLabel("", "", "mute", wraps=True)
        for widget in (self.words_label, self.water_label, self.elements_label):
            self.result.body.addWidget(widget)
        self.result.body.addWidget(self.explain_button, 0, Qt.AlignmentFlag.AlignLeft)
        grid = FormGrid(2, 200)
        grid.add(self.earlier_field, self.later_field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(grid)
        column.addWidget(self.result)
        column.addWidget(self.nothing_label)
        column.addStretch(1)
        self.earlier_field.value_changed.connect(self._ask)
        self.later_field.value_changed.connect(self._ask)
        self.show_uptake(None)

    def show_readings(self, readings: Sequence[tuple[str, str, str]]) -> None:
        """Entries of the tank, the earliest first: id, how it was left, how it was found, in words ("": unknown)."""
        last = max((n for n, (_, _, found) in enumerate(readings) if found), default=0)
        first = max((n for n, (_, left, _) in enumerate(readings[:last]) if left), default=None)
        begins = None if first is None else readings[first][0]
        ends = None if first is None else readings[last][0]
        self.earlier_field.set_choices([(key, left) for key, left, _ in readings if left], begins)
        self.later_field.set_choices([(key, found) for key, _, found in readings if found], ends)
        self._ask()

    def show_uptake(self, view: UptakeView | None) -> None:
        """What was found between the two; None where nothing can be."""
        self.result.setVisible(view is not None)
        self.nothing_label.setVisible(view is None)
        if view is None:
            needs = say("Two tank entries that state volume and EC are needed, with water used between them.")
            self.nothing_label.setText(needs)
            return
        self.words_label.setText(view.words)
        self.water_label.setText(say("{water} of water were used.", water=fixed(view.water_l, 1, "L")))
        self.elements_label.setText(_elements_words(view.elements_mg_per_l))
        self.elements_label.setVisible(bool(view.elements_mg_per_l))
        self.explain_button.show_figures(view.figure, {view.figure.key: say("Strength taken up")})

    def _ask(self) -> None:
        earlier, later = self.earlier_field.value(), self.later_field.value()
        if earlier is None or later is None or earlier == later:
            self.show_uptake(None)
        else:
            self.asked.emit(earlier, later)


def _elements_words(elements_mg_per_l: Mapping[str, float]) -> str:
    """By element, in the proportions of the mix: a meter tells only all of them together."""
    listed = [f"{e} {show_number(mg, _decimals(mg))}" for e, mg in elements_mg_per_l.items() if mg >= 0.005]
    return say("In the proportions of the mix, mg/L: {elements}.", elements=", ".join(listed))


def _decimals(mg_per_l: float) -> int:
    return 0 if mg_per_l >= 10 else 1 if mg_per_l >= 1 else 2
