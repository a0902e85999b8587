"""One dose of the mixer: product, amount, unit, what that is for the tank, and how long the bottle lasts."""

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.restyle import set_look_property
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Rule, TextLabel
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.desktop.mixer.wording import QuietNumberField, amount_text, unit_choices
from growlog.records.problems import Problem
from growlog.services.mixer import DoseView, MixerDose
from growlog.services.shelf.stock import LOW_DAYS
from growlog.words import say, say_count

ROWS = 3  # of the grid: the line (two of them where it is narrow), what is wrong, a hairline


class DoseLine(QObject):
    """The widgets of a line, laid into the grid of the table."""

    changed = Signal()
    removed = Signal(object)  # this line

    def __init__(self, dose: MixerDose, number: int, parent: QWidget) -> None:
        super().__init__(parent)
        self._dose = dose
        self._readable = dose.amount
        self.product_label = TextLabel(dose.product, "strong", wraps=True)
        self.amount = QuietNumberField("", decimals=6, name=f"dose.{number}")
        self.amount.editor.setAccessibleName(say("Dose of {product}", product=dose.product))
        self.amount.show_exact(dose.amount, 3 if dose.amount >= 0.1 else 6)
        self.unit_box = CalmComboBox()
        self.unit_box.setObjectName(f"dose.{number}.unit")
        self.unit_box.setAccessibleName(say("Unit of the dose of {product}", product=dose.product))
        for key, words in unit_choices(dose.unit):
            self.unit_box.addItem(words, key)
        self.unit_box.setCurrentIndex(self.unit_box.findData(dose.unit))
        self.tank_label = TextLabel("", "strong")
        self.left_label = TextLabel("", "", "mute", wraps=True)
        self.remove_button = IconButton("close", say("Take {product} out", product=dose.product))
        self.message = TextLabel("", "message", wraps=True)
        self.rule = Rule()
        self.message.hide()
        self.amount.setMaximumWidth(current().px(92))
        self.unit_box.setMinimumContentsLength(8)
        for label in (self.tank_label, self.left_label):
            label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.amount.value_changed.connect(self._changed)
        self.amount.editing_finished.connect(self._changed)
        self.unit_box.currentIndexChanged.connect(self._changed)
        self.remove_button.clicked.connect(self._remove)

    def dose(self) -> MixerDose:
        """The dose as it stands; an empty amount counts as none, an unreadable one as what stood there before it."""
        typed = self.amount.typed()
        if typed is not None or self.amount.is_empty():
            self._readable = typed or 0.0
        return MixerDose(self._dose.product, self._readable, str(self.unit_box.currentData()), self._dose.product_id)

    def widgets(self) -> list[QWidget]:
        """All of the line."""
        return [self.product_label, self.amount, self.unit_box, self.tank_label, self.left_label, self.remove_button,
                self.message, self.rule]  # fmt: skip

    def lay_into(self, grid: QGridLayout, row: int, narrow: bool) -> None:
        """Takes ROWS rows and one more of the grid; narrow: the product stands above its figures."""
        here = row + 1 if narrow else row
        grid.addWidget(self.product_label, row, 0, 1, 6 if narrow else 1)
        for column, widget in enumerate((self.amount, self.unit_box, self.tank_label, self.left_label), 1):
            grid.addWidget(widget, here, column)
        grid.addWidget(self.remove_button, here, 5)
        grid.addWidget(self.message, row + 2, 0, 1, 6)
        grid.addWidget(self.rule, row + 3, 0, 1, 6)

    def show_view(self, view: DoseView) -> None:
        """What the mixer found of it."""
        known = view.tank_amount is not None
        self.tank_label.setText(amount_text(view.tank_amount or 0.0, view.measure) if known else "")
        self.left_label.setText(left_text(view))
        low = view.enough is False or (view.days_left is not None and view.days_left < LOW_DAYS)
        self.left_label.set_tone("problem" if low else "mute")
        self._show_problems(view.problems)

    def _show_problems(self, problems: tuple[Problem, ...]) -> None:
        self.amount.check()
        firm = [p.sentence for p in problems if not p.asks]
        asked = [p.sentence for p in problems if p.asks]
        if not self.amount.is_refused:
            of_amount = [p for p in problems if p.field == "amount"]
            sentence = " ".join(p.sentence for p in of_amount)
            if any(not p.asks for p in of_amount):
                self.amount.show_problem(sentence)
            else:
                self.amount.show_question(sentence)
        own = [] if self.amount.refusal in firm or not self.amount.refusal else [self.amount.refusal]
        told = " ".join([*own, *firm, *asked])
        self.message.setText(told)
        set_look_property(self.message, "state", "problem" if own or firm else "asks" if asked else "")
        self.message.setVisible(bool(told))

    def _changed(self) -> None:
        self.changed.emit()

    def _remove(self) -> None:
        self.removed.emit(self)


def left_text(view: DoseView) -> str:
    """How long the bottle lasts, or what is in it."""
    if view.days_left is not None:
        return say_count("{n} day", "{n} days", int(view.days_left))
    if view.left is not None:
        return amount_text(view.left, view.left_measure)
    return ""
