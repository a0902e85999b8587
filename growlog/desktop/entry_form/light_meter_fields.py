"""What a light meter for people shows at the canopy: lux or foot-candles, and under what kind of lamp."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QWidget

from growlog.calculations.explained_figure import Figure
from growlog.calculations.lamp_light import (
    LAMP_FACTORS,
    LUX_PER_FOOT_CANDLE,
    WHITE_LED,
    explain_ppfd_from_lux,
    lamp_factor,
    own_factor,
    with_own_factor,
)
from growlog.desktop.entry_form.display_units import US, DisplayUnit
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.widgets import ChoiceField, Field, NumberField, TextLabel
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.records.display import THIN
from growlog.words import say, show_number

LUX, FOOT_CANDLES = "lux", "foot-candles"


class LuxField(MeasureField):
    """A reading in lux or foot-candles, kept in lux. Another unit means other light by the same figures."""

    def __init__(self, system: str, name: str) -> None:
        super().__init__("canopy_lux", say("Light meter at the canopy"), system, name)
        self.unit_box: QComboBox = CalmComboBox()
        self.unit_box.setMinimumContentsLength(6)
        self.unit_box.setObjectName(f"{name}.unit")
        self.unit_box.setAccessibleName(say("Unit of the light meter"))
        self.unit_box.addItem(say("lux"), LUX)
        self.unit_box.addItem(say("foot-candles"), FOOT_CANDLES)
        self.row.addWidget(self.unit_box)
        self.unit_label.hide()
        self._in_lux = self._display
        self.unit_box.setCurrentIndex(1 if system == US else 0)
        self._take_unit()
        self.unit_box.currentIndexChanged.connect(self._unit_chosen)

    def set_unit_key(self, key: str) -> None:
        """LUX or FOOT_CANDLES, as if chosen."""
        self.unit_box.setCurrentIndex(self.unit_box.findData(key))

    def _take_unit(self) -> None:
        if self.unit_box.currentData() == FOOT_CANDLES:
            self._display = DisplayUnit(say("foot-candles"), 0, _foot_candles, _lux)
        else:
            self._display = self._in_lux

    def _unit_chosen(self) -> None:
        kept = self._untouched if self.line.text() == self._untouched_text else None
        self._take_unit()
        if kept is not None:
            self.set_value(kept)
        self.value_changed.emit()


class LampKindField(Field):
    """A key of the table of light factors, with the grower's own factor behind it where one is typed."""

    def __init__(self, label: str, name: str) -> None:
        kinds = [(WHITE_LED, say("white LEDs")), *((f.key, say(f.name)) for f in LAMP_FACTORS)]
        self._kinds = kinds
        self.holder = QWidget()
        self.kind_field = ChoiceField("", kinds, None, say("not stated"), f"{name}.kind")
        self.factor_field = NumberField("", say("lux per µmol/m²/s"), 10, 200, 2, name=f"{name}.factor")
        self.factor_field.line.setAccessibleName(say("Your own factor, lux per µmol/m²/s"))
        row = QHBoxLayout(self.holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.kind_field, 1)
        row.addWidget(self.factor_field, 1)
        super().__init__(label, self.holder, "", name)
        self.setFocusProxy(self.kind_field)
        self.words_label = TextLabel("", "small", wraps=True)
        layout = self.layout()
        if layout is not None:
            layout.addWidget(self.words_label)
        self.kind_field.value_changed.connect(self._changed)
        self.factor_field.value_changed.connect(self._changed)
        self._show_factor()

    def value(self) -> str:
        """As a reading keeps it, "" where nothing is chosen."""
        kind = self.kind_field.value()
        if not kind:
            return ""
        factor = self.factor_field.value()
        return kind if ":" in kind else with_own_factor(kind, None if factor is None else float(factor))

    def set_value(self, kept: str) -> None:
        """Shows what a reading keeps; a kind that is not in the table goes by its key."""
        try:
            kind, factor = own_factor(kept)
        except ValueError:
            kind, factor = kept, None
        unknown = [] if not kind or kind in dict(self._kinds) else [(kind, kind)]
        self.kind_field.set_choices([*self._kinds, *unknown], kind or None)
        self.factor_field.set_value(factor)
        self._show_factor()

    def check(self) -> bool:
        """The own factor must be one that a lamp can have."""
        self.show_problem("" if self.factor_field.check() else self.factor_field.refusal)
        self.factor_field.message_label.hide()
        return not self.is_refused

    def show_estimate(self, lux: float | None) -> None:
        """What the reading amounts to, with its range and source."""
        self.words_label.setText(estimate_words(lux, self.value()))
        self.words_label.setVisible(bool(self.words_label.text()))

    def _changed(self) -> None:
        self._show_factor()
        self.value_changed.emit()
        self.editing_finished.emit()

    def _show_factor(self) -> None:
        kind = self.kind_field.value()
        published = None if kind is None else _published(kind)
        self.factor_field.setVisible(bool(kind))
        self.factor_field.line.setPlaceholderText("" if published is None else show_number(published, 1))


class LuxWithLamp(QObject):
    """Tells the kind of lamp what the meter shows, so that it can say what that amounts to."""

    def __init__(self, lux: LuxField, lamp: LampKindField, parent: QObject) -> None:
        super().__init__(parent)
        self._lux, self._lamp = lux, lamp
        lux.value_changed.connect(self._follow)
        lamp.value_changed.connect(self._follow)
        self._follow()

    def _follow(self) -> None:
        self._lamp.show_estimate(self._lux.value())


def estimate_words(lux: float | None, lamp_kind: str) -> str:
    """The light at the canopy in a sentence; what is missing where it cannot be worked out; "" without a reading."""
    if not lux:
        return ""
    if not lamp_kind:
        return say("Choose the kind of lamp, so that the light at the canopy can be worked out.")
    try:
        kind, factor = own_factor(lamp_kind)
        figure = explain_ppfd_from_lux(lux, kind, factor)
    except ValueError:
        return say("No published factor fits these lamps. Type your own, in lux per µmol/m²/s.")
    return _figure_words(figure)


def _figure_words(figure: Figure) -> str:
    value = f"{_whole(figure.value)}{THIN}µmol/m²/s"
    if figure.low is None or figure.high is None:
        return say("About {value}, by your own factor.", value=value)
    return say("About {value}, {low} to {high} ({source}).", value=value, low=_whole(figure.low),
               high=_whole(figure.high), source=say(figure.source))  # fmt: skip


def _whole(value: object) -> str:
    return show_number(float(value), 0) if isinstance(value, (int, float)) else ""


def _published(kind: str) -> float | None:
    try:
        factor = lamp_factor(kind)
    except ValueError:
        return None
    return None if factor is None else factor.lux


def _foot_candles(lux: float) -> float:
    return lux / LUX_PER_FOOT_CANDLE


def _lux(foot_candles: float) -> float:
    return round(foot_candles * LUX_PER_FOOT_CANDLE, 1)
