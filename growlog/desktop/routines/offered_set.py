"""The set of routines that is offered where there is none: boxes to tick, nothing is forced."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QVBoxLayout

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Button, Card, TextLabel
from growlog.desktop.routines.wording import line_of
from growlog.services.due import Offered
from growlog.words import say


class OfferedSet(Card):
    """Ticked at first is what something that grows now has a use for."""

    chosen = Signal(object)  # list[Routine]

    def __init__(self, offered: Sequence[Offered]) -> None:
        super().__init__()
        self._offered = list(offered)
        self.body.addWidget(TextLabel(say("Nothing is asked of you yet"), "heading"))
        sentence = say("Tick what you do in your room. Each can be changed, switched off or removed later.")
        self.body.addWidget(TextLabel(sentence, "small", "mute", wraps=True))
        self.boxes = [_box(one) for one in self._offered]
        for box, one in zip(self.boxes, self._offered, strict=True):
            line = TextLabel(line_of(one.routine, {}), "small", "mute", wraps=True)
            line.setContentsMargins(current().px(24), 0, 0, 0)
            pair = QVBoxLayout()
            pair.setSpacing(0)
            pair.addWidget(box)
            pair.addWidget(line)
            self.body.addLayout(pair)
            box.toggled.connect(self._toggled)
        self.add_button = Button(say("Add the ticked ones"), "primary", name="addTicked")
        self.body.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.add_button.clicked.connect(self._choose)
        self._toggled()

    def _toggled(self, _ticked: bool = False) -> None:
        self.add_button.setEnabled(any(box.isChecked() for box in self.boxes))

    def _choose(self) -> None:
        ticked = [o.routine for box, o in zip(self.boxes, self._offered, strict=True) if box.isChecked()]
        self.chosen.emit(ticked)


def _box(offered: Offered) -> QCheckBox:
    box = QCheckBox(offered.routine.name)
    box.setObjectName(f"offered.{offered.routine.name}")
    box.setChecked(offered.fits)
    return box
