"""Waits until nothing runs in the background, so that a picture shows what a person would see in the end."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEventLoop, QTimer

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow

_IDLE_MS = 30
_AT_MOST_MS = 30_000


def wait_until_idle(window: "MainWindow") -> None:
    """Half a minute at most; then the picture is taken as it stands."""
    loop, waited = QEventLoop(), _Waited(window)
    timer = QTimer()
    timer.setInterval(_IDLE_MS)
    waited.loop = loop
    timer.timeout.connect(waited.look)
    timer.start()
    loop.exec()
    timer.stop()


class _Waited:
    """Ends the loop once nothing runs in the background, twice in a row."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._quiet = 0
        self._looks = 0
        self.loop: QEventLoop | None = None

    def look(self) -> None:
        """One look; called by the timer."""
        self._looks += 1
        self._quiet = 0 if self._window.runner.is_busy else self._quiet + 1
        if self.loop is not None and (self._quiet >= 3 or self._looks * _IDLE_MS > _AT_MOST_MS):
            self.loop.quit()
