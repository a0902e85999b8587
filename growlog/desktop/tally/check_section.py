"""The fruit check of a crop, folded away until it is wanted. Nothing typed is another thing than nought."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets.number_field import limited_number_field
from growlog.desktop.tally.figure_keys import FigureKeys
from growlog.desktop.tally.keys import FRUIT_CHECK
from growlog.desktop.tally.tally_model import TallyModel
from growlog.desktop.tally.touch import touch, touch_button, with_key
from growlog.desktop.tally.wrap_grid import WrapGrid
from growlog.records.entry import FruitCheck
from growlog.services.tally import FRUIT_CHECKS
from growlog.words import say


class CheckSection(QWidget):
    """A button that unfolds five counts."""

    def __init__(self, model: TallyModel, keys: FigureKeys) -> None:
        super().__init__()
        self._model = model
        self._shown_for = ""
        self.toggle = touch_button(with_key(say("Fruit check"), FRUIT_CHECK), name="fruitCheck")
        self.toggle.setCheckable(True)
        self.grid = WrapGrid(104)
        self.fields = {name: limited_number_field(name) for name in FRUIT_CHECKS}
        for name, field in self.fields.items():
            touch(field.line)
            keys.watch(field.line)
            field.value_changed.connect(partial(self._typed, name))
            self.grid.add(field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.toggle, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.grid)
        self.grid.hide()
        self.toggle.toggled.connect(self.grid.setVisible)
        model.changed.connect(self.show_tally)
        self.show_tally()

    def open_first(self) -> None:
        """Unfolds it and goes to the first count."""
        self.toggle.setChecked(True)
        self.fields[FRUIT_CHECKS[0]].line.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def show_tally(self) -> None:
        """Draws what the model holds; a field in hand is left to who types."""
        crop = self._model.crop
        other_crop, self._shown_for = crop.crop_id != self._shown_for, crop.crop_id
        for name, field in self.fields.items():
            kept = getattr(crop.fruit_check, name)
            if other_crop or (not field.line.hasFocus() and field.value() != kept and not field.is_refused):
                field.set_value(kept)
        if other_crop:
            self.toggle.setChecked(crop.fruit_check != FruitCheck())

    def check(self) -> bool:
        """Whether every count can be read."""
        return not [field for field in self.fields.values() if not field.check()]

    def _typed(self, name: str) -> None:
        field = self.fields[name]
        if not field.is_refused:
            value = field.value()
            self._model.set_check(name, None if value is None else int(value))
