"""The maker's model of the demo season holds together: light, flowers, fruit, intervals."""

from collections.abc import Iterable
from datetime import datetime, timedelta

import pytest

from resources.season_maker.diary_pattypan import RE_ENTRY_H
from resources.season_maker.events import Event, Feed, Pick, Pollination, Treatment
from resources.season_maker.pattypan_model import FemaleFlower, PattypanLife
from resources.season_maker.plant_state import FlowerForm, FlowerStage
from resources.season_maker.scenario import LAST_DAY
from resources.season_maker.season import AWAY, CropSeason, Season, make_season


@pytest.fixture(scope="module")
def season() -> Season:
    return make_season()


def crop_named(season: Season, name: str) -> CropSeason:
    return next(crop for crop in season.crops if crop.plan.name == name)


def pattypan(season: Season, name: str) -> PattypanLife:
    life = crop_named(season, name).life
    assert isinstance(life, PattypanLife)
    return life


def picks(crop: CropSeason) -> list[Pick]:
    return [event for event in crop.events if isinstance(event, Pick)]


def all_events(season: Season) -> Iterable[Event]:
    return (*season.room_events, *(event for crop in season.crops for event in crop.events))


def test_the_same_seed_makes_the_same_season(season: Season) -> None:
    again = make_season()
    assert [crop.events for crop in again.crops] == [crop.events for crop in season.crops]
    assert again.room_events == season.room_events
    assert [crop.photos for crop in again.crops] == [crop.photos for crop in season.crops]


def test_lamps_never_give_more_photons_than_their_watts_make(season: Season) -> None:
    for step in season.light_steps:
        needed_umol_s = step.ppfd_umol_m2_s * season.room.floor_m2
        assert needed_umol_s <= season.room.lamps.photons_umol_s(step.dimming_percent)


def test_daily_light_is_near_twelve_for_seedlings_and_twenty_five_for_fruiting_plants(season: Season) -> None:
    # University of Florida IFAS as quoted: fruiting vegetables 20 to 25 mol/m2 a day; seedlings 6 to 12 from memory.
    assert sorted({round(step.dli_mol_m2_d, 1) for step in season.light_steps}) == [11.5, 25.2]


def test_floor_shares_never_add_up_to_more_than_the_room(season: Season) -> None:
    day = season.light_steps[0].from_day
    while day <= LAST_DAY:
        standing = [
            crop.plan for crop in season.crops if crop.plan.sown <= day < crop.plan.ends or day == crop.plan.sown
        ]
        assert sum(plan.floor_share((day - plan.sown).days) for plan in standing) <= 1.0
        day += timedelta(days=1)


@pytest.mark.parametrize("name", ["Boxroom Gold", "Skylight Round"])
def test_every_pattypan_picked_comes_from_a_flower_five_to_nine_days_old(season: Season, name: str) -> None:
    # Britannica, Vegetable farming: summer squash 3 to 7 days from flower; up to 9 in a small room is common practice.
    life = pattypan(season, name)
    opened = {flower.number: life.plan.day(flower.open_age) for flower in life.females if flower.sets}
    for pick in picks(crop_named(season, name)):
        for fruit in pick.fruit:
            assert opened[fruit.flower_number] == fruit.flower_day
            assert 5 <= (pick.day - fruit.flower_day).days <= 9


def test_every_fruit_of_boxroom_gold_stems_from_a_pollination_that_was_written_down(season: Season) -> None:
    gold = crop_named(season, "Boxroom Gold")
    pollinated = {
        (number, event.day)
        for event in gold.events
        if isinstance(event, Pollination)
        for number in event.flower_numbers
    }
    assert all((fruit.flower_number, fruit.flower_day) in pollinated for pick in picks(gold) for fruit in pick.fruit)


def test_about_half_of_the_pollinated_flowers_are_picked_and_fewer_late(season: Season) -> None:
    life = pattypan(season, "Boxroom Gold")
    pollinated = [flower for flower in life.females if flower.pollinated]

    def share_picked(flowers: list[FemaleFlower]) -> float:
        return sum(flower.picked_age is not None for flower in flowers) / len(flowers)

    assert 0.42 <= share_picked(pollinated) <= 0.55
    early = share_picked([flower for flower in pollinated if flower.open_age < 80])
    assert share_picked([flower for flower in pollinated if flower.open_age >= 80]) < early


def test_males_open_before_the_first_female(season: Season) -> None:
    # Colorado State (Wilson 2009): male flowers of cucurbits come first.
    for name in ("Boxroom Gold", "Skylight Round"):
        life = pattypan(season, name)
        assert min(male.open_age for male in life.males) < min(female.open_age for female in life.females)


def test_pollination_happens_before_ten_in_the_morning_with_a_male_open(season: Season) -> None:
    # Squash flowers close by noon (Clemson HGIC, Russ 2007); before ten is usual advice in the trade.
    events = [event for event in crop_named(season, "Boxroom Gold").events if isinstance(event, Pollination)]
    assert len(events) > 30
    assert all(event.at.hour < 10 and event.males_open >= 1 for event in events)


@pytest.mark.parametrize(
    ("name", "count", "culled", "weight_g"),
    [
        ("Boxroom Gold", 32, 3, 2700),
        ("Skylight Round", 45, 2, 3350),
        ("Landing Light", 12, 0, 71),
        ("Porch Violet", 0, 0, 0),
    ],
)
def test_yields_are_what_the_scenario_tells(
    season: Season, name: str, count: int, culled: int, weight_g: float
) -> None:
    fruit = [one for pick in picks(crop_named(season, name)) for one in pick.fruit]
    marketable = [one for one in fruit if not one.culled]
    assert abs(len(marketable) - count) <= 2
    assert len(fruit) - len(marketable) == culled
    assert sum(one.weight_g or 0.0 for one in marketable) == pytest.approx(weight_g, rel=0.08)


def test_the_chilli_is_first_picked_after_day_100_and_ripe_pods_hang_45_days_or_more(season: Season) -> None:
    # Ripe chilli 45 days or more from flower: common practice, no source.
    landing = crop_named(season, "Landing Light")
    assert min(pick.day for pick in picks(landing)) >= landing.plan.day(100)
    assert all((pick.day - fruit.flower_day).days >= 45 for pick in picks(landing) for fruit in pick.fruit)


def test_the_aubergine_opens_its_first_flower_on_day_71(season: Season) -> None:
    life = crop_named(season, "Porch Violet").life
    open_ages = [
        age
        for age in range(life.plan.last_age + 1)
        if any(flower.stage is FlowerStage.OPEN for flower in life.state(age).flowers)
    ]
    assert open_ages[0] == 71


def test_nothing_is_picked_inside_the_harvest_interval_and_nobody_is_in_the_room_before_re_entry(
    season: Season,
) -> None:
    gold = crop_named(season, "Boxroom Gold")
    (treatment,) = [event for event in gold.events if isinstance(event, Treatment)]
    shut = treatment.day + timedelta(days=treatment.harvest_interval_d)
    sprayed = datetime.combine(treatment.day, treatment.at)
    assert all(not treatment.day <= pick.day <= shut for pick in picks(gold))
    stamps = [datetime.combine(event.day, event.at) for event in all_events(season)]
    assert not [stamp for stamp in stamps if sprayed < stamp < sprayed + timedelta(hours=RE_ENTRY_H)]


def test_nothing_is_written_on_the_two_days_away(season: Season) -> None:
    assert len(AWAY) == 2
    assert not [event for event in all_events(season) if event.day in AWAY]


def test_the_mildewed_leaves_are_four_and_are_gone_the_day_after(season: Season) -> None:
    life = pattypan(season, "Boxroom Gold")
    sick = [leaf.number for leaf in life.state(82).leaves if leaf.mildew > 0]
    assert len(sick) == 4
    assert not [leaf for leaf in life.state(84).leaves if leaf.mildew > 0 or leaf.number in sick]


def test_drain_is_less_than_the_feed_and_saltier(season: Season) -> None:
    fed = [event for event in all_events(season) if isinstance(event, Feed)]
    drained = [(event, event.drain_l, event.drain_ec_ms_cm) for event in fed if event.drain_l and event.drain_ec_ms_cm]
    assert len(drained) > 100
    assert all(drain_l < event.volume_l and drain_ec > event.ec_ms_cm for event, drain_l, drain_ec in drained)


def test_leaves_keep_their_place_and_only_grow(season: Season) -> None:
    life = pattypan(season, "Boxroom Gold")
    for age in range(10, 110):
        today = {leaf.number: leaf for leaf in life.state(age).leaves}
        for number, leaf in {leaf.number: leaf for leaf in life.state(age + 1).leaves}.items():
            if number in today:
                assert leaf.azimuth_deg == today[number].azimuth_deg
                assert leaf.blade_cm >= today[number].blade_cm


def test_a_female_flower_is_open_on_one_morning_only(season: Season) -> None:
    life = pattypan(season, "Boxroom Gold")
    seen: dict[int, int] = {}
    for age in range(life.plan.last_age):
        for flower in life.state(age).flowers:
            if flower.form is FlowerForm.FEMALE and flower.stage is FlowerStage.OPEN:
                seen[flower.number] = seen.get(flower.number, 0) + 1
    assert seen
    assert set(seen.values()) == {1}


def test_entries_number_about_nine_hundred_and_most_belong_to_boxroom_gold(season: Season) -> None:
    counts = {crop.plan.name: len(crop.events) for crop in season.crops}
    assert 850 <= sum(1 for _ in all_events(season)) <= 1300
    assert max(counts, key=lambda name: counts[name]) == "Boxroom Gold"
