"""Settings: typed, checked, and harmless when the file is spoilt."""

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.settings import RECENT_COUNT, TABLE, Settings, UnknownSetting, default_file


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A settings file that is not there yet, in a folder that is not there yet."""
    return tmp_path / "größe" / "settings.ini"


def test_every_default_passes_its_own_check() -> None:
    assert len(TABLE) >= 10
    assert all(row.is_good(row.default) for row in TABLE.values())


def test_the_defaults_hold_while_nothing_is_stored(file: Path) -> None:
    settings = Settings(file)
    assert settings.text("theme") == "system"
    assert settings.number("text_percent") == 100
    assert settings.texts("hidden_lanes") == ["drain-share", "drain-ec", "vpd", "cost", "energy"]
    assert settings.flag("window_maximised") is False


def test_a_value_is_there_when_the_program_starts_again(file: Path) -> None:
    first = Settings(file)
    first.set("theme", "dark")
    first.set("splitter_sizes", [220, 900, 320])
    first.set("lane_order", ["photos", "föhn"])
    again = Settings(file)
    assert again.text("theme") == "dark"
    assert again.numbers("splitter_sizes") == [220, 900, 320]
    assert again.texts("lane_order") == ["photos", "föhn"]


@pytest.mark.parametrize(
    ("key", "stored"),
    [
        ("theme", '"sepia"'),
        ("theme", "not json"),
        ("text_percent", "900"),
        ("text_percent", '"large"'),
        ("text_percent", "true"),
        ("splitter_sizes", '"wide"'),
        ("splitter_sizes", "[-4]"),
        ("window_geometry", "[1, 2]"),
        ("recent_logbooks", "[1]"),
        ("window_maximised", "1"),
    ],
)
def test_a_bad_stored_value_falls_back_to_the_default(file: Path, key: str, stored: str) -> None:
    settings = Settings(file)
    settings._store.setValue(key, stored)
    assert settings.get(key) == TABLE[key].default


def test_a_file_of_rubbish_falls_back_to_the_defaults(file: Path) -> None:
    file.parent.mkdir()
    file.write_bytes(b"\x00\xff[[[\ntheme=@Variant(\x00)\n")
    assert Settings(file).text("theme") == "system"


def test_a_bad_value_from_the_program_itself_is_refused(file: Path) -> None:
    with pytest.raises(ValueError, match="text_percent"):
        Settings(file).set("text_percent", 20)


def test_a_setting_that_is_not_in_the_table_is_a_fault(file: Path) -> None:
    with pytest.raises(UnknownSetting):
        Settings(file).get("colour_of_the_sky")


def test_a_change_is_told_once_and_an_equal_value_not(file: Path, qtbot: QtBot) -> None:
    settings = Settings(file)
    with qtbot.waitSignal(settings.changed) as told:
        settings.set("units", "us")
    assert told.args == ["units"]
    with qtbot.assertNotEmitted(settings.changed):
        settings.set("units", "us")


def test_a_default_list_is_not_shared(file: Path) -> None:
    settings = Settings(file)
    settings.texts("hidden_lanes").append("light")
    settings.get("hidden_lanes").append("light")
    assert settings.texts("hidden_lanes") == ["drain-share", "drain-ec", "vpd", "cost", "energy"]


def test_the_newest_logbook_stands_first_and_once(file: Path, tmp_path: Path) -> None:
    settings = Settings(file)
    for number in [*range(RECENT_COUNT + 2), 3]:
        settings.remember_logbook(tmp_path / str(number))
    recent = settings.texts("recent_logbooks")
    assert recent[0] == str(tmp_path / "3")
    assert recent.count(str(tmp_path / "3")) == 1
    assert len(recent) == RECENT_COUNT
    assert settings.text("last_logbook") == str(tmp_path / "3")


def test_a_forgotten_logbook_is_neither_recent_nor_last(file: Path, tmp_path: Path) -> None:
    settings = Settings(file)
    settings.remember_logbook(tmp_path)
    settings.forget_logbook(tmp_path)
    assert settings.texts("recent_logbooks") == []
    assert settings.text("last_logbook") == ""


def test_the_usual_file_lies_in_the_folder_of_the_test(own_folders: Path) -> None:
    assert own_folders in default_file().parents


def test_a_logbook_is_remembered_where_it_is_not_where_it_was_named_from(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    settings = Settings(file)
    monkeypatch.chdir(tmp_path)
    settings.remember_logbook(Path("room"))
    settings.remember_logbook(tmp_path / "room")
    assert settings.texts("recent_logbooks") == [str(tmp_path / "room")]
