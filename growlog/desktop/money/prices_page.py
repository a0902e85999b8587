"""The prices that belong to the logbook: its currency, the worth of an hour of work, and water."""

from collections.abc import Iterable
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.crop_form.word_field import WordField
from growlog.desktop.look.widgets import Button, Card, FormGrid, TextLabel, check_all
from growlog.desktop.money.money_field import MoneyField
from growlog.records.logbook import LogbookFacts
from growlog.records.money import decimals_of
from growlog.records.problems import Problem
from growlog.services.money.book import MoneyBook
from growlog.words import say

# Proposals only: any code of ISO 4217 may be typed.
_CURRENCIES = (
    "AUD", "BRL", "CAD", "CHF", "CZK", "DKK", "EUR", "GBP", "HUF", "INR", "JPY", "MXN", "NOK", "NZD", "PLN", "SEK",
    "TRY", "USD", "ZAR",
)  # fmt: skip


class PricesPage(QWidget):
    """Emits the logbook's facts with other prices."""

    saved = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._book: MoneyBook | None = None
        self._card = Card()
        self.save_button = Button(say("Save the prices"), "primary", name="savePrices")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(self._card)
        column.addStretch(1)
        self.grid = FormGrid(3, 170)
        words = say(
            "An hour may be worth nothing: type 0 and labour costs nothing, leave it empty and labour is not counted. "
            "What electricity costs stands under Electricity."
        )
        self._card.body.addWidget(self.grid)
        self._card.body.addWidget(TextLabel(words, "small", wraps=True))
        self._card.body.addWidget(self.save_button, 0, Qt.AlignmentFlag.AlignRight)
        self.save_button.clicked.connect(self.save)
        self._make_fields(LogbookFacts("", "-"))

    def show_book(self, book: MoneyBook) -> None:
        """The prices as they stand; what was typed and not saved stays where they did not change."""
        if self._book is not None and self._book.facts == book.facts:
            self._book = book
            return
        self._book = book
        self._make_fields(book.facts)

    def facts(self) -> LogbookFacts:
        """What stands in the fields."""
        facts = self._book.facts if self._book is not None else LogbookFacts("", "-")
        return replace(
            facts,
            currency=self.currency_field.value().upper(),
            labour_rate_minor_per_h=self.labour_field.minor(),
            water_price_minor_per_m3=self.water_field.minor(),
        )

    def save(self) -> None:
        """Emits the prices, or goes to the first field that is refused."""
        if self._book is None or not check_all([self.labour_field, self.water_field]):
            return
        facts = self.facts()
        problems = [p for p in facts.problems() if not p.asks] or self._coins_problems(facts)
        if problems:
            self.show_problems(problems)
            self.currency_field.setFocus()
            return
        self.saved.emit(facts)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Sentences beside their fields."""
        fields = {"labour_rate_minor_per_h": self.labour_field, "water_price_minor_per_m3": self.water_field}
        for problem in problems:
            fields.get(problem.field, self.currency_field).show_problem(problem.sentence)

    def _coins_problems(self, facts: LogbookFacts) -> list[Problem]:
        """Amounts are kept in the smallest coin; a currency with other coins would read them differently."""
        before = "" if self._book is None else self._book.facts.currency
        if self._book is None or not self._book.holds_amounts or decimals_of(before) == decimals_of(facts.currency):
            return []
        sentence = say("The amounts kept so far have other decimals than {currency}, and would be read wrongly.",
                       currency=facts.currency)  # fmt: skip
        return [Problem("currency", sentence)]

    def _make_fields(self, facts: LogbookFacts) -> None:
        for field in self.grid.fields():
            field.deleteLater()
        self._card.body.removeWidget(self.grid)
        self.grid.deleteLater()
        self.grid = FormGrid(3, 170)
        self._card.body.insertWidget(0, self.grid)
        self.currency_field = WordField(say("Currency, as in ISO 4217"), _CURRENCIES, facts.currency, "currency")
        self.labour_field = MoneyField(
            say("An hour of work is worth"), facts.currency, facts.labour_rate_minor_per_h,
            "labour_rate_minor_per_h", per=say("h"),
        )  # fmt: skip
        self.water_field = MoneyField(
            say("Water costs"), facts.currency, facts.water_price_minor_per_m3, "water_price_minor_per_m3", per="m³"
        )
        self.grid.add(self.currency_field, self.labour_field, self.water_field)
