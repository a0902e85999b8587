"""One product on the shelf: what is left of it, for how long, and what can be done with it."""

from decimal import Decimal

from PySide6.QtCore import Signal

from growlog.desktop.look.widgets import Button, KeptRow, TextLabel
from growlog.desktop.mixer.wording import amount_text
from growlog.desktop.shelf.label_words import nutrient_name
from growlog.records.product import ShelfProduct
from growlog.services.shelf import ShelfItem
from growlog.words import say, say_count, show_number

_SHOWN_NUTRIENTS = 6


class ShelfRow(KeptRow):
    """Announces what is wanted of it."""

    stock_wanted = Signal(object)  # ShelfItem

    def __init__(self, item: ShelfItem, currency: str, writable: bool) -> None:
        self.item = item
        product = item.product
        self.label_label = TextLabel(label_line(product), "small", wraps=True)
        self.stock_label = TextLabel(stock_line(item, currency), "", "problem" if item.low else "mute", wraps=True)
        self.stock_button = Button(say("Stock…"), name=f"stock.{product.name}")
        super().__init__(product, product.name, [self.label_label, self.stock_label], writable, self.stock_button)
        self.setObjectName(f"product.{product.name}")
        self.stock_button.clicked.connect(self._stock)

    def _stock(self) -> None:
        self.stock_wanted.emit(self.item)


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
