"""What the crop takes a day: money by kind as small stacked bars, and electricity."""

from collections.abc import Iterable
from statistics import median

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.money.kinds import kind_brush, kind_colour
from growlog.desktop.money.wording import money_text
from growlog.records.display import fixed
from growlog.services.board import Board
from growlog.services.money.costs import CostDay
from growlog.services.money.lines import CostKind
from growlog.words import say

_TALL = 3  # times the usual day: what costs more stands as high as the lane, with a gap that says so

_HATCHED_PX = 6  # narrower bars would not show their hatching


class CostLane(BoardLane):
    """The cost of each day, kinds stacked in the order of the chart of what it cost."""

    key = "cost"
    natural_px = 40
    least_px = 28
    only_with_something = True

    def name(self) -> str:
        """Cost."""
        return say("Cost")

    def second_line(self) -> str:
        """The unit."""
        currency = "" if self.board is None or self.board.use is None else self.board.use.currency
        return say("{currency} a day", currency=currency) if currency else say("a day")

    def summary(self) -> str:
        """How high the lane is."""
        use = None if self.board is None else self.board.use
        if use is None or not use.costs:
            return ""
        top = money_text(round(highest_shown(day.total_minor for day in use.costs)), use.currency)
        return say("Kinds stacked on each other; the lane is {top} high, dearer days are broken", top=top)

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each day's cost by kind."""
        use = board.use
        if use is not None:
            for day in use.costs:
                kinds = [f"{say(kind.label)} {money_text(minor, use.currency)}" for kind, minor in day.by_kind.items()]
                total = [money_text(day.total_minor, use.currency)] if len(kinds) > 1 else []
                yield day.age, ": ".join([*total, ", ".join(kinds)])

    def paint(self, painter: QPainter, space: Space) -> None:
        """A bar for each day."""
        use = None if self.board is None else self.board.use
        if use is None or not use.costs:
            return
        highest = highest_shown([day.total_minor for day in use.costs])
        for day in use.costs:
            self._paint_bar(painter, space, day, highest)

    def _paint_bar(self, painter: QPainter, space: Space, day: CostDay, highest: float) -> None:
        area = space.area.adjusted(0, 3, 0, -2)
        width = max(min(space.axis.pixels_per_day * 0.72, 8 * space.look.scale), 1.0)
        share = min(1.0, highest / day.total_minor) if day.total_minor else 1.0
        base, left = area.bottom(), space.axis.x(day.age) - width / 2
        painter.setPen(Qt.PenStyle.NoPen)
        for kind in CostKind:
            height = area.height() * day.by_kind.get(kind, 0) * share / highest
            if height > 0:
                box = QRectF(left, base - height, width, height)
                painter.fillRect(box, space.look.colour("paper"))
                painter.fillRect(box, kind_brush(kind) if width > _HATCHED_PX else kind_colour(kind))
                base -= height
        if share < 1:  # taller than the lane: broken below its top
            painter.fillRect(QRectF(left - 1, area.top() + 3, width + 2, 2), space.look.colour("paper"))


class EnergyLane(BoardLane):
    """The crop's share of the electricity of each day."""

    key = "energy"
    natural_px = 30
    least_px = 22
    only_with_something = True

    def name(self) -> str:
        """Electricity."""
        return say("Electricity")

    def second_line(self) -> str:
        """How much at most, with the unit."""
        days = () if self.board is None or self.board.use is None else self.board.use.energy
        if not days:
            return say("kWh a day")
        return say("up to {kwh} a day", kwh=fixed(max(day.kwh for day in days), 1, "kWh"))

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each day's kWh."""
        for day in () if board.use is None else board.use.energy:
            yield day.age, fixed(day.kwh, 2, "kWh")

    def paint(self, painter: QPainter, space: Space) -> None:
        """A bar for each day, as wide as the day."""
        days = () if self.board is None or self.board.use is None else self.board.use.energy
        if not days:
            return
        area = space.area.adjusted(0, 3, 0, -2)
        highest = max(day.kwh for day in days)
        width = space.axis.pixels_per_day
        for day in days:
            height = area.height() * day.kwh / highest
            box = QRectF(space.axis.x(day.age) - width / 2, area.bottom() - height, width, height)
            painter.fillRect(box, space.tint("light", 0.35))
            painter.fillRect(QRectF(box.left(), box.top(), width, 1.4 * space.look.scale), space.look.colour("light"))


def highest_shown(totals: Iterable[int]) -> float:
    """The cost at the lane's top: the dearest day, or a few times the usual one where single days tower over all."""
    costs = [total for total in totals if total > 0] or [1]
    return float(min(max(costs), max(_TALL * median(costs), 1)))
