"""Comparing two days."""

from datetime import date, timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from pytestqt.qtbot import QtBot

from growlog.desktop.day_sheet import CompareView
from growlog.desktop.day_sheet.compare_ages import suggested_age, suggested_ages
from growlog.desktop.day_sheet.compare_panes import SWIPE
from growlog.desktop.pictures import Pictures
from tests.desktop.day_sheet.conftest import SOWN, day_photo

PHOTOS = {57: day_photo("red"), 64: day_photo("green"), 71: day_photo("red")}


def date_of(age: int) -> date:
    return SOWN + timedelta(days=age)


@pytest.fixture
def view(qtbot: QtBot, pictures: Pictures) -> CompareView:
    made = CompareView(pictures, PHOTOS.get, tuple(PHOTOS), date_of, 57, 64, "Boxroom Gold")
    made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
    qtbot.addWidget(made)
    made.resize(900, 600)
    with qtbot.waitActive(made):
        made.show()
    return made


def colour_at(view: CompareView, share: float) -> str:
    """Which of the two pictures is seen at a share of the panes' width, half way down."""
    image = view.panes.grab().toImage()
    pixel = image.pixelColor(round(image.width() * share), image.height() // 2)
    return "red" if pixel.red() > pixel.green() + 50 else "green" if pixel.green() > pixel.red() + 50 else "none"


def test_both_days_are_named_by_age_and_date(view: CompareView):
    assert (view.left_title.text(), view.right_title.text()) == ("Day 57, 11 January", "Day 64, 18 January")


def test_side_by_side_shows_one_photo_in_each_half(view: CompareView):
    assert (colour_at(view, 0.25), colour_at(view, 0.75)) == ("red", "green")


def test_a_swipe_shows_the_left_day_left_of_the_divider(view: CompareView):
    view.mode_switch.set_value(SWIPE)
    assert (colour_at(view, 0.45), colour_at(view, 0.55)) == ("red", "green")


def test_the_arrow_keys_move_the_divider(view: CompareView, qtbot: QtBot):
    view.mode_switch.set_value(SWIPE)
    for _ in range(10):
        qtbot.keyClick(view.panes, Qt.Key.Key_Right)
    assert view.panes.divider == pytest.approx(0.7)
    assert colour_at(view, 0.55) == "red"
    qtbot.keyClick(view.panes, Qt.Key.Key_Home)
    assert view.panes.divider == 0
    assert colour_at(view, 0.45) == "green"


def test_the_mouse_drags_the_divider(view: CompareView, qtbot: QtBot):
    view.mode_switch.set_value(SWIPE)
    rect = view.panes.swipe_rect()
    at = QPoint(round(rect.left() + rect.width() * 0.25), round(rect.center().y()))
    qtbot.mousePress(view.panes, Qt.MouseButton.LeftButton, pos=at)
    assert view.panes.divider == pytest.approx(0.25, abs=0.01)
    qtbot.mouseMove(view.panes, at + QPoint(10_000, 0))
    assert view.panes.divider <= 1.0


def test_the_days_step_over_those_without_a_photo(view: CompareView, qtbot: QtBot):
    qtbot.keyClick(view.right_field, Qt.Key.Key_Up)
    assert view.right_title.text() == "Day 71, 25 January"
    qtbot.keyClick(view.right_field, Qt.Key.Key_Down)
    qtbot.keyClick(view.right_field, Qt.Key.Key_Down)
    assert view.right_title.text() == "Day 57, 11 January"


def test_a_typed_day_without_a_photo_goes_to_the_nearest_that_has_one(view: CompareView, qtbot: QtBot):
    view.left_field.setFocus()
    view.left_field.selectAll()
    qtbot.keyClicks(view.left_field, "69")
    qtbot.keyClick(view.left_field, Qt.Key.Key_Return)
    assert view.left_field.value() == 71
    assert view.left_title.text().startswith("Day 71,")


@pytest.mark.parametrize(
    "age, ages, expected",
    [(64, (57, 64), 57), (64, (0, 55, 60, 64), 55), (3, (3, 9), 9), (64, (64,), None), (64, (56, 58, 64), 56)],
)
def test_the_nearest_to_a_week_before_is_suggested(age: int, ages: tuple[int, ...], expected: int | None):
    assert suggested_age(age, ages) == expected


def test_the_menu_holds_the_ends_and_the_weeks_between():
    ages = suggested_ages(64, range(5, 100))
    assert ages == [5, 36, 43, 50, 57, 71, 99]


@pytest.mark.parametrize("ages", [(), (64,)])
def test_without_other_photos_the_menu_is_empty(ages: tuple[int, ...]):
    assert suggested_ages(64, ages) == []


def test_the_dialog_closes_by_escape(view: CompareView, qtbot: QtBot):
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert not view.isVisible()
