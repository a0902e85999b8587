"""A calendar file reads back as it was meant, and keeps to RFC 5545 (iCalendar, 2009)."""

from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from icalendar import Calendar

from growlog.sharing.calendar_file import CalendarDay, calendar_bytes, calendar_uid, write_calendar_file

NOW = datetime(2026, 3, 7, 12, 0, tzinfo=UTC)
HARD = "Feed: Über, Gold; a\\b " + "µS and so on " * 9
DAYS = [
    CalendarDay("routine:a:b", date(2026, 3, 4), date(2026, 3, 7), HARD, "3 days late.\nEvery 7 days."),
    CalendarDay("maturity:b", date(2026, 3, 9), date(2026, 3, 9), "Packet maturity: Gold", ""),
]


def events(content: bytes) -> list[dict[str, object]]:
    """The events of a file as another reader sees them."""
    return [
        {
            "uid": str(e["uid"]),
            "title": str(e["summary"]),
            "day": e.decoded("dtstart"),
            "more": str(e.get("description", "")),
            "stamp": e.decoded("dtstamp"),
        }
        for e in Calendar.from_ical(content).walk("VEVENT")
    ]


def test_each_day_reads_back_as_an_event_of_a_whole_day() -> None:
    read = events(calendar_bytes(DAYS, "Box room", NOW))
    assert [(e["title"], e["day"], e["more"], e["stamp"]) for e in read] == [
        (d.title, d.day, d.more, NOW) for d in DAYS
    ]


def test_lines_end_in_crlf_and_none_is_longer_than_75_octets() -> None:
    """RFC 5545, section 3.1: content lines are delimited by CRLF and should not be longer than 75 octets."""
    content = calendar_bytes(DAYS, "Box room", NOW)
    assert content.count(b"\n") == content.count(b"\r\n")
    assert max(len(line) for line in content.split(b"\r\n")) <= 75
    assert content.startswith(b"BEGIN:VCALENDAR\r\n")
    assert content.endswith(b"END:VCALENDAR\r\n")


def test_what_rfc_5545_requires_is_there() -> None:
    """Sections 3.6 and 3.6.1: PRODID and VERSION once in the calendar, UID and DTSTAMP in UTC in each event."""
    content = calendar_bytes(DAYS, "Box room", NOW)
    assert content.count(b"\r\nVERSION:2.0\r\n") == content.count(b"\r\nPRODID:") == 1
    assert content.count(b"\r\nUID:") == content.count(b"\r\nDTSTAMP:20260307T120000Z\r\n") == len(DAYS)
    assert b"\r\nDTSTART;VALUE=DATE:20260309\r\n" in content


def test_the_same_days_give_the_same_bytes_and_a_uid_follows_what_is_due_not_the_day_it_stands_on() -> None:
    assert calendar_bytes(DAYS, "Box room", NOW) == calendar_bytes(DAYS, "Box room", NOW)
    moved = CalendarDay(DAYS[0].key, DAYS[0].since, date(2026, 3, 8), DAYS[0].title, "")
    assert events(calendar_bytes([moved], "", NOW))[0]["uid"] == calendar_uid(DAYS[0].key, DAYS[0].since)
    assert calendar_uid("a", NOW.date()) != calendar_uid("b", NOW.date())


def test_an_empty_calendar_is_a_calendar() -> None:
    assert events(calendar_bytes([], "Box room", NOW)) == []


def test_a_file_is_replaced_whole_and_a_failed_write_leaves_nothing(tmp_path: Path) -> None:
    target = tmp_path / "due.ics"
    target.write_bytes(b"old")
    write_calendar_file(target, b"new")
    assert [(f.name, f.read_bytes()) for f in tmp_path.iterdir()] == [("due.ics", b"new")]
    with pytest.raises(OSError):  # noqa: PT011
        write_calendar_file(tmp_path / "none" / "due.ics", b"new")
