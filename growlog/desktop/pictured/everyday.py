"""The board, photos, crops, forms and small dialogs as they stand in pictures."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from growlog.records.entry import KINDS
from growlog.services.photo_uses import original_path
from growlog.words import say

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow


def _board(_window: "MainWindow") -> None:
    return None


def _calendar(window: "MainWindow") -> None:
    if window.page is not None:
        window.page.board.set_axis_mode("calendar")


def _board_with_all(window: "MainWindow") -> None:
    """Every lane that has something, those too that are hidden at first."""
    if window.page is not None:
        window.page.board.set_hidden_lanes([])
        window.page.board.hidden_lanes_changed.emit([])


def _underlay(window: "MainWindow") -> None:
    if window.page is not None and window.desk is not None:
        others = [c for c in window.desk.crops if c.crop.id != window.desk.selection.crop_id and c.curve]
        if others:
            window.page.board.show_underlay(window.desk.other_curve(others[-1].crop.id))


def _intake(window: "MainWindow") -> None:
    """The tray with some of the crop's own originals: they are known, so it shows what a second drop looks like."""
    if window.opened is not None and window.desk is not None and window.desk.days is not None:
        shown = window.desk.days.photos[:12]
        window.opened.photos.open_tray([original_path(window.desk.log, p.photo) for p in shown])


def _empty_intake(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.photos.open_tray()


def _photo(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.photos.open_full()


def _compare(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.photos.compare()


def _new_crop(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.crops.new()


def _correct_crop(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.crops.correct()


def _clear(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.crops.clear()


def _preferences(window: "MainWindow") -> None:
    window.actions_table.by_name["preferences"].trigger()


def _problem(window: "MainWindow") -> None:
    window.show_refusal(say("{folder} is not a logbook. It was left as it is.", folder="my-pictures"))


class _FormScreen:
    """The form of one kind of entry."""

    def __init__(self, kind: str) -> None:
        self._kind = kind

    def __call__(self, window: "MainWindow") -> None:
        if window.opened is not None:
            window.opened.entries.add(self._kind)


EVERYDAY_SCREENS: dict[str, Callable[["MainWindow"], None]] = {
    "welcome": _board,
    "welcome-problem": _problem,
    "board": _board,
    "board-calendar": _calendar,
    "board-all-lanes": _board_with_all,
    "board-two-curves": _underlay,
    "photo": _photo,
    "compare": _compare,
    "intake": _intake,
    "intake-empty": _empty_intake,
    "crop-new": _new_crop,
    "crop": _correct_crop,
    "crop-clear": _clear,
    "preferences": _preferences,
    "problem": _problem,
    **{f"form-{kind}": _FormScreen(kind) for kind in KINDS},
}
