"""Moving the day line, refusals, and a second window on the same logbook."""

from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from growlog.records.entry import Pick
from growlog.services.crops import add_crop, new_crop
from growlog.services.entries import add_entry
from tests.journeys.conftest import Person
from tests.logbooks import SOWN, TODAY, entry_on

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def with_a_crop(make: Callable[..., Person]) -> Person:
    """A person with one crop that has two picks."""
    someone = make()
    someone.new_logbook()
    desk = someone.window.desk
    assert desk is not None
    crop, cultivar = new_crop("Boxroom Gold", "pattypan", SOWN, packet_days=58)
    assert desk.write(add_crop, crop, cultivar) is not None
    for age, count in ((44, 1), (50, 2)):
        assert desk.write(add_entry, entry_on(crop, SOWN + timedelta(age), Pick(count, 80.0 * count))) is not None
    return someone


def test_the_day_line_moves_the_sheet_by_keys_and_by_its_buttons(person: Callable[..., Person]) -> None:
    someone = with_a_crop(person)
    desk, page = someone.window.desk, someone.window.page
    assert desk is not None
    assert page is not None
    assert desk.selection.day == TODAY
    desk.choose_age(50)
    assert page.day_sheet.sheet is not None
    assert [e.title for e in page.day_sheet.sheet.entries] == ["Picked 2, 160\u2009g"]
    someone.window.actions_table.by_name["previous_day"].trigger()
    assert page.day_sheet.sheet.age == 49
    page.board.setFocus()
    someone.qtbot.keyClick(page.board.focusWidget() or page.board, Qt.Key.Key_Right)
    assert page.day_sheet.sheet.age == 50
    desk.choose_age(9999)
    assert desk.selection.day == TODAY


def test_a_change_that_was_changed_again_is_not_undone_and_says_why(person: Callable[..., Person]) -> None:
    someone = with_a_crop(person)
    desk = someone.window.desk
    assert desk is not None
    assert desk.days is not None
    entry = desk.days.entries[-1]
    with desk.log.unit() as unit:  # as another program would
        unit.change("elsewhere", type(entry)(**{**vars(entry), "note": "written elsewhere"}))
        unit.commit()
    desk.undo()
    assert len(someone.messages.problems) == 1
    assert "changed again" in someone.messages.problems[0]


def test_a_folder_that_is_no_logbook_is_refused_on_the_welcome(person: Callable[..., Person], tmp_path: Path) -> None:
    someone = person()
    (tmp_path / "pictures").mkdir()
    someone.opening.open(tmp_path / "pictures")
    assert someone.window.desk is None
    shown = someone.window.welcome.banner.sentence
    assert "is not a logbook" in shown
    assert list((tmp_path / "pictures").iterdir()) == []


def test_a_second_window_may_read_and_is_told_so(person: Callable[..., Person]) -> None:
    first = with_a_crop(person)
    assert first.window.desk is not None
    second = person()
    second.opening.open(first.window.desk.log.folder)
    desk = second.window.desk
    assert desk is not None
    assert desk.board is not None
    assert not second.window.actions_table.by_name["new_crop"].isEnabled()
    assert any("only be read" in said for said in second.messages.informed)
    crop = desk.board.crop
    assert desk.write(add_entry, entry_on(crop, date(2026, 1, 1), Pick(1))) is None
    assert any("reading only" in said for said in second.messages.problems)


def test_the_last_logbook_opens_by_itself(person: Callable[..., Person]) -> None:
    someone = with_a_crop(person)
    someone.close()
    someone.start()
    someone.opening.start(None)
    assert someone.window.desk is not None
    assert [c.crop.name for c in someone.window.desk.crops] == ["Boxroom Gold"]


def test_pasting_where_nothing_was_ever_copied_says_so(
    person: Callable[..., Person], monkeypatch: pytest.MonkeyPatch
) -> None:
    someone = with_a_crop(person)
    clipboard = QGuiApplication.clipboard()
    monkeypatch.setattr(type(clipboard), "mimeData", lambda *_: None)
    someone.window.actions_table.by_name["paste_photos"].trigger()
    assert any("no photos to paste" in said for said in someone.messages.informed)
