"""What was bought."""

from datetime import date

from growlog.records.change import Change
from growlog.records.problems import Problem, refuse
from growlog.records.purchase import Purchase
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


def purchases_of(log: OpenLogbook, crop_id: str | None = None) -> list[Purchase]:
    """All purchases, or those of a crop and those that are shared; the latest first."""
    with log.unit() as unit:
        found = [p for p in unit.purchases.all() if crop_id is None or p.crop_id in (None, crop_id)]
    return sorted(found, key=lambda p: (p.day, p.name), reverse=True)


def new_purchase(day: date, crop_id: str | None = None) -> Purchase:
    """A purchase, not yet written."""
    return Purchase(new_id(), "", day, crop_id=crop_id)


def check_purchase(log: OpenLogbook, purchase: Purchase) -> list[Problem]:
    """All that is wrong with a purchase. Writes nothing."""
    with log.unit() as unit:
        return purchase.problems() + _standing_problems(unit, purchase, log.today())


def save_purchase(log: OpenLogbook, purchase: Purchase) -> Change:
    """Writes a purchase, new or changed; RecordRefused with all that is wrong."""
    group = new_id()
    with log.unit() as unit:
        refuse(purchase.problems() + _standing_problems(unit, purchase, log.today()))
        if unit.purchases.find(purchase.id) is None:
            unit.add(group, purchase)
        else:
            unit.change(group, purchase)
        unit.commit()
    return Change(group, say("Save {name}", name=purchase.name), (purchase.id,), None)


def remove_purchase(log: OpenLogbook, purchase: Purchase) -> Change:
    """Puts a purchase into the bin."""
    group = new_id()
    with log.unit() as unit:
        unit.remove(group, purchase)
        unit.commit()
    return Change(group, say("Remove {name}", name=purchase.name), (purchase.id,), None)


def _standing_problems(unit: UnitOfWork, purchase: Purchase, today: date) -> list[Problem]:
    found = []
    if purchase.day > today:
        found.append(Problem("day", say("This day has not come yet.")))
    if purchase.crop_id is not None and unit.crops.find(purchase.crop_id) is None:
        found.append(Problem("crop_id", say("That crop is no longer in the logbook.")))
    return found
