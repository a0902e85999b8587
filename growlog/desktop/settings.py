"""The settings of a person on a computer: one typed table, kept in a readable file. Nothing else reads that file."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import platformdirs
from PySide6.QtCore import QObject, QSettings, Signal

FOLDER = "growing-room-logbook"
RECENT_COUNT = 8


@dataclass(frozen=True)
class Setting:
    """One row of the table: its default, and a check that a stored value must pass."""

    key: str
    default: Any
    is_good: Callable[[Any], bool]


def _one_of(*words: str) -> Callable[[Any], bool]:
    allowed = frozenset(words)

    def check(value: Any) -> bool:
        return isinstance(value, str) and value in allowed

    return check


def _is_text(value: Any) -> bool:
    return isinstance(value, str)


def _is_texts(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(item, str) for item in value)


def _is_flag(value: Any) -> bool:
    return isinstance(value, bool)


def _is_percent(value: Any) -> bool:
    return type(value) is int and 1 <= value <= 100


def _is_text_percent(value: Any) -> bool:
    return type(value) is int and 100 <= value <= 200


def _is_sizes(value: Any) -> bool:
    return isinstance(value, list) and all(type(item) is int and item >= 0 for item in value)


def _is_geometry(value: Any) -> bool:
    """Left, top, width, height in pixels, or nothing yet."""
    return value == [] or (isinstance(value, list) and len(value) == 4 and all(type(item) is int for item in value))


TABLE = {
    row.key: row
    for row in (
        Setting("theme", "system", _one_of("light", "dark", "system")),
        Setting("text_percent", 100, _is_text_percent),
        Setting("humid_above_percent", 80, _is_percent),
        Setting("units", "metric", _one_of("metric", "us")),
        Setting("language", "", _is_text),
        Setting("last_logbook", "", _is_text),
        Setting("recent_logbooks", [], _is_texts),
        Setting("last_folder", "", _is_text),
        Setting("window_geometry", [], _is_geometry),
        Setting("window_maximised", False, _is_flag),
        Setting("splitter_sizes", [], _is_sizes),
        Setting("lane_order", [], _is_texts),
        Setting("hidden_lanes", ["drain-share", "drain-ec", "vpd", "cost", "energy"], _is_texts),
        Setting("paper", "a4", _one_of("a4", "letter")),
        Setting("axis_mode", "age", _one_of("age", "calendar")),
        Setting("show_to_come", True, _is_flag),
    )
}


class UnknownSetting(KeyError):
    """A key that is not in the table: a fault of the program."""


class Settings(QObject):
    """Reads and writes the table. A stored value that does not pass its check counts as not stored."""

    changed = Signal(str)

    def __init__(self, file: Path | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._file = file or default_file()
        self._file.parent.mkdir(parents=True, exist_ok=True)
        self._store = QSettings(str(self._file), QSettings.Format.IniFormat)

    @property
    def file(self) -> Path:
        """Where the settings are kept."""
        return self._file

    def get(self, key: str) -> Any:
        """The stored value, or the default."""
        row = _row(key)
        value = _decoded(self._store.value(key))
        return value if value is not None and row.is_good(value) else _copy(row.default)

    def set(self, key: str, value: Any) -> None:
        """Stores a value; one that its check refuses is a fault of the caller."""
        row = _row(key)
        if not row.is_good(value):
            raise ValueError(f"{value!r} is not a value of the setting {key}")
        if value == self.get(key):
            return
        self._store.setValue(key, json.dumps(value, ensure_ascii=True))
        self._store.sync()
        self.changed.emit(key)

    def text(self, key: str) -> str:
        """A setting that is a word or a path."""
        return str(self.get(key))

    def number(self, key: str) -> int:
        """A setting that is a whole number."""
        return int(self.get(key))

    def flag(self, key: str) -> bool:
        """A setting that is yes or no."""
        return bool(self.get(key))

    def texts(self, key: str) -> list[str]:
        """A setting that is a list of words or paths."""
        return list(self.get(key))

    def numbers(self, key: str) -> list[int]:
        """A setting that is a list of whole numbers."""
        return list(self.get(key))

    def remember_logbook(self, folder: Path) -> None:
        """Puts a logbook first among the recent ones."""
        path = str(folder.absolute())  # the next start may be elsewhere
        others = [one for one in self.texts("recent_logbooks") if one != path]
        self.set("recent_logbooks", [path, *others][:RECENT_COUNT])
        self.set("last_logbook", path)

    def forget_logbook(self, folder: Path) -> None:
        """Takes a logbook off the recent ones, for example when it is gone."""
        path = str(folder.absolute())  # the next start may be elsewhere
        self.set("recent_logbooks", [one for one in self.texts("recent_logbooks") if one != path])
        if self.text("last_logbook") == path:
            self.set("last_logbook", "")


def default_file() -> Path:
    """The settings file in the folder that the system keeps for it."""
    return Path(platformdirs.user_config_dir(FOLDER, appauthor=False)) / "settings.ini"


def _row(key: str) -> Setting:
    if key not in TABLE:
        raise UnknownSetting(key)
    return TABLE[key]


def _decoded(stored: object) -> Any:
    if not isinstance(stored, str):
        return None
    try:
        return json.loads(stored)
    except ValueError:
        return None


def _copy(default: Any) -> Any:
    return list(default) if isinstance(default, list) else default
