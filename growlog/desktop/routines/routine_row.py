"""One routine in the list: its name, its rule in words, and what can be done with it."""

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QVBoxLayout

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import Card, TextLabel
from growlog.desktop.routines.wording import line_of
from growlog.records.routine import Routine
from growlog.words import say


class RoutineRow(Card):
    """Switches it on and off at once; changing and removing are asked for."""

    switched = Signal(object, bool)
    change_wanted = Signal(object)
    remove_wanted = Signal(object)

    def __init__(self, routine: Routine, crop_names: Mapping[str, str]) -> None:
        super().__init__(margin_px=8)
        self.routine = routine
        self.setObjectName(f"routine.{routine.name}")
        self.name_label = TextLabel(routine.name, "strong", wraps=True)
        self.line_label = TextLabel(line_of(routine, crop_names), "small", "mute", wraps=True)
        self.on_box = QCheckBox(say("on"))
        self.on_box.setAccessibleName(say("{name} is on", name=routine.name))
        self.on_box.setChecked(routine.is_on)
        self.change_button = IconButton("edit", say("Change {name}", name=routine.name))
        self.remove_button = IconButton("bin", say("Remove {name}", name=routine.name))
        self._place()
        self.on_box.clicked.connect(self._switched)
        self.change_button.clicked.connect(self._change)
        self.remove_button.clicked.connect(self._remove)

    def _place(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(8)
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(self.name_label)
        words.addWidget(self.line_label)
        row.addLayout(words, 1)
        for widget in (self.on_box, self.change_button, self.remove_button):
            row.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)
        self.body.addLayout(row)

    def _switched(self, is_on: bool) -> None:
        self.switched.emit(self.routine, is_on)

    def _change(self) -> None:
        self.change_wanted.emit(self.routine)

    def _remove(self) -> None:
        self.remove_wanted.emit(self.routine)
