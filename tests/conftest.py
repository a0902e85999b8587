"""What every test stands on: no display, no folder of the developer, no dialog that waits, nothing left behind."""

import gc
import os
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """The one option of these tests."""
    parser.addoption("--show-windows", action="store_true", help="show windows on the screen instead of nowhere")


def pytest_configure(config: pytest.Config) -> None:
    """Chooses Qt's platform before Qt is imported."""
    if not config.getoption("--show-windows"):
        os.environ["QT_QPA_PLATFORM"] = "offscreen"


@pytest.fixture(autouse=True)
def own_folders(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Settings, data and caches of a test lie in a folder of its own."""
    home = tmp_path_factory.mktemp("home")
    for variable in ("HOME", "USERPROFILE", "APPDATA", "LOCALAPPDATA"):
        monkeypatch.setenv(variable, str(home))
    for variable in ("CONFIG", "DATA", "CACHE", "STATE"):
        monkeypatch.setenv(f"XDG_{variable}_HOME", str(home / variable.lower()))
    return home


def pytest_collection_finish() -> None:
    """What was imported lives as long as the tests; collectors need not look through it after each module."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="module", autouse=True)
def garbage_on_this_thread() -> Iterator[None]:
    """Widgets that a test let go are freed here, never by a collector that runs on some thread of a later test."""
    gc.disable()
    yield
    gc.collect()


@pytest.fixture(autouse=True)
def metric_units() -> Iterator[None]:
    """Sentences speak metric at the start of each test."""
    from growlog.words import show_units

    yield
    show_units("metric")


@pytest.fixture(scope="session")
def qapp(qapp_args: list[str], qapp_cls: type, pytestconfig: pytest.Config) -> object:
    """The application, dressed once."""
    from PySide6.QtWidgets import QApplication

    from growlog.desktop.look.theme import apply_theme

    app = QApplication.instance() or qapp_cls(qapp_args)
    assert isinstance(app, QApplication)
    apply_theme(app, "light", 100)
    return app


@pytest.fixture(autouse=True)
def no_waiting_dialogs(monkeypatch: pytest.MonkeyPatch) -> None:
    """A dialog that would wait for a person fails the test."""
    if "PySide6.QtWidgets" not in sys.modules:
        return
    from PySide6.QtWidgets import QDialog, QFileDialog, QMessageBox

    def refuse(*arguments: object, **keywords: object) -> None:
        pytest.fail("a dialog that waits for a person was opened in a test")

    for holder, names in (
        (QDialog, ("exec", "exec_")),
        (QMessageBox, ("exec", "exec_", "about", "critical", "information", "question", "warning")),
        (
            QFileDialog,
            ("exec", "exec_", "getExistingDirectory", "getOpenFileName", "getOpenFileNames", "getSaveFileName"),
        ),
    ):
        for name in names:
            if hasattr(holder, name):
                monkeypatch.setattr(holder, name, refuse)


def leftovers(threads_before: set[threading.Thread]) -> list[str]:
    """What a test left behind: windows on the screen and threads that would keep the program alive."""
    left = [f"thread {t.name}" for t in set(threading.enumerate()) - threads_before if t.is_alive() and not t.daemon]
    if "PySide6.QtWidgets" in sys.modules:
        from PySide6.QtWidgets import QApplication

        if QApplication.instance() is not None:
            left += [f"window {w!r}" for w in QApplication.topLevelWidgets() if w.isVisible()]
    return left


@pytest.hookimpl(wrapper=True, trylast=True)
def pytest_runtest_teardown(item: pytest.Item) -> Iterator[None]:
    """Looks around after all fixtures of the test, pytest-qt's closing of windows among them, are done."""
    before = getattr(item, "threads_before", None)
    result = yield
    if before is not None:
        left = leftovers(before)
        _close_windows()
        if left:
            pytest.fail(f"the test left behind: {', '.join(left)}")
    return result


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Remembers which threads were there before."""
    item.threads_before = set(threading.enumerate())  # type: ignore[attr-defined]


def _close_windows() -> None:
    if "PySide6.QtWidgets" not in sys.modules:
        return
    from PySide6.QtWidgets import QApplication

    if QApplication.instance() is not None:
        for widget in QApplication.topLevelWidgets():
            if widget.isVisible():
                widget.close()
