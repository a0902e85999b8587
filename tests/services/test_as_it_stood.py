"""A logbook read as of a past evening: what came later is not there, and nothing stored is lost by it."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Note, Pick, StageSeen
from growlog.services.as_it_stood import known_on
from growlog.services.board import board_of, curve_of
from growlog.services.crops import change_crop, clear_crop, crop_and_cultivar, crops_of
from growlog.services.day_sheet import crop_days_of
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import SOWN, plant_crop, still_clock, write
from tests.services.photo_rows import photo_on

EVENING = 64


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


@pytest.fixture
def stored(log: OpenLogbook, crop: Crop) -> OpenLogbook:
    """A crop with photos, stages and picks on both sides of day 64, cleared on day 100."""
    for age in (60, 90):
        photo_on(log, crop, at(age))
    write(log, crop, at(50), StageSeen(("61",)))
    write(log, crop, at(80), StageSeen(("81",)))
    write(log, crop, at(60), Pick(2, 160))
    write(log, crop, at(90), Pick(3, 240))
    clear_crop(log, crop.id, at(100))
    return log


@pytest.fixture
def evening(stored: OpenLogbook) -> OpenLogbook:
    """The same logbook as it stood on the evening of day 64."""
    return replace(stored, clock=still_clock(at(EVENING)))


def test_a_crop_cleared_later_still_grows_that_evening(evening: OpenLogbook, crop: Crop) -> None:
    board = board_of(evening, crop.id)
    assert board.crop.growing
    assert (board.last_age, curve_of(evening, crop.id).last_age) == (EVENING, EVENING)
    assert [(c.crop.growing, c.age_days) for c in crops_of(evening)] == [(True, EVENING)]
    assert crop_days_of(evening, crop.id).crop.growing


def test_photos_entries_and_stages_of_later_days_are_not_seen(evening: OpenLogbook, crop: Crop) -> None:
    board, days = board_of(evening, crop.id), crop_days_of(evening, crop.id)
    assert [p.age for p in board.photo_days] == [60]
    assert days.photo_ages == (60,)
    assert [s.principal for s in board.stages] == [6]
    assert board.total.fruit_count == 2
    assert max(e.day for e in days.entries) == at(60)
    assert [(c.photo_count, c.entry_count) for c in crops_of(evening)] == [(1, 2)]


def test_a_crop_sown_later_is_not_in_the_list(evening: OpenLogbook, stored: OpenLogbook, crop: Crop) -> None:
    younger = plant_crop(stored, "Younger", sown=at(EVENING + 1))
    assert [c.crop.id for c in crops_of(evening)] == [crop.id]
    assert younger.id in {c.crop.id for c in crops_of(stored)}


def test_what_the_crop_form_corrects_keeps_its_later_days(evening: OpenLogbook, crop: Crop) -> None:
    form_crop, cultivar = crop_and_cultivar(evening, crop.id)
    assert form_crop.cleared_on == at(100)
    change_crop(replace(evening, clock=still_clock(at(112))), replace(form_crop, note="Much sun."), cultivar)
    assert crop_and_cultivar(evening, crop.id)[0].cleared_on == at(100)


def test_on_the_day_of_clearing_it_is_cleared(stored: OpenLogbook, crop: Crop) -> None:
    that_day = replace(stored, clock=still_clock(at(100)))
    assert not board_of(that_day, crop.id).crop.growing
    assert board_of(that_day, crop.id).last_age == 100


def test_a_crop_all_of_whose_days_have_come_stays_the_same(crop: Crop) -> None:
    known = replace(crop, emerged_on=at(3), cleared_on=at(64))
    assert known_on(known, at(64)) is known
    assert known_on(known, at(63)) == replace(known, cleared_on=None)


def test_a_later_note_does_not_lengthen_the_axis(evening: OpenLogbook, stored: OpenLogbook, crop: Crop) -> None:
    write(stored, crop, at(99), Note(), note="Later.")
    assert board_of(evening, crop.id).last_age == EVENING
