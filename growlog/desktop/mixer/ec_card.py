"""What the tank will read on a meter: the estimate with its band, the water's part, the own meter, the last reading."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout

from growlog.calculations.conductivity import meter_ppm
from growlog.desktop.look.widgets import Card, ChoiceField, TextLabel
from growlog.records.display import THIN
from growlog.services.mixer import EcView
from growlog.words import say, show_day, show_number

_MS, _US = "ms", "us"
_SCALES = (500, 640, 700)


class EcCard(Card):
    """Shows an EC in the unit that is chosen; the 500, 640 and 700 scales are named as scales of a meter."""

    def __init__(self) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("ecCard")
        self._view: EcView | None = None
        self._without: tuple[str, ...] = ()
        choices = [(_MS, "mS/cm"), (_US, "µS/cm")]
        choices += [(str(scale), say("{scale} scale of a meter", scale=scale)) for scale in _SCALES]
        self.unit_field = ChoiceField("", choices, _MS, name="mixer.ecUnit")
        self.unit_field.editor.setAccessibleName(say("Unit of the EC"))
        self.title_label = TextLabel(say("EC at 25 °C, from the ions"), "field-label")
        self.value_label = TextLabel("", "figure")
        self.unit_label = TextLabel("", "unit")
        self.band_label = TextLabel("", "small", wraps=True)
        self.meter_label = TextLabel("", wraps=True)
        self.last_label = TextLabel("", wraps=True)
        self.scale_label = TextLabel("", "small", wraps=True)
        self._place()
        self.unit_field.value_changed.connect(self._write)
        self.show_ec(None)

    def show_ec(self, view: EcView | None, without: tuple[str, ...] = ()) -> None:
        """An estimate; None where the mix cannot be worked out yet. without: products whose part in it is not known."""
        self._view, self._without = view, without
        self._write()

    def text_of(self, ec_ms_per_cm: float) -> str:
        """An EC as the chosen unit has it, without the unit."""
        unit = self.unit_field.value()
        if unit == _MS:
            return show_number(ec_ms_per_cm, 2)
        if unit == _US:
            return show_number(ec_ms_per_cm * 1000, 0)
        return show_number(meter_ppm(ec_ms_per_cm)[int(unit or 500)], 0)

    def _unit_words(self) -> str:
        unit = self.unit_field.value()
        return {_MS: "mS/cm", _US: "µS/cm"}.get(unit or _MS, say("on the {scale} scale", scale=unit))

    def _place(self) -> None:
        figure = QHBoxLayout()
        figure.setSpacing(8)
        figure.addWidget(self.value_label, 0, Qt.AlignmentFlag.AlignBaseline)
        figure.addWidget(self.unit_label, 0, Qt.AlignmentFlag.AlignBaseline)
        figure.addStretch(1)
        left, right = QVBoxLayout(), QVBoxLayout()
        for column in (left, right):
            column.setSpacing(2)
        left.addWidget(self.title_label)
        left.addLayout(figure)
        left.addWidget(self.band_label)
        right.addWidget(self.unit_field, 0, Qt.AlignmentFlag.AlignRight)
        grid = QGridLayout()
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 2)
        grid.addLayout(left, 0, 0)
        grid.addLayout(right, 0, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.meter_label, 1, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.last_label, 1, 1, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(grid)
        self.body.addWidget(self.scale_label)

    def _write(self) -> None:
        view, unit = self._view, self._unit_words()
        on_scale = self.unit_field.value() not in (_MS, _US)
        self.scale_label.setText(say("A scale of the meter, not mg/L of nutrients."))
        self.scale_label.setVisible(on_scale)
        self.unit_label.setText(unit)
        for label in (self.band_label, self.meter_label, self.last_label):
            label.setVisible(view is not None)
        if view is None:
            self.value_label.setText(say("not yet"))
            self.unit_label.setText("")
            return
        self.value_label.setText(self.text_of(view.estimate))
        self.band_label.setText(
            say("{low} to {high}, water {water} of it", low=self.text_of(view.low), high=self.text_of(view.high),
                water=self.text_of(view.of_water))
        )  # fmt: skip
        self.meter_label.setText(self._meter_words(view, unit))
        self.last_label.setText(self._last_words(view, unit))

    def _meter_words(self, view: EcView, unit: str) -> str:
        if self._without:
            return say("What {products} adds to it is not known.", products=", ".join(self._without))
        if view.your_meter is None:
            return say("What your meter will read: {why}.", why=view.offset_words)
        reading = f"{self.text_of(view.your_meter)}{THIN}{unit}"
        return say("Your meter will read {reading}, {why}.", reading=reading, why=view.offset_words)

    def _last_words(self, view: EcView, unit: str) -> str:
        last = view.last_reading
        if last is None:
            return say("No reading yet.")
        reading = f"{self.text_of(last.ec_ms_per_cm)}{THIN}{unit}"
        when = show_day(last.day) if last.age is None else say("day {age}", age=last.age)
        return say("Last reading {reading}, {when}.", reading=reading, when=when)
