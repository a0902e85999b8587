"""The door to the system's file dialogs."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.file_choice import FileChoice, NativeFileChoice
from growlog.desktop.settings import Settings
from tests.desktop.fakes import FakeFileChoice


class Answer:
    """Stands for the dialog: notes what it was asked and gives an answer."""

    def __init__(self, answer: object) -> None:
        self.answer = answer
        self.asked: list[tuple[object, ...]] = []

    def __call__(self, *arguments: object) -> object:
        self.asked.append(arguments)
        return self.answer


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """Settings of this test alone."""
    return Settings(tmp_path / "settings.ini")


@pytest.fixture
def choice(qtbot: QtBot, settings: Settings) -> NativeFileChoice:
    """The real door."""
    window = QWidget()
    qtbot.addWidget(window)
    return NativeFileChoice(window, settings)


def test_the_next_dialog_opens_where_the_last_one_ended(
    choice: NativeFileChoice, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a b").mkdir()
    picture = tmp_path / "a b" / "day.jpg"
    picture.touch()
    opened = Answer((str(picture), ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", opened)
    assert choice.file_to_open("Choose", ["Pictures (*.jpg)"]) == picture
    folder = Answer(str(tmp_path))
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", folder)
    assert choice.folder("Choose a folder") == tmp_path
    assert folder.asked[0][2] == str(tmp_path / "a b")


def test_a_dialog_that_is_put_away_gives_nothing(
    choice: NativeFileChoice, settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", Answer(([], "")))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", Answer(("", "")))
    assert choice.files_to_open("Choose") == []
    assert choice.file_to_save("Save", "review.html") is None
    assert settings.text("last_folder") == ""


def test_several_files_come_as_paths(choice: NativeFileChoice, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    names = [str(tmp_path / "one.jpg"), str(tmp_path / "two.jpg")]
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", Answer((names, "")))
    assert choice.files_to_open("Choose") == [Path(name) for name in names]


def test_a_suggested_name_stands_in_the_folder_where_the_dialog_opens(
    choice: NativeFileChoice, settings: Settings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings.set("last_folder", str(tmp_path))
    save = Answer((str(tmp_path / "review.html"), ""))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", save)
    assert choice.file_to_save("Save", "review.html") == tmp_path / "review.html"
    assert save.asked[0][2] == str(tmp_path / "review.html")


def test_the_fake_has_the_same_door(tmp_path: Path) -> None:
    fake: FileChoice = FakeFileChoice([tmp_path])
    assert fake.folder("Choose") == tmp_path
    assert fake.file_to_open("Choose") is None
