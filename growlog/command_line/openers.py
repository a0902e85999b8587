"""What the commands are handed: the window, pictures of it, and where the program's folders are."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from growlog.services.logbooks import clock_as_of
from growlog.services.open_logbook import Clock
from growlog.services.requests import PictureRequest


@dataclass(frozen=True)
class Openers:
    """Each is called only where a command needs it, so that the others need no window and no folders.

    open_window: the logbook's folder (None: the last one, or a welcome), the day that counts as today, whether to
    read only; returns the exit code. picture: draws a screen, returns the exit code. screens: their names.
    """

    open_window: Callable[[Path | None, date | None, bool], int]
    picture: Callable[[PictureRequest, date | None], int]
    screens: Callable[[], tuple[str, ...]]
    sample_folder: Callable[[], Path]
    cache_folder: Callable[[], Path]
    data_folder: Callable[[], Path]


@dataclass
class Call:
    """One call of the program: what it was handed, and the day that counts as today (None: today)."""

    openers: Openers
    as_of: date | None = None

    def clock(self) -> Clock:
        """The clock of this call."""
        return clock_as_of(self.as_of)
