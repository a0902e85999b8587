"""Every computed figure of a crop, as it could be known on a day."""

from dataclasses import replace
from datetime import date, time, timedelta

import pytest

from growlog.calculations.explained_figure import Figure
from growlog.records.crop import Crop
from growlog.records.entry import Feed, LightChange, OwnerKind, Pick, Reading, StageSeen
from growlog.records.purchase import Purchase, PurchaseSort
from growlog.records.room import Lamp
from growlog.services.crops import change_crop, clear_crop, crop_and_cultivar
from growlog.services.energy.tariffs import new_tariff, save_tariff
from growlog.services.facts.facts import fact_keys, fact_of, facts_of
from growlog.services.facts.families import FAMILIES
from growlog.services.figure_values import fact_values
from growlog.services.money.purchases import save_purchase
from growlog.services.open_logbook import LogbookProblem, OpenLogbook, new_id
from growlog.services.rooms import save_thing
from tests.logbooks import SOWN, furnish, write, write_for

pytestmark = pytest.mark.slow


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


def by_key(log: OpenLogbook, crop: Crop, age: int | None = None) -> dict[str, Figure]:
    return {f.key: f for f in facts_of(log, crop.id, None if age is None else at(age))}


@pytest.fixture
def season(log: OpenLogbook, crop: Crop) -> Crop:
    """A crop with light, readings, prices and two picks."""
    room, _ = furnish(log, crop, share=1.0)
    save_thing(log, Lamp(new_id(), room.id, "Lamp", wall_w=100))
    save_tariff(log, new_tariff(at(0), "0.20"))
    save_purchase(log, Purchase(new_id(), "Seed", at(0), PurchaseSort.SEED, 200, crop.id))
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(10, time(6), 100, 500))
    write(log, crop, at(30), StageSeen(("61",)))
    write(log, crop, at(40), Reading(25, 60))
    write(log, crop, at(41), Feed(None, None, 2.0, 1.8), labour_minutes=5)
    write(log, crop, at(50), Pick(2, 200.0), labour_minutes=10)
    write(log, crop, at(60), Pick(3))
    return crop


def test_every_promised_key_is_told_once_and_no_other(log: OpenLogbook, crop: Crop) -> None:
    told = [f.key for f in facts_of(log, crop.id)]
    assert told == [key.key for _, key in fact_keys()]
    assert len(told) == len(set(told))


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.key)
def test_each_figure_says_how_it_is_worked_out(log: OpenLogbook, season: Crop, family: object) -> None:
    figures = facts_of(log, season.id, None, (family,))  # type: ignore[arg-type]
    assert figures
    for figure in figures:
        assert figure.method.endswith("."), figure.key
        assert figure.source, figure.key
        assert figure.as_of == log.today(), figure.key


def test_units_are_the_promised_ones(log: OpenLogbook, season: Crop) -> None:
    figures = by_key(log, season)
    wrong = {k.key: figures[k.key].unit for _, k in fact_keys() if k.unit and figures[k.key].unit != k.unit}
    assert wrong == {}


def test_figures_are_those_of_the_entries(log: OpenLogbook, season: Crop) -> None:
    figures = {key: figure.value for key, figure in by_key(log, season, 59).items()}
    # By hand: 60 days of 1 kWh at 0.20, and seed for 2.00; 500 µmol/m²/s for 10 h are 18 mol/m².
    expected = {
        "plant-age": 59, "first-flower-age": 30, "first-pick-age": 50, "packet-maturity-age": 58,
        "days-to-packet-maturity": -1, "fruit-count": 2, "yield-weight": 200, "mean-fruit-weight": 100,
        "photoperiod": 10, "dli": 18, "light-sum": 1080, "kwh": 60, "kwh-per-day": 1, "kwh-per-kg": 300,
        "energy-cost": 12, "cost": 14, "cost-seed": 2, "cost-energy": 12, "cost-per-fruit": 7, "cost-per-kg": 70,
        "labour-minutes": 15, "minutes-per-fruit": 7.5, "minutes-picking": 10, "highest-temperature": 25,
    }  # fmt: skip
    assert {key: float(figures[key] or 0) for key in expected} == pytest.approx(expected)


def test_a_day_sees_nothing_of_what_was_entered_for_later_ones(log: OpenLogbook, season: Crop) -> None:
    before = [fact_values(f) for f in facts_of(log, season.id, at(45))]
    write(log, season, at(46), Pick(9, 900.0), labour_minutes=60)
    write(log, season, at(46), LightChange(20))
    write(log, season, at(46), Reading(35, 90))
    save_purchase(log, Purchase(new_id(), "Pot", at(46), PurchaseSort.CONTAINERS, 900))
    clear_crop(log, season.id, at(70))
    assert [fact_values(f) for f in facts_of(log, season.id, at(45))] == before


def test_there_is_none_yet_before_the_first_fruit(log: OpenLogbook, season: Crop) -> None:
    early = by_key(log, season, 20)
    none_yet = (
        "cost-per-fruit",
        "cost-per-kg",
        "kwh-per-kg",
        "minutes-per-fruit",
        "first-pick-age",
        "meter-difference",
    )
    assert [early[key].value for key in none_yet] == [None] * len(none_yet)
    assert early["cost"].value is not None


def test_an_unweighed_pick_makes_the_weight_an_estimate(log: OpenLogbook, season: Crop) -> None:
    weight = fact_of(log, season.id, "yield-weight")
    assert (weight.value, weight.low, weight.sure.value) == (500, 200, "estimate")
    assert by_key(log, season)["cost-per-kg"].sure.value == "estimate"


def test_a_cleared_crop_keeps_the_figures_of_its_clearing(log: OpenLogbook, season: Crop) -> None:
    clear_crop(log, season.id, at(70))
    figures = by_key(log, season)
    assert (figures["plant-age"].value, figures["kwh"].value) == (70, pytest.approx(71))


def test_a_date_that_had_not_come_is_not_known(log: OpenLogbook, crop: Crop) -> None:
    _, cultivar = crop_and_cultivar(log, crop.id)
    change_crop(log, replace(crop, emerged_on=at(6)), cultivar)
    assert [by_key(log, crop, age)["emergence-age"].value for age in (5, 6)] == [None, 6]


def test_before_it_was_sown_a_crop_has_no_figures(log: OpenLogbook, crop: Crop) -> None:
    with pytest.raises(LogbookProblem, match="Boxroom Gold begins on"):
        facts_of(log, crop.id, at(-1))


def test_a_crop_that_stands_in_no_room_has_no_electricity_yet(log: OpenLogbook, crop: Crop) -> None:
    found = by_key(log, crop)
    assert [found[key].value for key in ("kwh", "kwh-lamps", "kwh-devices", "kwh-per-day")] == [None] * 4


def test_lamps_without_a_programme_are_named_beside_their_electricity(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=1.0)
    save_thing(log, Lamp(new_id(), room.id, "Lamp", wall_w=100))
    lamps = by_key(log, crop)["kwh-lamps"]
    assert lamps.value == 0
    assert "No light programme is stated for Box room." in lamps.method


def test_a_key_that_no_family_has_is_an_error(log: OpenLogbook, crop: Crop) -> None:
    with pytest.raises(KeyError):
        fact_of(log, crop.id, "nothing")
