"""The air that the crop stood in: temperature as a band with its mean, and how dry the air was."""

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen, QPolygonF

from growlog.calculations.climate_day import WATCHED_HUMIDITY_PERCENT
from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.board.wording import number
from growlog.records.climate_day import ClimateDay
from growlog.records.display import fixed, in_shown_unit
from growlog.services.board import Board
from growlog.services.climate.of_crop import CropClimateDay
from growlog.words import say

_MARKS_PX = 9
Run = Sequence[CropClimateDay]


class TemperatureLane(BoardLane):
    """Lowest to highest temperature of each day, with the mean."""

    key = "temperature"
    natural_px = 38
    least_px = 20
    only_with_something = True

    def name(self) -> str:
        """Temperature."""
        return say("Temperature")

    def second_line(self) -> str:
        """The lowest and the highest of all days, with the unit."""
        ends = [] if self.board is None else _ends(self.board.climate)
        if not ends:
            return in_shown_unit(0, "°C")[1]
        return say("{low} to {high}", low=_degrees(ends[0]), high=fixed(ends[1], 0, "°C"))

    def summary(self) -> str:
        """What is drawn."""
        return say("From the lowest to the highest of each day, with the mean")

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """The temperatures of each day."""
        for day in board.climate:
            if day.climate.temperature_mean_c is not None:
                yield day.age, _temperatures(day)

    def paint(self, painter: QPainter, space: Space) -> None:
        """Band, mean, and the lowest and highest of all days."""
        days = [] if self.board is None else [d for d in self.board.climate if d.climate.temperature_mean_c is not None]
        if not days:
            return
        low, high = _ends(days)
        y = _scale(space, low, max(high, low + 4))
        for run in _runs(days):
            _paint_band(painter, space, run, y)
            _paint_mean(painter, space, run, y)


class DryAirLane(BoardLane):
    """The vapour pressure deficit of the air, with damp days marked."""

    key = "vpd"
    natural_px = 34
    least_px = 24
    only_with_something = True

    def __init__(self) -> None:
        super().__init__()
        self._humid_above = WATCHED_HUMIDITY_PERCENT

    def watch(self, humid_above_percent: float) -> None:
        """Nights above another humidity are marked from now on."""
        self._humid_above = humid_above_percent
        if self.board is not None:
            self.show_board(self.board)

    def name(self) -> str:
        """VPD, as the trade calls it."""
        return say("VPD of the air")

    def second_line(self) -> str:
        """The unit and what the marks stand for."""
        return say("kPa ○ humid ● dew")

    def summary(self) -> str:
        """What is drawn."""
        limit = fixed(self._humid_above, 0, "%")
        return say("○ a night above {limit}, ● the dew point reached the coolest reading", limit=limit)

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """The deficit of each day, and what is worth a warning."""
        for day in board.climate:
            words = _dryness(day, self._humid_above)
            if words:
                yield day.age, words

    def paint(self, painter: QPainter, space: Space) -> None:
        """The mean as a line, marks above it."""
        days = [] if self.board is None else [d for d in self.board.climate if d.climate.vpd_mean_kpa is not None]
        if not days:
            return
        highest = max(max(d.climate.vpd_mean_kpa or 0 for d in days), 0.4)
        y = _scale(space, 0, highest, _MARKS_PX)
        for run in _runs(days):
            line = QPolygonF([QPointF(_x(space, d), y(d.climate.vpd_mean_kpa or 0)) for d in run])
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(space.look.colour("reading"), 1.6 * space.look.scale))
            painter.drawPolyline(line) if len(run) > 1 else painter.drawEllipse(line.at(0), 1.2, 1.2)
        self._paint_marks(painter, space)

    def _paint_marks(self, painter: QPainter, space: Space) -> None:
        assert self.board is not None
        radius = min(max(space.axis.pixels_per_day * 0.3, 1.5), 3.0 * space.look.scale)
        for day in self.board.climate:
            humid, wet = is_humid_night(day, self._humid_above), day.may_condense
            if not humid and not wet:
                continue
            centre = QPointF(_x(space, day), space.area.top() + radius + 2)
            painter.setPen(QPen(space.look.colour("problem"), 1.2))
            painter.setBrush(space.look.colour("problem") if wet else Qt.BrushStyle.NoBrush)
            painter.drawEllipse(centre, radius, radius)


def is_humid_night(day: CropClimateDay, humid_above_percent: float) -> bool:
    """Whether the mean humidity in the dark was above what is watched."""
    night = day.climate.night_humidity_mean_percent
    return night is not None and night > humid_above_percent


def _temperatures(day: CropClimateDay) -> str:
    climate = day.climate
    mean = fixed(climate.temperature_mean_c or 0, 1, "°C")
    words = mean
    if climate.temperature_min_c != climate.temperature_max_c:
        low, high = fixed(_low(climate), 1, "°C"), fixed(_high(climate), 1, "°C")
        words = say("{low} to {high}, mean {mean}", low=low, high=high, mean=mean)
    humidity = climate.humidity_mean_percent
    if humidity is not None:
        words += ", " + fixed(humidity, 0, say("% RH"))
    return words if day.from_logger else say("{values}, from readings", values=words)


def _dryness(day: CropClimateDay, humid_above: float) -> str:
    climate, parts = day.climate, []
    if climate.vpd_mean_kpa is not None:
        parts.append(fixed(climate.vpd_mean_kpa, 2, "kPa"))
    if is_humid_night(day, humid_above) and climate.night_humidity_mean_percent is not None:
        humidity = fixed(climate.night_humidity_mean_percent, 0, "%")
        parts.append(say("{humidity} in the dark", humidity=humidity))
    if day.may_condense and climate.dew_point_max_c is not None:
        dew = fixed(climate.dew_point_max_c, 1, "°C")
        parts.append(say("dew point up to {dew}, so the coolest surfaces turned wet", dew=dew))
    return "; ".join(parts)


def _paint_band(painter: QPainter, space: Space, run: Run, y: Callable[[float], float]) -> None:
    path = QPainterPath()
    half = space.axis.pixels_per_day / 2 if len(run) == 1 else 0
    xs = [_x(space, run[0]) - half, *(_x(space, d) for d in run), _x(space, run[-1]) + half]
    edges = [run[0], *run, run[-1]]
    upper = [QPointF(x, y(_high(d.climate))) for x, d in zip(xs, edges, strict=True)]
    lower = [QPointF(x, y(_low(d.climate))) for x, d in zip(xs, edges, strict=True)]
    path.addPolygon(QPolygonF([*upper, *reversed(lower)]))
    painter.fillPath(path, space.tint("reading", 0.28))


def _paint_mean(painter: QPainter, space: Space, run: Run, y: Callable[[float], float]) -> None:
    painter.setPen(QPen(space.look.colour("reading"), 1.6 * space.look.scale))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    points = [QPointF(_x(space, d), y(d.climate.temperature_mean_c or 0)) for d in run]
    if len(points) == 1:
        painter.drawEllipse(points[0], 1.2, 1.2)
    else:
        painter.drawPolyline(QPolygonF(points))


def _ends(days: Sequence[CropClimateDay]) -> list[float]:
    """Lowest and highest temperature of all days, [] where none is known."""
    known = [d.climate for d in days if d.climate.temperature_mean_c is not None]
    return [min(map(_low, known)), max(map(_high, known))] if known else []


def _runs(days: Sequence[CropClimateDay]) -> list[list[CropClimateDay]]:
    """Days that follow each other; a line is not drawn across what is not known."""
    runs = [[days[0]]]
    for before, day in pairwise(days):
        if day.age - before.age > 1:
            runs.append([])
        runs[-1].append(day)
    return runs


def _scale(space: Space, low: float, high: float, above_px: float = 4) -> Callable[[float], float]:
    room = space.area.adjusted(0, above_px, 0, -4)

    def y(value: float) -> float:
        return room.bottom() - room.height() * (value - low) / (high - low)

    return y


def _x(space: Space, day: CropClimateDay) -> float:
    return space.axis.x(day.age)


def _low(climate: ClimateDay) -> float:
    mean = climate.temperature_mean_c or 0
    return mean if climate.temperature_min_c is None else climate.temperature_min_c


def _high(climate: ClimateDay) -> float:
    mean = climate.temperature_mean_c or 0
    return mean if climate.temperature_max_c is None else climate.temperature_max_c


def _degrees(celsius: float) -> str:
    return number(in_shown_unit(celsius, "°C")[0])
