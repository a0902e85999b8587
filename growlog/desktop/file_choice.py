"""The one door for choosing files and folders; tests hand in a fake instead."""

from collections.abc import Sequence
from pathlib import Path
from typing import Protocol

from PySide6.QtWidgets import QFileDialog, QWidget

from growlog.desktop.settings import Settings


class FileChoice(Protocol):
    """Asks the person for a place. None, or an empty list, means that nothing was chosen.

    filters: lines such as "Pictures (*.jpg *.png)".
    """

    def folder(self, title: str) -> Path | None:
        """A folder that exists, or one that the person makes in the dialog."""

    def file_to_open(self, title: str, filters: Sequence[str] = ()) -> Path | None:
        """One file that exists."""

    def files_to_open(self, title: str, filters: Sequence[str] = ()) -> list[Path]:
        """Any number of files that exist."""

    def file_to_save(self, title: str, suggested: str, filters: Sequence[str] = ()) -> Path | None:
        """A file to write; the dialog asks before one that exists is taken."""


class NativeFileChoice:
    """The system's own dialogs, opened where the last one ended."""

    def __init__(self, window: QWidget, settings: Settings) -> None:
        self._window = window
        self._settings = settings

    def folder(self, title: str) -> Path | None:
        """A folder that exists, or one that the person makes in the dialog."""
        return self._one(QFileDialog.getExistingDirectory(self._window, title, self._start()))

    def file_to_open(self, title: str, filters: Sequence[str] = ()) -> Path | None:
        """One file that exists."""
        return self._one(QFileDialog.getOpenFileName(self._window, title, self._start(), ";;".join(filters))[0])

    def files_to_open(self, title: str, filters: Sequence[str] = ()) -> list[Path]:
        """Any number of files that exist."""
        names, _ = QFileDialog.getOpenFileNames(self._window, title, self._start(), ";;".join(filters))
        if names:
            self._one(names[0])
        return [Path(name) for name in names]

    def file_to_save(self, title: str, suggested: str, filters: Sequence[str] = ()) -> Path | None:
        """A file to write; the dialog asks before one that exists is taken."""
        start = str(Path(self._start()) / suggested)
        return self._one(QFileDialog.getSaveFileName(self._window, title, start, ";;".join(filters))[0])

    def _start(self) -> str:
        kept = self._settings.text("last_folder")
        return kept if kept and Path(kept).is_dir() else str(Path.home())

    def _one(self, name: str) -> Path | None:
        if not name:
            return None
        path = Path(name)
        self._settings.set("last_folder", str(path if path.is_dir() else path.parent))
        return path
