"""Works out what is still to come of the chosen crop, off the window's thread, once for each state of it."""

from PySide6.QtCore import QObject, QTimer, Signal

from growlog.desktop.background import Task
from growlog.desktop.desk import Desk
from growlog.desktop.yield_view.curve_tools import load_curve_tools
from growlog.services.board import Board
from growlog.services.yield_view.outlook import Outlook, outlook_of

_SHORTLY_MS = 20  # the board shows first, and a quick walk through the crops works out the last one only


class OutlookReader(QObject):
    """Follows the desk. told gives the outlook of the crop on the board, at once where it is known already."""

    told = Signal(object)  # Outlook

    def __init__(self, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._board: Board | None = None
        self._known: dict[str, tuple[Board, Outlook]] = {}
        self._task: Task | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_SHORTLY_MS)
        self._timer.timeout.connect(self._start)
        desk.board_changed.connect(self._board_changed)
        desk.written.connect(self._written)

    def put_away(self) -> None:
        """Stops what is under way."""
        self._timer.stop()
        self._stop()

    def _board_changed(self, board: Board | None) -> None:
        self.put_away()
        self._board = board
        if board is None or not board.crop.growing or not board.curve.points:
            return
        known = self._known.get(board.crop.id)
        if known is not None and known[0] == board:
            self.told.emit(known[1])
        else:
            self._timer.start()

    def _written(self, _change: object) -> None:
        """A change of plants or of another crop may matter too."""
        self._known.clear()
        self._board_changed(self._board)

    def _start(self) -> None:
        board = self._board
        if board is None:
            return
        load_curve_tools()
        self._task = self._desk.runner.run(
            outlook_of, self._desk.log, board.crop.id, on_done=self._worked_out, on_failed=self._failed
        )

    def _stop(self) -> None:
        if self._task is not None:
            self._task.cancel()
            self._task = None

    def _worked_out(self, outlook: Outlook) -> None:
        self._task = None
        if self._board is not None and self._board.crop.id == outlook.crop_id:
            self._known[outlook.crop_id] = (self._board, outlook)
            self.told.emit(outlook)

    def _failed(self, _error: Exception) -> None:
        """Was logged; the board stays as it is, without bands."""
        self._task = None
