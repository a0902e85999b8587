"""The tally as it stands in the pictures of screens: empty, half way through, and with questions open."""

from datetime import time
from typing import TYPE_CHECKING

from growlog.desktop.tally.session_tally import SessionTally
from growlog.records.entry import CullCause

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow

_WEIGHTS_G = ("93", "78", "86", "64", "101", "72")


def empty_tally(window: "MainWindow") -> None:
    """As it opens."""
    _opened(window)


def full_tally(window: "MainWindow") -> None:
    """Two crops worked at, minutes shared in part, a weight half typed."""
    dialog = _opened(window)
    if dialog is None or not dialog.model.crops:
        return
    _work_at_first(dialog, time(8, 5))
    model = dialog.model
    if len(model.crops) > 1:
        model.choose_next(1)
        model.type_weight("12")
        model.enter_weight()
        for counter in model.row.counters[:1] if model.row is not None else ():
            model.set_count(counter, 4)
        model.set_pollination_time(time(8, 20))
        model.set_minutes(3)
        model.choose_next(-1)
    model.set_session_minutes(14)
    model.type_weight("86")


def tally_with_question(window: "MainWindow") -> None:
    """A pollination in the evening and a fruit heavier than usual, just as it was to be written."""
    dialog = _opened(window)
    if dialog is None or not dialog.model.crops:
        return
    _work_at_first(dialog, time(19, 20))
    dialog.model.type_weight("6200")
    dialog.model.enter_weight()
    dialog.write()


def _work_at_first(dialog: SessionTally, pollinated_at: time) -> None:
    model = dialog.model
    for text in _WEIGHTS_G:
        model.type_weight(text)
        model.enter_weight()
    model.cull(CullCause.MISSHAPEN)
    for counter, count in zip(model.row.counters if model.row is not None else (), (5, 9, 2, 1), strict=False):
        model.set_count(counter, count)
    model.set_pollination_time(pollinated_at)
    model.set_minutes(8)


def _opened(window: "MainWindow") -> SessionTally | None:
    if window.opened is None:
        return None
    window.opened.tally.open()
    return window.opened.tally.dialog
