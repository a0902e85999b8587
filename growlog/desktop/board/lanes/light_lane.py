"""The light lane: the daily light integral as steps, each with its hours and output."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPen

from growlog.calculations.crop_light import UsualLight
from growlog.calculations.light import LightSpan
from growlog.desktop.board.lanes.lane import BoardLane, Space, draw_line_of_text, text_width
from growlog.desktop.board.wording import THIN, number, short_number
from growlog.services.board import Board
from growlog.words import say

_UNKNOWN_SHARE = 0.5  # how high a step stands whose light was not measured


class LightLane(BoardLane):
    """Light at the canopy, mol/m² a day."""

    key = "light"
    natural_px = 40
    least_px = 30

    def name(self) -> str:
        """Light."""
        return say("Light")

    def second_line(self) -> str:
        """The unit."""
        return say("mol/m² a day")

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """The light of each day."""
        for span in board.light:
            words = telling(span)
            against = "" if span.dli_mol is None else against_usual(span.dli_mol, board.usual_light)
            for age in range(span.start_age, span.end_age + 1):
                yield age, f"{words}; {against}" if against else words

    def summary(self) -> str:
        """The usual range with its source."""
        usual = None if self.board is None else self.board.usual_light
        return "" if usual is None else usual_words(usual)

    def paint(self, painter: QPainter, space: Space) -> None:
        """Ground, steps and labels."""
        if self.board is None or not self.board.light:
            return
        usual = self.board.usual_light
        known = any(s.dli_mol is not None for s in self.board.light)
        most = [s.dli_mol or 0.0 for s in self.board.light]
        if usual is not None and known:
            most.append(min(usual.dli_high or usual.dli_low, 1.6 * max(most)))
        highest = max(most, default=0.0) or 1.0
        base, room = space.area.bottom() - 3, space.area.height() - 8
        if usual is not None and known:
            self._paint_usual(painter, space, usual, base, room / highest)
        before: float | None = None
        for span in self.board.light:
            share = _UNKNOWN_SHARE if span.dli_mol is None else span.dli_mol / highest
            box = QRectF(space.axis.x(span.start_age), base - room * share, 0, room * share)
            box.setRight(space.axis.x(min(span.end_age + 1, self.board.last_age)))
            self._paint_step(painter, space, box, span.dli_mol is not None, before)
            self._paint_label(painter, space, box, label(span))
            before = box.top()

    def _paint_usual(self, painter: QPainter, space: Space, usual: UsualLight, base: float, px_per_mol: float) -> None:
        """The usual range as hairlines with hatching between, behind the steps."""
        assert self.board is not None
        left, right = space.axis.x(0), space.axis.x(self.board.last_age)
        top = max(space.area.top(), base - px_per_mol * (usual.dli_high or 1e6))
        bottom = max(space.area.top(), base - px_per_mol * usual.dli_low)
        box = QRectF(left, top, right - left, bottom - top)
        painter.fillRect(box, QBrush(space.tint("light", 0.45), Qt.BrushStyle.BDiagPattern))
        painter.setPen(QPen(space.tint("light", 0.6), 1, Qt.PenStyle.DotLine))
        for y in {bottom} if usual.dli_high is None else {top, bottom}:
            painter.drawLine(QPointF(left, y), QPointF(right, y))

    def _paint_step(self, painter: QPainter, space: Space, box: QRectF, measured: bool, before: float | None) -> None:
        painter.fillRect(box, space.tint("light", 0.2 if measured else 0.08))
        pen = QPen(space.look.colour("light"), 1.6 * space.look.scale)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        if before is not None:
            painter.drawLine(QPointF(box.left(), before), box.topLeft())
        if not measured:
            pen.setStyle(Qt.PenStyle.DashLine)
            painter.setPen(pen)
        painter.drawLine(box.topLeft(), box.topRight())

    def _paint_label(self, painter: QPainter, space: Space, box: QRectF, text: str) -> None:
        left = max(box.left(), space.area.left()) + space.look.px(6)
        right = min(box.right(), space.area.right())
        height = space.look.px(15)
        top = box.top() + 1 if box.height() >= height + 1 else box.top() - height
        fits = text_width(space.font(True), text) <= right - left
        if right - left >= space.look.px(30):
            place = QRectF(left, max(top, space.area.top()), right - left, height)
            draw_line_of_text(painter, space, place, text if fits else text.split(",")[0], bold=True)


def label(span: LightSpan) -> str:
    """Such as "14 h, full: 25.2"."""
    hours = f"{short_number(span.photoperiod_h)}{THIN}h"
    output = _output(span)
    text = f"{hours}, {output}" if output else hours
    return text if span.dli_mol is None else f"{text}: {number(span.dli_mol, 1)}"


def telling(span: LightSpan) -> str:
    """The light in a sentence."""
    dli = say("not measured") if span.dli_mol is None else f"{number(span.dli_mol, 1)}{THIN}mol/m²"
    ppfd = "" if span.canopy_ppfd_umol is None else f"{number(span.canopy_ppfd_umol)}{THIN}µmol/m²/s"
    hours = f"{short_number(span.photoperiod_h)}{THIN}h"
    return ", ".join(p for p in (hours, _output(span), ppfd, dli) if p)


def usual_words(usual: UsualLight) -> str:
    """Such as "common range 20 to 30 mol/m² a day (source)"."""
    low = short_number(usual.dli_low)
    span = low if usual.dli_high is None else say("{low} to {high}", low=low, high=short_number(usual.dli_high))
    return say("{meaning} {span} mol/m² a day ({source})", meaning=say(usual.meaning), span=span,
               source=say(usual.source))  # fmt: skip


def against_usual(dli_mol: float, usual: UsualLight | None) -> str:
    """Whether a day's light is below or above the usual range, "" within it."""
    if usual is None:
        return ""
    if dli_mol < usual.dli_low:
        return say("below the usual {low} mol/m²", low=short_number(usual.dli_low))
    if usual.dli_high is not None and dli_mol > usual.dli_high:
        return say("above the usual {high} mol/m²", high=short_number(usual.dli_high))
    return ""


def _output(span: LightSpan) -> str:
    if span.dimming_percent is None:
        return ""
    if span.dimming_percent >= 99.5:
        return say("full")
    return say("at {percent}", percent=f"{number(span.dimming_percent)}{THIN}%")
