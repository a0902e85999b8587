"""What was bought: a list, and a form for one of them below it."""

from collections.abc import Iterable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.locale_forms import day_in_form
from growlog.desktop.look.widgets import Button, EmptyState
from growlog.desktop.money.purchase_form import PurchaseForm
from growlog.desktop.money.wording import money_text
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.records.problems import Problem
from growlog.records.purchase import Purchase
from growlog.services.money.book import MoneyBook
from growlog.services.open_logbook import new_id
from growlog.words import say, say_count


class PurchasesPage(QWidget):
    """Choosing a row opens its form; the form saves or takes the purchase off."""

    saved = Signal(object)
    removed = Signal(object)
    form_opened = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._book: MoneyBook | None = None
        columns = [
            Column(say("Day"), width_px=116), Column(say("What")), Column(say("For"), width_px=96),
            Column(say("Borne by"), width_px=130), Column(say("Serves"), width_px=108),
            Column(say("Price"), True, 104),
        ]  # fmt: skip
        self.table = PlainTable(columns, say("Purchases"), "purchases", 9)
        sentence = say("Nothing was bought yet, as far as the logbook knows. Seed, medium, containers, gear: say what "
                       "you paid and how long it serves.")  # fmt: skip
        self.empty = EmptyState(sentence, say("Add a purchase…"), name="emptyPurchases")
        self.add_button = Button(say("Add a purchase"), "", "plus", "addPurchase")
        self.form: PurchaseForm | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(12)
        self._column.addWidget(self.table)
        self._column.addWidget(self.empty)
        self._column.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        self._column.addStretch(1)
        self.table.row_chosen.connect(self._open_chosen)
        self.add_button.clicked.connect(self.add)
        self.empty.chosen.connect(self.add)

    def show_book(self, book: MoneyBook) -> None:
        """The purchases as they stand; an open form stays."""
        self._book = book
        names = {crop.id: crop.name for crop in book.crops}
        self.table.show_rows([_row(p, names, book.facts.currency) for p in book.purchases])
        self._show_parts()

    def add(self) -> None:
        """An empty form, for a purchase of today."""
        if self._book is not None:
            self._open(Purchase(new_id(), "", self._book.today), is_new=True)

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

    def _open_chosen(self, key: str) -> None:
        found = [p for p in self._book.purchases if p.id == key] if self._book is not None else []
        if found and (self.form is None or self.form.purchase_id != key):
            self._open(found[0], is_new=False)

    def _open(self, purchase: Purchase, *, is_new: bool) -> None:
        if self._book is None:
            return
        if self.form is not None:
            self.form.hide()
            self.form.deleteLater()
        self.form = PurchaseForm(purchase, is_new, self._book)
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
        self.empty.setVisible(not has_any and self.form is None)
        self.add_button.setVisible(has_any and self.form is None)


def _row(purchase: Purchase, names: dict[str, str], currency: str) -> Row:
    borne = say("shared") if purchase.crop_id is None else names.get(purchase.crop_id, say("a removed crop"))
    cells = (
        day_in_form(purchase.day, "yMMMd"), purchase.name, say(purchase.sort.label), borne, life_words(purchase),
        money_text(purchase.price_minor, currency),
    )  # fmt: skip
    return Row(purchase.id, cells, tip=purchase.note)


def life_words(purchase: Purchase) -> str:
    """How long it serves."""
    if purchase.life_days is not None:
        return say_count("{n} day", "{n} days", purchase.life_days)
    if purchase.life_crops is not None:
        return say_count("{n} crop", "{n} crops", purchase.life_crops)
    return say("used up")
