"""Crops: names, dates, clearing, and the order of the list."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.cultivar import CountsFrom, FloweringHabit
from growlog.records.entry import Cull, CullCause, Note, OwnerKind, Pick, Pollination, StageSeen
from growlog.records.problems import RecordRefused
from growlog.services.crops import (
    add_crop,
    change_crop,
    clear_crop,
    crop_and_cultivar,
    crop_named,
    crops_of,
    new_crop,
    remove_crop,
    reopen_crop,
)
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.words import show_day
from tests.logbooks import SOWN, TODAY, add_plant, content_of, plant_crop, write, write_for


def fields_refused(error: pytest.ExceptionInfo[RecordRefused]) -> set[str]:
    return {p.field for p in error.value.problems}


def test_a_new_crop_is_there_with_its_cultivar_and_one_plant(log: OpenLogbook, crop: Crop) -> None:
    found, cultivar = crop_and_cultivar(log, crop.id)
    assert found == crop
    assert (cultivar.species, cultivar.packet_days) == ("pattypan", 58)
    assert [p["label"] for p in content_of(log)["Plant"]] == ["1"]


@pytest.mark.parametrize("name", ["Boxroom Gold", "BOXROOM GOLD", "  boxroom gold "])
def test_a_name_that_is_taken_is_refused_whatever_its_case(log: OpenLogbook, crop: Crop, name: str) -> None:
    other, cultivar = new_crop("Shelf Ember", "chilli", SOWN)
    before = content_of(log)
    with pytest.raises(RecordRefused, match="name already") as error:
        add_crop(log, replace(other, name=name), cultivar)
    assert fields_refused(error) == {"name"}
    assert content_of(log) == before


def test_a_crop_may_keep_its_own_name_when_it_is_changed(log: OpenLogbook, crop: Crop) -> None:
    change_crop(log, replace(crop, note="by the door"), crop_and_cultivar(log, crop.id)[1])
    assert crop_and_cultivar(log, crop.id)[0].note == "by the door"


def test_a_removed_crop_frees_its_name(log: OpenLogbook, crop: Crop) -> None:
    remove_crop(log, crop.id)
    assert crop_named(log, "boxroom gold") is None
    again = plant_crop(log)
    assert crop_named(log, " BOXROOM gold ") == again


@pytest.mark.parametrize("field", ["sown_on", "emerged_on", "transplanted_on", "first_flower_on", "first_pick_on"])
def test_a_day_that_has_not_come_is_refused(log: OpenLogbook, crop: Crop, field: str) -> None:
    tomorrow = TODAY + timedelta(days=1)
    with pytest.raises(RecordRefused, match="not come yet") as error:
        change_crop(log, replace(crop, **{field: tomorrow}), crop_and_cultivar(log, crop.id)[1])
    assert field in fields_refused(error)
    assert crop_and_cultivar(log, crop.id)[0] == crop


def test_all_that_is_wrong_is_said_at_once(log: OpenLogbook) -> None:
    crop, cultivar = new_crop(" ", "", TODAY + timedelta(days=1), packet_days=900)
    with pytest.raises(RecordRefused) as error:
        add_crop(log, crop, cultivar)
    assert fields_refused(error) == {"name", "species", "sown_on", "packet_days"}
    assert content_of(log) == {}


def test_a_crop_is_not_cleared_before_its_last_entry(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, date(2026, 2, 1), Pick(1, 90.0))
    with pytest.raises(RecordRefused, match=show_day(date(2026, 2, 1))):
        clear_crop(log, crop.id, date(2026, 1, 31))
    clear_crop(log, crop.id, date(2026, 2, 1))
    assert crop_and_cultivar(log, crop.id)[0].cleared_on == date(2026, 2, 1)


def test_an_entry_of_one_of_its_plants_holds_the_crop_too(log: OpenLogbook, crop: Crop) -> None:
    plant = add_plant(log, crop)
    write_for(log, OwnerKind.PLANT, plant.id, date(2026, 2, 1), Pick(1, 90.0))
    with pytest.raises(RecordRefused, match=show_day(date(2026, 2, 1))):
        clear_crop(log, crop.id, date(2026, 1, 31))


def test_a_crop_is_not_cleared_tomorrow_and_not_before_day_0(log: OpenLogbook, crop: Crop) -> None:
    for day in (TODAY + timedelta(days=1), SOWN - timedelta(days=1)):
        with pytest.raises(RecordRefused):
            clear_crop(log, crop.id, day)
    assert crop_and_cultivar(log, crop.id)[0].growing


def test_day_0_cannot_move_behind_an_entry(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, SOWN + timedelta(days=3), Note(), note="first seed leaf")
    cultivar = crop_and_cultivar(log, crop.id)[1]
    with pytest.raises(RecordRefused, match=show_day(date(2025, 11, 18))) as error:
        change_crop(log, replace(crop, sown_on=SOWN + timedelta(days=4)), cultivar)
    assert fields_refused(error) == {"sown_on"}
    change_crop(log, replace(crop, sown_on=SOWN + timedelta(days=3)), cultivar)
    assert crop_and_cultivar(log, crop.id)[0].day_zero == date(2025, 11, 18)


def test_a_reopened_crop_grows_again(log: OpenLogbook, crop: Crop) -> None:
    clear_crop(log, crop.id, TODAY)
    reopen_crop(log, crop.id)
    assert crop_and_cultivar(log, crop.id)[0].growing


def test_the_list_has_growing_crops_first_the_youngest_last_then_the_latest_cleared(log: OpenLogbook) -> None:
    days = {"Old": date(2025, 9, 1), "Young": date(2026, 1, 10), "First": date(2025, 3, 1), "Second": date(2025, 4, 1)}
    crops = {name: plant_crop(log, name, sown) for name, sown in days.items()}
    clear_crop(log, crops["First"].id, date(2025, 8, 1))
    clear_crop(log, crops["Second"].id, date(2025, 12, 1))
    assert [s.crop.name for s in crops_of(log)] == ["Old", "Young", "Second", "First"]
    assert [s.age_days for s in crops_of(log)][1:] == [56, 244, 153]


def test_an_empty_logbook_has_an_empty_list(log: OpenLogbook) -> None:
    assert crops_of(log) == []


def test_the_list_sums_what_the_crop_and_its_plants_gave(log: OpenLogbook, crop: Crop) -> None:
    plant = add_plant(log, crop)
    write(log, crop, date(2026, 1, 5), Pollination(2))
    write(log, crop, date(2026, 1, 20), Pick(2, 180.0, (), (Cull(1, CullCause.CRACKED),)))
    write_for(log, OwnerKind.PLANT, plant.id, date(2026, 1, 25), Pick(1, 70.0))
    (summary,) = crops_of(log)
    assert (summary.entry_count, summary.total.fruit_count, summary.total.weight_g) == (3, 3, 250.0)
    assert (summary.total.culled_count, summary.first_flower_age, summary.first_pick_age) == (1, 51, 66)
    assert [(p.age, p.fruit_count) for p in summary.curve] == [(66, 2), (71, 3)]


def test_typed_first_flower_and_pick_come_before_those_of_the_entries(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, date(2026, 1, 5), StageSeen(("61",)))
    write(log, crop, date(2026, 1, 20), Pick(2, 180.0))
    typed = replace(crop, first_flower_on=date(2026, 1, 2), first_pick_on=date(2026, 1, 15))
    change_crop(log, typed, crop_and_cultivar(log, crop.id)[1])
    (summary,) = crops_of(log)
    assert (summary.first_flower_age, summary.first_pick_age) == (48, 61)


def test_a_tomato_counts_from_transplanting_and_a_squash_from_sowing() -> None:
    # Encyclopaedia Britannica, Vegetable farming: its harvesting table stars tomato as counted from transplanting.
    assert new_crop("A", "Cherry tomato", SOWN)[1].packet_counts_from is CountsFrom.TRANSPLANTING
    assert new_crop("B", "pattypan", SOWN)[1].packet_counts_from is CountsFrom.SOWING
    assert new_crop("C", "pattypan", SOWN)[1].habit is FloweringHabit.SEPARATE


def test_a_crop_that_is_not_there_is_a_plain_sentence(log: OpenLogbook) -> None:
    with pytest.raises(LogbookProblem, match="no longer in the logbook"):
        crop_and_cultivar(log, "nothing")
