"""What is due as a calendar file: the same names on every run, also after something was done."""

from pathlib import Path

import pytest
from icalendar import Calendar

from growlog.records.crop import Crop
from growlog.records.entry import Feed
from growlog.services.due.calendar import CalendarRefused, write_calendar
from growlog.services.open_logbook import OpenLogbook
from growlog.sharing.calendar_file import calendar_uid
from tests.logbooks import TODAY, write
from tests.services.due.routines import day, keep, today_of


def uids(path: Path) -> dict[object, str]:
    """The UID of each event by its day and title."""
    read = Calendar.from_ical(path.read_bytes()).walk("VEVENT")
    return {(e.decoded("dtstart"), str(e["summary"])): str(e["uid"]) for e in read}


def test_uids_are_the_same_on_two_runs_and_after_a_thing_is_done(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    keep(log, "Feed", "feed")
    keep(log, "Weigh", every_days=7, in_the_morning=True)
    write(log, crop, day(-1), Feed(volume_l=1))
    target = tmp_path / "due.ics"
    assert write_calendar(log, target, 15) == 18
    first = uids(target)
    write_calendar(log, target, 15, replace=True)
    assert uids(target) == first
    write(log, crop, TODAY, Feed(volume_l=1))
    write_calendar(log, target, 15, replace=True)
    assert uids(target) == {k: v for k, v in first.items() if k != (TODAY, "Feed: Boxroom Gold")}
    assert (day(7), "Weigh: Boxroom Gold (morning)") in first


def test_what_is_late_stands_on_today_under_the_uid_of_the_day_on_which_it_fell_due(
    log: OpenLogbook, crop: Crop, tmp_path: Path
) -> None:
    keep(log, "Weigh", every_days=30, from_day=day(-3))
    write_calendar(log, tmp_path / "a.ics", 5)
    item = today_of(log)[0]
    assert uids(tmp_path / "a.ics") == {(TODAY, "Weigh: Boxroom Gold"): calendar_uid(item.key, day(-3))}


def test_a_file_that_is_there_is_replaced_only_if_told(log: OpenLogbook, tmp_path: Path) -> None:
    target = tmp_path / "due.ics"
    target.write_bytes(b"mine")
    with pytest.raises(CalendarRefused, match=r"due\.ics is there already"):
        write_calendar(log, target)
    assert target.read_bytes() == b"mine"
    with pytest.raises(CalendarRefused, match="could not be written"):
        write_calendar(log, tmp_path / "none" / "due.ics")


def test_days_outside_a_year_are_refused(log: OpenLogbook, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="days 0 is outside 1 to 366"):
        write_calendar(log, tmp_path / "a.ics", 0)
