"""What is to come on the season board: bands ahead of the curve, a sentence, a switch."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QPixmap, QRegion

from growlog.calculations.coming_picks import ComingAsk, ComingPicks, coming_picks
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.yield_curve import PickPoint, cumulative_yield, yield_so_far
from growlog.calculations.yield_forecast import ForecastAsk, YieldForecast, forecast_yield
from growlog.desktop.look.theme import current
from growlog.services.board import Board, Curve
from growlog.services.yield_view.outlook import Outlook
from tests.desktop.board.boards import SOWN, full_board, shown_board
from tests.services.yield_view.seasons import SEASON

pytestmark = pytest.mark.slow

PICKS = [PickPoint(age, fruit, grams) for age, fruit, grams in SEASON]
AGE = 77


def growing(**changes: Any) -> Board:
    """The season's crop on day 77, still growing."""
    curve = Curve("crop", "Boxroom Gold", tuple(cumulative_yield(PICKS)), AGE)
    board = full_board(curve=curve, last_age=AGE, total=yield_so_far(PICKS), **changes)
    return replace(board, crop=replace(board.crop, cleared_on=None))


def outlook(planned_end: int | None = None, **parts: Any) -> Outlook:
    """What the season's picks promise on day 77."""
    asks = [ForecastAsk(SOWN, AGE, 28, planned_end, measure=m) for m in (Measure.FRUIT, Measure.GRAMS)]
    fruit, grams = (forecast_yield(PICKS, ask, 7) for ask in asks)
    coming = coming_picks(ComingAsk(SOWN, AGE, 14, planned_end), [], PICKS, NotYet("No flower."), 7)
    return replace(Outlook("crop", date(2026, 1, 31), coming, fruit, grams), **parts)


def test_the_bands_begin_where_the_curve_ends_and_reach_the_planned_clearing(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook(planned_end=90))
    chart = board.surface.chart
    assert chart.ahead is not None
    assert chart.ahead.band is not None
    assert (chart.ahead.band.ages[0], chart.ahead.band.ages[-1]) == (AGE, 90)
    assert chart.ahead.band.low[0] == pytest.approx(chart.ahead.band.high[0])
    assert chart.ahead.band.low[0] == pytest.approx(yield_so_far(PICKS).weight_g)
    assert chart.ahead.coming is not None
    assert board.surface.axis.highest > 90
    assert board.surface.axis.is_whole


def test_the_sentence_stands_beside_the_switch(qtbot: Any) -> None:
    told = outlook()
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(told)
    assert isinstance(told.coming, ComingPicks)
    assert board.surface.chart.strip.label.text() == told.coming.sentence
    assert board.surface.chart.strip.isVisible()


def test_the_switch_hides_the_bands_and_the_axis_ends_at_today_again(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook())
    wide = board.surface.axis.highest
    board.surface.chart.strip.button.click()
    assert board.surface.chart.ahead is None
    assert board.surface.axis.highest < wide - 20
    board.surface.chart.strip.button.click()
    assert board.surface.axis.highest == wide


def test_the_day_line_stays_within_the_days_that_have_come(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook())
    board.set_day(95)
    assert board.surface.age == AGE


def test_a_day_ahead_tells_what_is_foreseen(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook())
    lines = board.surface.chart.tell(AGE + 10)
    assert lines[0].startswith("coming picks:")
    assert any(line.endswith("in four cases out of five") for line in lines[1:])


def test_too_few_picks_are_told_with_the_reason_and_nothing_is_drawn(qtbot: Any) -> None:
    reason = NotYet("One pick so far: how fast more follow cannot be told from it.")
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook(coming=reason, fruit=reason, grams=reason))
    chart = board.surface.chart
    assert chart.ahead is None
    assert chart.strip.label.text() == reason.reason
    assert not chart.strip.button.isEnabled()


def test_counts_without_weights_are_foreseen_by_count_alone(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook(grams=NotYet("No fruit was weighed.")))
    chart = board.surface.chart
    assert chart.ahead is not None
    assert chart.ahead.band is None
    chart.switch.set_value("count")
    assert chart.ahead.band is not None
    assert chart.ahead.band.low[0] == 29


def test_the_outlook_of_another_crop_is_left_aside_and_goes_with_its_crop(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(replace(outlook(), crop_id="another"))
    assert board.surface.chart.ahead is None
    board.show_outlook(outlook())
    other = growing()
    board.show_board(replace(other, crop=replace(other.crop, id="another")), AGE)
    assert board.surface.chart.ahead is None


def test_the_chart_is_exported_with_curve_fit_bands_and_units(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook())
    data = board.surface.chart.chart_data()
    assert data is not None
    assert data.y_title == "marketable yield so far, kg"
    assert [line.name for line in data.lines] == ["Boxroom Gold", "most likely", "fitted curve"]
    assert [band.name for band in data.bands] == ["in four cases out of five", "coming picks"]
    assert data.bands[0].low[0] == pytest.approx(yield_so_far(PICKS).weight_g / 1000)
    board.surface.chart.strip.button.click()
    data = board.surface.chart.chart_data()
    assert data is not None
    assert not data.bands


def test_a_low_chart_keeps_its_head_to_one_row(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE, 460, 460)
    board.show_outlook(outlook())
    chart = board.surface.chart
    assert chart.strip.y() == chart.switch.y()
    assert chart.strip.geometry().right() < chart.export_menu.x()
    assert isinstance(outlook().fruit, YieldForecast)
    assert outlook().sentence in chart.strip.button.toolTip()


def test_the_switch_can_be_set_from_outside_and_tells_when_it_turns(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook())
    told: list[bool] = []
    board.to_come_toggled.connect(told.append)
    drawn = []
    for wanted in (False, True):
        board.set_to_come(wanted)
        drawn.append(board.surface.chart.ahead is not None)
    assert drawn == told == [False, True]


def test_a_switch_without_room_for_its_sentence_is_no_wider_than_its_words(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.show_outlook(outlook())
    strip = board.surface.chart.strip
    strip.place(QRect(0, 0, 170, 26), 320, may_go_below=False)
    assert strip.label.isHidden()
    assert strip.width() == strip.button.sizeHint().width()


def test_in_a_low_window_the_chart_keeps_enough_height_to_be_read(qtbot: Any) -> None:
    board = shown_board(qtbot, growing(), AGE)
    board.resize(480, 420)
    board.surface.lay_out()
    assert board.surface.chart.height() >= 150


def test_nothing_picked_is_said_though_the_axis_is_scrolled_out_of_view(qtbot: Any) -> None:
    empty = replace(growing(), curve=Curve("crop", "Boxroom Gold", (), AGE), first_pick_age=None)
    board = shown_board(qtbot, empty, AGE)
    chart = board.surface.chart
    upper = QRegion(0, 0, chart.width(), chart.axis_strip().top() - 2)
    whole, part = chart.grab().toImage(), QPixmap(chart.size())
    part.fill(current().colour("paper"))
    chart.render(part, QPoint(), upper)
    row = range(round(chart.plot_area().left()), round(chart.plot_area().right()))
    y = round(chart.plot_area().center().y())
    assert len({whole.pixel(x, y) for x in row}) > 2
    assert [whole.pixel(x, y) for x in row] == [part.toImage().pixel(x, y) for x in row]
