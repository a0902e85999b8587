"""What came to a bottle and went from it: bought, counted, thrown away; and the moves there were."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QGridLayout, QHBoxLayout

from growlog.calculations.explained_figure import Figure
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import (
    Button,
    Card,
    DayField,
    FormGrid,
    NumberField,
    SectionTitle,
    SegmentSwitch,
    TextLabel,
    check_all,
)
from growlog.desktop.mixer.wording import amount_text
from growlog.records.money import decimals_of, money_of
from growlog.records.problems import Problem
from growlog.records.product import ShelfProduct, StockMove, StockMoveSort
from growlog.words import say, show_day, show_number

_SHOWN_MOVES = 40


@dataclass(frozen=True)
class StockWish:
    """A stock move as typed. amount in mL or g; price_minor of what was bought."""

    product_id: str
    sort: StockMoveSort
    day: date
    amount: float
    price_minor: int | None = None


class StockForm(Card):
    """Emits moves to be written and moves to be taken back."""

    confirmed = Signal(object)  # StockWish
    remove_wanted = Signal(object)  # StockMove
    left = Signal()

    def __init__(
        self, product: ShelfProduct, moves: Sequence[StockMove], figures: Sequence[Figure], today: date, currency: str,
        writable: bool = True,
    ) -> None:  # fmt: skip
        super().__init__(margin_px=12)
        self.setObjectName("stockForm")
        self._product = product
        self._currency = currency
        sorts = [(StockMoveSort.BOUGHT.value, say("Bought")), (StockMoveSort.COUNTED.value, say("Counted")),
                 (StockMoveSort.THROWN_AWAY.value, say("Thrown away"))]  # fmt: skip
        self.sort_switch = SegmentSwitch(sorts, StockMoveSort.BOUGHT.value, say("What happened"))
        self.day_field = DayField(say("Day"), today, latest=today, near=today, required=True, name="stock_day")
        self.amount_field = NumberField(say("Amount"), product.measure, 0, decimals=1, name="stock_amount",
                                        required=True)  # fmt: skip
        self.price_field = NumberField(
            say("Paid for it"), currency, 0, decimals=decimals_of(currency), name="stock_price"
        )
        if product.pack_amount:
            self.amount_field.set_value(product.pack_amount)
        self.remove_buttons: list[IconButton] = []
        names = {f.key: n for f, n in zip(figures, (say("What is left"), say("Days left"), say("Cost")), strict=False)}
        self.explain_button = ExplanationButton(figures, names)
        self.leave_button = Button(say("Back to the shelf"), name="leaveStock")
        self.write_button = Button(f"{say('Write it')}  Ctrl \u23ce", "primary", name="writeStock")
        self.write_button.setEnabled(writable)
        self._fill(moves, writable)
        self._sort_changed()
        self._connect()

    def confirm(self) -> None:
        """Emits the move where every field can be read."""
        day, amount, price = self.day_field.value(), self.amount_field.value(), self.price_field.value()
        if not check_all([self.day_field, self.amount_field, self.price_field]) or day is None or amount is None:
            return
        sort = StockMoveSort(self.sort_switch.value())
        minor = None
        if price is not None and sort is StockMoveSort.BOUGHT:
            minor = money_of(Decimal(repr(price)), self._currency).minor
        self.confirmed.emit(StockWish(self._product.id, sort, day, float(amount), minor))

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What was refused, beside its field."""
        fields = {"day": self.day_field, "price_minor": self.price_field}
        for problem in problems:
            fields.get(problem.field, self.amount_field).show_problem(problem.sentence)

    def _fill(self, moves: Sequence[StockMove], writable: bool) -> None:
        self.body.setSpacing(12)
        self.body.addWidget(TextLabel(self._product.name, "heading", wraps=True))
        self.body.addWidget(self.sort_switch)
        grid = FormGrid(3, 130)
        grid.add(self.day_field, self.amount_field, self.price_field)
        self.body.addWidget(grid)
        buttons = QHBoxLayout()
        buttons.addWidget(self.explain_button)
        buttons.addStretch(1)
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.write_button)
        self.body.addLayout(buttons)
        if moves:
            self.body.addWidget(SectionTitle(say("What came and went")))
            self.body.addLayout(self._moves(moves, writable))

    def _moves(self, moves: Sequence[StockMove], writable: bool) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(1, 1)
        for row, move in enumerate(moves[:_SHOWN_MOVES]):
            grid.addWidget(TextLabel(show_day(move.day), "", "mute"), row, 0)
            grid.addWidget(TextLabel(self._words(move), wraps=True), row, 1)
            if move.entry_id is None:
                button = IconButton("bin", say("Take this back: {words}", words=self._words(move)))
                button.setEnabled(writable)
                button.setProperty("move", move.id)
                button.clicked.connect(self._remove)
                self.remove_buttons.append(button)
                grid.addWidget(button, row, 2, Qt.AlignmentFlag.AlignRight)
        self._shown_moves = {m.id: m for m in moves}
        return grid

    def _words(self, move: StockMove) -> str:
        names = {
            StockMoveSort.BOUGHT: say("bought"), StockMoveSort.USED: say("mixed into a feed or a tank"),
            StockMoveSort.COUNTED: say("counted"), StockMoveSort.THROWN_AWAY: say("thrown away"),
        }  # fmt: skip
        words = f"{names[move.sort]} {amount_text(move.amount, self._product.measure)}"
        if move.price_minor is None:
            return words
        decimals = decimals_of(self._currency)
        price = show_number(float(Decimal(move.price_minor).scaleb(-decimals)), decimals)
        return f"{words}, {price} {self._currency}".strip()

    def _connect(self) -> None:
        self.sort_switch.value_changed.connect(self._sort_changed)
        self.leave_button.clicked.connect(self.left)
        self.write_button.clicked.connect(self.confirm)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _sort_changed(self) -> None:
        sort = StockMoveSort(self.sort_switch.value())
        labels = {
            StockMoveSort.BOUGHT: say("Amount in all"), StockMoveSort.COUNTED: say("In the bottle now"),
            StockMoveSort.THROWN_AWAY: say("Amount"),
        }  # fmt: skip
        self.amount_field.set_label(labels[sort])
        self.price_field.setVisible(sort is StockMoveSort.BOUGHT)

    def _remove(self) -> None:
        button = self.sender()
        if button is not None:
            self.remove_wanted.emit(self._shown_moves[str(button.property("move"))])
