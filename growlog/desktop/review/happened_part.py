"""What happened, and what was noted, by plant age."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, TextLabel
from growlog.desktop.review.wording import age_and_day
from growlog.services.review.model import Happening
from growlog.words import say, say_count

_FIRST_SHOWN = 30


class DayButton(Button):
    """A plant age; pressed, it goes to that day."""

    wanted = Signal(object)  # date

    def __init__(self, happening: Happening) -> None:
        super().__init__(say("day {age}", age=happening.age), "link", name=f"day.{happening.age}")
        self._day = happening.day
        self.setToolTip(age_and_day(happening.age, happening.day))
        self.clicked.connect(self._tell)

    def _tell(self) -> None:
        self.wanted.emit(self._day)


class HappenedPart(QWidget):
    """A list of days with their words; a long one is shown whole only when asked."""

    day_wanted = Signal(object)

    def __init__(self, title: str, happenings: Sequence[Happening], empty: str) -> None:
        super().__init__()
        self._all = list(happenings)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(1, 1)
        more = say_count("Show {n} more", "Show {n} more", len(self._all) - _FIRST_SHOWN)
        self.more_button = Button(more, "link", name="more")
        self.more_button.setVisible(len(self._all) > _FIRST_SHOWN)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(TextLabel(title, "heading"))
        if not self._all:
            column.addWidget(TextLabel(empty, "", "mute", wraps=True))
        column.addLayout(self._grid)
        column.addWidget(self.more_button, 0, Qt.AlignmentFlag.AlignLeft)
        self._add(self._all[:_FIRST_SHOWN])
        self.more_button.clicked.connect(self.show_all)

    def show_all(self) -> None:
        """The rest too."""
        self.more_button.hide()
        self._add(self._all[_FIRST_SHOWN:])

    def days(self) -> list[date]:
        """The days in their order."""
        return [h.day for h in self._all]

    def _add(self, happenings: Sequence[Happening]) -> None:
        for happening in happenings:
            row = self._grid.rowCount()
            button = DayButton(happening)
            button.wanted.connect(self.day_wanted)
            self._grid.addWidget(button, row, 0, Qt.AlignmentFlag.AlignTop)
            label = TextLabel(happening.text, wraps=True)
            label.setContentsMargins(0, 4, 0, 0)
            self._grid.addWidget(label, row, 1, Qt.AlignmentFlag.AlignTop)
