"""A plant age among those that have a photo."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QSpinBox


class AgeField(QSpinBox):
    """Steps from one age with a photo to the next; what is typed between two goes to the nearer one."""

    age_chosen = Signal(int)

    def __init__(self, ages: Sequence[int], age: int, words: str) -> None:
        super().__init__()
        self._ages = tuple(sorted(ages)) or (age,)
        self.setRange(self._ages[0], self._ages[-1])
        self.lineEdit().setTextMargins(8, 0, 0, 0)
        self.setKeyboardTracking(False)
        self.setAccessibleName(words)
        self._age = age
        self.setValue(age)
        self.valueChanged.connect(self._changed)

    def stepBy(self, steps: int) -> None:
        """To the next age that has a photo."""
        later = [a for a in self._ages if a > self.value()]
        earlier = [a for a in self._ages if a < self.value()]
        if steps > 0 and later:
            self.setValue(later[min(steps, len(later)) - 1])
        elif steps < 0 and earlier:
            self.setValue(earlier[max(steps, -len(earlier))])

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Not changed by accident."""
        event.ignore()

    def _changed(self, typed: int) -> None:
        nearest = min(self._ages, key=lambda a: (abs(a - typed), a))
        if nearest != typed:
            self.setValue(nearest)
            return
        if nearest != self._age:
            self._age = nearest
            self.age_chosen.emit(nearest)
