"""Products on the shelf: add, change, remove, and what is wrong with a label, beside its field."""

from growlog.calculations.dose_units import DOSE_UNITS
from growlog.calculations.nutrients import LABEL_WORDS
from growlog.records.change import Change
from growlog.records.problems import Problem, refuse
from growlog.records.product import ProductForm, ShelfProduct, StockMove, StockMoveSort
from growlog.services.mix_checks import product_problems
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf.conversion import calc_product
from growlog.services.shelf.move_ids import move_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


def new_product(name: str = "", form: ProductForm = ProductForm.LIQUID) -> ShelfProduct:
    """An empty label, not yet written."""
    return ShelfProduct(new_id(), name, form, maker_dose_unit="mL/L" if form is ProductForm.LIQUID else "g/L")


def check_product(log: OpenLogbook, product: ShelfProduct) -> list[Problem]:
    """All problems and questions of a label. Fields: those of the record, and the label words of the analysis."""
    with log.unit() as unit:
        return standing_product_problems(unit, product)


def add_product(log: OpenLogbook, product: ShelfProduct, level: float | None = None) -> Change:
    """Writes a new product, and what is in its bottle now (mL or g) where it is known; RecordRefused."""
    group = new_id()
    with log.unit() as unit:
        refuse(standing_product_problems(unit, product))
        unit.add(group, product)
        if level is not None:
            unit.add(group, StockMove(move_id(unit.now), product.id, log.today(), StockMoveSort.COUNTED, level))
        unit.commit()
    return Change(group, say("New product {name}", name=product.name), (product.id,), None)


def change_product(log: OpenLogbook, product: ShelfProduct) -> Change:
    """Writes a changed label over the version it was read as; RecordRefused, or RecordMoved if it changed since."""
    group = new_id()
    with log.unit() as unit:
        refuse(standing_product_problems(unit, product))
        unit.change(group, product)
        unit.commit()
    return Change(group, say("Change {name}", name=product.name), (product.id,), None)


def remove_product(log: OpenLogbook, product_id: str) -> Change:
    """Puts a product into the bin. Mixes and feeds that used it keep what they knew of it."""
    group = new_id()
    with log.unit() as unit:
        product = unit.products.get(product_id)
        unit.remove(group, product)
        unit.commit()
    return Change(group, say("Remove {name}", name=product.name), (product_id,), None)


def standing_product_problems(unit: UnitOfWork, product: ShelfProduct) -> list[Problem]:
    """What is wrong with a label, by itself and beside the rest of the shelf."""
    found = product.problems() + _word_problems(product)
    if product.maker_dose_unit and product.maker_dose_unit not in DOSE_UNITS:
        sentence = say("{unit} is no unit of doses; write mL/L, g/L or mL/gal_us.", unit=product.maker_dose_unit)
        found.append(Problem("maker_dose_unit", sentence))
    same = [p for p in unit.products.all() if p.id != product.id and _key(p.name) == _key(product.name)]
    if same:
        found.append(Problem("name", say("There is a product of this name already. Choose another.")))
    told = {p.field for p in found if not p.asks}
    return found + [p for p in product_problems(calc_product(product)) if p.field not in told]


def _word_problems(product: ShelfProduct) -> list[Problem]:
    """What the label's words themselves get wrong, each beside its word."""
    words = [share.nutrient for share in product.analysis]
    unknown = [Problem("analysis", say("{word} is no nutrient here.", word=w)) for w in words if w not in LABEL_WORDS]
    twice = sorted({w for w in words if words.count(w) > 1})
    found = [Problem(w, say("{word} is stated twice.", word=w)) for w in twice]
    return unknown + found


def _key(name: str) -> str:
    return name.strip().casefold()
