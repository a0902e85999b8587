"""What the picks of a crop say: milestones, packet, facts, ratios, fruit set and forecasts from a real logbook."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.calculations.coming_picks import Basis, ComingPicks
from growlog.calculations.flower_records import FlowerSource
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.milestones import Milestone, PacketComparison
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_forecast import YieldForecast
from growlog.records.crop import Crop
from growlog.records.cultivar import CountsFrom, FloweringHabit
from growlog.records.entry import Cull, CullCause, Feed, FruitCheck, Pick, Pollination
from growlog.services.crops import add_crop, change_crop, clear_crop, crop_and_cultivar, new_crop
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.yield_view.view import YieldView, yield_of
from tests.logbooks import add_plant, furnish, plant_crop, write
from tests.services.yield_view.seasons import SEASON, at, picked, pollinated, seen_open, write_all

pytestmark = pytest.mark.slow


def ages(view: YieldView) -> dict[Milestone, int | None]:
    return {m.which: m.age for m in view.milestones}


def test_milestones_stand_at_the_plant_ages_of_their_entries(log: OpenLogbook, crop: Crop) -> None:
    write_all(log, crop, [(34, Pollination(males_open=2)), (37, Pollination(females_pollinated=1, males_open=1)),
                          (41, FruitCheck(fruit_set=1))])  # fmt: skip
    picked(log, crop)
    found = ages(yield_of(log, crop.id, at(80)))
    assert found[Milestone.FIRST_MALE] == 34
    assert found[Milestone.FIRST_FEMALE] == 37
    assert found[Milestone.FIRST_SET] == 41
    assert found[Milestone.FIRST_PICK] == 44
    assert found[Milestone.PEAK_WEEK] == 58
    assert found[Milestone.LAST_PICK] == 76


def test_a_packet_of_55_days_and_a_first_pick_on_day_36_are_19_days_35_percent_early(log: OpenLogbook) -> None:
    # Common practice, no source.
    crop, cultivar = new_crop("Early One", "pattypan", at(0), packet_days=55)
    add_crop(log, crop, cultivar)
    picked(log, crop, [(36, 1, 90.0)])
    packet = yield_of(log, crop.id).maturity.packet
    assert isinstance(packet, PacketComparison)
    assert packet.late_days == -19
    assert packet.sentence == "19 days, 35 %, early."


def test_a_tomato_is_held_against_its_packet_from_transplanting(log: OpenLogbook) -> None:
    # Convention printed with the days-to-maturity tables of university extension services.
    crop, cultivar = new_crop("Sill Red", "tomato", at(0), packet_days=70)
    assert cultivar.packet_counts_from is CountsFrom.TRANSPLANTING
    add_crop(log, replace(crop, transplanted_on=at(30)), cultivar)
    picked(log, crop, [(95, 2, 60.0)])
    told = yield_of(log, crop.id).maturity
    assert isinstance(told.packet, PacketComparison)
    assert (told.packet.days, told.packet.late_days) == (65, -5)
    assert [u.days for u in told.usual] == [65]  # 70 to 90 from transplanting, Encyclopaedia Britannica
    assert "Encyclopaedia Britannica" in told.usual[0].sentence


def test_without_the_day_it_counts_from_the_packet_is_not_held_against(log: OpenLogbook) -> None:
    crop, cultivar = new_crop("Sill Red", "tomato", at(0), packet_days=70)
    add_crop(log, crop, cultivar)
    picked(log, crop, [(95, 2, 60.0)])
    packet = yield_of(log, crop.id).maturity.packet
    assert packet == NotYet("The day from which the packet counts was not noted.")


def test_first_flower_to_first_pick_is_held_against_the_published_range(log: OpenLogbook, crop: Crop) -> None:
    # Summer squash, 3 to 7 days from flower to harvest: Encyclopaedia Britannica, Vegetable farming.
    pollinated(log, crop, {39: 2})
    picked(log, crop)
    told = yield_of(log, crop.id, at(80)).maturity
    assert told.flower_to_pick == 5
    assert told.usual[0].off_days == 0
    assert "3 to 7" in told.usual[0].sentence


def test_the_table_of_a_small_trial_adds_up_by_hand(log: OpenLogbook, crop: Crop) -> None:
    """An invented data set: 30 marketable of 32 fruit, 2425 g; the first two weeks are ages 44 to 57."""
    add_plant(log, crop)
    furnish(log, crop, share=0.5)  # of 1.2 m²
    picked(log, crop, SEASON)
    write_all(log, crop, [(58, Pick(1, 10.0, culls=(Cull(2, CullCause.CRACKED),)))])
    write(log, crop, at(50), Feed(volume_l=12.125))
    view = yield_of(log, crop.id, at(80))
    facts = view.facts
    assert (facts.fruit_count, facts.weight_g, facts.culled_count) == (30, 2425.0, 2)
    assert facts.culls == {"cracked": 2}
    assert facts.marketable_percent == pytest.approx(93.75)
    assert (facts.early_count, facts.early_g) == (9, 760.0)
    assert facts.sessions == 10
    assert facts.fruit_per_session == pytest.approx(3.0)
    assert facts.days_between_sessions == pytest.approx(32 / 9)
    ratios = {f.key: f.value for f in view.figures}
    assert ratios["fruit-per-plant"] == pytest.approx(15)
    assert ratios["weight-per-m2"] == pytest.approx(2425 / 0.6)
    assert ratios["weight-per-litre"] == pytest.approx(200)


def test_a_lost_plant_counts_no_longer_once_it_is_lost(log: OpenLogbook, crop: Crop) -> None:
    plant = add_plant(log, crop)
    with log.unit() as unit:
        unit.change("group", replace(plant, lost_on=at(60)))
        unit.commit()
    picked(log, crop)
    assert yield_of(log, crop.id, at(80)).used.plants_alive == 1
    assert yield_of(log, crop.id, at(59)).used.plants_alive == 2


def test_from_half_the_season_on_there_is_a_forecast_that_ends_at_the_planned_clearing(
    log: OpenLogbook, crop: Crop
) -> None:
    changed = replace(crop, planned_clearing_on=at(90))
    change_crop(log, changed, crop_and_cultivar(log, crop.id)[1])
    picked(log, crop)
    told = yield_of(log, crop.id, at(77))
    assert isinstance(told.forecast_fruit, YieldForecast)
    assert told.forecast_fruit.to_age == 90
    assert told.forecast_fruit.low <= told.forecast_fruit.middle <= told.forecast_fruit.high
    assert isinstance(told.forecast_grams, YieldForecast)
    assert told.notes == ()


def test_without_a_planned_clearing_the_season_taken_is_disclosed(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    assert "60 days from the first pick (common practice" in yield_of(log, crop.id, at(77)).notes[0]


def test_a_forecast_leans_on_the_growers_finished_crop_of_the_species_and_says_so(log: OpenLogbook, crop: Crop) -> None:
    before = plant_crop(log, "Attic Gold", at(0) - timedelta(days=90), species="squash")
    picked(log, before)
    clear_crop(log, before.id, before.day_zero + timedelta(days=84))
    picked(log, crop)
    told = yield_of(log, crop.id, at(77))
    assert isinstance(told.forecast_fruit, YieldForecast)
    assert "your earlier crops (1)" in told.forecast_fruit.prior.source
    assert "40 days from the first pick, as your earlier crops" in told.notes[0]


def test_fruit_set_and_coming_picks_come_from_pollinations(log: OpenLogbook, crop: Crop) -> None:
    pollinated(log, crop, {39: 2, 43: 4, 46: 5, 50: 6, 53: 7, 57: 7, 60: 7, 64: 6, 67: 5, 71: 4, 75: 4})
    picked(log, crop)
    view = yield_of(log, crop.id, at(77))
    assert isinstance(view.fruit_set, FruitSet)
    assert view.fruit_set.source is FlowerSource.POLLINATED
    assert view.fruit_set.rate.low < view.fruit_set.rate.value < view.fruit_set.rate.high < 1
    assert isinstance(view.coming, ComingPicks)
    assert view.coming.basis is Basis.FLOWERS
    assert view.coming.days[-1].age == 91
    assert "14 February 2026" in view.coming.sentence


def test_a_crop_that_sets_alone_uses_flowers_seen_open_and_else_the_recent_rate(log: OpenLogbook) -> None:
    seen, _ = _sets_alone(log, "Seen")
    seen_open(log, seen, {39: 2, 43: 4, 46: 5, 50: 6, 53: 7, 57: 7, 60: 7, 64: 6, 67: 5, 71: 4, 75: 4})
    picked(log, seen)
    told = yield_of(log, seen.id, at(77))
    assert isinstance(told.fruit_set, FruitSet)
    assert told.fruit_set.source is FlowerSource.SEEN_OPEN
    unseen, _ = _sets_alone(log, "Unseen")
    picked(log, unseen)
    told = yield_of(log, unseen.id, at(77))
    assert isinstance(told.fruit_set, NotYet)
    assert "sets without pollination" in told.fruit_set.reason
    assert isinstance(told.coming, ComingPicks)
    assert told.coming.basis is Basis.RECENT_RATE
    assert "not from flowers" in told.coming.basis_sentence


def _sets_alone(log: OpenLogbook, name: str) -> tuple[Crop, object]:
    crop, cultivar = new_crop(name, "pattypan", at(0), habit=FloweringHabit.SETS_ALONE)
    add_crop(log, crop, cultivar)
    return crop, cultivar


def test_a_crop_is_not_told_of_before_it_is_sown(log: OpenLogbook, crop: Crop) -> None:
    with pytest.raises(LogbookProblem, match="Boxroom Gold begins"):
        yield_of(log, crop.id, date(2025, 11, 1))
