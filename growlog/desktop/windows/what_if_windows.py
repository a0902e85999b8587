"""Opens the what-if of a crop and has its answers worked out in the background."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.background import Lane, Task
from growlog.desktop.desk import Desk
from growlog.desktop.review.what_if_dialog import WhatIfDialog
from growlog.desktop.windows.placing import open_beside
from growlog.services.open_logbook import LogbookProblem
from growlog.services.what_if import WhatIf, WhatIfAnswer, WhatIfStart, starting_point, what_if


class WhatIfWindows(QObject):
    """One what-if at a time; an answer that was overtaken by the next question is dropped."""

    def __init__(self, desk: Desk, window: QWidget) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._crop_id = ""
        self._asking: Task | None = None
        self.dialog: WhatIfDialog | None = None

    def open(self, crop_id: str = "") -> None:
        """Opens the what-if of a crop, of the chosen one if none is named."""
        self._crop_id = crop_id or self._desk.selection.crop_id or ""
        name = next((c.crop.name for c in self._desk.crops if c.crop.id == self._crop_id), "")
        if self._is_open and self.dialog is not None:
            self.dialog.close()
        self.dialog = WhatIfDialog(name, self._window)
        self.dialog.asked.connect(self._ask)
        open_beside(self.dialog, self._window)
        self._run(starting_point, self._desk.log, self._crop_id, done=self._show_start)

    @property
    def _is_open(self) -> bool:
        return self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible()

    def _ask(self, change: WhatIf) -> None:
        self._run(what_if, self._desk.log, self._crop_id, change, done=self._show_answer)

    def _run(self, *work: object, done: object) -> None:
        if self._asking is not None and isValid(self._asking):
            self._asking.cancel()
        run = self._desk.runner.run
        self._asking = run(*work, on_done=done, on_failed=self._failed, lane=Lane.DATABASE)  # type: ignore[arg-type]

    def _show_start(self, start: WhatIfStart) -> None:
        if self._is_open and self.dialog is not None:
            self.dialog.show_start(start)

    def _show_answer(self, answer: WhatIfAnswer) -> None:
        if self._is_open and self.dialog is not None:
            self.dialog.show_answer(answer)

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, LogbookProblem):
            raise error
        if self._is_open and self.dialog is not None:
            self.dialog.say_problem(str(error))
