"""The review and what is shared of it, as they stand in pictures."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from growlog.desktop.pictured.waiting import wait_until_idle
from growlog.desktop.review.pictured import without_data
from growlog.desktop.review.quality_fields import KEYS as QUALITY_KEYS
from growlog.words import say

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow


def _review(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.reviews.open()


def _empty_review(window: "MainWindow") -> None:
    """The review of a crop of which nothing was written."""
    _review(window)
    wait_until_idle(window)
    dialog = None if window.opened is None else window.opened.reviews.dialog
    if dialog is not None and dialog.review is not None:
        dialog.show_review(without_data(dialog.review), dict.fromkeys(QUALITY_KEYS, ""))


def _review_problem(window: "MainWindow") -> None:
    _review(window)
    wait_until_idle(window)
    if window.opened is not None and window.opened.reviews.dialog is not None:
        window.opened.reviews.dialog.say_problem(say("This crop has not begun yet."))


def _review_photos(window: "MainWindow") -> None:
    _review(window)
    wait_until_idle(window)
    if window.opened is not None:
        window.opened.reviews.open_photos()


def _decision(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.reviews.decide()


def _empty_what_if(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.reviews.what_if.open()


def _what_if(window: "MainWindow") -> None:
    """Other lamps and hours, without a yield change that is expected."""
    _empty_what_if(window)
    wait_until_idle(window)
    dialog = None if window.opened is None else window.opened.reviews.what_if.dialog
    if dialog is not None and dialog.form is not None:
        dialog.form.lamp_w.set_value(150)
        dialog.form.photoperiod_h.set_value(13)
        dialog.ask()


def _share(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.sharing.open_share()


def _time_lapse(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.sharing.open_time_lapse()


def _export(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.sharing.open_export()


REVIEWS_SCREENS: dict[str, Callable[["MainWindow"], None]] = {
    "review": _review,
    "review-empty": _empty_review,
    "review-problem": _review_problem,
    "review-photos": _review_photos,
    "decision": _decision,
    "what-if": _what_if,
    "what-if-empty": _empty_what_if,
    "share": _share,
    "time-lapse": _time_lapse,
    "export": _export,
}
