"""Our own failures while the window is open: logged with their trace, and said in the window."""

import logging
import sys
from types import TracebackType

from growlog.desktop.main_window import MainWindow
from growlog.words import say

_log = logging.getLogger(__name__)


class Mistakes:
    """Takes over what no one caught; `stop()` gives it back."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._before = sys.excepthook
        sys.excepthook = self._caught

    def stop(self) -> None:
        """The interpreter's own way again."""
        sys.excepthook = self._before

    def _caught(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        _log.error("a mistake of the program", exc_info=(kind, error, trace))
        self._before(kind, error, trace)
        if issubclass(kind, Exception):
            sentence = say(
                "The program made a mistake and could not finish this. It is in the log; your entries are safe."
            )
            self._window.messages.problem(sentence, f"({kind.__name__})")
