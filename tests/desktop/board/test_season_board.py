"""The season board as a person uses it."""

from typing import Any

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from growlog.desktop.board import SeasonBoard
from growlog.desktop.board.surface import Surface
from growlog.desktop.look.theme import apply_theme
from tests.desktop.board.boards import CURVE, bare_board, full_board, shown_board

pytestmark = pytest.mark.slow


def heard(signal: Any) -> list[Any]:
    got: list[Any] = []
    signal.connect(got.append)
    return got


def wheel(surface: Surface, turn: int, keys: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    at = QPointF(surface.axis.x(70), 100)
    event = QWheelEvent(
        at, at, QPoint(), QPoint(0, turn), Qt.MouseButton.NoButton, keys, Qt.ScrollPhase.NoScrollPhase, False
    )
    surface.wheelEvent(event)


def drag(surface: Surface, start: QPointF, end: QPointF, button: Qt.MouseButton = Qt.MouseButton.LeftButton) -> None:
    for kind, at, held in (
        (QEvent.Type.MouseButtonPress, start, button),
        (QEvent.Type.MouseMove, end, button),
        (QEvent.Type.MouseButtonRelease, end, Qt.MouseButton.NoButton),
    ):
        which = Qt.MouseButton.NoButton if kind == QEvent.Type.MouseMove else button
        QApplication.sendEvent(surface, QMouseEvent(kind, at, at, which, held, Qt.KeyboardModifier.NoModifier))


@pytest.mark.parametrize(
    "key, age",
    [
        (Qt.Key.Key_Right, 65),
        (Qt.Key.Key_Left, 63),
        (Qt.Key.Key_PageDown, 71),
        (Qt.Key.Key_PageUp, 57),
        (Qt.Key.Key_Home, 0),
        (Qt.Key.Key_End, 112),
    ],
)
def test_keys_move_the_day_line(qtbot: Any, key: Qt.Key, age: int) -> None:
    board = shown_board(qtbot)
    ages = heard(board.age_chosen)
    QTest.keyClick(board.surface, key)
    assert ages == [age]
    assert board.surface.overlay.line_x() == pytest.approx(board.surface.axis.x(age))


def test_the_day_line_stops_at_the_last_day(qtbot: Any) -> None:
    board = shown_board(qtbot, age=112)
    ages = heard(board.age_chosen)
    QTest.keyClick(board.surface, Qt.Key.Key_Right)
    assert ages == []


def test_a_click_in_the_chart_moves_the_day_line_there(qtbot: Any) -> None:
    board = shown_board(qtbot)
    ages = heard(board.age_chosen)
    surface = board.surface
    at = QPoint(round(surface.axis.x(50)), surface.chart.y() + 120)
    QTest.mouseClick(surface, Qt.MouseButton.LeftButton, pos=at)
    assert ages == [50]


def test_dragging_takes_the_day_line_along(qtbot: Any) -> None:
    board = shown_board(qtbot)
    ages = heard(board.age_chosen)
    x = board.surface.axis.x
    drag(board.surface, QPointF(x(50), 60), QPointF(x(55), 60))
    assert ages == [50, 55]


def test_the_wheel_steps_and_with_ctrl_it_zooms(qtbot: Any) -> None:
    board = shown_board(qtbot)
    ages = heard(board.age_chosen)
    wheel(board.surface, -120)
    assert ages == [65]
    age_there = board.surface.axis.age(board.surface.axis.x(70))
    before = board.surface.axis
    wheel(board.surface, 120, Qt.KeyboardModifier.ControlModifier)
    assert board.surface.axis.pixels_per_day > before.pixels_per_day
    assert board.surface.axis.age(before.x(70)) == pytest.approx(age_there)
    assert ages == [65]


def test_the_axis_can_be_dragged_along(qtbot: Any) -> None:
    board = shown_board(qtbot)
    surface = board.surface
    surface.zoom(4)
    start = surface.axis.start
    y = surface.chart.y() + surface.chart.axis_strip().center().y()
    drag(surface, QPointF(400, y), QPointF(340, y))
    assert surface.axis.start > start


def test_choosing_a_mark_moves_the_line_and_names_the_entry(qtbot: Any) -> None:
    board = shown_board(qtbot)
    ages, entries = heard(board.age_chosen), heard(board.entry_chosen)
    lane = next(p for p in board.surface.lanes.placed() if p.lane.key == "training")
    at = QPoint(round(board.surface.axis.x(38)) + 3, round(lane.top + lane.height / 2))
    QTest.mouseClick(board.surface, Qt.MouseButton.LeftButton, pos=at)
    assert (ages, entries) == ([38], ["train-1"])


def test_moving_the_day_line_paints_no_lane_anew(qtbot: Any) -> None:
    board = shown_board(qtbot)
    before = board.surface.lanes.still_paints
    for age in range(20, 60):
        board.set_day(age)
        board.grab()
    assert board.surface.lanes.still_paints == before


def test_being_told_a_day_announces_nothing(qtbot: Any) -> None:
    board = shown_board(qtbot)
    ages = heard(board.age_chosen)
    board.set_day(30)
    assert ages == []


def test_lanes_and_chart_share_their_pixels(qtbot: Any) -> None:
    board = shown_board(qtbot)
    surface = board.surface
    for factor in (1, 5):
        surface.zoom(factor)
        view = surface.chart.plot.getPlotItem().getViewBox()
        for age in (surface.axis.start + 1, surface.axis.end - 2):
            scene = view.mapViewToScene(QPointF(age, 0))
            x = surface.chart.plot.mapTo(surface, surface.chart.plot.mapFromScene(scene)).x()
            assert x == pytest.approx(surface.axis.x(age), abs=1.5)


def test_the_point_on_the_curve_says_the_yield_so_far(qtbot: Any) -> None:
    board = shown_board(qtbot, age=52)
    assert board.surface.overlay.point_words() == "5 fruit, 420\u2009g"
    board.set_day(64)
    assert board.surface.overlay.point_words() == "8 fruit, about 700\u2009g"
    board.set_day(20)
    assert board.surface.overlay.point_words() == ""


def test_a_hidden_lane_is_gone_and_its_menu_tick_too(qtbot: Any) -> None:
    board = shown_board(qtbot)
    hidden = heard(board.hidden_lanes_changed)
    action = next(a for a in board.header.menu.actions() if a.objectName() == "feeds")
    action.trigger()
    assert hidden == [["feeds"]]
    assert "feeds" not in [p.lane.key for p in board.surface.lanes.placed()]
    assert "feeds" in board.lanes()


def test_hidden_lanes_can_be_told(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.set_hidden_lanes(["photos", "no such lane"])
    assert board.surface.lanes.hidden() == ["photos"]
    board.set_hidden_lanes(board.lanes())
    assert board.surface.lanes.placed() == []
    board.grab()


def test_lanes_not_named_follow_those_that_are(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.set_lane_order(["picks", "no such lane", "light"])
    assert board.lanes()[:3] == ["picks", "light", "photos"]


def test_dragging_a_name_reorders_the_lanes(qtbot: Any) -> None:
    board = shown_board(qtbot)
    orders = heard(board.lane_order_changed)
    placed = {p.lane.key: p for p in board.surface.lanes.placed()}
    drag(board.surface, QPointF(20, placed["picks"].top + 10), QPointF(20, placed["stage"].top + 4))
    assert orders
    assert orders[-1][:3] == ["photos", "picks", "stage"]


def test_the_menu_moves_a_lane_up(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.header.menu.moved_up.emit("stage")
    assert board.lanes()[:2] == ["stage", "photos"]


def test_the_hover_box_tells_day_and_lane(qtbot: Any) -> None:
    board = shown_board(qtbot)
    surface = board.surface
    lane = next(p for p in surface.lanes.placed() if p.lane.key == "picks")
    lines = surface.hover_lines(QPointF(surface.axis.x(43), lane.top + 5))
    assert lines == ["day 43, 28 December", "Picked 2, 1 culled"]
    assert surface.hover_lines(QPointF(surface.axis.x(70), lane.top + 5)) == []


def test_a_screen_reader_hears_the_day_and_what_is_there(qtbot: Any) -> None:
    board = shown_board(qtbot, age=48)
    surface = board.surface
    assert surface.accessibleName() == "Boxroom Gold, day 48, Friday 2 January"
    assert "Problems: powdery mildew; slight" in surface.accessibleDescription()


def test_the_calendar_labels_the_day_line_by_its_date(qtbot: Any) -> None:
    board = shown_board(qtbot)
    modes = heard(board.axis_mode_changed)
    board.header.mode.button("calendar").click()
    assert modes == ["calendar"]
    assert board.surface.day_label() == "18 Jan"
    assert board.surface.chart.labelled_ages() == [16, 47, 78, 106]


def test_an_unknown_axis_mode_is_refused(qtbot: Any) -> None:
    with pytest.raises(ValueError, match="allowed are age, calendar"):
        shown_board(qtbot).set_axis_mode("weeks")


def test_another_curve_can_be_chosen_and_taken_away(qtbot: Any) -> None:
    board = shown_board(qtbot)
    chosen = heard(board.underlay_chosen)
    board.set_underlay_choices([("other", "Skylight Round")])
    board.header.underlay.setCurrentIndex(1)
    board.header.underlay.activated.emit(1)
    board.show_underlay(CURVE)
    assert board.surface.chart.underlaid is not None
    assert list(board.surface.chart.underlaid.whole.values)[-1] == 900
    board.header.underlay.activated.emit(0)
    assert chosen == ["other", ""]
    assert board.surface.chart.underlaid is None


def test_the_chart_counts_fruit_when_asked(qtbot: Any) -> None:
    board = shown_board(qtbot)
    chart = board.surface.chart
    chart.switch.set_value("count")
    assert chart.drawn is not None
    assert chart.drawn.whole.values[-1] == 8


def test_without_a_crop_one_button_leads_on(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.show_nothing()
    wanted: list[int] = []
    board.crop_wanted.connect(lambda: wanted.append(1))
    board.no_crop.button.click()
    assert wanted
    assert not board.surface.isVisible()


def test_a_crop_without_anything_asks_for_photos(qtbot: Any) -> None:
    board = shown_board(qtbot, bare_board(), 3)
    wanted: list[int] = []
    board.photos_wanted.connect(lambda: wanted.append(1))
    board.no_entries.button.click()
    assert wanted
    assert board.header.isVisible()
    board.show_board(full_board(), 3)
    assert board.surface.isVisible()


def test_without_picks_the_chart_has_no_curve(qtbot: Any) -> None:
    board = shown_board(qtbot, bare_board(training=full_board().training, last_age=50), 3)
    assert not board.surface.chart.has_picks()
    assert not board.surface.chart.switch.isVisible()


def test_the_view_stays_when_the_same_crop_comes_anew(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.surface.zoom(4)
    before = board.surface.axis
    board.show_board(full_board(last_age=113), 64)
    assert board.surface.axis.start == pytest.approx(before.start, abs=0.2)
    assert board.surface.axis.end == pytest.approx(before.end, abs=0.2)


def test_another_theme_paints_the_lanes_anew(qtbot: Any, qapp: QApplication) -> None:
    board = shown_board(qtbot)
    before = board.surface.lanes.still_paints
    try:
        apply_theme(qapp, "dark", 150)
        picture = board.grab().toImage()
        assert board.surface.lanes.still_paints > before
        assert picture.pixelColor(picture.width() - 30, 200).lightness() < 80
    finally:
        apply_theme(qapp, "light", 100)


def test_in_a_small_window_the_chart_keeps_its_height(qtbot: Any) -> None:
    board: SeasonBoard = shown_board(qtbot, width=520, height=560)
    assert board.surface.chart.height() >= 116
    assert board.width() == 520
