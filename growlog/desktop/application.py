"""Starts the window for a person, or takes a picture of one of its screens without one."""

import os
import sys
from pathlib import Path

from PySide6.QtWidgets import QApplication

from growlog.desktop.look.theme import apply_theme
from growlog.desktop.main_window import MainWindow
from growlog.desktop.opening import Opening
from growlog.desktop.settings import Settings
from growlog.services.open_logbook import Clock
from growlog.services.requests import Folders, PictureRequest


def run_window(folder: Path | None, clock: Clock, folders: Folders, read_only: bool = False) -> int:
    """Opens the window on a logbook, the last one if none is named, or the welcome; returns Qt's exit code."""
    app = _application()
    settings = Settings(parent=app)
    dresser = _Dresser(app, settings)
    dresser.dress()
    window = MainWindow(settings)
    opening = Opening(window, settings, clock, folders)
    opening.start(folder, read_only=read_only)
    if settings.flag("window_maximised"):
        window.showMaximized()
    else:
        window.show()
    return app.exec()


def take_picture(request: PictureRequest, clock: Clock, folders: Folders) -> int:
    """Renders a screen of the real program into a PNG file; 0, or 2 with a sentence for an unknown screen."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from growlog.desktop.screens import render

    app = _application()
    apply_theme(app, request.theme, request.text_percent)
    return render(request, clock, folders)


def screens() -> tuple[str, ...]:
    """The names of the screens that a picture can be taken of."""
    from growlog.desktop.screens import SCREENS

    return tuple(SCREENS)


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
    app.setApplicationName("Growing-room Logbook")
    app.setDesktopFileName("growing-room-logbook")
    return app
