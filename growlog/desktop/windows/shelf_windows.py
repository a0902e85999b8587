"""Opens the shelf and the source waters, and writes what they confirm."""

from functools import partial

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.messages import Messages
from growlog.desktop.shelf.shelf_dialog import ShelfDialog
from growlog.desktop.shelf.stock_form import StockWish
from growlog.desktop.waters.waters_dialog import WatersDialog
from growlog.desktop.windows.placing import open_beside
from growlog.records.product import ShelfProduct, StockMove, StockMoveSort
from growlog.records.source_water import SourceWater
from growlog.services.logbooks import facts_of
from growlog.services.shelf import (
    ShelfItem,
    add_product,
    bought,
    change_product,
    check_product,
    counted,
    moves_of,
    remove_move,
    remove_product,
    shelf,
    stock_figures,
    thrown_away,
)
from growlog.services.waters import check_water, remove_water, save_water, waters_of
from growlog.words import say


class ShelfWindows(QObject):
    """Both dialogs follow what is written and what is undone."""

    def __init__(self, desk: Desk, window: QWidget, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._messages = messages
        self.shelf: ShelfDialog | None = None
        self.waters: WatersDialog | None = None
        desk.written.connect(self._follow)

    def open_shelf(self) -> None:
        """Opens the shelf beside the board."""
        if self.shelf is not None and isValid(self.shelf):
            self.shelf.close()
        log = self._desk.log
        check = partial(check_product, log)
        self.shelf = ShelfDialog(log.today(), facts_of(log).currency, check, log.writable, self._window)
        self.shelf.added.connect(self._add)
        self.shelf.changed.connect(self._change)
        self.shelf.removed.connect(self._remove)
        self.shelf.stock_wanted.connect(self.open_stock)
        self.shelf.stock_written.connect(self._write_stock)
        self.shelf.move_removed.connect(self._remove_move)
        self.shelf.show_shelf(shelf(log))
        open_beside(self.shelf, self._window)

    def open_waters(self) -> None:
        """Opens the source waters beside the board."""
        if self.waters is not None and isValid(self.waters):
            self.waters.close()
        log = self._desk.log
        self.waters = WatersDialog(log.today(), partial(check_water, log), log.writable, self._window)
        self.waters.saved.connect(self._save_water)
        self.waters.removed.connect(self._remove_water)
        self.waters.show_waters(waters_of(log))
        open_beside(self.waters, self._window)

    def open_stock(self, item: ShelfItem) -> None:
        """Shows what came to a product and went from it."""
        if self.shelf is not None:
            log = self._desk.log
            self.shelf.open_stock(item.product, moves_of(log, item.product.id), stock_figures(log, item.product.id))

    def _follow(self, _change: object = None) -> None:
        if self.shelf is not None and isValid(self.shelf) and self.shelf.isVisible():
            self.shelf.show_shelf(shelf(self._desk.log))
        if self.waters is not None and isValid(self.waters) and self.waters.isVisible():
            self.waters.show_waters(waters_of(self._desk.log))

    def _add(self, product: ShelfProduct, level: float | None) -> None:
        if self.shelf is not None:
            self._desk.write(add_product, product, level, on_problems=self.shelf.show_problems)

    def _change(self, product: ShelfProduct) -> None:
        if self.shelf is not None:
            self._desk.write(change_product, product, on_problems=self.shelf.show_problems)

    def _remove(self, product: ShelfProduct) -> None:
        if self._desk.write(remove_product, product.id) is not None:
            self._messages.inform(say("{name} was removed from the shelf.", name=product.name), say("Undo"),
                                  self._desk.undo)  # fmt: skip

    def _write_stock(self, wish: StockWish) -> None:
        if self.shelf is None:
            return
        problems = self.shelf.show_problems
        if wish.sort is StockMoveSort.BOUGHT:
            asked = (wish.product_id, wish.day, wish.amount, wish.price_minor)
            self._desk.write(bought, *asked, on_problems=problems)
        else:
            service = counted if wish.sort is StockMoveSort.COUNTED else thrown_away
            self._desk.write(service, wish.product_id, wish.day, wish.amount, on_problems=problems)

    def _remove_move(self, move: StockMove) -> None:
        self._desk.write(remove_move, move.id)

    def _save_water(self, water: SourceWater) -> None:
        if self.waters is not None:
            self._desk.write(save_water, water, on_problems=self.waters.show_problems)

    def _remove_water(self, water: SourceWater) -> None:
        if self._desk.write(remove_water, water.id) is not None:
            self._messages.inform(say("{name} was removed.", name=water.name), say("Undo"), self._desk.undo)
