"""Boards for the tests: plain values, invented, with something in every lane."""

from collections.abc import Callable
from datetime import date
from typing import Any, cast

from growlog.calculations.growth_stage import StageSpan
from growlog.calculations.light import LightSpan
from growlog.calculations.yield_curve import CurvePoint, YieldSoFar
from growlog.desktop.background import TaskRunner
from growlog.desktop.board import SeasonBoard
from growlog.desktop.pictures import Pictures
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar, FloweringHabit
from growlog.services.board import Board, Curve, FeedPoint, Mark, MixBand, PhotoDay, Tally

SOWN = date(2025, 11, 15)  # a Saturday
POINTS = (CurvePoint(43, 2, 180.0, 0.0), CurvePoint(50, 5, 420.0, 0.0), CurvePoint(60, 8, 700.0, 240.0))
CURVE = Curve("other", "Skylight Round", (CurvePoint(40, 3, 250.0, 0.0), CurvePoint(70, 9, 900.0, 0.0)), 96)


class IdleRunner:
    """Takes work and never does it."""

    def __init__(self) -> None:
        self.asked = 0

    def run(self, work: Callable[[], Any], **more: Any) -> None:
        self.asked += 1


def idle_pictures() -> Pictures:
    """Pictures of which none ever arrives."""
    return Pictures(cast(TaskRunner, IdleRunner()), lambda sha256: None, lambda photo: None)


def full_board(**changes: Any) -> Board:
    """A crop of 112 days; day 12 has no photo."""
    values: dict[str, Any] = {
        "crop": Crop("crop", "Boxroom Gold", "cultivar", sown_on=SOWN, medium="coir", cleared_on=date(2026, 3, 7)),
        "cultivar": Cultivar("cultivar", "pattypan", "Gold", FloweringHabit.SEPARATE, 58),
        "day_zero": SOWN,
        "last_age": 112,
        "photo_days": tuple(PhotoDay(a, f"sha{a}", f"use{a}", 1 + (a == 11)) for a in range(10, 20) if a != 12),
        "stages": (StageSpan(1, 2, 30, ("12",)), StageSpan(6, 25, 112, ("61",))),
        "light": (LightSpan(0, 19, 16, 46, 200, 11.5), LightSpan(20, 112, 14, 100, 500, 25.2)),
        "mixes": (MixBand(8, 60, "A + B 2.0 mL/L"),),
        "feeds": (
            FeedPoint(8, 1.4, 1.7, 2.0, False, "Feed 2.0 L"),
            FeedPoint(30, None, None, 1.0, True, "Water 1.0 L"),
        ),
        "training": (Mark(38, "train-1", "training", "2 old leaves removed", ""),),
        "pollination": (Tally(34, 2, 0, "Pollinated 2 flowers"),),
        "picks": (Tally(43, 2, 1, "Picked 2"), Tally(50, 12, 0, "Picked 12")),
        "events": (Mark(48, "mildew", "problem", "powdery mildew", "slight"),),
        "readings": (Mark(64, "reading-1", "reading", "24.6 °C", ""),),
        "curve": Curve("crop", "Boxroom Gold", POINTS, 112),
        "total": YieldSoFar(8, 1, 700.0, 240.0, 90.0, 0),
        "females_pollinated": 74,
        "packet_maturity_age": 58,
        "first_flower_age": 32,
        "first_pick_age": 43,
        "labour_minutes": 12,
    }
    return Board(**{**values, **changes})


def bare_board(**changes: Any) -> Board:
    """A crop of which nothing is noted yet."""
    empty: dict[str, Any] = dict.fromkeys(
        ("photo_days", "stages", "light", "mixes", "feeds", "training", "pollination", "picks", "events", "readings"),
        (),
    )
    empty |= {"curve": Curve("crop", "Boxroom Gold", (), 20), "last_age": 20, "females_pollinated": 0}
    empty |= {"first_pick_age": None, "first_flower_age": None, "total": YieldSoFar(0, 0, 0.0, 0.0, None, 0)}
    return full_board(**{**empty, **changes})


def shown_board(
    qtbot: Any, board: Board | None = None, age: int = 64, width: int = 890, height: int = 860
) -> SeasonBoard:
    """A season board on the screen that is not there."""
    widget = SeasonBoard(idle_pictures())
    qtbot.addWidget(widget)
    widget.resize(width, height)
    widget.show_board(full_board() if board is None else board, age)
    widget.show()
    qtbot.waitExposed(widget)
    widget.grab()
    return widget
