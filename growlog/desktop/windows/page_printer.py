"""Prints pages that the services set: asks for the printer, sets them in the background, sends them."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from growlog.desktop.background import TaskRunner
from growlog.desktop.messages import Messages
from growlog.desktop.printing import Printing, PrintTarget
from growlog.services.open_logbook import LogbookProblem
from growlog.services.paper import Paper
from growlog.words import say, say_count

Pages = Callable[[Paper, int], list[bytes]]  # paper, dots per inch


class PagePrinter(QObject):
    """One print at a time."""

    def __init__(self, runner: TaskRunner, messages: Messages, printing: Printing, parent: QObject) -> None:
        super().__init__(parent)
        self._runner = runner
        self._messages = messages
        self._printing = printing
        self._pages: Pages | None = None
        self._target: PrintTarget | None = None

    def print_pages(self, title: str, paper: Paper, pages: Pages) -> None:
        """Asks for a printer, then sets the pages for its paper."""
        self._pages = pages
        self._printing.choose(title, paper, self._set)

    def _set(self, target: PrintTarget) -> None:
        if self._pages is None:
            return
        self._target = target
        self._messages.inform(say("Preparing the pages…"))
        work = (self._pages, target.paper, target.dots_per_inch)
        self._runner.run(*work, on_done=self._send, on_failed=self._failed)

    def _send(self, pages: list[bytes]) -> None:
        target, self._target = self._target, None
        if target is None:
            return
        if target.paint(pages):
            count = len(pages)
            sent = say_count("{n} page went to the printer.", "{n} pages went to the printer.", count)
            self._messages.inform(sent)
        else:
            self._messages.problem(say("The printer did not take the pages. Look whether it is on, then print again."))

    def _failed(self, error: Exception) -> None:
        self._target = None
        if isinstance(error, LogbookProblem):
            self._messages.problem(str(error))
        elif isinstance(error, OSError):
            reason = error.strerror or str(error)
            self._messages.problem(say("The pages could not be set: {reason}.", reason=reason))
        else:
            raise error
