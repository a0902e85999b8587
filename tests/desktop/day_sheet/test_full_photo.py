"""The photo over the whole window."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.day_sheet import FullPhoto
from growlog.desktop.day_sheet.zoom import Zoom, fitting_scale
from growlog.desktop.pictures import Pictures
from tests.desktop.day_sheet.conftest import AGE, day_photo


@pytest.fixture
def full(qtbot: QtBot, pictures: Pictures) -> FullPhoto:
    window = QWidget()
    window.resize(800, 600)
    made = FullPhoto(pictures, window)
    qtbot.addWidget(window)
    made.window_kept = window  # type: ignore[attr-defined]
    with qtbot.waitActive(window):
        window.show()
    with qtbot.waitSignal(pictures.sharp_arrived):
        made.show_photo(day_photo("red"), AGE)
    return made


def wheel(full: FullPhoto, at: QPointF, notches: int) -> None:
    event = QWheelEvent(
        at,
        full.mapToGlobal(at),
        QPoint(),
        QPoint(0, 120 * notches),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(full, event)


def drag(full: FullPhoto, start: QPointF, end: QPointF) -> None:
    none, left = Qt.MouseButton.NoButton, Qt.MouseButton.LeftButton
    for kind, at, button, held in (
        (QEvent.Type.MouseButtonPress, start, left, left),
        (QEvent.Type.MouseMove, end, none, left),
        (QEvent.Type.MouseButtonRelease, end, left, none),
    ):
        event = QMouseEvent(kind, at, full.mapToGlobal(at), button, held, Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(full, event)


def test_it_fills_the_window_and_follows_its_size(full: FullPhoto):
    window = full.parentWidget()
    assert window is not None
    window.resize(900, 700)
    assert full.size() == window.size()
    assert full.title_label.text() == "Day 64, 18 January"


def test_the_whole_picture_is_seen_at_first(full: FullPhoto):
    rect = full.picture_rect()
    assert rect.height() <= full.height()
    assert rect.width() / rect.height() == pytest.approx(0.75)  # the picture is 300 by 400 pixels


def test_the_wheel_zooms_about_the_pointer(full: FullPhoto):
    at = full.picture_rect().center() + QPointF(60, 40)
    before = full.picture_rect()
    share = (at.y() - before.top()) / before.height()
    wheel(full, at, 5)
    after = full.picture_rect()
    assert after.width() > before.width() * 2
    assert (at.y() - after.top()) / after.height() == pytest.approx(share, abs=0.01)


def test_the_wheel_back_ends_at_the_whole_picture(full: FullPhoto):
    before = full.picture_rect()
    wheel(full, before.center(), 3)
    wheel(full, before.center(), -20)
    assert full.picture_rect() == before


def test_dragging_pans_but_never_beyond_the_edge(full: FullPhoto):
    wheel(full, full.picture_rect().center(), 9)
    before = full.picture_rect()
    middle = QPointF(400, 300)
    drag(full, middle, middle + QPointF(30, 0))
    assert full.picture_rect().left() == pytest.approx(before.left() + 30)
    drag(full, middle, middle + QPointF(9000, 0))
    assert full.picture_rect().left() == pytest.approx(0)


def test_a_double_click_enlarges_and_another_fits_again(full: FullPhoto, qtbot: QtBot):
    before = full.picture_rect()
    qtbot.mouseDClick(full, Qt.MouseButton.LeftButton, pos=QPoint(400, 300))
    assert full.picture_rect().width() > before.width()
    qtbot.mouseDClick(full, Qt.MouseButton.LeftButton, pos=QPoint(400, 300))
    assert full.picture_rect() == before


def test_left_and_right_ask_for_the_photo_days_beside(full: FullPhoto, qtbot: QtBot):
    steps: list[int] = []
    full.step.connect(steps.append)
    qtbot.keyClick(full, Qt.Key.Key_Left)
    qtbot.keyClick(full, Qt.Key.Key_Right)
    qtbot.mouseClick(full.later_button, Qt.MouseButton.LeftButton)
    assert steps == [-1, 1, 1]


def test_escape_closes_and_says_so(full: FullPhoto, qtbot: QtBot):
    with qtbot.waitSignal(full.closed):
        qtbot.keyClick(full, Qt.Key.Key_Escape)
    assert not full.isVisible()


def test_the_zoom_stays_from_photo_to_photo(full: FullPhoto):
    wheel(full, full.picture_rect().center(), 4)
    width = full.picture_rect().width()
    full.show_photo(day_photo("green"), AGE + 1)
    assert full.picture_rect().width() == pytest.approx(width)
    assert full.title_label.text().startswith("Day 65")


def test_a_lost_picture_is_said(full: FullPhoto, qtbot: QtBot, pictures: Pictures):
    with qtbot.waitSignal(pictures.lost):
        full.show_photo(day_photo("gone"), AGE)
    assert full.shown.is_lost
    assert full.hint_label.text() == ""


def test_one_pixel_for_one_is_what_a_large_picture_is_toggled_to():
    zoom, area, size = Zoom(), QRectF(0, 0, 800, 600), (4000, 3000)
    zoom.toggle(area.center(), area, size)
    assert zoom.target(area, size).width() == pytest.approx(4000)
    zoom.toggle(area.center(), area, size)
    assert zoom.target(area, size).width() == pytest.approx(4000 * fitting_scale(area, size))
