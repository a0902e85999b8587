"""One product on the shelf: what is left of it, for how long, and what can be done with it."""

from decimal import Decimal

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import Button, Card, TextLabel
from growlog.desktop.mixer.wording import amount_text
from growlog.desktop.shelf.label_words import nutrient_name
from growlog.records.product import ShelfProduct
from growlog.services.shelf import ShelfItem
from growlog.words import say, say_count, show_number

_SHOWN_NUTRIENTS = 6


class ShelfRow(Card):
    """Announces what is wanted of it."""

    stock_wanted = Signal(object)  # ShelfItem
    change_wanted = Signal(object)  # ShelfProduct
    remove_wanted = Signal(object)  # ShelfProduct

    def __init__(self, item: ShelfItem, currency: str, writable: bool) -> None:
        super().__init__(margin_px=8)
        self.item = item
        name = item.product.name
        self.setObjectName(f"product.{name}")
        self.name_label = TextLabel(name, "strong", wraps=True)
        self.label_label = TextLabel(label_line(item.product), "small", wraps=True)
        self.stock_label = TextLabel(stock_line(item, currency), "", "problem" if item.low else "mute", wraps=True)
        self.stock_button = Button(say("Stock…"), name=f"stock.{name}")
        self.change_button = IconButton("edit", say("Change {name}", name=name))
        self.remove_button = IconButton("bin", say("Remove {name}", name=name))
        for button in (self.change_button, self.remove_button):
            button.setEnabled(writable)
        row = QHBoxLayout()
        row.setSpacing(8)
        words = QVBoxLayout()
        words.setSpacing(2)
        for label in (self.name_label, self.label_label, self.stock_label):
            words.addWidget(label)
        row.addLayout(words, 1)
        for widget in (self.stock_button, self.change_button, self.remove_button):
            row.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)
        self.body.addLayout(row)
        self.stock_button.clicked.connect(self._stock)
        self.change_button.clicked.connect(self._change)
        self.remove_button.clicked.connect(self._remove)

    def _stock(self) -> None:
        self.stock_wanted.emit(self.item)

    def _change(self) -> None:
        self.change_wanted.emit(self.item.product)

    def _remove(self) -> None:
        self.remove_wanted.emit(self.item.product)


def label_line(product: ShelfProduct) -> str:
    """Its label in one line; that it is not known where it states nothing."""
    if not product.analysis:
        return say("no analysis: what it brings is not known")
    shares = [f"{nutrient_name(s.nutrient)} {show_number(s.label_percent, _decimals(s.label_percent))}" for s in
              product.analysis[:_SHOWN_NUTRIENTS]]  # fmt: skip
    more = "…" if len(product.analysis) > _SHOWN_NUTRIENTS else ""
    return say("{basis} %: {shares}", basis=product.basis.value, shares=", ".join(shares) + more)


def stock_line(item: ShelfItem, currency: str) -> str:
    """What is left, for how long, and what a measure of it costs."""
    unit = item.product.measure
    left = (
        say("stock not counted") if item.level is None else say("{amount} left", amount=amount_text(item.level, unit))
    )
    days = "" if item.days_left is None else say_count("for {n} day", "for {n} days", int(item.days_left))
    cost = "" if item.cost_per_unit is None else _cost(item.cost_per_unit, unit, currency)
    return ", ".join(part for part in (left, days, cost) if part)


def _cost(per_unit: Decimal, unit: str, currency: str) -> str:
    packed = "L" if unit == "mL" else "kg"
    amount = f"{show_number(float(per_unit * 1000), 2)} {currency}".strip()
    return say("{amount} a {unit}", amount=amount, unit=packed)


def _decimals(percent: float) -> int:
    return next((d for d in range(4) if abs(percent - round(percent, d)) < 1e-9), 3)
