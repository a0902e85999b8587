"""The painted range: where its parts lie, and how inside and outside are told apart without colour."""

import pytest
from PySide6.QtGui import QColor
from pytestqt.qtbot import QtBot

from growlog.desktop.look.theme import current
from growlog.desktop.mixer.range_mark import RangeMark


@pytest.fixture
def mark(qtbot: QtBot) -> RangeMark:
    made = RangeMark()
    qtbot.addWidget(made)
    made.resize(320, 30)
    return made


def colour_at(mark: RangeMark, value: float) -> QColor:
    return mark.grab().toImage().pixelColor(round(mark.x_of(value)), 10)


def test_a_value_within_is_a_filled_dot(mark: RangeMark) -> None:
    mark.show_value(160, 140, 180)
    assert not mark.is_outside
    assert colour_at(mark, 160).name() == current().colour("ink").name()


@pytest.mark.parametrize("value", [130, 190])
def test_a_value_outside_is_a_hollow_diamond(mark: RangeMark, value: float) -> None:
    mark.show_value(value, 140, 180)
    assert mark.is_outside
    assert colour_at(mark, value).name() == current().colour("paper").name()
    corner = mark.grab().toImage().pixelColor(round(mark.x_of(value)), 4)
    assert abs(corner.hue() - current().colour("problem").hue()) < 12


def test_the_ends_belong_to_the_range(mark: RangeMark) -> None:
    for value in (140, 180):
        mark.show_value(value, 140, 180)
        assert not mark.is_outside


def test_an_open_range_has_no_outside_on_that_side(mark: RangeMark) -> None:
    mark.show_value(500, 10, None)
    assert not mark.is_outside
    mark.show_value(60, None, 50)
    assert mark.is_outside


def test_nothing_falls_off_the_line(mark: RangeMark) -> None:
    mark.show_value(900, 140, 180)
    assert mark.x_of(0) < mark.x_of(140) < mark.x_of(180) < mark.x_of(900) <= mark.width()
