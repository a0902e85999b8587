"""All lanes in one painted widget. What stands still is kept as one picture and painted anew only when it changes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QPen, QPixmap, QResizeEvent
from PySide6.QtWidgets import QWidget

from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.lanes import (
    BoardLane,
    CostLane,
    DrainEcLane,
    DrainShareLane,
    DryAirLane,
    DueLane,
    EnergyLane,
    EventsLane,
    FeedsLane,
    LightLane,
    PhotosLane,
    PicksLane,
    PollinationLane,
    ReadingsLane,
    Space,
    StageLane,
    TemperatureLane,
    TrainingLane,
)
from growlog.desktop.board.lanes.lane import SMALL_PX
from growlog.desktop.look.theme import BASE_PX, current, theme_signal
from growlog.desktop.pictures import Pictures
from growlog.desktop.throttle import Throttle
from growlog.services.board import Board
from growlog.words import say

TOP_PX = 20  # room for the day line's label
EMPTY_PX = 20
_TWO_LINES_PX = 29
_ARRIVALS_MS = 90


@dataclass(frozen=True)
class PlacedLane:
    """A lane and where it stands in the widget, from its upper hairline to the lower one."""

    lane: BoardLane
    top: float
    height: float


class LanesView(QWidget):
    """Paints the lanes that are not hidden, in their order, with their names at the left."""

    def __init__(self, pictures: Pictures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._photos = PhotosLane(pictures)
        self._dry_air = DryAirLane()
        self._lanes: list[BoardLane] = [
            self._photos, StageLane(), LightLane(), TemperatureLane(), self._dry_air, FeedsLane(), DrainShareLane(),
            DrainEcLane(), ReadingsLane(), TrainingLane(), PollinationLane(), PicksLane(), EventsLane(), CostLane(),
            EnergyLane(), DueLane(),
        ]  # fmt: skip
        self._hidden: set[str] = set()
        self._axis = AgeAxis.over(0, 1)
        self._still: QPixmap | None = None
        self.still_paints = 0  # how often the standing picture was painted
        self._arrivals = Throttle(self._drop_still, _ARRIVALS_MS, self)
        pictures.small_arrived.connect(self._picture_arrived)
        theme_signal().changed.connect(self._drop_still)

    def show_board(self, board: Board) -> None:
        """Gives every lane the crop's data."""
        for lane in self._lanes:
            lane.show_board(board)
        self._drop_still()

    def set_axis(self, axis: AgeAxis) -> None:
        """Shows other ages."""
        if axis != self._axis:
            self._axis = axis
            self._drop_still()

    def watch_humidity(self, humid_above_percent: float) -> None:
        """Nights above another humidity are marked from now on."""
        self._dry_air.watch(humid_above_percent)
        self._drop_still()

    def lane_keys(self) -> list[str]:
        """All lanes in their order."""
        return [lane.key for lane in self._lanes]

    def lane(self, key: str) -> BoardLane:
        """A lane by its key."""
        return next(lane for lane in self._lanes if lane.key == key)

    def set_order(self, keys: Sequence[str]) -> None:
        """The lanes named come first, in that order; what is not known is passed over."""
        known = [key for key in dict.fromkeys(keys) if key in self.lane_keys()]
        self._lanes.sort(key=lambda lane: known.index(lane.key) if lane.key in known else len(known))
        self._drop_still()

    def hidden(self) -> list[str]:
        """The lanes that are not shown."""
        return [key for key in self.lane_keys() if key in self._hidden]

    def set_hidden(self, keys: Sequence[str]) -> None:
        """Hides these lanes and shows all others."""
        self._hidden = set(keys) & set(self.lane_keys())
        self._drop_still()

    def shown(self) -> list[BoardLane]:
        """The lanes that are not hidden, from the top; one that is only there with something only then."""
        kept = (lane for lane in self._lanes if lane.key not in self._hidden)
        return [lane for lane in kept if not (lane.only_with_something and lane.is_empty())]

    def natural_height(self) -> int:
        """The height at which nothing is compressed."""
        return current().px(TOP_PX + sum(_natural(lane) for lane in self.shown()))

    def least_height(self) -> int:
        """The height below which lanes would not be readable."""
        return current().px(TOP_PX + sum(_least(lane) for lane in self.shown()))

    def names_width(self) -> int:
        """The width that the names at the left want."""
        look = current()
        bold = QFontMetricsF(look.font(BASE_PX, QFont.Weight.DemiBold))
        small = QFontMetricsF(look.font(SMALL_PX))
        widest = 0.0
        for lane in self.shown():
            widest = max(widest, bold.horizontalAdvance(lane.name()), small.horizontalAdvance(lane.second_line()))
        return round(max(widest, small.horizontalAdvance(say("yield, marketable")))) + look.px(12)

    def placed(self) -> list[PlacedLane]:
        """Where each lane stands at the present height."""
        return list(self._place())

    def lane_at(self, y: float) -> PlacedLane | None:
        """The lane at a height in the widget."""
        return next((p for p in self._place() if p.top <= y < p.top + p.height), None)

    def entry_at(self, point: QPointF) -> tuple[int, str] | None:
        """The plant age and id of the entry whose mark lies under a point."""
        placed = self.lane_at(point.y())
        return None if placed is None else placed.lane.entry_at(self._space(placed), point)

    def tell(self, age: int) -> list[str]:
        """What is there on a day in all lanes that are shown, each with its lane's name."""
        return [f"{lane.name()}: {line}" for lane in self.shown() for line in lane.tell(age)]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another size wants another picture."""
        self._drop_still()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Puts the standing picture on the screen, painting it first where it is out of date."""
        density = self.devicePixelRatio()
        if self._still is None or self._still.devicePixelRatio() != density:
            self._still = self._painted(density)
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._still)  # clipped to what changed
        painter.end()

    def _place(self) -> Iterator[PlacedLane]:
        look, shown = current(), self.shown()
        top = float(look.px(TOP_PX))
        room = self.height() - top
        natural = sum(_natural(lane) for lane in shown) * look.scale
        least = sum(_least(lane) for lane in shown) * look.scale
        share = 1.0 if natural <= least else min(max((room - least) / (natural - least), 0.0), 1.0)
        for lane in shown:
            height = look.scale * (_least(lane) + share * (_natural(lane) - _least(lane)))
            yield PlacedLane(lane, top, height)
            top += height

    def _space(self, placed: PlacedLane) -> Space:
        axis = self._axis
        return Space(QRectF(axis.left, placed.top + 1, axis.width, placed.height - 2), axis, current())

    def _painted(self, density: float) -> QPixmap:
        self.still_paints += 1
        picture = QPixmap(round(self.width() * density), round(self.height() * density))
        picture.setDevicePixelRatio(density)
        picture.fill(current().colour("paper"))
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for number, placed in enumerate(self._place()):
            self._paint_name(painter, placed)
            if number:
                painter.setPen(QPen(current().colour("rule"), 1))
                y = round(placed.top) + 0.5
                painter.drawLine(QPointF(0, y), QPointF(self._axis.right, y))
            self._paint_lane(painter, placed)
        painter.end()
        return picture

    def _paint_lane(self, painter: QPainter, placed: PlacedLane) -> None:
        space = self._space(placed)
        painter.save()
        painter.setClipRect(space.area.adjusted(-3, -1, 0, 1))
        if placed.lane.is_empty():
            _text(painter, space.font(), "mute", space.area.adjusted(space.look.px(6), 0, 0, 0), say("none yet"))
        else:
            placed.lane.paint(painter, space)
        painter.restore()

    def _paint_name(self, painter: QPainter, placed: PlacedLane) -> None:
        look, lane = current(), placed.lane
        bold, small = look.font(BASE_PX, QFont.Weight.DemiBold), look.font(SMALL_PX)
        width = self._axis.left - look.px(10)
        second = lane.second_line()
        two = bool(second) and placed.height >= _TWO_LINES_PX * look.scale
        line, small_line = look.px(16), look.px(14)
        top = placed.top + (placed.height - line - (small_line if two else 0)) / 2
        _text(painter, bold, "ink", QRectF(0, top, width, line), lane.name())
        if two:
            _text(painter, small, "mute", QRectF(0, top + line, width, small_line), second)

    def _picture_arrived(self, sha256: str) -> None:
        if sha256 in self._photos.waiting:
            self._arrivals.call()

    def _drop_still(self) -> None:
        self._still = None
        self.update()


def _natural(lane: BoardLane) -> float:
    return EMPTY_PX if lane.is_empty() else lane.natural_height()


def _least(lane: BoardLane) -> float:
    return EMPTY_PX if lane.is_empty() else lane.least_height()


def _text(painter: QPainter, font: QFont, token: str, box: QRectF, text: str) -> None:
    painter.setFont(font)
    painter.setPen(current().colour(token))
    shown = QFontMetricsF(font).elidedText(text, Qt.TextElideMode.ElideRight, box.width())
    painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip, shown)
