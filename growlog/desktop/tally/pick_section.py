"""The pick: the large weight field, the fruit entered, the figures as they run, and culls by their cause."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.entry_form.display_units import display_unit
from growlog.desktop.look.marks import MarkSign
from growlog.desktop.look.restyle import set_look_property
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import CountStepper, FlowLayout, TextLabel
from growlog.desktop.tally.figure_keys import FigureKeys
from growlog.desktop.tally.keys import CULL, cause_keys
from growlog.desktop.tally.number_pad import NumberPad
from growlog.desktop.tally.stepper import make_stepper
from growlog.desktop.tally.tally_model import TallyModel
from growlog.desktop.tally.touch import LARGE_TEXT, touch_button, with_key
from growlog.desktop.tally.weight_chips import WeightChips
from growlog.desktop.tally.weight_line import WeightLine
from growlog.desktop.tally.wrap_grid import WrapGrid
from growlog.records.entry import CullCause
from growlog.services.tally.wording import running_line, so_far_line
from growlog.words import say

_LINE_PX = 200


class PickSection(QWidget):
    """Shows the chosen crop's pick. While `culls_open`, a letter is the cause of a cull."""

    def __init__(self, model: TallyModel, keys: FigureKeys) -> None:
        super().__init__()
        self._model = model
        self._unit = display_unit("weight_g", model.system).unit
        self.line = WeightLine()
        self.line.setObjectName("weight")
        self.line.setAccessibleName(say("Weight of a fruit, {unit}", unit=self._unit))
        self._letter = ""  # refused among the figures that stand in the field
        self.said_label = TextLabel("", "message", wraps=True)
        self.running_label = TextLabel("", "heading", wraps=True)
        self.so_far_label = TextLabel("", "small", wraps=True)
        self.culled_label = TextLabel("", "small", wraps=True)
        self.chips = WeightChips()
        self.cull_button = touch_button(with_key(say("Cull\u2026"), CULL), name="cull")
        self.cull_button.setCheckable(True)
        self.pad_button = touch_button(say("Number pad"), name="padToggle")
        self.pad_button.setCheckable(True)
        self.causes = WrapGrid(170)
        self.cause_steppers = {c: self._cause(c, key, keys) for key, c in cause_keys().items()}
        self.pad = NumberPad(self.line)
        self.pad.hide()
        self.causes.hide()
        self._place()
        self._connect()
        self._fit()
        self.show_said("", False)
        self.show_tally()

    @property
    def culls_open(self) -> bool:
        """Whether the causes of culls are laid out."""
        return self.cull_button.isChecked()

    def open_culls(self, is_open: bool) -> None:
        """Lays the causes out, or folds them away."""
        self.cull_button.setChecked(is_open)

    def show_said(self, sentence: str, refused: bool) -> None:
        """What a step did, or why it was not taken."""
        hint = say("One fruit after the other: weight, Enter. Backspace in the empty field strikes the last.")
        self.said_label.setText(sentence or hint)
        set_look_property(self.said_label, "state", "problem" if refused else "")
        set_look_property(self.line, "state", "problem" if refused and self.line.text() else "")

    def show_tally(self) -> None:
        """Draws what the model holds."""
        model, crop = self._model, self._model.crop
        self._letter = self._letter if model.tally.typed else ""
        if self.line.text() != model.tally.typed:
            self.line.setText(model.tally.typed)
        self.chips.show_fruit([model.fruit_text(fruit) for fruit in crop.fruit])
        self.running_label.setText(running_line(crop))
        self.so_far_label.setText("" if model.row is None else so_far_line(model.row.so_far))
        culls = ", ".join(f"{c.cull_count} {say(c.cause.label)}" for c in crop.culls)
        self.culled_label.setText(say("Culled: {culls}", culls=culls) if culls else "")
        self.culled_label.setVisible(bool(culls))
        for cause, stepper in self.cause_steppers.items():
            stepper.set_value(crop.cull_count(cause))

    def _cause(self, cause: CullCause, key: str, keys: FigureKeys) -> CountStepper:
        words = say(cause.label)
        stepper = make_stepper(words[:1].upper() + words[1:], key, keys, name=f"cull.{cause.value}")
        stepper.value_changed.connect(partial(self._cause_counted, cause))
        self.causes.add(stepper)
        return stepper

    def _cause_counted(self, cause: CullCause, count: int) -> None:
        before = self._model.crop.cull_count(cause)
        if count != before:
            self._model.cull(cause, count - before)

    def _typing(self, text: str) -> None:
        self.show_said("", False)  # what was refused is being mended
        self._model.type_weight(text)
        if self._letter:  # it may be half of the weight, so this stays said until the figures are entered or gone
            self._model.letter_after_figures(self._letter)

    def _letter_refused(self, letter: str) -> None:
        self._letter = letter

    def _connect(self) -> None:
        self.line.textEdited.connect(self._typing)
        self.line.letter_after_figures.connect(self._letter_refused)
        self.chips.struck.connect(self._model.strike)
        self.cull_button.toggled.connect(self.causes.setVisible)
        self.pad_button.toggled.connect(self.pad.setVisible)
        self._model.changed.connect(self.show_tally)
        theme_signal().changed.connect(self._fit)

    def _place(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(MarkSign("pick"))
        head.addWidget(TextLabel(say("Picked"), "heading"), 1)
        figures = QVBoxLayout()
        figures.setSpacing(2)
        figures.addStretch(1)
        for label in (self.running_label, self.culled_label, self.so_far_label):
            figures.addWidget(label)
        figures.addStretch(1)
        weight = QHBoxLayout()
        weight.setSpacing(8)
        weight.addWidget(self.line)
        weight.addWidget(TextLabel(self._unit, "unit"))
        weight.addStretch(1)
        scale = self._scale = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        scale.setSpacing(16)
        scale.addLayout(weight)
        scale.addLayout(figures, 1)
        buttons = FlowLayout()
        buttons.addWidget(self.cull_button)
        buttons.addWidget(self.pad_button)
        left = QVBoxLayout()
        left.setSpacing(8)
        for part in (head, scale, self.said_label, self.chips, buttons):
            left.addWidget(part) if isinstance(part, QWidget) else left.addLayout(part)
        left.addStretch(1)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(16)
        grid.addLayout(left, 0, 0)
        grid.addWidget(self.pad, 0, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.causes, 1, 0, 1, 2)
        grid.setColumnStretch(0, 1)

    def _fit(self) -> None:
        look, way = current(), QBoxLayout.Direction
        self.line.setFixedWidth(look.px(_LINE_PX))
        self._scale.setDirection(way.LeftToRight if look.scale <= LARGE_TEXT else way.TopToBottom)
