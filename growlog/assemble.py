"""The one place where the parts are joined: folders, log file, catalogue of words, commands and window.

What takes time to import is imported where it is first needed: most commands need no window.
"""

import gettext
import locale
import logging
import os
from collections.abc import Sequence
from contextlib import suppress
from datetime import date
from functools import cache
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import TYPE_CHECKING

import platformdirs

from growlog import words

if TYPE_CHECKING:
    from growlog.command_line.openers import Openers
    from growlog.services.requests import Folders, PictureRequest

APPLICATION = "growing-room-logbook"
_LOG_BYTES, _OLD_LOGS = 1 << 20, 3


def start(argv: Sequence[str]) -> int:
    """Runs the program; the exit code. Our own mistakes are logged, and then end it loudly."""
    _keep_log()
    _install_words()
    # Only now: the commands' help is put into the user's language while they are imported.
    from growlog.command_line.main import run

    try:
        return run(argv, openers())
    except Exception:
        logging.getLogger(__name__).exception("the program ended by a mistake of its own")
        raise


@cache
def folders() -> "Folders":
    """Where this user's files and the program's own lie on this computer. Makes nothing."""
    from growlog.services.requests import Folders

    return Folders(
        cache=Path(platformdirs.user_cache_dir(APPLICATION, appauthor=False)),
        data=Path(platformdirs.user_data_dir(APPLICATION, appauthor=False)),
        sample=beside_the_program("sample_season"),
    )


def beside_the_program(name: str) -> Path:
    """A folder that comes with the program: packed inside the package, or in a checkout beside it."""
    package = Path(__file__).resolve().parent
    packed = package / name
    return packed if packed.is_dir() else package.parent / name


def openers() -> "Openers":
    """What the commands are handed."""
    from growlog.command_line.openers import Openers

    return Openers(
        open_window=_open_window,
        picture=_take_picture,
        screens=_screens,
        sample_folder=lambda: folders().sample,
        cache_folder=lambda: folders().cache,
        data_folder=lambda: folders().data,
    )


def _open_window(folder: Path | None, as_of: date | None, read_only: bool) -> int:
    from growlog.desktop.application import run_window
    from growlog.services.logbooks import clock_as_of

    return run_window(folder, clock_as_of(as_of), folders(), read_only)


def _take_picture(request: "PictureRequest", as_of: date | None) -> int:
    from growlog.desktop.application import take_picture
    from growlog.services.logbooks import clock_as_of

    return take_picture(request, clock_as_of(as_of), folders())


def _screens() -> tuple[str, ...]:
    from growlog.desktop.application import screens

    return screens()


def _keep_log() -> None:
    """A log file in the platform's folder for logs; a disk that takes none must not keep the program from starting."""
    with suppress(OSError):
        folder = Path(platformdirs.user_log_dir(APPLICATION, appauthor=False))
        folder.mkdir(parents=True, exist_ok=True)
        handler = RotatingFileHandler(
            folder / f"{APPLICATION}.log", maxBytes=_LOG_BYTES, backupCount=_OLD_LOGS, encoding="utf-8", delay=True
        )
        handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
        logging.getLogger().addHandler(handler)
        logging.getLogger().setLevel(logging.WARNING)


def _install_words() -> None:
    """The catalogue for the user's language, where there is one; English otherwise."""
    with suppress(locale.Error):
        locale.setlocale(locale.LC_ALL, "")
    # Numbers in files and in sentences keep their point; the screen's form is Babel's work.
    locale.setlocale(locale.LC_NUMERIC, "C")
    translations = beside_the_program("resources") / "translations"
    with suppress(OSError):  # a damaged catalogue is no reason not to start
        catalogue = gettext.translation("messages", translations, languages=_languages(), fallback=True)
        words.install(catalogue, _days_and_numbers())


def _days_and_numbers() -> str:
    """The locale of days and numbers, "" where the system states none."""
    stated = locale.setlocale(locale.LC_TIME)
    if stated.split(".")[0] in ("C", "POSIX"):
        return ""
    return locale.getlocale(locale.LC_TIME)[0] or ""


def _languages() -> list[str] | None:
    # gettext asks the environment, which Windows does not set; there the locale tells.
    if os.name != "nt":
        return None
    code = locale.getlocale()[0]
    return [code] if code else None
