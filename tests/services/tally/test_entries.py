"""The entries that a tally becomes, and what is asked or refused before it is written."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, time, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import (
    Cull,
    CullCause,
    FruitCheck,
    Note,
    Pick,
    Pollination,
    PollinationWay,
    Training,
    Treatment,
)
from growlog.records.problems import RecordRefused
from growlog.services.crops import clear_crop, remove_crop
from growlog.services.open_logbook import OpenLogbook
from growlog.services.tally import CropTally, Tally, TallyProblem, check_tally, entries_of, tally_crops, write_tally
from growlog.services.tally.fitting import counters_for, flowers_shut_by_noon
from growlog.services.undo import undo
from tests.logbooks import SOWN, content_of, write
from tests.services.tally.conftest import DAY, MORNING


def worked(crop: Crop) -> CropTally:
    """A bit of everything."""
    state = CropTally(crop.id).picked(93).picked(78).picked().culled(CullCause.CRACKED)
    state = state.counted("females_pollinated", 5, MORNING).counted("males_open", 9, MORNING)
    state = state.counted("old_leaves_removed", 2, None).checked("hanging", 0)
    return replace(state, note=" mildew below ").with_minutes(8)


def asked(log: OpenLogbook, tally: Tally) -> list[TallyProblem]:
    return check_tally(tally, tally_crops(log, tally.day))


def test_a_tally_becomes_one_entry_of_each_kind(
    log: OpenLogbook, crop: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    entries = entries_of(tally_of_day(worked(crop)))
    assert [e.detail for e in entries] == [
        Pick(3, None, (93.0, 78.0), (Cull(1, CullCause.CRACKED),)),
        Pollination(5, 9),
        Training(2),
        FruitCheck(hanging=0),
        Note(),
    ]
    assert [e.note for e in entries] == ["", "", "", "", "mildew below"]
    assert [e.at for e in entries] == [time(12, 40), MORNING, time(12, 40), time(12, 40), time(12, 40)]


def test_minutes_stand_on_the_first_entry_of_a_crop_alone(
    crop: Crop, chilli: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    shaken = CropTally(chilli.id).counted("trusses_vibrated", 4, MORNING).with_minutes(3)
    entries = entries_of(tally_of_day(worked(crop), shaken))
    assert [e.labour_minutes for e in entries] == [8, None, None, None, None, 3]
    assert entries[-1].detail == Pollination(None, None, 4, PollinationWay.SHAKEN)


def test_a_crop_with_only_minutes_gets_a_note(crop: Crop, tally_of_day: Callable[..., Tally]) -> None:
    (entry,) = entries_of(tally_of_day(CropTally(crop.id).with_minutes(4)))
    assert (entry.detail, entry.labour_minutes, entry.note) == (Note(), 4, "")


def test_written_up_the_morning_after_it_has_no_times_of_the_clock(
    crop: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    entries = entries_of(tally_of_day(worked(crop)).with_day(DAY - timedelta(days=1)))
    assert {e.day for e in entries} == {DAY - timedelta(days=1)}
    assert {e.at for e in entries} == {None}


def test_a_tally_is_one_change_and_one_undo(
    log: OpenLogbook, crop: Crop, chilli: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    before = content_of(log)
    change = write_tally(log, tally_of_day(worked(crop), CropTally(chilli.id).picked(12)))
    assert change.crop_ids == frozenset({crop.id, chilli.id})
    assert len(change.record_ids) == 6
    assert len(content_of(log)["Entry"]) == 6
    undo(log, change)
    assert content_of(log) == before


def test_a_tally_of_which_one_crop_was_cleared_is_refused_as_a_whole(
    log: OpenLogbook, crop: Crop, chilli: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    clear_crop(log, chilli.id, DAY - timedelta(days=1))
    before = content_of(log)
    tally = tally_of_day(worked(crop), CropTally(chilli.id).picked(12))
    with pytest.raises(RecordRefused, match="Landing Light was cleared") as refusal:
        write_tally(log, tally)
    assert [p.crop_id for p in refusal.value.problems] == [chilli.id]  # type: ignore[attr-defined]
    assert content_of(log) == before
    rows = tally_crops(log, DAY, [c.crop_id for c in tally.crops])
    assert [(r.crop_id, bool(r.cannot)) for r in rows] == [(crop.id, False), (chilli.id, True)]
    assert [p.crop_id for p in check_tally(tally, rows) if not p.asks] == [chilli.id]


def test_a_crop_in_the_bin_is_refused_with_its_name(
    log: OpenLogbook, crop: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    remove_crop(log, crop.id)
    with pytest.raises(RecordRefused, match="Boxroom Gold was removed"):
        write_tally(log, tally_of_day(worked(crop)))


def test_an_empty_tally_is_not_written(log: OpenLogbook, tally_of_day: Callable[..., Tally]) -> None:
    with pytest.raises(RecordRefused, match="Nothing is tallied"):
        write_tally(log, tally_of_day())


def test_a_tally_is_never_in_the_log_twice(log: OpenLogbook, crop: Crop, tally_of_day: Callable[..., Tally]) -> None:
    tally = tally_of_day(worked(crop))
    write_tally(log, tally)
    with pytest.raises(RecordRefused, match="in the log already"):
        write_tally(log, tally)
    assert len(content_of(log)["Entry"]) == 5


def test_a_pick_within_the_harvest_interval_is_asked_about_once(
    log: OpenLogbook, crop: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    write(log, crop, DAY, Treatment("Leaf wash", harvest_interval_days=3))
    (question,) = asked(log, tally_of_day(CropTally(crop.id).picked(93).picked(78)))
    assert (question.field, question.asks, question.crop_id) == ("fruit", True, crop.id)
    assert "Leaf wash" in question.sentence
    assert asked(log, tally_of_day(CropTally(crop.id).counted("males_open", 3, MORNING))) == []
    write_tally(log, tally_of_day(CropTally(crop.id).picked(93)))


def test_heavy_fruit_is_asked_about_in_one_question(
    log: OpenLogbook, crop: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    (question,) = asked(log, tally_of_day(CropTally(crop.id).picked(6000).picked(7000).picked(6000)))
    assert question.sentence.count("unusual") == 2
    assert question.field == "weights_g"


@pytest.mark.parametrize(
    ("at", "is_asked"), [(time(8, 5), False), (time(11, 59), False), (time(12), True), (time(19), True)]
)
def test_flowers_of_a_cucurbit_shut_by_noon_so_a_later_pollination_is_asked_about(
    log: OpenLogbook, crop: Crop, tally_of_day: Callable[..., Tally], at: time, is_asked: bool
) -> None:
    """They open early and close by noon: Russ, K., Clemson University Home and Garden Information Center (2007)."""
    found = asked(log, tally_of_day(CropTally(crop.id).counted("females_pollinated", 2, at)))
    assert [p.field for p in found] == (["pollinated_at"] if is_asked else [])
    assert asked(log, tally_of_day(CropTally(crop.id).counted("males_open", 2, at))) == []


def test_an_evening_at_perfect_flowers_raises_no_question(
    log: OpenLogbook, chilli: Crop, tally_of_day: Callable[..., Tally]
) -> None:
    assert asked(log, tally_of_day(CropTally(chilli.id).counted("trusses_vibrated", 4, time(19)))) == []


def test_what_is_counted_follows_the_flowering_habit() -> None:
    work = ("old_leaves_removed", "side_shoots_removed")
    assert counters_for("pattypan", FloweringHabit.SEPARATE) == ("females_pollinated", "males_open", *work)
    assert counters_for("chilli", FloweringHabit.PERFECT) == ("trusses_vibrated", *work)
    assert counters_for("cucumber", FloweringHabit.SETS_ALONE)[0] == "females_pollinated"
    assert flowers_shut_by_noon("Cucumber", FloweringHabit.SETS_ALONE)
    assert not flowers_shut_by_noon("tomato", FloweringHabit.PERFECT)


def test_growing_crops_come_with_their_last_figures(log: OpenLogbook, crop: Crop, chilli: Crop) -> None:
    write(log, crop, DAY - timedelta(days=2), Pick(14, 1200.0))
    write(log, crop, DAY + timedelta(days=2), Pick(1, 90.0))
    clear_crop(log, chilli.id, DAY - timedelta(days=1))
    (row,) = tally_crops(log, DAY)
    assert (row.name, row.species, row.age_days) == ("Boxroom Gold", "pattypan", (DAY - SOWN).days)
    assert (row.so_far.fruit_count, row.so_far.weight_g) == (14, 1200.0)
    assert [r.name for r in tally_crops(log, DAY - timedelta(days=1))] == ["Boxroom Gold", "Landing Light"]
    assert tally_crops(log, date(2025, 1, 1)) == []
