"""Work off the window's thread, results back on it."""

import logging
import threading
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject, QThread
from pytestqt.qtbot import QtBot

from growlog.desktop.background import Lane, Task, TaskRunner


class Receiver(QObject):
    """Keeps what is delivered and on which thread."""

    def __init__(self) -> None:
        super().__init__()
        self.results: list[object] = []
        self.errors: list[Exception] = []
        self.progress: list[object] = []
        self.threads: list[QThread] = []

    def done(self, result: object) -> None:
        self.results.append(result)
        self.threads.append(QThread.currentThread())

    def failed(self, error: Exception) -> None:
        self.errors.append(error)

    def moved(self, progress: object) -> None:
        self.progress.append(progress)


@pytest.fixture
def runner(qapp: object) -> Iterator[TaskRunner]:
    """A runner that is closed after the test."""
    runner = TaskRunner()
    yield runner
    assert runner.close(5)


def test_a_result_comes_back_on_the_thread_of_the_window(runner: TaskRunner, qtbot: QtBot) -> None:
    receiver = Receiver()
    worker: list[int] = []

    def work(a: int, b: int) -> int:
        worker.append(threading.get_ident())
        return a + b

    runner.run(work, 2, 3, on_done=receiver.done)
    qtbot.waitUntil(lambda: receiver.results == [5])
    assert worker != [threading.get_ident()]
    assert receiver.threads == [receiver.thread()]


def test_an_error_is_logged_and_handed_on(runner: TaskRunner, qtbot: QtBot, caplog: pytest.LogCaptureFixture) -> None:
    receiver = Receiver()

    def work() -> None:
        raise ValueError("no such photo")

    with caplog.at_level(logging.ERROR):
        runner.run(work, on_done=receiver.done, on_failed=receiver.failed)
        qtbot.waitUntil(lambda: len(receiver.errors) == 1)
    assert str(receiver.errors[0]) == "no such photo"
    assert receiver.results == []
    assert "failed" in caplog.text


def test_progress_is_told_in_order_before_the_result(runner: TaskRunner, qtbot: QtBot) -> None:
    receiver = Receiver()

    def work(task: Task) -> str:
        for step in range(3):
            task.report((step, 3))
        return "ready"

    runner.run(work, on_done=receiver.done, on_progress=receiver.moved)
    qtbot.waitUntil(lambda: receiver.results == ["ready"])
    assert receiver.progress == [(0, 3), (1, 3), (2, 3)]


def test_the_database_lane_keeps_the_order_of_its_work(runner: TaskRunner, qtbot: QtBot) -> None:
    receiver = Receiver()
    threads: set[int] = set()

    def work(number: int) -> int:
        threads.add(threading.get_ident())
        return number

    for number in range(20):
        runner.run(work, number, on_done=receiver.done, lane=Lane.DATABASE)
    qtbot.waitUntil(lambda: len(receiver.results) == 20)
    assert receiver.results == list(range(20))
    assert len(threads) == 1


def test_cancelled_work_stops_and_delivers_nothing(runner: TaskRunner, qtbot: QtBot) -> None:
    receiver = Receiver()
    started, go_on, stopped = threading.Event(), threading.Event(), threading.Event()

    def work(task: Task) -> str:
        started.set()
        go_on.wait(5)
        try:
            task.stop_if_cancelled()
        finally:
            stopped.set()
        return "too late"

    task = runner.run(work, on_done=receiver.done, on_failed=receiver.failed, on_progress=receiver.moved)
    assert started.wait(5)
    task.cancel()
    go_on.set()
    assert stopped.wait(5)
    qtbot.waitUntil(lambda: not runner.is_busy)
    assert receiver.results == []
    assert receiver.errors == []


def test_a_receiver_that_is_gone_is_left_out(runner: TaskRunner, qtbot: QtBot) -> None:
    receiver = Receiver()
    go_on = threading.Event()
    runner.run(go_on.wait, 5, on_done=receiver.done)
    receiver.deleteLater()
    with qtbot.waitSignal(receiver.destroyed):
        pass
    go_on.set()
    qtbot.waitUntil(lambda: not runner.is_busy)
    assert receiver.results == []


def test_it_says_when_it_becomes_busy_and_idle(runner: TaskRunner, qtbot: QtBot) -> None:
    said: list[bool] = []
    runner.busy_changed.connect(said.append)
    runner.run(int)
    qtbot.waitUntil(lambda: said == [True, False])
    assert not runner.is_busy


def test_closing_asks_running_work_to_stop_and_joins_the_threads(qapp: object) -> None:
    runner = TaskRunner()
    started = threading.Event()

    def work(task: Task) -> None:
        started.set()
        while True:
            task.stop_if_cancelled()

    runner.run(work, on_progress=print)
    assert started.wait(5)
    assert runner.close(5)
    names = [thread.name for thread in threading.enumerate()]
    assert not [name for name in names if name.startswith(("work", "database"))]


def test_a_closed_runner_takes_no_work(qapp: object) -> None:
    runner = TaskRunner()
    runner.close()
    with pytest.raises(RuntimeError, match="closed"):
        runner.run(int)
