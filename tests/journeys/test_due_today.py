"""A morning by the list of what is due, through the real window."""

from collections.abc import Callable
from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from growlog.desktop.crop_list.due_list import DueList
from growlog.desktop.desk import Desk
from growlog.records.entry import Feed, Pollination, StageSeen
from growlog.services.crops import add_crop, new_crop
from growlog.services.due import DueHow, add_routines, routines_of, starting_routines
from growlog.services.entries import add_entry
from tests.journeys.conftest import Person
from tests.logbooks import TODAY, entry_on

SOWN = date(2026, 1, 3)

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def at_the_desk(make: Callable[..., Person]) -> tuple[Person, Desk, DueList]:
    """A person with a pattypan in flower that was fed yesterday, and the routines that fit it."""
    someone = make()
    someone.new_logbook()
    window = someone.window
    desk, page = window.desk, window.page
    assert desk is not None
    assert page is not None
    crop, cultivar = new_crop("Boxroom Gold", "pattypan", SOWN)
    assert desk.write(add_crop, crop, cultivar) is not None
    yesterday = TODAY - timedelta(days=1)
    for detail in (Feed(volume_l=1.1, ec_ms_per_cm=1.9), StageSeen(("61",))):
        assert desk.write(add_entry, entry_on(crop, yesterday, detail)) is not None
    offered = starting_routines([cultivar.habit], TODAY)
    assert desk.write(add_routines, [o.routine for o in offered if o.fits]) is not None
    return someone, desk, page.crop_list.due


def titles(due: DueList) -> list[str]:
    """What is in the list."""
    return [row.item.title for row in due.rows]


def press(due: DueList, title: str) -> None:
    """Does a thing with the space bar."""
    row = next(row for row in due.rows if row.item.title == title)
    row.setFocus()
    QTest.keyClick(row, Qt.Key.Key_Space)


def test_one_key_writes_the_feed_and_undo_brings_it_back_to_the_list(person: Callable[..., Person]) -> None:
    someone, desk, due = at_the_desk(person)
    assert titles(due) == ["Pollinate", "Calibrate the meters", "Clean up dropped flowers", "Feed", "Photo"]
    someone.window.activateWindow()
    someone.qtbot.waitUntil(someone.window.isActiveWindow)
    QTest.keyClick(someone.window, Qt.Key.Key_F9)
    assert due.rows[0].hasFocus()
    press(due, "Feed")
    assert "Feed" not in titles(due)
    assert desk.sheet is not None
    assert [e.entry.detail for e in desk.sheet.entries] == [Feed(volume_l=1.1)]
    press(due, "Clean up dropped flowers")
    assert someone.messages.informed[-1] == "Done: Clean up dropped flowers, Boxroom Gold."
    desk.undo()
    desk.undo()
    assert "Feed" in titles(due)
    assert "Clean up dropped flowers" in titles(due)


def test_pollinating_opens_its_form_and_is_done_once_that_is_written(person: Callable[..., Person]) -> None:
    someone, desk, due = at_the_desk(person)
    desk.step_day(-1)
    press(due, "Pollinate")
    assert someone.window.opened is not None
    dialog = someone.window.opened.entries.dialog
    assert dialog is not None
    assert desk.selection.day == TODAY
    assert "Pollinate" in titles(due)
    dialog.form.cell("females_pollinated").field.set_value(2)
    dialog.form.write()
    assert "Pollinate" not in titles(due)
    assert desk.sheet is not None
    assert Pollination(females_pollinated=2) in [e.entry.detail for e in desk.sheet.entries]


def test_the_meters_are_calibrated_and_photos_taken_in_where_they_belong(person: Callable[..., Person]) -> None:
    someone, _desk, due = at_the_desk(person)
    press(due, "Calibrate the meters")
    assert someone.window.opened is not None
    assert someone.window.opened.entries.dialog is not None
    assert someone.window.opened.entries.dialog.form.entry.kind == "calibration"
    someone.window.opened.entries.dialog.close()
    press(due, "Photo")
    assert someone.window.opened is not None
    assert someone.window.opened.photos.open_tray_window() is not None
    someone.window.opened.photos.tray.close()  # type: ignore[union-attr]


def test_what_is_put_off_or_left_out_goes_and_stands_on_the_board_ahead(person: Callable[..., Person]) -> None:
    _, desk, due = at_the_desk(person)
    keys = {row.item.title: row.item.key for row in due.rows}
    due.put_off.emit(keys["Clean up dropped flowers"], TODAY + timedelta(days=2))
    due.left_out.emit(keys["Photo"], "camera is charging")
    due.ticked.emit(keys["Pollinate"])
    assert titles(due) == ["Calibrate the meters", "Feed"]
    assert desk.board is not None
    ahead = {(desk.board.date_of(m.age), m.text) for m in desk.board.due}
    assert (TODAY + timedelta(days=2), "Clean up dropped flowers") in ahead
    assert (TODAY + timedelta(days=1), "Photo") in ahead


def test_routines_are_chosen_from_the_list_and_the_calendar_is_written(person: Callable[..., Person]) -> None:
    someone, desk, due = at_the_desk(person)
    desk.undo()
    assert titles(due) == []
    due.set_up_button.click()
    routines = someone.window.opened.routines
    assert routines is not None
    assert routines.dialog is not None
    assert routines.dialog.offered is not None
    routines.dialog.offered.add_button.click()
    assert len(routines_of(desk.log)) == len(routines.dialog.rows) == 5
    assert DueHow.WRITES in [row.item.how for row in due.rows]
    routines.dialog.close()
    target = someone.home / "due.ics"
    someone.files.answers = [target]
    someone.window.actions_table.by_name["calendar_file"].trigger()
    assert target.read_bytes().startswith(b"BEGIN:VCALENDAR")
    assert someone.messages.informed[-1].endswith("things to do written to due.ics.")


def test_the_offer_to_undo_goes_once_another_change_is_the_last(person: Callable[..., Person]) -> None:
    someone, desk, due = at_the_desk(person)
    strip = someone.window.strip
    strip.show_message("The feed was written.", "inform", "Undo", desk.undo)
    press(due, "Clean up dropped flowers")
    assert strip.isHidden()
