"""The commands run in this process, with a window that only remembers what it was asked."""

from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

import pytest

from growlog.command_line.main import run
from growlog.command_line.openers import Openers
from growlog.services.requests import PictureRequest

PHOTOS = Path(__file__).parents[1] / "data" / "photos" / "daily-rosettes"


@dataclass
class Terminal:
    """Runs commands below a folder and keeps what they printed."""

    folder: Path
    capture: pytest.CaptureFixture[str]
    windows: list[tuple[Path | None, date | None, bool]] = field(default_factory=list)
    pictures: list[tuple[PictureRequest, date | None]] = field(default_factory=list)
    out: str = ""
    err: str = ""

    def __call__(self, *arguments: object) -> int:
        """The exit code of a command."""
        code = run([str(a) for a in arguments], self._openers())
        self.out, self.err = self.capture.readouterr()
        assert "Traceback" not in self.err
        return code

    def _openers(self) -> Openers:
        return Openers(
            open_window=self._open_window,
            picture=self._picture,
            screens=lambda: ("season-board", "welcome"),
            sample_folder=lambda: self.folder / "sample_package",
            cache_folder=lambda: self.folder / "cache",
            data_folder=lambda: self.folder / "data",
        )

    def _open_window(self, folder: Path | None, as_of: date | None, read_only: bool) -> int:
        self.windows.append((folder, as_of, read_only))
        return 0

    def _picture(self, request: PictureRequest, as_of: date | None) -> int:
        self.pictures.append((request, as_of))
        return 0
