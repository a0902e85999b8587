"""What a crop costs, by kind and by day, and per fruit, kg and day."""

from dataclasses import replace
from datetime import date, time, timedelta
from decimal import Decimal

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed, LightChange, Note, OwnerKind, Pick, Pollination, Training
from growlog.records.problems import RecordRefused
from growlog.records.purchase import Purchase, PurchaseSort
from growlog.records.recipe import MixPart
from growlog.records.room import Lamp
from growlog.services.crops import change_crop, clear_crop, crop_and_cultivar
from growlog.services.energy.tariffs import new_tariff, save_tariff
from growlog.services.mixes import save_mix
from growlog.services.money.costs import CropCosts, costs_of_crop
from growlog.services.money.labour import Work, labour_beside, labour_of_crop
from growlog.services.money.lines import CostKind
from growlog.services.money.prices import prices_of, save_prices
from growlog.services.money.purchases import new_purchase, purchases_of, remove_purchase, save_purchase
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import place_crop, save_thing
from growlog.services.shelf import add_product, new_product
from growlog.services.undo import undo
from tests.logbooks import SOWN, TODAY, furnish, plant_crop, write, write_for


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


def buy(log: OpenLogbook, name: str, day: date, minor: int, sort: PurchaseSort, **more: object) -> Purchase:
    bought = Purchase(new_id(), name, day, sort, minor, **more)  # type: ignore[arg-type]
    save_purchase(log, bought)
    return bought


def kinds(costs: CropCosts) -> dict[str, int]:
    return {kind.value: minor for kind, minor in costs.by_kind.items()}


def test_a_crop_of_which_nothing_is_stated_has_no_cost_yet(log: OpenLogbook, crop: Crop) -> None:
    costs = costs_of_crop(log, crop.id)
    per = costs.per
    assert (costs.total_minor, costs.days) == (0, ())
    assert [f.value for f in (per.per_fruit, per.per_kg, per.per_day, per.kwh_per_kg)] == [None] * 4


def test_cost_per_fruit_is_none_yet_before_the_first(log: OpenLogbook, crop: Crop) -> None:
    buy(log, "Seed", at(0), 350, PurchaseSort.SEED, crop_id=crop.id)
    assert costs_of_crop(log, crop.id).per.per_fruit.value is None
    write(log, crop, at(60), Pick(4, 500.0))
    per = costs_of_crop(log, crop.id).per
    assert (per.per_fruit.value, per.per_kg.value, per.per_day.value) == (
        Decimal("0.875"), Decimal("7"), Decimal("0.031"),
    )  # fmt: skip
    assert [i.name for i in per.per_fruit.inputs] == ["cost", "fruit"]


def test_things_bought_are_borne_by_those_who_stood(log: OpenLogbook, crop: Crop) -> None:
    other = plant_crop(log, "Shelf Ember", at(10))
    buy(log, "Coir", at(20), 1001, PurchaseSort.MEDIUM)
    buy(log, "Pot", at(20), 500, PurchaseSort.CONTAINERS, crop_id=other.id)
    assert kinds(costs_of_crop(log, crop.id)) == {"medium": 500}
    assert kinds(costs_of_crop(log, other.id)) == {"medium": 500, "containers": 500}
    assert kinds(costs_of_crop(log, crop.id, at(19))) == {}


def test_what_was_bought_before_any_crop_is_borne_by_the_next_one_sown(log: OpenLogbook, crop: Crop) -> None:
    buy(log, "Coir", at(-30), 900, PurchaseSort.MEDIUM)
    later = plant_crop(log, "Shelf Ember", at(10))
    costs = costs_of_crop(log, crop.id)
    assert [(d.day, d.total_minor) for d in costs.days] == [(at(0), 900)]
    assert costs_of_crop(log, later.id).total_minor == 0


def test_gear_by_days_costs_each_day_and_its_days_add_up(log: OpenLogbook, crop: Crop) -> None:
    buy(log, "Fan", at(0), 1000, PurchaseSort.GEAR, life_days=300)
    costs = costs_of_crop(log, crop.id, at(29))
    assert kinds(costs) == {"gear": 100}
    assert sum(d.total_minor for d in costs.days) == 100
    other = plant_crop(log, "Shelf Ember", at(15))
    assert [costs_of_crop(log, c.id, at(29)).total_minor for c in (crop, other)] == [75, 25]


def test_gear_by_crops_costs_each_crop_its_part(log: OpenLogbook, crop: Crop) -> None:
    buy(log, "Net", at(0), 1000, PurchaseSort.GEAR, life_crops=3)
    clear_crop(log, crop.id, at(20))
    others = [plant_crop(log, f"Crop {i}", at(30 + i)) for i in range(3)]
    assert [costs_of_crop(log, c.id).total_minor for c in (crop, *others)] == [333, 334, 333, 0]


def test_water_labour_and_electricity_are_counted_by_their_prices(log: OpenLogbook, crop: Crop) -> None:
    room, tank = furnish(log, crop, share=1.0)
    save_thing(log, Lamp(new_id(), room.id, "Lamp", wall_w=100, price_minor=20_000, rated_life_h=20_000))
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(10, time(6)))
    write(log, crop, at(1), Feed(None, None, 10.0, water_only=True), labour_minutes=10)
    write_for(log, OwnerKind.TANK, tank.id, at(2), Feed(None, None, 5.0, 1.8))
    unstated = costs_of_crop(log, crop.id, at(9))
    assert kinds(unstated) == {"gear": 100}  # 100 h of a lamp that costs a cent an hour
    assert len(unstated.notes) == 3
    save_prices(
        log, replace(prices_of(log), currency="EUR", labour_rate_minor_per_h=1200, water_price_minor_per_m3=400_000)
    )
    save_tariff(log, new_tariff(at(0), "0.25"))
    costs = costs_of_crop(log, crop.id, at(9))
    # By hand: 1 kWh a day at 0.25 for ten days, 15 L at 4.00 a litre, 10 min at 12.00 an hour.
    assert kinds(costs) == {"energy": 250, "water": 6000, "gear": 100, "labour": 200}
    assert (costs.notes, costs.total, costs.currency) == ((), Decimal("65.50"), "EUR")
    assert sum(d.total_minor for d in costs.days) == costs.total_minor


def test_an_hour_may_be_worth_nothing(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, at(1), Note(), note="Looked", labour_minutes=10)
    assert any("hour of labour" in n for n in costs_of_crop(log, crop.id).notes)
    change = save_prices(log, replace(prices_of(log), labour_rate_minor_per_h=0))
    costs = costs_of_crop(log, crop.id)
    assert (kinds(costs), costs.notes, costs.total_minor) == ({}, (), 0)
    assert costs.per.per_day.value == 0
    undo(log, change)
    assert prices_of(log).labour_rate_minor_per_h is None


def test_nutrients_cost_what_the_bottle_cost(log: OpenLogbook, crop: Crop) -> None:
    product = replace(new_product("Bloom feed"), pack_amount=1000.0, pack_price_minor=2000)
    add_product(log, product)
    mix, _ = save_mix(log, "Weak", (MixPart("Bloom feed", 2.0, "mL/L", product.id),))
    write(log, crop, at(1), Feed(mix.id, 100, 10.0))
    # By hand: 10 L at 2 mL/L are 20 mL of a bottle of 1000 mL for 20.00.
    assert kinds(costs_of_crop(log, crop.id)) == {"nutrients": 40}
    assert costs_of_crop(log, crop.id).by_kind[CostKind.NUTRIENTS] == 40


def test_the_shop_price_stands_beside(log: OpenLogbook, crop: Crop) -> None:
    _, cultivar = crop_and_cultivar(log, crop.id)
    change_crop(log, replace(crop, shop_price_minor_per_kg=450, shop_price_minor_per_fruit=60), cultivar)
    per = costs_of_crop(log, crop.id).per
    assert (per.shop_per_kg_minor, per.shop_per_fruit_minor) == (450, 60)


def test_purchases_are_saved_changed_removed_and_undone(log: OpenLogbook, crop: Crop) -> None:
    bought = buy(log, "Seed", at(0), 350, PurchaseSort.SEED, crop_id=crop.id)
    save_purchase(log, replace(bought, price_minor=400))
    (kept,) = purchases_of(log, crop.id)
    assert kept.price_minor == 400
    change = remove_purchase(log, kept)
    assert purchases_of(log) == []
    undo(log, change)
    assert len(purchases_of(log)) == 1
    with pytest.raises(RecordRefused, match="what was bought"):
        save_purchase(log, new_purchase(TODAY))
    with pytest.raises(RecordRefused, match="not come yet"):
        save_purchase(log, replace(new_purchase(TODAY + timedelta(days=1)), name="Seed"))
    with pytest.raises(RecordRefused, match="in days or in crops, not both"):
        save_purchase(log, replace(new_purchase(TODAY), name="Net", life_days=3, life_crops=3))


def test_labour_is_told_by_kind_of_work_and_per_fruit(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    other = plant_crop(log, "Shelf Ember", at(0))
    place_crop(log, other.id, room.id, at(0), floor_share=0.25)
    write(log, crop, at(30), Training(old_leaves_removed=3), labour_minutes=4)
    write(log, crop, at(31), Training(old_leaves_removed=1, side_shoots_removed=2), labour_minutes=6)
    write(log, crop, at(50), Pollination(3), labour_minutes=30)
    write(log, crop, at(60), Pick(10, 900.0), labour_minutes=10)
    write_for(log, OwnerKind.ROOM, room.id, at(5), LightChange(12))
    found = labour_of_crop(log, crop.id)
    assert {w.work: w.minutes for w in found.work} == {
        Work.POLLINATION: 30, Work.PICKING: 10, Work.TRAINING: 6, Work.CLEAN_UP: 4,
    }  # fmt: skip
    assert (found.work[0].work, found.work[0].per_fruit, found.per_fruit.value) == (Work.POLLINATION, 3, 5)
    assert found.by_age == ((30, 4), (31, 6), (50, 30), (60, 10))
    without = labour_beside(log, [crop.id, other.id])[1]
    assert (without.minutes, without.per_fruit.value) == (0, None)
