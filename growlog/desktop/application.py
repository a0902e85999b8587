"""Starts the window for a person, or takes a picture of one of its screens without one."""

import json
import os
import sys
from pathlib import Path

from PySide6.QtCore import QLocale, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from growlog.desktop.look.theme import apply_theme
from growlog.desktop.main_window import MainWindow
from growlog.desktop.mistakes import Mistakes
from growlog.desktop.opening import Opening
from growlog.desktop.settings import Settings
from growlog.services.open_logbook import Clock
from growlog.services.requests import Folders, PictureRequest
from growlog.words import locale_name


def run_window(folder: Path | None, clock: Clock, folders: Folders, read_only: bool = False) -> int:
    """Opens the window on a logbook, the last one if none is named, or the welcome; returns Qt's exit code."""
    app = _application()
    settings = Settings(parent=app)
    dresser = _Dresser(app, settings)
    dresser.dress()
    window = MainWindow(settings)
    mistakes = Mistakes(window)
    opening = Opening(window, settings, clock, folders)
    opening.start(folder, read_only=read_only)
    if settings.flag("window_maximised"):
        window.showMaximized()
    else:
        window.show()
    code = app.exec()
    mistakes.stop()
    return code


def take_picture(request: PictureRequest, clock: Clock, folders: Folders) -> int:
    """Renders a screen of the real program into a PNG file; 0, or 2 with a sentence for an unknown screen."""
    os.environ["QT_QPA_PLATFORM"] = _screen_without_display(request, folders.cache)
    from growlog.desktop.screens import render

    qInstallMessageHandler(_say_what_matters)
    app = _application()
    apply_theme(app, request.theme, request.text_percent)
    return render(request, clock, folders)


def screens() -> tuple[str, ...]:
    """The names of the screens that a picture can be taken of."""
    from growlog.desktop.screens import SCREENS

    return tuple(SCREENS)


def _screen_without_display(request: PictureRequest, cache: Path) -> str:
    """The platform that needs no display, with a screen as large as the picture."""
    screen = {"name": "picture", "x": 0, "y": 0, "width": request.width_px, "height": request.height_px}
    more = {"logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}
    cache.mkdir(parents=True, exist_ok=True)
    file = cache / "picture-screen.json"
    file.write_text(json.dumps({"synchronousWindowSystemEvents": False, "screens": [screen | more]}), encoding="utf-8")
    return f"offscreen:configfile={file}"


def _say_what_matters(_kind: object, _context: object, message: str) -> None:
    """Drops what only the platform without a display has to say."""
    if "plugin does not support" not in message:
        sys.stderr.write(message + "\n")


class _Dresser:
    """Dresses the application as the settings say, at once when they change."""

    def __init__(self, app: QApplication, settings: Settings) -> None:
        self._app = app
        self._settings = settings
        settings.changed.connect(self._changed)

    def dress(self) -> None:
        """Theme and text size from the settings."""
        apply_theme(self._app, self._settings.text("theme"), self._settings.number("text_percent"))

    def _changed(self, key: str) -> None:
        if key in ("theme", "text_percent"):
            self.dress()


def _application() -> QApplication:
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)
    QLocale.setDefault(QLocale(locale_name()))
    app.setApplicationName("Growing-room Logbook")
    app.setDesktopFileName("growing-room-logbook")
    return app
