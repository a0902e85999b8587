"""The grower's own ranges, typed element by element."""

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QGridLayout, QWidget

from growlog.calculations.nutrients import AMMONIUM_N, ELEMENTS
from growlog.desktop.look.widgets import DialogFrame, NumberField, TextField, TextLabel, check_all
from growlog.services.mixer import Range
from growlog.words import say

_KEYS = ("N", AMMONIUM_N, *ELEMENTS[1:])
_MOST_MG = 20000.0


class OwnTargetDialog(DialogFrame):
    """Emits a name and the ranges in mg/L; an empty field is open to that side."""

    confirmed = Signal(str, object)  # dict[str, Range]
    removed = Signal(str)

    def __init__(
        self, ranges: Mapping[str, Range], name: str = "", parent: QWidget | None = None, *, is_kept: bool = False
    ) -> None:
        """is_kept: the logbook has it under this name, so it can be removed."""
        super().__init__(say("Own ranges"), say("mg/L of each element"), parent, 440)
        self.setObjectName("ownTarget")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._given = ranges
        self.name_field = TextField(say("Name"), name, longest=60, placeholder=say("grower's own"), name="target_name")
        self.fields: dict[str, tuple[NumberField, NumberField]] = {}
        self.body.addWidget(self.name_field)
        self.body.addWidget(
            TextLabel(
                say("Leave a field empty where there is no limit. With a name it is kept for other days."),
                "small",
                wraps=True,
            )
        )
        self.body.addLayout(self._grid())
        self.body.addStretch(1)
        self.remove_button = self.add_button(say("Remove this target"), "danger", "removeTarget", left=True)
        self.remove_button.setVisible(is_kept)
        self._name = name
        self.leave_button = self.add_button(say("Cancel"), name="leave")
        self.take_button = self.add_button(f"{say('Use these')}  Ctrl \u23ce", "primary", "take")
        self.take_button.setDefault(False)
        self.leave_button.clicked.connect(self.reject)
        self.take_button.clicked.connect(self.confirm)
        self.remove_button.clicked.connect(self._remove)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def ranges(self) -> dict[str, Range]:
        """The ranges as they stand; one that was not touched keeps its source."""
        found = {}
        for key, (low, high) in self.fields.items():
            given = self._given.get(key)
            typed = Range(low.value(), high.value())
            if typed.low is None and typed.high is None:
                continue
            same = given is not None and (_shown(given.low), _shown(given.high)) == (typed.low, typed.high)
            found[key] = given if same and given is not None else typed
        return found

    def confirm(self) -> None:
        """Emits the ranges where all fields can be read and none ends below where it begins."""
        if not check_all([f for pair in self.fields.values() for f in pair]):
            return
        for low, high in self.fields.values():
            if None not in (low.value(), high.value()) and (low.value() or 0) > (high.value() or 0):
                high.show_problem(say("Below where it begins."))
                high.setFocus()
                return
        self.confirmed.emit(self.name_field.value(), self.ranges())
        self.accept()

    def _remove(self) -> None:
        self.removed.emit(self._name)
        self.accept()

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(0, 1)
        grid.addWidget(TextLabel(say("from"), "field-label"), 0, 1)
        grid.addWidget(TextLabel(say("to"), "field-label"), 0, 2)
        for row, key in enumerate(_KEYS, 1):
            given = self._given.get(key, Range(None, None))
            pair = []
            for column, (word, value) in enumerate(((say("from"), given.low), (say("to"), given.high)), 1):
                field = NumberField("", "", 0, _MOST_MG, decimals=3, name=f"own.{key}.{column}")
                field.editor.setAccessibleName(f"{key} {word} mg/L")
                field.set_value(_shown(value))
                grid.addWidget(field, row, column, Qt.AlignmentFlag.AlignTop)
                pair.append(field)
            grid.addWidget(TextLabel(say("of it NH₄–N") if key == AMMONIUM_N else key, "strong"), row, 0)
            self.fields[key] = (pair[0], pair[1])
        return grid


def _shown(value: float | None) -> float | None:
    return None if value is None else round(value, 3)
