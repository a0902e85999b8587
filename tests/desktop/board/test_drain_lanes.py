"""The drain lanes: what they tell, and that they take no room where nothing drained."""

from datetime import date

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.lanes import DrainEcLane, DrainShareLane, Space
from growlog.desktop.look.theme import current
from growlog.services.drain_series import DrainPoint
from tests.desktop.board.boards import full_board

pytestmark = pytest.mark.usefixtures("qapp")
POINTS = (
    DrainPoint(20, date(2025, 12, 5), "first", 25.0, 0.4, None, "drain 25 %, EC +0.40 mS/cm to the feed"),
    DrainPoint(30, date(2025, 12, 15), "second", 10.0, -0.2, None, "drain 10 %, EC −0.20 mS/cm to the feed"),
    DrainPoint(40, date(2025, 12, 25), "third", 15.0, None, None, "drain 15 %"),
)


def space() -> Space:
    return Space(QRectF(0, 0, 400, 36), AgeAxis.over(0, 100).placed(0, 400), current())


def painted(lane: DrainShareLane | DrainEcLane) -> QImage:
    image = QImage(400, 36, QImage.Format.Format_ARGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    lane.paint(painter, space())
    painter.end()
    return image


def test_without_a_drain_there_is_no_lane() -> None:
    for lane in (DrainShareLane(), DrainEcLane()):
        lane.show_board(full_board(drains=()))
        assert lane.is_empty()
        assert lane.only_with_something


def test_a_lane_tells_what_it_draws_and_leads_to_the_feed() -> None:
    share, ec = DrainShareLane(), DrainEcLane()
    for lane in (share, ec):
        lane.show_board(full_board(drains=POINTS))
    assert share.tell(40) == ["drain 15 %"]
    assert ec.tell(40) == []  # its EC was not measured
    here = space()
    assert ec.entry_at(here, QPointF(here.axis.x(30), 10)) == (30, "second")


def test_bars_are_as_high_as_their_share() -> None:
    lane = DrainShareLane()
    lane.show_board(full_board(drains=POINTS))
    image, here = painted(lane), space()
    colour = current().colour("feed").rgb()
    heights = [sum(image.pixel(round(here.axis.x(age)), y) == colour for y in range(36)) for age in (20, 30, 40)]
    assert heights[0] > heights[2] > heights[1] > 0


def test_more_is_a_filled_dot_above_the_line_and_less_a_ring_below_it() -> None:
    lane = DrainEcLane()
    lane.show_board(full_board(drains=POINTS))
    image, here = painted(lane), space()
    colour = current().colour("feed").rgb()
    above = [y for y in range(36) if image.pixel(round(here.axis.x(20)), y) == colour]
    below = [y for y in range(36) if image.pixel(round(here.axis.x(30)), y) == colour]
    assert max(above) < min(below)
    assert len(above) > len(below)  # the ring is hollow
