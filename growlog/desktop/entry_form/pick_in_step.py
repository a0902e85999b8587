"""Keeps the count and the total of a pick in step with its single weights, as long as nobody typed otherwise."""

from PySide6.QtCore import QObject, Signal

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.entry_form.weights_field import WeightsField


class PickInStep(QObject):
    """Where every fruit is weighed singly, count and total follow the weights."""

    followed = Signal()

    def __init__(self, count: MeasureField, total: MeasureField, weights: WeightsField, parent: QObject) -> None:
        super().__init__(parent)
        self._count = count
        self._total = total
        self._weights = weights
        self._before = weights.value()
        weights.value_changed.connect(self._follow)

    def _follow(self) -> None:
        before, now = self._before, self._weights.value()
        self._before = now
        count = int(self._count.value() or 0)
        counted_by_weights = count == len(before)
        if counted_by_weights or count < len(now):
            self._count.set_value(len(now) or None)
        total = self._total.value()
        followed = total is None or abs(total - sum(before)) < 0.05
        if followed and (counted_by_weights or count <= len(now)):
            self._total.set_value(round(sum(now), 1) or None)
        self.followed.emit()
