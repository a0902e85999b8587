"""Products on the shelf, their stock, and the ready salts."""

from growlog.calculations.products import in_own_measure
from growlog.services.shelf.conversion import calc_product, density_from_weight, shelf_product
from growlog.services.shelf.products import add_product, change_product, check_product, new_product, remove_product
from growlog.services.shelf.ready import ReadyProduct, acid_solution, ready_products
from growlog.services.shelf.stock import (
    ShelfItem,
    bought,
    counted,
    moves_of,
    remove_move,
    shelf,
    stock_figures,
    thrown_away,
)

__all__ = [
    "ReadyProduct",
    "ShelfItem",
    "acid_solution",
    "add_product",
    "bought",
    "calc_product",
    "change_product",
    "check_product",
    "counted",
    "density_from_weight",
    "in_own_measure",
    "moves_of",
    "new_product",
    "ready_products",
    "remove_move",
    "remove_product",
    "shelf",
    "shelf_product",
    "stock_figures",
    "thrown_away",
]
