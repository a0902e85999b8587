"""The feeds lane: which mix was in use, EC of what went in as dots, of the drain as rings, plain water as drops."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from growlog.desktop.board.lanes.lane import BoardLane, Space, draw_line_of_text, entry_near, text_width
from growlog.services.board import Board, FeedPoint
from growlog.words import say


class FeedsLane(BoardLane):
    """Feeds, their EC and that of the drain."""

    key = "feeds"
    natural_px = 46
    least_px = 28

    def name(self) -> str:
        """Feeds."""
        return say("Feeds")

    def second_line(self) -> str:
        """What dots and rings stand for."""
        return say("EC ● in, ○ drain")

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """The mix in use, then each feed."""
        for point in board.feeds:
            mix = next((b.label for b in board.mixes if b.start_age <= point.age <= b.end_age), "")
            named = mix if mix and not point.water_only else ""
            yield point.age, "; ".join(p for p in (point.text, named) if p)

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """The day's first entry."""
        entries = [] if self.board is None else [(x.age, x.entry_id) for x in self.board.feeds]
        return entry_near(space, point, entries)

    def paint(self, painter: QPainter, space: Space) -> None:
        """Bands above, points below."""
        if self.board is None:
            return
        band = min(space.look.px(15), space.area.height() * 0.48) if self.board.mixes else 0
        self._paint_bands(painter, space, band)
        room = space.area.adjusted(0, band + space.look.px(7), 0, -space.look.px(5))
        self._paint_points(painter, space, room)

    def _paint_bands(self, painter: QPainter, space: Space, height: float) -> None:
        assert self.board is not None
        names: list[str] = []
        for band in self.board.mixes:
            if band.label not in names:
                names.append(band.label)
            left, right = space.axis.x(band.start_age - 0.5), space.axis.x(band.end_age + 0.5)
            box = QRectF(left, space.area.top() + 2, max(right - left - 1, 2), height)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(space.tint("feed", 0.16 + 0.14 * (names.index(band.label) % 2)))
            painter.drawRoundedRect(box, 2, 2)
            pad = space.look.px(5)
            seen = box.intersected(space.area).adjusted(pad, 0, -pad, 0)
            if seen.width() >= space.look.px(18):
                draw_line_of_text(painter, space, seen, _fitting(space, band.label, seen.width()), bold=True)

    def _paint_points(self, painter: QPainter, space: Space, room: QRectF) -> None:
        assert self.board is not None
        low, high = ec_range(self.board.feeds)
        radius = min(max(space.axis.pixels_per_day * 0.36, 1.4), 2.6 * space.look.scale)

        def y(ec: float) -> float:
            return room.bottom() - room.height() * (ec - low) / (high - low)

        colour = space.look.colour("feed")
        for point in self.board.feeds:
            x = space.axis.x(point.age)
            if point.drain_ec_ms_per_cm is not None:
                painter.setPen(QPen(colour, 1))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawEllipse(QPointF(x, y(point.drain_ec_ms_per_cm)), radius, radius)
            painter.setPen(Qt.PenStyle.NoPen)
            if point.water_only:
                painter.setPen(QPen(colour, 1.1))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawPath(_drop(QPointF(x, room.bottom() - radius), radius * 1.5))
            else:
                ec = point.ec_ms_per_cm
                painter.setBrush(colour)
                painter.drawEllipse(QPointF(x, room.bottom() if ec is None else y(ec)), radius, radius)


def _fitting(space: Space, label: str, width: float) -> str:
    """The label, without its unit where that would not fit."""
    if text_width(space.font(True), label) <= width or " " not in label:
        return label
    return label.rsplit(maxsplit=1)[0]


def ec_range(feeds: Iterable[FeedPoint]) -> tuple[float, float]:
    """Lowest and highest EC to be drawn, never closer together than 0.4 mS/cm so that small wobble stays small."""
    values = [v for f in feeds for v in (f.ec_ms_per_cm, f.drain_ec_ms_per_cm) if v is not None]
    if not values:
        return 0.0, 1.0
    low, high = min(values), max(values)
    return (low, high) if high - low >= 0.4 else (low - 0.2, low + 0.4)


def _drop(centre: QPointF, radius: float) -> QPainterPath:
    path = QPainterPath(QPointF(centre.x(), centre.y() - 1.5 * radius))
    path.cubicTo(centre + QPointF(radius * 1.3, 0), centre + QPointF(radius, radius), centre + QPointF(0, radius))
    path.cubicTo(
        centre + QPointF(-radius, radius), centre + QPointF(-radius * 1.3, 0), QPointF(centre.x(), path.elementAt(0).y)
    )
    return path
