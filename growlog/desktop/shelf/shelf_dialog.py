"""The shelf's dialog: the products there are, and in their place the form that is open."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from growlog.calculations.explained_figure import Figure
from growlog.desktop.look.widgets import Button, DialogFrame, EmptyState, grow_to_fit
from growlog.desktop.look.widgets.emptied import empty_layout
from growlog.desktop.shelf.acid_form import AcidForm
from growlog.desktop.shelf.product_form import Check, ProductFormCard
from growlog.desktop.shelf.shelf_row import ShelfRow
from growlog.desktop.shelf.stock_form import StockForm
from growlog.records.problems import Problem
from growlog.records.product import ShelfProduct, StockMove
from growlog.services.shelf import ReadyProduct, ShelfItem, new_product, ready_products
from growlog.words import say


class ShelfDialog(DialogFrame):
    """Announces what is to be written; each goes in at once, and `show_shelf` is called with what there is then."""

    added = Signal(object, object)  # ShelfProduct, float | None
    changed = Signal(object)  # ShelfProduct
    removed = Signal(object)  # ShelfProduct
    stock_wanted = Signal(object)  # ShelfItem
    stock_written = Signal(object)  # StockWish
    move_removed = Signal(object)  # StockMove

    def __init__(
        self, today: date, currency: str, check: Check, writable: bool = True, parent: QWidget | None = None
    ) -> None:
        super().__init__(say("Shelf"), say("products as their labels state them"), parent, 680)
        self.setObjectName("shelfDialog")
        self._today = today
        self._currency = currency
        self._check = check
        self._writable = writable
        self.rows: list[ShelfRow] = []
        self.form: ProductFormCard | StockForm | AcidForm | None = None
        self._list = QVBoxLayout()
        self._list.setContentsMargins(0, 0, 0, 0)
        self._list.setSpacing(8)
        self._list_place = QWidget()
        self._list_place.setLayout(self._list)
        self._below = QVBoxLayout()
        self.new_button = Button(say("New product"), "", "plus", "newProduct")
        self.ready_button = Button(say("Ready salts and acids"), name="readySalts")
        self.ready_menu = QMenu(self)
        self._fill()
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.close)
        self.new_button.clicked.connect(self.new)

    def show_shelf(self, items: Sequence[ShelfItem]) -> None:
        """All products; a form that was open is done with."""
        self._put_form_away()
        empty_layout(self._list)
        self.rows = [ShelfRow(item, self._currency, self._writable) for item in items]
        for row in self.rows:
            row.stock_wanted.connect(self.stock_wanted)
            row.change_wanted.connect(self.change)
            row.remove_wanted.connect(self.removed)
            self._list.addWidget(row)
        if not items:
            sentence = say(
                "Nothing stands on the shelf yet. Copy the label of your first bottle, or take a ready salt."
            )
            self._list.addWidget(EmptyState(sentence, ""))

    def new(self) -> None:
        """Opens an empty label."""
        self._open_label(new_product(), is_new=True)

    def change(self, product: ShelfProduct) -> None:
        """Opens a product's label."""
        self._open_label(product, is_new=False)

    def take_ready(self, ready: ReadyProduct) -> None:
        """Opens the label of a ready salt, or asks first how strong an acid is."""
        if not ready.needs_strength:
            self._open_label(ready.on_shelf(), is_new=True)
            return
        form = AcidForm(ready)
        form.confirmed.connect(self._open_solution)
        form.left.connect(self._put_form_away)
        self._open(form)
        form.begin()

    def open_stock(self, product: ShelfProduct, moves: Sequence[StockMove], figures: Sequence[Figure]) -> None:
        """Opens what came to a product and went from it."""
        form = StockForm(product, moves, figures, self._today, self._currency, self._writable)
        form.confirmed.connect(self.stock_written)
        form.remove_wanted.connect(self.move_removed)
        form.left.connect(self._put_form_away)
        self._open(form)
        form.amount_field.setFocus()

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What was refused, beside its field."""
        if isinstance(self.form, (ProductFormCard, StockForm)):
            self.form.show_problems(problems)

    def _fill(self) -> None:
        for ready in ready_products():
            action = self.ready_menu.addAction(f"{ready.product.name}   {ready.formula}")
            action.setData(ready)
            action.setToolTip(ready.note)
            action.triggered.connect(self._ready_chosen)
        self.ready_menu.setToolTipsVisible(True)
        self.ready_button.setMenu(self.ready_menu)
        self._add_row = QWidget()
        row = QHBoxLayout(self._add_row)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.new_button)
        row.addWidget(self.ready_button)
        row.addStretch(1)
        for button in (self.new_button, self.ready_button):
            button.setEnabled(self._writable)
        self.body.addWidget(self._list_place)
        self.body.addLayout(self._below)
        self.body.addWidget(self._add_row)
        self.body.addStretch(1)

    def _ready_chosen(self) -> None:
        action = self.sender()
        if isinstance(action, QAction):
            self.take_ready(action.data())

    def _open_label(self, product: ShelfProduct, is_new: bool) -> None:
        form = ProductFormCard(product, self._currency, self._check, is_new)
        form.confirmed.connect(self.added if is_new else self._change)
        form.left.connect(self._put_form_away)
        self._open(form)
        form.begin()

    def _open_solution(self, product: ShelfProduct) -> None:
        self._open_label(product, is_new=True)

    def _change(self, product: ShelfProduct, _level: float | None) -> None:
        self.changed.emit(product)

    def _open(self, form: ProductFormCard | StockForm | AcidForm) -> None:
        self._put_form_away()
        self.form = form
        self._below.addWidget(form)
        form.show()
        self._list_place.hide()  # the form stands in its place, so that it is seen however long the list is
        self._add_row.hide()
        self.scroll_area.verticalScrollBar().setValue(0)
        grow_to_fit(self)

    def _put_form_away(self) -> None:
        self.form = None
        empty_layout(self._below)
        self._list_place.show()
        self._add_row.show()
