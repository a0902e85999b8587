"""First at once, last for sure."""

from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from growlog.desktop.throttle import Throttle


def test_the_first_call_goes_out_at_once(qapp: object) -> None:
    calls: list[int] = []
    throttle = Throttle(calls.append, 1000)
    throttle.call(1)
    assert calls == [1]
    throttle.cancel()


def test_of_many_calls_in_the_interval_only_the_last_follows(qtbot: QtBot) -> None:
    calls: list[int] = []
    throttle = Throttle(calls.append, 1)
    for number in range(5):
        throttle.call(number)
    qtbot.waitUntil(lambda: len(calls) == 2)
    assert calls == [0, 4]


def test_after_a_quiet_interval_a_call_goes_out_at_once_again(qtbot: QtBot) -> None:
    calls: list[int] = []
    throttle = Throttle(calls.append, 1)
    throttle.call(1)
    qtbot.waitUntil(lambda: not throttle._timer.isActive())
    throttle.call(2)
    assert calls == [1, 2]


def test_flushing_makes_the_waiting_call_and_no_other(qapp: object) -> None:
    calls: list[int] = []
    throttle = Throttle(calls.append, 1000)
    throttle.call(1)
    throttle.call(2)
    throttle.flush()
    throttle.flush()
    assert calls == [1, 2]
    throttle.cancel()


def test_a_cancelled_call_never_comes(qapp: object) -> None:
    calls: list[int] = []
    throttle = Throttle(calls.append, 1000)
    throttle.call(1)
    throttle.call(2)
    assert throttle.is_waiting
    throttle.cancel()
    throttle.flush()
    assert calls == [1]


def test_it_goes_away_with_its_parent(qapp: object) -> None:
    parent = QObject()
    throttle = Throttle(print, 1000, parent)
    assert throttle.parent() is parent
