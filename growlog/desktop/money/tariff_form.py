"""The form of a tariff: from which day, its bands by the time of day, and what a day costs with nothing used."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, time

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import (
    Button,
    Card,
    DayField,
    Field,
    FlowLayout,
    FormGrid,
    NumberField,
    SectionTitle,
    TextField,
    TextLabel,
    TimeField,
)
from growlog.desktop.money.money_field import MoneyField
from growlog.records.problems import Problem
from growlog.records.tariff import Tariff, TariffBand
from growlog.words import say

_PRICE_DECIMALS = 5


class BandRow(QWidget):
    """From a time until another, and the price of a kWh."""

    remove_wanted = Signal(object)
    edited = Signal()

    def __init__(self, band: TariffBand, currency: str) -> None:
        super().__init__()
        self._band = band
        self.from_field = TimeField(say("From"), band.from_at, name="from_at")
        self.until_field = TimeField(say("Until"), band.until_at, name="until_at")
        unit = f"{currency}/kWh" if currency else "/kWh"
        self.price_field = NumberField(say("Price"), unit, 0, 1000, _PRICE_DECIMALS, name="price", required=True)
        self.price_field.set_value(_number(band.price_per_kwh))
        self.price_field.clear_message()
        self._shown_price = self.price_field.line.text()
        self.remove_button = IconButton("close", say("Take the band out"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(16)
        for field in self.fields():
            row.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
            field.value_changed.connect(self.edited)
        row.addWidget(self.remove_button, 0, Qt.AlignmentFlag.AlignBottom)
        row.addStretch(1)
        self.remove_button.clicked.connect(self._remove)

    def fields(self) -> list[Field]:
        """Its fields."""
        return [self.from_field, self.until_field, self.price_field]

    def band(self) -> TariffBand:
        """What stands in the fields; an empty time is midnight."""
        text = self._band.price_per_kwh
        if self.price_field.line.text() != self._shown_price or not text:
            value = self.price_field.value()
            text = "" if value is None else f"{value:.{_PRICE_DECIMALS}f}".rstrip("0").rstrip(".")
        return TariffBand(self.from_field.value() or time(0), self.until_field.value() or time(0), text)

    def _remove(self) -> None:
        self.remove_wanted.emit(self)


class TariffForm(Card):
    """Says while one types where bands overlap or leave a gap. Emits what is to be written."""

    saved = Signal(object)
    removed = Signal(object)
    left = Signal()

    def __init__(self, tariff: Tariff, is_new: bool, currency: str, today: date) -> None:
        super().__init__()
        self.setObjectName("tariffForm")
        self._before, self._is_new, self._currency = tariff, is_new, currency
        self.name_field = TextField(say("Name"), tariff.name, required=True, name="name")
        self.day_field = DayField(say("Holds from"), tariff.from_day, near=today, required=True, name="from_day")
        self.daily_field = MoneyField(
            say("A day costs with nothing used"),
            currency,
            tariff.daily_charge_minor,
            "daily_charge_minor",
            per=say("day"),
        )
        self.bands_column = QVBoxLayout()
        self.rows: list[BandRow] = []
        self.bands_label = TextLabel("", "message", wraps=True)
        self.bands_label.setProperty("state", "problem")
        self.add_button = Button(say("Add a band"), "", "plus", "addBand")
        self.save_button = Button(f"{say('Save the tariff')}  Ctrl \u23ce", "primary", name="saveTariff")
        self.leave_button = Button(say("Leave it"), name="leaveTariff")
        self.remove_button = Button(say("Remove the tariff"), "link", "bin", "removeTariff")
        self._place()
        for band in tariff.bands:
            self._add_row(band)
        self._connect()
        self._judge()

    @property
    def tariff_id(self) -> str:
        """Which tariff it is."""
        return self._before.id

    def tariff(self) -> Tariff:
        """What stands in the fields."""
        return replace(
            self._before,
            name=self.name_field.value(),
            from_day=self.day_field.value() or self._before.from_day,
            bands=tuple(row.band() for row in self.rows),
            daily_charge_minor=self.daily_field.minor(),
        )

    def save(self) -> None:
        """Emits the tariff, or goes to the first field that is refused."""
        refused = [field for field in self._fields() if not field.check()]
        if refused:
            refused[0].setFocus(Qt.FocusReason.OtherFocusReason)
            return
        problems = [p for p in self.tariff().problems() if not p.asks]
        if problems:
            self.show_problems(problems)
            return
        self.saved.emit(self.tariff())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Sentences beside their fields, or below the bands."""
        by_name = {field.objectName(): field for field in (self.name_field, self.day_field, self.daily_field)}
        for problem in problems:
            if problem.field in by_name:
                by_name[problem.field].show_problem(problem.sentence)
            else:
                self._say_of_bands(problem.sentence)

    def add_band(self) -> BandRow:
        """A band from where the last one ends until where the first begins."""
        bands = [row.band() for row in self.rows]
        start = bands[-1].until_at if bands else time(0)
        end = bands[0].from_at if bands else time(0)
        row = self._add_row(TariffBand(start, end, ""))
        row.from_field.setFocus()
        self._judge()
        return row

    def _fields(self) -> list[Field]:
        bands = [field for row in self.rows for field in row.fields()]
        return [self.name_field, self.day_field, self.daily_field, *bands]

    def _place(self) -> None:
        grid = FormGrid(3, 150)
        grid.add(self.name_field, self.day_field, self.daily_field)
        self.bands_column.setSpacing(8)
        self.body.addWidget(grid)
        self.body.addWidget(SectionTitle(say("Prices by the time of day")))
        words = say("A band may cross midnight. The same time twice is the whole day.")
        self.body.addWidget(TextLabel(words, "small", wraps=True))
        self.body.addLayout(self.bands_column)
        self.body.addWidget(self.bands_label)
        self.body.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        buttons = FlowLayout()
        buttons.addWidget(self.remove_button)
        buttons.add_gap()
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.save_button)
        self.remove_button.setVisible(not self._is_new)
        self.body.addLayout(buttons)

    def _connect(self) -> None:
        self.add_button.clicked.connect(self.add_band)
        self.save_button.clicked.connect(self.save)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            around = Qt.ShortcutContext.WidgetWithChildrenShortcut
            QShortcut(QKeySequence(keys), self, context=around).activated.connect(self.save)
        self.leave_button.clicked.connect(self.left)
        self.remove_button.clicked.connect(self._remove)

    def _add_row(self, band: TariffBand) -> BandRow:
        row = BandRow(band, self._currency)
        row.edited.connect(self._judge)
        row.remove_wanted.connect(self._remove_row)
        self.rows.append(row)
        self.bands_column.addWidget(row)
        return row

    def _remove_row(self, row: BandRow) -> None:
        self.rows.remove(row)
        row.hide()
        row.deleteLater()
        self._judge()

    def _judge(self) -> None:
        """Only what bands are beside each other is said while prices are still missing."""
        bands = tuple(replace(row.band(), price_per_kwh="0") for row in self.rows)
        problems = replace(self._before, name="-", bands=bands, daily_charge_minor=None).problems()
        self._say_of_bands(" ".join(p.sentence for p in problems if p.field == "bands"))

    def _say_of_bands(self, sentence: str) -> None:
        self.bands_label.setText(sentence)
        self.bands_label.setVisible(bool(sentence))

    def _remove(self) -> None:
        self.removed.emit(self._before)


def _number(text: str) -> float | None:
    try:
        return float(text)
    except ValueError:
        return None
