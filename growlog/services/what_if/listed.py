"""Each changed input in words, as it was and as it would be."""

from collections.abc import Iterator
from decimal import Decimal

from growlog.records.display import fixed, plain
from growlog.records.money import decimals_of
from growlog.records.tariff import TariffBand
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.wording import minor_money, money
from growlog.services.what_if.energy import PowerNow
from growlog.services.what_if.inputs import ChangedInput, WhatIf
from growlog.words import say, show_number


def listed_changes(change: WhatIf, crop: CropFigures, now: PowerNow, plants_now: int) -> tuple[ChangedInput, ...]:
    """All that was changed, in the order of a form."""
    return (*_light(change, crop, now), *_crop(change, crop, plants_now), *_rest(change, crop))


def _light(change: WhatIf, crop: CropFigures, now: PowerNow) -> Iterator[ChangedInput]:
    if change.lamp_w is not None:
        before = "" if now.lamp_w is None else fixed(now.lamp_w, 0, "W")
        yield ChangedInput(say("Lamps at the wall"), before, fixed(change.lamp_w, 0, "W"))
    if change.lamp_price_minor is not None:
        then = say("{price} for {n} crops", price=minor_money(change.lamp_price_minor, crop.currency),
                   n=change.lamp_life_crops)  # fmt: skip
        yield ChangedInput(say("Price of the lamps"), "", then)
    if change.photoperiod_h is not None:
        before = "" if now.photoperiod_h is None else plain(now.photoperiod_h, "h")
        yield ChangedInput(say("Hours of light"), before, plain(change.photoperiod_h, "h"))
    if change.on_at is not None:
        yield ChangedInput(say("Lamps on at"), "", change.on_at.strftime("%H:%M"))
    if change.tariff_bands:
        yield ChangedInput(say("Price of a kWh"), "", ", ".join(_band(b, crop.currency) for b in change.tariff_bands))
    if change.price_per_kwh is not None:
        before = "" if now.price_per_kwh is None else _price(now.price_per_kwh, crop.currency)
        yield ChangedInput(say("Price of a kWh"), before, _price(change.price_per_kwh, crop.currency))


def _crop(change: WhatIf, crop: CropFigures, plants_now: int) -> Iterator[ChangedInput]:
    if change.feed_strength_percent is not None:
        then = say("{percent} of it", percent=plain(change.feed_strength_percent, "%"))
        yield ChangedInput(say("Strength of the feed"), say("as it was"), then)
    if change.cultivar.strip() or change.sets_alone:
        then = change.cultivar.strip() or say("another")
        words = say("{name}, sets without pollination", name=then) if change.sets_alone else then
        yield ChangedInput(say("Cultivar"), crop.cultivar.name, words)
    if change.system.strip():
        yield ChangedInput(say("System"), crop.crop.system.strip(), change.system.strip())
    if change.plants is not None:
        yield ChangedInput(say("Plants"), show_number(plants_now, 0), show_number(change.plants, 0))


def _rest(change: WhatIf, crop: CropFigures) -> Iterator[ChangedInput]:
    if change.minutes_change:
        yield ChangedInput(say("Work"), "", _with_sign(change.minutes_change, "min"))
    for other in change.other_costs:
        yield ChangedInput(other.label, "", minor_money(other.minor, crop.currency))
    if change.yield_change_percent is not None:
        yield ChangedInput(say("Yield expected"), "", _with_sign(change.yield_change_percent, "%"))


def _band(band: TariffBand, currency: str) -> str:
    hours = f"{band.from_at.strftime('%H:%M')}–{band.until_at.strftime('%H:%M')}"
    return say("{hours} at {price}", hours=hours, price=_price(Decimal(band.price_per_kwh), currency))


def _price(price: Decimal, currency: str) -> str:
    """A price with its own decimals, at least those of the smallest coin."""
    own = -int(price.normalize().as_tuple().exponent)
    return money(price, currency, max(0, own - decimals_of(currency)))


def _with_sign(value: float, unit: str) -> str:
    sign = "+" if value > 0 else "−" if value < 0 else ""
    return f"{sign}{plain(abs(value), unit)}"
