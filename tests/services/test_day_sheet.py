"""The day sheet: one day of a crop, with what is worked out beside each entry."""

from datetime import date, time, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed, Note, OwnerKind, Pick, Reading, Treatment
from growlog.records.recipe import MixPart
from growlog.services.day_sheet import crop_days_of, day_sheet_of
from growlog.services.mixes import save_mix
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.words import show_day
from tests.logbooks import SOWN, add_plant, furnish, write, write_for
from tests.services.photo_rows import photo_on

DAY = date(2026, 1, 18)


def test_a_day_without_anything_is_an_empty_sheet_with_its_age(log: OpenLogbook, crop: Crop) -> None:
    sheet = day_sheet_of(log, crop.id, DAY)
    assert (sheet.age, sheet.photos, sheet.entries, sheet.photo_ages) == (64, (), (), ())


def test_a_pick_says_what_the_crop_gave_up_to_that_day(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Pick(2, 200.0))
    write(log, crop, DAY + timedelta(days=2), Pick(3))
    write(log, crop, DAY + timedelta(days=4), Pick(10, 2000.0))
    days = crop_days_of(log, crop.id)
    more = [days.sheet(DAY + timedelta(days=n)).entries[0].more for n in (0, 2, 4)]
    assert more[0] == "crop so far 2 fruit, 200\u2009g"
    assert more[1] == "crop so far 5 fruit, about 500\u2009g"
    assert more[2] == "crop so far 15 fruit, about 2.50\u2009kg"


def test_fruit_of_which_none_was_weighed_is_not_said_to_weigh_nothing(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Pick(2))
    assert day_sheet_of(log, crop.id, DAY).entries[0].more == "crop so far 2 fruit, not weighed"


def test_a_reading_of_air_says_its_vapour_pressure_deficit(log: OpenLogbook, crop: Crop) -> None:
    # FAO Irrigation and Drainage Paper 56 (1998), equations 11 and 10: 25 °C and 60 % are 1.267 kPa.
    write(log, crop, DAY, Reading(25.0, 60, plant_height_cm=40))
    write(log, crop, DAY + timedelta(days=1), Reading(25.0))
    days = crop_days_of(log, crop.id)
    assert days.sheet(DAY).entries[0].more.endswith("VPD 1.27\u2009kPa of the air")
    assert "VPD" not in days.sheet(DAY + timedelta(days=1)).entries[0].more


def test_a_pick_inside_a_harvest_interval_carries_its_warning(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Treatment("Leaf wash", harvest_interval_days=3))
    write(log, crop, DAY + timedelta(days=2), Pick(1, 90.0))
    write(log, crop, DAY + timedelta(days=3), Pick(1, 90.0))
    days = crop_days_of(log, crop.id)
    warned, free = (days.sheet(DAY + timedelta(days=n)).entries[0].warning for n in (2, 3))
    until = show_day(DAY + timedelta(days=3))
    assert warned == f"Inside the harvest interval of Leaf wash, until {until}: not to be eaten, the label rules."
    assert (free, days.sheet(DAY).entries[0].warning) == ("", "")


def test_each_entry_says_whose_it_is(log: OpenLogbook, crop: Crop) -> None:
    room, tank = furnish(log, crop)
    plant = add_plant(log, crop)
    write(log, crop, DAY, Pick(1, 90.0))
    write_for(log, OwnerKind.PLANT, plant.id, DAY, Pick(1, 80.0))
    write_for(log, OwnerKind.TANK, tank.id, DAY, Feed(volume_l=2.0))
    write_for(log, OwnerKind.ROOM, room.id, DAY, Reading(24.0))
    belongs = {e.belongs for e in day_sheet_of(log, crop.id, DAY).entries}
    assert belongs == {"", "plant 2", "Blue tank", "Box room"}


def test_a_feed_names_its_mix_and_a_note_shows_itself(log: OpenLogbook, crop: Crop) -> None:
    mix, _ = save_mix(log, "Two bottles", (MixPart("Part A", 2.0),))
    write(log, crop, DAY, Feed(mix.id, None, 2.8, 1.88), at=time(8), labour_minutes=4, note="slow drain")
    write(log, crop, DAY, Note(), note="Leaves pale.\nWatch them.")
    feed, note = day_sheet_of(log, crop.id, DAY).entries
    assert feed.title == "Feed 2.8\u2009L, Two bottles"
    assert feed.more == "EC 1.88\u2009mS/cm; 4\u2009min; slow drain"
    assert (note.title, note.more) == ("Leaves pale.", "")


def test_moving_from_day_to_day_needs_no_second_look_at_the_logbook(log: OpenLogbook, crop: Crop) -> None:
    photo_on(log, crop, DAY, at=time(8))
    leader = photo_on(log, crop, DAY, leads=True)
    photo_on(log, crop, SOWN + timedelta(days=3), leads=True)
    days = crop_days_of(log, crop.id)
    log.close()
    assert days.sheet(DAY).photos[0].use.id == leader.id
    assert len(days.sheet(DAY).photos) == 2
    assert days.sheet(DAY).photo_ages == (3, 64)


def test_a_sheet_of_no_crop_is_a_plain_sentence(log: OpenLogbook) -> None:
    with pytest.raises(LogbookProblem, match="no longer in the logbook"):
        crop_days_of(log, "nothing")
