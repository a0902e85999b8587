"""A small grown crop with prices, for the tests of review, decisions and what-ifs."""

from dataclasses import replace
from datetime import date, time, timedelta
from pathlib import Path

from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar
from growlog.records.entry import Cull, CullCause, Feed, LightChange, Note, Pick, Pollination, ProblemSeen
from growlog.records.purchase import Purchase, PurchaseSort
from growlog.records.recipe import MixPart
from growlog.records.room import Lamp
from growlog.services.crops import change_crop, crop_and_cultivar
from growlog.services.energy.tariffs import new_tariff, save_tariff
from growlog.services.mixes import save_mix
from growlog.services.money.prices import prices_of, save_prices
from growlog.services.money.purchases import save_purchase
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.photo_intake import judge, look_at, take_in
from growlog.services.rooms import save_thing
from tests.logbooks import SOWN, furnish, plant_crop, write

ROSETTES = Path(__file__).parents[2] / "data" / "photos" / "daily-rosettes"


def day(age: int, sown: date = SOWN) -> date:
    """The civil day of a plant age."""
    return sown + timedelta(days=age)


def grown(log: OpenLogbook, name: str = "Boxroom Gold", sown: date = SOWN, **more: object) -> Crop:
    """A crop with light, feeds, pollination, 20 fruit of 2 kg and a problem; more: fields of the crop."""
    crop = plant_crop(log, name, sown)
    change(log, crop.id, emerged_on=day(4, sown), container_l=11.0, medium="coir", **more)
    write(log, crop, day(0, sown), LightChange(16.0, time(6), None, 400.0))
    mix, _ = save_mix(log, f"A + B {name}", (MixPart("Part A", 2.0), MixPart("Part B", 2.0)))
    for age in range(10, 60, 10):
        write(log, crop, day(age, sown), Feed(mix.id, None, 2.0, 1.8), labour_minutes=6)
    write(log, crop, day(36, sown), Pollination(females_pollinated=15, males_open=2), labour_minutes=30)
    write(log, crop, day(40, sown), Pollination(females_pollinated=10), labour_minutes=30)
    for age in (44, 48, 52, 60):
        write(log, crop, day(age, sown), Pick(5, 500.0), labour_minutes=15)
    write(log, crop, day(62, sown), Pick(0, None, (), (Cull(1, CullCause.MISSHAPEN),)))
    write(log, crop, day(50, sown), ProblemSeen(name="powdery mildew"), note="Four leaves taken, no spread")
    write(log, crop, day(51, sown), Note(), note="Small fruit taste best")
    return crop


def change(log: OpenLogbook, crop_id: str, **fields: object) -> tuple[Crop, Cultivar]:
    """The crop with other fields, written."""
    crop, cultivar = crop_and_cultivar(log, crop_id)
    change_crop(log, replace(crop, **fields), cultivar)  # type: ignore[arg-type]
    return crop_and_cultivar(log, crop_id)


def priced(log: OpenLogbook, crop: Crop) -> None:
    """A currency, an hour of labour at 6.00, a kWh at 0.25, coir for 5.00, and a lamp of 100 W over half a floor."""
    save_prices(log, replace(prices_of(log), currency="EUR", labour_rate_minor_per_h=600))
    room, _ = furnish(log, crop, crop.day_zero, 1.0)
    save_thing(log, Lamp(new_id(), room.id, "Panel", wall_w=100.0))
    save_tariff(log, new_tariff(crop.day_zero, "0.25"))
    save_purchase(log, Purchase(new_id(), "Coir", crop.day_zero, PurchaseSort.MEDIUM, 500, crop.id))


def with_photos(log: OpenLogbook, crop: Crop, count: int = 3) -> None:
    """Real photos of a plant on the days that their names say."""
    paths = sorted(ROSETTES.glob("plant-a*.jpg"))[:count]
    _, written = take_in(log, judge(log, list(look_at(log, paths, crop.id))))
    assert written is not None
