"""The counters of a crop: what was not weighed, pollinated, seen and taken off; only those that fit the crop."""

from functools import partial

from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import CountStepper, TimeField
from growlog.desktop.tally.figure_keys import FigureKeys
from growlog.desktop.tally.keys import KEY_OF, UNWEIGHED
from growlog.desktop.tally.stepper import make_stepper
from growlog.desktop.tally.tally_model import TallyModel
from growlog.desktop.tally.touch import touch
from growlog.desktop.tally.wrap_grid import WrapGrid
from growlog.records.limits import limit
from growlog.services.tally import COUNTERS
from growlog.words import say

_KINDS = {"old_leaves_removed": "training", "side_shoots_removed": "training"}


class CountersSection(QWidget):
    """Counters side by side, and the time of the pollination, which is its own."""

    def __init__(self, model: TallyModel, keys: FigureKeys) -> None:
        super().__init__()
        self._model = model
        self._keys = keys
        self.grid = WrapGrid(184)
        self.unweighed = make_stepper(say("Count without weighing"), UNWEIGHED, keys, "pick", "unweighed")
        self.steppers = {name: self._counter(name) for name in COUNTERS}
        self.time_field = TimeField(say("Pollinated at"), name="pollinatedAt")
        touch(self.time_field.line)
        self.grid.add(self.unweighed, *self.steppers.values(), self.time_field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.grid)
        self.unweighed.value_changed.connect(model.set_unweighed)
        self.time_field.editing_finished.connect(self._time_written)
        model.changed.connect(self.show_tally)
        self._fitting: tuple[str, ...] | None = None
        self.show_tally()

    def show_tally(self) -> None:
        """Draws what the model holds."""
        crop, row = self._model.crop, self._model.row
        self.unweighed.set_value(crop.unweighed_count)
        for name, stepper in self.steppers.items():
            stepper.set_value(getattr(crop, name))
        fitting = () if row is None else row.counters
        shown = tuple(n for n in COUNTERS if n in fitting or getattr(crop, n))
        pollinated = bool(crop.females_pollinated or crop.trusses_vibrated)
        if not self.time_field.line.hasFocus() and self.time_field.value() != crop.pollinated_at:
            self.time_field.set_value(crop.pollinated_at)
        if (*shown, str(pollinated)) != self._fitting:
            self._fitting = (*shown, str(pollinated))
            for name, stepper in self.steppers.items():
                stepper.setVisible(name in shown)
            self.time_field.setVisible(pollinated)
            self.grid.relay()

    def _counter(self, name: str) -> CountStepper:
        words = say(limit(name).label)
        stepper = make_stepper(words, KEY_OF[name], self._keys, _KINDS.get(name, "pollination"), name)
        stepper.value_changed.connect(partial(self._model.set_count, name))
        return stepper

    def _time_written(self) -> None:
        if self.time_field.check():
            self._model.set_pollination_time(self.time_field.value())
