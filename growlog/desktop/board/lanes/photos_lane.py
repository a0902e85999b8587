"""The photo lane: as many thumbnails as fit, a tick for every day with one, a ring for a day missed."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import ceil, floor

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QImage, QPainter, QPainterPath, QPen, QPixmap

from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.pictures import Pictures
from growlog.services.board import Board, PhotoDay
from growlog.words import say, say_count

_TICK_ROW_PX = 13
_GAP_PX = 4
_KEPT = 400
_EXCEPTION_PART = 3  # at most one day in three may lack a photo for that to be worth a mark


@dataclass(frozen=True)
class Slot:
    """A place for one thumbnail: the days it stands for, end not included, and the photo, if any."""

    start_age: int
    end_age: int
    photo: PhotoDay | None


class PhotosLane(BoardLane):
    """Photos of the crop; missed days are seen as gaps."""

    key = "photos"
    natural_px = 88
    least_px = 36

    def __init__(self, pictures: Pictures) -> None:
        super().__init__()
        self._pictures = pictures
        self._scaled: dict[tuple[str, int, int], QPixmap] = {}
        self.waiting: set[str] = set()

    def show_board(self, board: Board) -> None:
        """Takes the photos in."""
        super().show_board(board)
        self.waiting.clear()

    def name(self) -> str:
        """Photos."""
        return say("Photos")

    def second_line(self) -> str:
        """On how many of the crop's days there is one."""
        if self.board is None or not self.board.photo_days:
            return ""
        days = self.board.last_age + 1 - min(0, *(p.age for p in self.board.photo_days), 0)
        return say("{n} of {days} days", n=len(self.board.photo_days), days=max(days, len(self.board.photo_days)))

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """How many photos on a day, and the days without."""
        for day in board.photo_days:
            yield day.age, say_count("{n} photo", "{n} photos", day.photo_count)
        for age in board.missing_photo_ages:
            yield age, say("no photo on this day")

    def paint(self, painter: QPainter, space: Space) -> None:
        """Thumbnails above, a row of ticks below."""
        if self.board is None:
            return
        row = space.look.px(_TICK_ROW_PX)
        thumbs = space.area.adjusted(0, 1, 0, -row)
        self.waiting.clear()
        for slot in slots(self.board.photo_days, space.axis, thumbs.height() * 0.9):
            self._paint_slot(painter, space, thumbs, slot)
        self._paint_ticks(painter, space, space.area.bottom() - row / 2 + 0.5)

    def _paint_slot(self, painter: QPainter, space: Space, thumbs: QRectF, slot: Slot) -> None:
        axis = space.axis
        left, right = axis.x(slot.start_age - 0.5), axis.x(slot.end_age - 0.5)
        width = min(right - left - _GAP_PX, thumbs.height() * 1.5)
        box = QRectF(round((left + right - width) / 2), thumbs.top(), max(round(width), 4), thumbs.height())
        if slot.photo is None:
            return
        image = self._thumb(slot.photo.sha256, round(box.width()), round(box.height()), painter)
        path = QPainterPath()
        path.addRoundedRect(box, 2, 2)
        if image is None:
            painter.fillPath(path, space.look.colour("soft"))
            return
        painter.save()
        painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
        painter.drawPixmap(box.topLeft(), image)
        painter.restore()

    def _thumb(self, sha256: str, width: int, height: int, painter: QPainter) -> QPixmap | None:
        density = painter.device().devicePixelRatio()
        key = (sha256, round(width * density), round(height * density))
        if key not in self._scaled:
            image = self._pictures.small(sha256)
            if image is None:
                self.waiting.add(sha256)
                return None
            if len(self._scaled) >= _KEPT:
                self._scaled.clear()
            self._scaled[key] = _covering(image, key[1], key[2])
            self._scaled[key].setDevicePixelRatio(density)
        return self._scaled[key]

    def _paint_ticks(self, painter: QPainter, space: Space, y: float) -> None:
        assert self.board is not None
        per_day, look = space.axis.pixels_per_day, space.look
        reach = look.px(2)
        painter.setPen(QPen(look.colour("ink"), 1))
        for day in self.board.photo_days:
            x = round(space.axis.x(day.age)) + 0.5
            painter.drawLine(QPointF(x, y - reach), QPointF(x, y + reach))
        self._paint_gaps(painter, space, y, min(max(per_day * 0.42, 1.2), look.px(3)))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.colour("ink"))
        for day in self.board.photo_days:
            if day.photo_count > 1:
                painter.drawEllipse(QPointF(round(space.axis.x(day.age)) + 0.5, y + reach + look.px(2)), 1.2, 1.2)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _paint_gaps(self, painter: QPainter, space: Space, y: float, radius: float) -> None:
        assert self.board is not None
        painter.setPen(QPen(space.look.colour("problem"), 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for age in ringed_ages(self.board):
            painter.drawEllipse(QPointF(round(space.axis.x(age)) + 0.5, y), radius, radius)


def ringed_ages(board: Board) -> tuple[int, ...]:
    """The days whose missing photo is marked; none where so many lack one that this is the crop's habit."""
    missing = board.missing_photo_ages
    days = len(missing) + len({p.age for p in board.photo_days})
    return missing if len(missing) * _EXCEPTION_PART <= days else ()


def slots(photo_days: tuple[PhotoDay, ...], axis: AgeAxis, least_px: float) -> Iterator[Slot]:
    """Places side by side for the days in view, each at least least_px wide; they stay put when the axis pans."""
    if not photo_days:
        return
    by_age = {p.age: p for p in photo_days}
    first, last = min(by_age), max(by_age) + 1
    step = _even_step(max(1, ceil(least_px / axis.pixels_per_day)), last - first)
    seen_from = max(first, first + floor((axis.start - 0.5 - first) / step) * step)
    for start in range(seen_from, floor(axis.end + 0.5) + 1, step):
        end = min(start + step, last)
        if end > start:
            inside = [by_age[a] for a in range(start, end) if a in by_age]
            middle = (start + end - 1) / 2
            yield Slot(start, end, min(inside, key=lambda p: abs(p.age - middle)) if inside else None)


def _even_step(least: int, days: int) -> int:
    """Days to a place, at least `least`, so that the last place is no sliver."""
    for step in range(least, least + 1 + least * 2 // 5):
        if days % step == 0 or days % step >= 0.6 * step:
            return step
    return least


def _covering(image: QImage, width: int, height: int) -> QPixmap:
    """The middle of a picture, filling the box."""
    scaled = image.scaled(
        width, height, Qt.AspectRatioMode.KeepAspectRatioByExpanding, Qt.TransformationMode.SmoothTransformation
    )
    left, top = (scaled.width() - width) // 2, (scaled.height() - height) // 2
    return QPixmap.fromImage(scaled.copy(left, top, width, height))
