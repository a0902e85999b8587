"""The season board: every lane of a crop, on the one axis of plant age."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop, StartedFrom
from growlog.records.cultivar import CountsFrom
from growlog.records.entry import (
    Cull,
    CullCause,
    Feed,
    FruitCheck,
    LightChange,
    Note,
    OwnerKind,
    Pick,
    Pollination,
    PottingOn,
    Reading,
    StageSeen,
    Training,
)
from growlog.records.recipe import MixPart
from growlog.records.room import Room
from growlog.services.board import MixBand, board_of, curve_of
from growlog.services.crops import add_crop, change_crop, clear_crop, crop_and_cultivar, new_crop
from growlog.services.mixes import save_mix
from growlog.services.open_logbook import LogbookProblem, OpenLogbook, new_id
from growlog.services.rooms import place_crop, save_thing
from tests.logbooks import SOWN, TODAY, add_plant, furnish, plant_crop, write, write_for
from tests.services.photo_rows import photo_on

TODAY_AGE = 112


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


def test_a_crop_without_anything_has_an_empty_board_up_to_today(log: OpenLogbook, crop: Crop) -> None:
    board = board_of(log, crop.id)
    assert (board.day_zero, board.last_age, board.date_of(3)) == (SOWN, TODAY_AGE, at(3))
    lanes = (board.photo_days, board.stages, board.light, board.mixes, board.feeds, board.training, board.pollination,
             board.picks, board.events, board.readings, board.curve.points, board.missing_photo_ages)  # fmt: skip
    assert lanes == ((),) * len(lanes)
    assert (board.first_flower_age, board.first_pick_age, board.total.weight_g) == (None, None, 0)


def test_the_axis_of_a_crop_sown_today_ends_with_day_0(log: OpenLogbook) -> None:
    assert board_of(log, plant_crop(log, sown=TODAY).id).last_age == 0


def test_a_cleared_crops_axis_ends_with_its_clearing(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, at(80), StageSeen(("71",)))
    clear_crop(log, crop.id, at(90))
    board = board_of(log, crop.id)
    assert (board.last_age, board.stages[0].end_age, curve_of(log, crop.id).last_age) == (90, 90, 90)


def test_stages_and_the_first_flower_come_from_what_was_seen(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, at(20), StageSeen(("13",)))
    write(log, crop, at(50), StageSeen(("61", "71")))
    board = board_of(log, crop.id)
    assert [(s.principal, s.start_age, s.end_age) for s in board.stages] == [
        (1, 20, 50), (6, 50, TODAY_AGE), (7, 50, TODAY_AGE),
    ]  # fmt: skip
    assert board.first_flower_age == 50


def test_the_light_of_the_room_before_the_crop_came_holds_from_its_first_day(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    for day, hours in ((at(-60), 12), (at(-40), 16), (at(30), 18)):
        write_for(log, OwnerKind.ROOM, room.id, day, LightChange(hours, None, 40, 200))
    spans = board_of(log, crop.id).light
    assert [(s.start_age, s.end_age, s.photoperiod_h) for s in spans] == [(0, 29, 16), (30, TODAY_AGE, 18)]
    assert [s.dli_mol for s in spans] == [pytest.approx(11.52), pytest.approx(12.96)]


def test_a_crop_that_moves_comes_under_the_light_of_its_new_room(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    shelf = Room(new_id(), "Shelf")
    save_thing(log, shelf)
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(16))
    write_for(log, OwnerKind.ROOM, shelf.id, at(-5), LightChange(12))
    place_crop(log, crop.id, shelf.id, at(40))
    write_for(log, OwnerKind.ROOM, room.id, at(50), LightChange(20))  # no longer its light
    spans = board_of(log, crop.id).light
    assert [(s.start_age, s.end_age, s.photoperiod_h) for s in spans] == [(0, 39, 16), (40, TODAY_AGE, 12)]


def test_a_mix_is_a_band_from_its_first_to_its_last_feed_and_a_new_one_another(log: OpenLogbook, crop: Crop) -> None:
    weak, _ = save_mix(log, "Weak", (MixPart("Part A", 1.0),))
    strong, _ = save_mix(log, "Strong", (MixPart("Part A", 3.0),))
    for age, mix in ((10, weak), (20, weak), (30, strong), (40, weak)):
        write(log, crop, at(age), Feed(mix.id, None, 2.0, 1.8))
    write(log, crop, at(15), Feed(volume_l=1.0, water_only=True))
    board = board_of(log, crop.id)
    assert board.mixes == (MixBand(10, 20, "Weak"), MixBand(30, 30, "Strong"), MixBand(40, 40, "Weak"))
    assert [(f.age, f.water_only) for f in board.feeds][:2] == [(10, False), (15, True)]


def test_feeds_of_the_tank_are_feeds_of_the_crop(log: OpenLogbook, crop: Crop) -> None:
    _, tank = furnish(log, crop)
    write_for(log, OwnerKind.TANK, tank.id, at(30), Feed(None, None, 2.8, 1.88, 5.9, 0.6, 2.24, 6.1))
    (feed,) = board_of(log, crop.id).feeds
    assert (feed.age, feed.ec_ms_per_cm, feed.drain_ec_ms_per_cm, feed.volume_l) == (30, 1.88, 2.24, 2.8)
    assert "1.88" in feed.text


def test_each_kind_is_in_its_lane_and_counts_of_a_day_are_added(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, at(30), Training(2), labour_minutes=4)
    write(log, crop, at(50), Pollination(2), labour_minutes=3)
    write(log, crop, at(50), Pollination(1))
    write(log, crop, at(51), Pollination(None, 4))
    write(log, crop, at(60), Pick(2, 171.0, (), (Cull(1, CullCause.CRACKED),)))
    write(log, crop, at(60), Pick(1))
    write(log, crop, at(61), Reading(24.0, 58))
    for detail in (PottingOn(11.0), FruitCheck(hanging=3), Note()):
        write(log, crop, at(62), detail, note="x")
    board = board_of(log, crop.id)
    assert [(t.age, t.count) for t in board.pollination] == [(50, 3)]
    assert [(t.age, t.count, t.culled) for t in board.picks] == [(60, 3, 1)]
    assert [m.age for m in board.training + board.readings] == [30, 61]
    assert {m.kind for m in board.events} == {"potting-on", "fruit-check", "note"}
    assert (board.females_pollinated, board.labour_minutes, board.first_pick_age) == (3, 7, 60)
    assert (board.total.fruit_count, board.total.weight_g, board.total.estimated_g) == (3, 256.5, 85.5)


def test_the_boards_curve_is_the_one_that_is_laid_under_others(log: OpenLogbook, crop: Crop) -> None:
    plant = add_plant(log, crop)
    write(log, crop, at(60), Pick(2, 171.0))
    write_for(log, OwnerKind.PLANT, plant.id, at(70), Pick(1, 80.0))
    board = board_of(log, crop.id)
    assert curve_of(log, crop.id) == board.curve
    assert [(p.age, p.weight_g) for p in board.curve.points] == [(60, 171.0), (70, 251.0)]
    assert board.curve.points[-1].weight_g == board.total.weight_g


def test_a_pick_weighed_in_part_counts_what_was_weighed_and_estimates_the_rest(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, at(60), Pick(3, None, (90.0, 70.0)))
    total = board_of(log, crop.id).total
    assert (total.fruit_count, total.weight_g, total.estimated_g) == (3, 240.0, 80.0)


@pytest.mark.parametrize(
    ("counts_from", "age"),
    [(CountsFrom.SOWING, 58), (CountsFrom.EMERGENCE, 64), (CountsFrom.TRANSPLANTING, 78)],
)
def test_the_packets_promise_counts_from_the_day_it_names(
    log: OpenLogbook, crop: Crop, counts_from: CountsFrom, age: int
) -> None:
    dated = replace(crop, emerged_on=at(6), transplanted_on=at(20))
    change_crop(log, dated, replace(crop_and_cultivar(log, crop.id)[1], packet_counts_from=counts_from))
    assert board_of(log, crop.id).packet_maturity_age == age


def test_without_that_day_or_a_packet_there_is_no_promise(log: OpenLogbook, crop: Crop) -> None:
    cultivar = crop_and_cultivar(log, crop.id)[1]
    change_crop(log, crop, replace(cultivar, packet_counts_from=CountsFrom.TRANSPLANTING))
    assert board_of(log, crop.id).packet_maturity_age is None
    bare, no_packet = new_crop("Shelf Ember", "squash", SOWN)
    add_crop(log, bare, no_packet)
    assert board_of(log, bare.id).packet_maturity_age is None


def test_a_bought_plants_age_counts_from_transplanting(log: OpenLogbook) -> None:
    crop, cultivar = new_crop("Shelf Ember", "chilli", None, packet_days=75)
    add_crop(log, replace(crop, started_from=StartedFrom.BOUGHT_PLANT, transplanted_on=at(30)), cultivar)
    board = board_of(log, crop.id)
    assert (board.day_zero, board.last_age, board.packet_maturity_age) == (at(30), TODAY_AGE - 30, 75)


def test_photo_days_show_the_leader_the_number_and_the_gaps(log: OpenLogbook, crop: Crop) -> None:
    photo_on(log, crop, at(3))
    leader = photo_on(log, crop, at(3), leads=True)
    photo_on(log, crop, at(6), leads=True)
    board = board_of(log, crop.id)
    assert [(p.age, p.photo_count) for p in board.photo_days] == [(3, 2), (6, 1)]
    assert board.photo_days[0].use_id == leader.id
    assert board.missing_photo_ages == (4, 5)


def test_a_board_of_no_crop_is_a_plain_sentence(log: OpenLogbook) -> None:
    with pytest.raises(LogbookProblem, match="no longer in the logbook"):
        board_of(log, "nothing")
