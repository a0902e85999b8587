"""Purchases spread over the crops and days that bear them."""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from decimal import Decimal

from growlog.calculations.labour_and_money import gear_cost_of_crop_minor
from growlog.calculations.light_programme import days_between
from growlog.records.crop import Crop
from growlog.records.purchase import Purchase
from growlog.services.money.lines import CostLine, kind_of


def purchase_lines(crop: Crop, crops: Sequence[Crop], purchases: Iterable[Purchase], until: date) -> list[CostLine]:
    """What a crop bears of all purchases up to a day.

    A purchase without a life is borne on its day: by its crop alone, else in equal parts by the crops that stand, or
    where none stands by those sown next. One with a life in days costs an equal part each day of it, shared by the
    crops that stand on that day; one with a life in crops costs each crop after the other an equal part on its first
    day. Days on which no crop stands are borne by none. Common practice, no source.
    """
    known = sorted((c for c in crops if c.day_zero <= until), key=lambda c: (c.day_zero, c.name, c.id))
    found = []
    for purchase in purchases:
        if purchase.day <= until and purchase.crop_id in (None, crop.id):
            found += _lines(crop, known, purchase, until)
    return found


def stands_on(crop: Crop, day: date) -> bool:
    """Whether a crop stands on a day, from day 0 until it was cleared."""
    return crop.day_zero <= day and (crop.cleared_on is None or day <= crop.cleared_on)


def _lines(crop: Crop, crops: Sequence[Crop], bought: Purchase, until: date) -> list[CostLine]:
    if bought.life_days is not None:
        return _by_days(crop, crops, bought, until)
    if bought.life_crops is not None:
        return _by_crops(crop, crops, bought)
    if bought.crop_id == crop.id:
        return [_line(bought, max(bought.day, crop.day_zero), Decimal(bought.price_minor))]
    bearing = [c for c in crops if stands_on(c, bought.day)] or _next_sown(crops, bought.day)
    if crop.id not in {c.id for c in bearing}:
        return []
    return [_line(bought, max(bought.day, crop.day_zero), Decimal(bought.price_minor) / len(bearing))]


def _by_days(crop: Crop, crops: Sequence[Crop], bought: Purchase, until: date) -> list[CostLine]:
    life = bought.life_days or 1
    each = Decimal(bought.price_minor) / life
    ends = [d for d in (until, crop.cleared_on, bought.day + timedelta(days=life - 1)) if d is not None]
    days = days_between(max(bought.day, crop.day_zero), min(ends))
    if bought.crop_id == crop.id:
        return [_line(bought, day, each) for day in days]
    return [_line(bought, day, each / sum(stands_on(c, day) for c in crops)) for day in days]


def _by_crops(crop: Crop, crops: Sequence[Crop], bought: Purchase) -> list[CostLine]:
    users = [c.id for c in crops if c.cleared_on is None or c.cleared_on >= bought.day]
    if bought.crop_id == crop.id:
        users = [crop.id]
    if crop.id not in users:
        return []
    minor = gear_cost_of_crop_minor(bought.price_minor, bought.life_crops or 1, users.index(crop.id) + 1)
    return [_line(bought, max(bought.day, crop.day_zero), Decimal(minor))]


def _next_sown(crops: Sequence[Crop], day: date) -> list[Crop]:
    later = [c for c in crops if c.day_zero > day]
    return [c for c in later if c.day_zero == later[0].day_zero] if later else []


def _line(bought: Purchase, day: date, minor: Decimal) -> CostLine:
    return CostLine(day, kind_of(bought.sort), minor, bought.name)
