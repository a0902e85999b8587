"""Plain water has no mix: ticking it takes the mix out, unticking brings it back."""

from PySide6.QtCore import QObject, Signal

from growlog.desktop.entry_form.plain_fields import TickField
from growlog.desktop.look.widgets import ChoiceField


class WaterWithoutMix(QObject):
    """Watches the tick of a feed."""

    followed = Signal()

    def __init__(self, water: TickField, mix: ChoiceField, parent: QObject) -> None:
        super().__init__(parent)
        self._water = water
        self._mix = mix
        self._before = mix.value()
        water.value_changed.connect(self._follow)

    def _follow(self) -> None:
        if self._water.value():
            self._before = self._mix.value()
            self._mix.set_value(None)
        else:
            self._mix.set_value(self._before)
        self.followed.emit()
