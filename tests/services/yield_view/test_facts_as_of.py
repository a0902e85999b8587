"""The figures of a crop's yield for those who read them as JSON, and as the log stood on an evening."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Cull, CullCause, Feed, FruitCheck, Pick, Pollination, TaggedFruit
from growlog.services.crops import change_crop, clear_crop, crop_and_cultivar
from growlog.services.facts.facts import fact_keys, fact_of, facts_of
from growlog.services.facts.families import FAMILIES
from growlog.services.figure_values import fact_values
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import add_plant, furnish, plant_crop, write
from tests.services.yield_view.seasons import SEASON, at, picked, pollinated, write_all

pytestmark = pytest.mark.slow

FLOWERS = {39: 2, 43: 4, 46: 5, 50: 6, 53: 7, 57: 7, 60: 7, 64: 6, 67: 5, 71: 4, 75: 4}
YIELD_FAMILIES = ("milestones", "picks", "fruit-set", "forecast", "keep-or-clear")


def season_up_to(log: OpenLogbook, crop: Crop, last_age: int) -> None:
    """Writes the season's entries up to and with a plant age."""
    picked(log, crop, [p for p in SEASON if p[0] <= last_age])
    pollinated(log, crop, {age: n for age, n in FLOWERS.items() if age <= last_age})


def later_entries(log: OpenLogbook, crop: Crop, after_age: int) -> None:
    """Everything that could tell of the future: picks, culls, flowers, tags, checks, a lost plant, the clearing."""
    picked(log, crop, [p for p in SEASON if p[0] > after_age])
    pollinated(log, crop, {age: n for age, n in FLOWERS.items() if age > after_age})
    write_all(log, crop, [
        (after_age + 1, FruitCheck(fruit_set=3, dropped=2)),
        (after_age + 2, Pollination(females_pollinated=2, tags=("7",))),
        (after_age + 9, Pick(1, 88.0, culls=(Cull(3, CullCause.CRACKED),), tagged=(TaggedFruit("7", 88.0),))),
        (after_age + 9, Feed(volume_l=7.5)),
    ])  # fmt: skip
    plant = add_plant(log, crop, "3", at(after_age + 3))
    with log.unit() as unit:
        first = next(p for p in unit.plants.all(crop_id=crop.id) if p.id != plant.id)
        unit.change("lost", replace(first, lost_on=at(after_age + 5)))
        unit.commit()
    clear_crop(log, crop.id, at(100))


def told(log: OpenLogbook, crop: Crop, day: date) -> dict[str, object]:
    """All figures of that evening, as they are printed."""
    return {f.key: fact_values(f) for f in facts_of(log, crop.id, day)}


def test_facts_of_an_evening_are_the_same_whatever_was_entered_later(log: OpenLogbook, crop: Crop) -> None:
    furnish(log, crop)
    _priced(log, crop)
    other = plant_crop(log, "Attic Gold", at(0) - timedelta(days=40), species="squash")
    picked(log, other)
    season_up_to(log, crop, 66)
    before = told(log, crop, at(66))
    clear_crop(log, other.id, at(70))
    later_entries(log, crop, 66)
    after = told(log, crop, at(66))
    assert {key: value for key, value in after.items() if value != before[key]} == {}
    assert told(log, crop, at(90)) != before


def test_every_promised_key_is_told_once_and_by_its_name(log: OpenLogbook, crop: Crop) -> None:
    season_up_to(log, crop, 76)
    families = tuple(f for f in FAMILIES if f.key in YIELD_FAMILIES)
    assert len(families) == len(YIELD_FAMILIES)
    promised = [key.key for _, key in fact_keys(families)]
    assert [f.key for f in facts_of(log, crop.id, at(77), families)] == promised
    every = [key.key for _, key in fact_keys()]
    assert len(set(every)) == len(every)


def test_an_empty_crop_gives_every_figure_its_reason_in_place_of_a_value(log: OpenLogbook, crop: Crop) -> None:
    figures = {f.key: f for f in facts_of(log, crop.id, at(10), tuple(f for f in FAMILIES if f.key in YIELD_FAMILIES))}
    assert figures["forecast"].value is None
    assert figures["forecast"].method == "Nothing was picked yet."
    assert figures["keep-or-clear"].method == "Nothing was picked yet."
    assert all(f.method for f in figures.values())


def test_forecasts_and_fruit_set_carry_their_bands(log: OpenLogbook, crop: Crop) -> None:
    season_up_to(log, crop, 76)
    figures = {f.key: f for f in facts_of(log, crop.id, at(77))}
    for key in ("forecast", "forecast-weight", "coming-picks", "fruit-set", "flower-to-pick"):
        low, value, high = (figures[key].low, figures[key].value, figures[key].high)
        assert isinstance(low, int | float)
        assert isinstance(value, int | float)
        assert isinstance(high, int | float)
        assert low <= value <= high
    assert figures["coming-picks-until"].value == "2026-02-14"
    assert figures["forecast-until"].value == "2026-02-28"
    assert figures["coming-picks-from"].value == "flowers"
    assert figures["fit-shape"].value in ("logistic", "gompertz")


def test_one_fact_is_worked_out_by_its_key(log: OpenLogbook, crop: Crop) -> None:
    season_up_to(log, crop, 76)
    assert fact_of(log, crop.id, "milestone-first-pick", at(77)).value == 44


def test_a_crop_with_a_shop_price_and_a_cleared_one_before_it_has_a_day_to_clear_by(
    log: OpenLogbook, crop: Crop
) -> None:
    _priced(log, crop)
    before = plant_crop(log, "Attic Gold", at(0) - timedelta(days=90), species="squash")
    picked(log, before)
    clear_crop(log, before.id, before.day_zero + timedelta(days=84))
    season_up_to(log, crop, 76)
    figures = {f.key: f for f in facts_of(log, crop.id, at(77))}
    assert figures["keep-or-clear"].inputs
    assert isinstance(figures["next-week-value"].low, float)


def _priced(log: OpenLogbook, crop: Crop) -> None:
    cultivar = crop_and_cultivar(log, crop.id)[1]
    change_crop(log, replace(crop, shop_price_minor_per_kg=400, planned_clearing_on=at(110)), cultivar)


def test_litres_of_a_shared_tank_count_in_equal_parts(log: OpenLogbook, crop: Crop) -> None:
    from growlog.records.entry import OwnerKind
    from growlog.services.rooms import place_crop
    from tests.logbooks import write_for

    room, tank = furnish(log, crop)
    other = plant_crop(log, "Attic Gold")
    place_crop(log, other.id, room.id, at(0), floor_share=0.5, tank_id=tank.id)
    write_for(log, OwnerKind.TANK, tank.id, at(50), Feed(volume_l=10))
    write(log, crop, at(50), Feed(volume_l=1))
    picked(log, crop, [(44, 1, 100.0), (50, 1, 80.0)])
    assert fact_of(log, crop.id, "weight-per-litre", at(60)).value == 180 / 6
