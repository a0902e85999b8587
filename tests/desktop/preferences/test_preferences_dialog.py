"""Preferences hold at once and are kept."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from growlog.desktop.look.theme import apply_theme, current
from growlog.desktop.preferences import PreferencesDialog
from growlog.desktop.settings import Settings


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    return Settings(tmp_path / "settings.ini")


@pytest.fixture
def dialog(qtbot: QtBot, qapp: QApplication, settings: Settings) -> Iterator[PreferencesDialog]:
    made = PreferencesDialog(settings)
    qtbot.addWidget(made)
    made.show()
    yield made
    apply_theme(qapp, "light", 100)


def test_dark_colours_hold_at_once_and_are_kept(dialog: PreferencesDialog, settings: Settings) -> None:
    QTest.mouseClick(dialog.theme_switch.button("dark"), Qt.MouseButton.LeftButton)
    assert current().palette.is_dark
    assert settings.text("theme") == "dark"


def test_larger_text_holds_at_once_and_is_kept(dialog: PreferencesDialog, settings: Settings) -> None:
    dialog.size_field.box.setCurrentIndex(dialog.size_field.box.findData("150"))
    assert current().scale == 1.5
    assert settings.number("text_percent") == 150


def test_units_are_kept(dialog: PreferencesDialog, settings: Settings) -> None:
    QTest.mouseClick(dialog.units_switch.button("us"), Qt.MouseButton.LeftButton)
    assert settings.text("units") == "us"


def test_the_dialog_shows_what_was_kept(qtbot: QtBot, settings: Settings) -> None:
    settings.set("theme", "dark")
    settings.set("text_percent", 137)
    settings.set("units", "us")
    made = PreferencesDialog(settings)
    qtbot.addWidget(made)
    assert (made.theme_switch.value(), made.size_field.value(), made.units_switch.value()) == ("dark", "137", "us")
