"""Pictures of the real program's screens, drawn without a display: for the guide, and for anyone who looks."""

import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QPainter, QPen, QPixmap
from PySide6.QtWidgets import QDialog, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.main_window import MainWindow
from growlog.desktop.mixer.pictured import MIXER_SCREENS
from growlog.desktop.pictured.entering import ENTERING_SCREENS
from growlog.desktop.pictured.everyday import EVERYDAY_SCREENS
from growlog.desktop.pictured.reviews import REVIEWS_SCREENS
from growlog.desktop.pictured.rooms import ROOMS_SCREENS
from growlog.desktop.pictured.waiting import wait_until_idle
from growlog.desktop.pictured.yields import YIELDS_SCREENS
from growlog.desktop.settings import Settings
from growlog.desktop.tally.pictured import empty_tally, full_tally, tally_with_question
from growlog.services.logbooks import open_log
from growlog.services.open_logbook import Clock, LogbookProblem, OpenLogbook
from growlog.services.requests import Folders, PictureRequest
from growlog.words import say

SCREENS: dict[str, Callable[[MainWindow], None]] = {
    **EVERYDAY_SCREENS,
    **ENTERING_SCREENS,
    **YIELDS_SCREENS,
    **ROOMS_SCREENS,
    **REVIEWS_SCREENS,
    **MIXER_SCREENS,
    "tally": empty_tally,
    "tally-full": full_tally,
    "tally-question": tally_with_question,
}


def render(request: PictureRequest, clock: Clock, folders: Folders) -> int:
    """Draws the screen and writes the PNG; 0 when done, 2 for an unknown screen or crop, 1 if it cannot be."""
    if request.screen not in SCREENS:
        return _refuse(
            say("There is no screen {name}. There are: {names}.", name=request.screen, names=", ".join(SCREENS))
        )
    with tempfile.TemporaryDirectory() as own:
        return _render(request, clock, folders, MainWindow(Settings(Path(own) / "settings.ini")))


def _render(request: PictureRequest, clock: Clock, folders: Folders, window: MainWindow) -> int:
    window.resize(request.width_px, request.height_px)
    try:
        if request.screen != "welcome":
            log = open_log(request.folder, clock, folders.cache, read_only=True)
            window.show_logbook(_as_writable(log))
            window.strip.clear()
        window.show()
        if not _choose(window, request):
            return _refuse(say("There is no crop {name} in this logbook.", name=request.crop))
        wait_until_idle(window)
        SCREENS[request.screen](window)
        wait_until_idle(window)
        saved = _drawn(window).save(str(request.to), "PNG")
    except LogbookProblem as problem:
        return _refuse(str(problem), 1)
    finally:
        _close(window)
    return 0 if saved else _refuse(say("{file} could not be written.", file=request.to), 1)


def _choose(window: MainWindow, request: PictureRequest) -> bool:
    desk = window.desk
    if desk is None:
        return True
    if request.crop is not None:
        named = [c.crop.id for c in desk.crops if c.crop.name.casefold() == request.crop.casefold()]
        if not named:
            return False
        desk.selection.choose_crop(named[0])
    if request.day is not None:
        desk.choose_age(request.day)
    return True


def _as_writable(log: OpenLogbook) -> OpenLogbook:
    """A picture shows the screen as the grower has it; what is opened for reading still refuses every write."""
    log.shown_writable = True
    return log


def _drawn(window: MainWindow) -> QPixmap:
    """The window with its open dialogs where they stand, each with a hairline round it."""
    picture = window.grab()
    painter = QPainter(picture)
    for dialog in window.findChildren(QDialog):
        if dialog.isVisible():
            _draw_dialog(painter, window, dialog)
    painter.end()
    return picture


def _draw_dialog(painter: QPainter, window: QWidget, dialog: QDialog) -> None:
    at = dialog.pos() - window.pos()
    at = QPoint(
        max(8, min(at.x(), window.width() - dialog.width() - 8)),
        max(8, min(at.y(), window.height() - dialog.height() - 8)),
    )
    painter.drawPixmap(at, dialog.grab())
    painter.setPen(QPen(current().colour("mute")))
    painter.drawRect(QRect(at, dialog.size()).adjusted(-1, -1, 0, 0))


def _close(window: MainWindow) -> None:
    for dialog in window.findChildren(QDialog):
        dialog.close()
    window.close()


def _refuse(sentence: str, code: int = 2) -> int:
    sys.stderr.write(sentence + "\n")
    return code
