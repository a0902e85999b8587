"""Around the plot of the yield chart: its name and values at the left, the ages or dates below."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPen

from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.weight_scale import weight_unit
from growlog.desktop.board.wording import month, number, short_day
from growlog.desktop.look.theme import BASE_PX, current
from growlog.services.board import Board
from growlog.words import say

_NAME_PX = 48  # what the name needs at the top: no value is written over it
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True)
class AgeLabels:
    """Which plant ages carry a label, and its words. board: needed for dates; ages are shown without one."""

    axis: AgeAxis
    board: Board | None
    calendar: bool

    def ages(self) -> list[int]:
        """The plant ages that carry a label."""
        look, axis = current(), self.axis
        if self.calendar and self.board is not None:
            found = axis.calendar_ticks(self.board.day_zero, look.px(54))
        else:
            found = axis.age_ticks(look.px(32))
        return [age for age in found if axis.x(age) <= axis.right - 4]

    def weeks(self) -> list[int]:
        """The plant ages at which weeks begin: every seventh, by the calendar Mondays."""
        monday = self.calendar and self.board is not None
        first = -self.board.day_zero.weekday() % 7 if monday and self.board is not None else 0
        return self.axis.week_ticks(first, 6)

    def text(self, age: int) -> str:
        """The words of one."""
        if not self.calendar or self.board is None:
            return number(age)
        day = self.board.date_of(age)
        by_month = 7 * self.axis.pixels_per_day < current().px(54)
        return month(day) if by_month else short_day(day)

    @property
    def word(self) -> str:
        """What is counted."""
        return say("date") if self.calendar else say("day")


def paint_axis(painter: QPainter, labels: AgeLabels, y: float) -> None:
    """The line below the plot with its ticks and their labels."""
    look, axis = current(), labels.axis
    painter.setPen(QPen(look.colour("edge"), 1))
    painter.drawLine(QPointF(axis.left, y + 0.5), QPointF(axis.right, y + 0.5))
    for age in labels.weeks():
        _tick(painter, axis.x(age), y, look.px(2))
    painter.setFont(look.font(11))
    row = QRectF(0, y + look.px(5), axis.left - look.px(14), look.px(16))
    for age in labels.ages():
        painter.setPen(QPen(look.colour("edge"), 1))
        _tick(painter, axis.x(age), y, look.px(4))
        painter.setPen(look.colour("mute"))
        place = QRectF(round(axis.x(age)) + 0.5 - 60, row.top(), 120, row.height())
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, labels.text(age))
    painter.setPen(look.colour("mute"))
    painter.drawText(row, _RIGHT, labels.word)


def paint_names(painter: QPainter, left_px: float, ticks: Sequence[tuple[float, str]]) -> None:
    """What the chart shows, and the value of each rule at its height in pixels."""
    look, width = current(), left_px - current().px(10)
    left = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
    painter.setFont(look.font(BASE_PX, QFont.Weight.DemiBold))
    painter.setPen(look.colour("ink"))
    painter.drawText(QRectF(0, look.px(8), width, look.px(17)), left, say("Cumulative"))
    painter.setFont(look.font(11))
    painter.setPen(look.colour("mute"))
    painter.drawText(QRectF(0, look.px(25), width, look.px(14)), left, say("yield, marketable"))
    for y, text in ticks:
        if y > look.px(_NAME_PX):
            painter.drawText(QRectF(0, y - 10, left_px - look.px(7), 20), _RIGHT, text)


def paint_empty(painter: QPainter, plot: QRectF) -> None:
    """What stands where nothing was picked."""
    painter.setFont(current().font())
    painter.setPen(current().colour("mute"))
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    words = say("Nothing picked yet. The yield curve begins with the first pick.")
    painter.drawText(plot.adjusted(16, 0, -16, 0), flags, words)


def value_text(value: float, highest: float, by_count: bool) -> str:
    """The words of a rule's value, in the unit of the highest rule."""
    if by_count:
        return number(value)
    return "0" if value == 0 else weight_unit(highest).text(value)


def _tick(painter: QPainter, at: float, y: float, length: float) -> None:
    x = round(at) + 0.5
    painter.drawLine(QPointF(x, y), QPointF(x, y + length))
