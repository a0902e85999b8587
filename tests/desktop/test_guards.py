"""The guards of these tests bite: each is shown a planted fault."""

import os
import threading

import pytest
from PySide6.QtWidgets import QDialog, QFileDialog, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from tests.conftest import leftovers


def test_a_window_left_open_is_found(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    assert any("window" in left for left in leftovers(set(threading.enumerate())))
    window.close()
    assert leftovers(set(threading.enumerate())) == []


def test_a_thread_left_running_is_found() -> None:
    go_on = threading.Event()
    before = set(threading.enumerate())
    thread = threading.Thread(target=go_on.wait, args=(5,), name="forgotten")
    thread.start()
    assert leftovers(before) == ["thread forgotten"]
    go_on.set()
    thread.join()
    assert leftovers(before) == []


def test_a_dialog_that_waits_fails(qtbot: QtBot) -> None:
    dialog = QDialog()
    qtbot.addWidget(dialog)
    with pytest.raises(pytest.fail.Exception, match="waits for a person"):
        dialog.exec()
    with pytest.raises(pytest.fail.Exception, match="waits for a person"):
        QMessageBox.question(None, "Title", "Question?")
    with pytest.raises(pytest.fail.Exception, match="waits for a person"):
        QFileDialog.getOpenFileName(None, "Choose")


def test_no_screen_is_needed(request: pytest.FixtureRequest) -> None:
    shown = request.config.getoption("--show-windows")
    assert shown or os.environ["QT_QPA_PLATFORM"] == "offscreen"
