"""Electricity: the tariffs, and the meter held against the estimate."""

from collections.abc import Iterable
from datetime import date, time

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.locale_forms import day_in_form
from growlog.desktop.look.widgets import Button, FlowLayout, SectionTitle, TextLabel
from growlog.desktop.money.tariff_form import TariffForm
from growlog.desktop.money.wording import money_text
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.records.display import THIN, fixed
from growlog.records.problems import Problem
from growlog.records.tariff import Tariff, TariffBand
from growlog.services.energy.meter import MeterCheck
from growlog.services.money.book import MoneyBook
from growlog.services.open_logbook import new_id
from growlog.words import say, show_number


class PowerPage(QWidget):
    """Choosing a tariff opens its form; the form saves or takes it off."""

    saved = Signal(object)
    removed = Signal(object)
    form_opened = Signal(object)
    meter_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._book: MoneyBook | None = None
        self.form: TariffForm | None = None
        columns = [Column(say("From"), width_px=116), Column(say("Tariff"), width_px=180), Column(say("A kWh")),
                   Column(say("A day"), True, 110)]  # fmt: skip
        self.table = PlainTable(columns, say("Tariffs"), "tariffs", 6)
        self.none_label = TextLabel(
            say("No tariff is stated yet, so nothing is known of the cost of electricity."), "subtitle", wraps=True
        )
        self.add_button = Button(say("Add a tariff"), "", "plus", "addTariff")
        meter = [Column(say("Room"), width_px=120), Column(say("From, until")), Column(say("Meter"), True, 110),
                 Column(say("Estimate"), True, 110), Column(say("Difference"), True, 190)]  # fmt: skip
        self.meter_table = PlainTable(meter, say("The meter against the estimate"), "meterChecks", 8)
        self.meter_label = TextLabel("", "small", wraps=True)
        self.meter_button = Button(say("Add a meter reading…"), "", "plus", "addMeter")
        self._column = QVBoxLayout(self)
        self._place()
        self.table.row_chosen.connect(self._open_chosen)
        self.add_button.clicked.connect(self.add)
        self.meter_button.clicked.connect(self.meter_wanted)

    def show_book(self, book: MoneyBook) -> None:
        """Tariffs and meters as they stand; an open form stays."""
        self._book = book
        self.table.show_rows([_tariff_row(t, book.facts.currency) for t in book.tariffs])
        checks = [(room.name, check) for room in book.metered for check in room.checks]
        self.meter_table.show_rows([_meter_row(str(i), name, check) for i, (name, check) in enumerate(checks)])
        self.meter_table.setVisible(bool(checks))
        problems = dict.fromkeys(check.problem for _, check in checks if check.problem)
        words = say("Two readings of a room's meter let the estimate be held against what was counted.")
        self.meter_label.setText(" ".join(problems) if checks else words)
        self.meter_label.setVisible(bool(problems) or not checks)
        self._show_parts()

    def add(self) -> None:
        """A form for another tariff: one price for the whole day."""
        if self._book is not None:
            name = say("Tariff") if not self._book.tariffs else ""
            band = TariffBand(time(0), time(0), "")
            self._open(Tariff(new_id(), name, self._book.today, (band,)), is_new=True)

    def close_form(self) -> None:
        """Puts the form away."""
        if self.form is not None:
            self.form.hide()
            self.form.deleteLater()
            self.form = None
            self.table.clearSelection()
        self._show_parts()

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Why it was not written."""
        if self.form is not None:
            self.form.show_problems(problems)

    def _place(self) -> None:
        column = self._column
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(SectionTitle(say("Tariffs")))
        column.addWidget(self.table)
        column.addWidget(self.none_label)
        column.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addSpacing(8)
        column.addWidget(SectionTitle(say("The meter against the estimate")))
        column.addWidget(self.meter_table)
        column.addWidget(self.meter_label)
        row = FlowLayout()
        row.addWidget(self.meter_button)
        column.addLayout(row)
        column.addStretch(1)

    def _open_chosen(self, key: str) -> None:
        found = [t for t in self._book.tariffs if t.id == key] if self._book is not None else []
        if found and (self.form is None or self.form.tariff_id != key):
            self._open(found[0], is_new=False)

    def _open(self, tariff: Tariff, *, is_new: bool) -> None:
        if self._book is None:
            return
        if self.form is not None:
            self.form.hide()
            self.form.deleteLater()
        self.form = TariffForm(tariff, is_new, self._book.facts.currency, self._book.today)
        self.form.saved.connect(self.saved)
        self.form.removed.connect(self.removed)
        self.form.left.connect(self.close_form)
        self._column.insertWidget(self._column.indexOf(self.add_button), self.form)
        self.form.show()
        self._show_parts()
        if is_new:
            self.form.name_field.setFocus()
        self.form_opened.emit(self.form)

    def _show_parts(self) -> None:
        has_any = bool(self.table.rows())
        self.table.setVisible(has_any)
        self.none_label.setVisible(not has_any and self.form is None)
        self.add_button.setVisible(self.form is None)


def _tariff_row(tariff: Tariff, currency: str) -> Row:
    bands = "; ".join(_band_words(band, currency) for band in tariff.bands)
    daily = "" if tariff.daily_charge_minor is None else money_text(tariff.daily_charge_minor, currency)
    return Row(tariff.id, (_short(tariff.from_day), tariff.name, bands, daily), tip=bands)


def _short(day: date) -> str:
    return day_in_form(day, "yMMMd")


def _band_words(band: TariffBand, currency: str) -> str:
    price = f"{show_number(float(band.price_per_kwh), 4)}{THIN}{currency}".strip()
    if band.from_at == band.until_at:
        return price
    return f"{price} {band.from_at:%H:%M}\u2013{band.until_at:%H:%M}"


def _meter_row(key: str, room: str, check: MeterCheck) -> Row:
    days = f"{_short(check.from_day)} \u2013 {_short(check.until_day)}"
    difference = ("+" if check.difference_kwh > 0 else "") + fixed(check.difference_kwh, 1, "kWh")
    if check.difference_percent is not None:
        sign = "+" if check.difference_percent > 0 else ""
        difference += f", {sign}{show_number(check.difference_percent, 1)}{THIN}%"
    cells = (room, days, fixed(check.meter_kwh, 1, "kWh"), fixed(check.estimate_kwh, 1, "kWh"),
             say("see below") if check.problem else difference)  # fmt: skip
    return Row(key, cells, tip=check.problem, mute=bool(check.problem))
