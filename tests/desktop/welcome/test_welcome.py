"""The page before a logbook is open."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.look.widgets import Button
from growlog.desktop.welcome import Welcome


@pytest.fixture
def page(qtbot: QtBot, tmp_path: Path) -> Welcome:
    """One logbook that is there, one that is gone."""
    (tmp_path / "room").mkdir()
    made = Welcome([tmp_path / "room", tmp_path / "attic"])
    qtbot.addWidget(made)
    made.resize(1024, 640)
    made.show()
    return made


def button(page: Welcome, name: str) -> Button:
    found = page.findChild(Button, name)
    assert isinstance(found, Button)
    return found


@pytest.mark.parametrize(
    "name, signal",
    [("newLogbook", "new_wanted"), ("openLogbook", "open_wanted"), ("sampleSeason", "sample_wanted")],
)
def test_each_button_asks_for_its_beginning(page: Welcome, qtbot: QtBot, name: str, signal: str) -> None:
    with qtbot.waitSignal(getattr(page, signal)):
        QTest.mouseClick(button(page, name), Qt.MouseButton.LeftButton)


def test_a_logbook_of_late_opens_with_a_click(page: Welcome, qtbot: QtBot, tmp_path: Path) -> None:
    with qtbot.waitSignal(page.recent_chosen) as chosen:
        QTest.mouseClick(button(page, "recent.room"), Qt.MouseButton.LeftButton)
    assert chosen.args == [tmp_path / "room"]


def test_a_logbook_that_is_gone_can_only_be_taken_off_the_list(page: Welcome, qtbot: QtBot, tmp_path: Path) -> None:
    assert not button(page, "recent.attic").isEnabled()
    gone = [b for b in page.findChildren(Button, "forget") if b.isVisible()]
    assert len(gone) == 1
    with qtbot.waitSignal(page.forget_wanted) as forgotten:
        QTest.mouseClick(gone[0], Qt.MouseButton.LeftButton)
    assert forgotten.args == [tmp_path / "attic"]


def test_why_a_folder_could_not_be_opened_stays_until_it_is_closed(page: Welcome) -> None:
    page.show_problem("The folder is not a logbook.")
    assert page.banner.isVisible()
    assert page.banner.sentence == "The folder is not a logbook."
    QTest.mouseClick(page.banner.close_button, Qt.MouseButton.LeftButton)
    assert not page.banner.isVisible()


def test_without_logbooks_of_late_their_title_is_not_shown(page: Welcome) -> None:
    page.show_recent([])
    assert not page.recent_title.isVisible()
