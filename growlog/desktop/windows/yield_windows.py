"""What the picks say, keep or clear, crops side by side, and the bands on the board: reads for them, off the thread."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.background import Task
from growlog.desktop.board.season_board import SeasonBoard
from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.keep_or_clear.keep_dialog import KeepDialog
from growlog.desktop.messages import Messages
from growlog.desktop.side_by_side.beside_dialog import BesideDialog
from growlog.desktop.windows.chart_saving import ChartSaving
from growlog.desktop.windows.placing import open_beside
from growlog.desktop.yield_view.curve_tools import load_curve_tools
from growlog.desktop.yield_view.outlook_reader import OutlookReader
from growlog.desktop.yield_view.yield_dialog import YieldDialog
from growlog.services.side_by_side.beside import CropBeside, crops_beside
from growlog.services.yield_view.keep import KeepAsk, KeepView, weigh_up
from growlog.services.yield_view.keep_grounds import KeepGrounds, keep_grounds_of
from growlog.services.yield_view.view import YieldView, yield_of
from growlog.words import say


class YieldWindows(QObject):
    """Opens the dialogs of the yield and follows the board."""

    def __init__(self, desk: Desk, window: QWidget, board: SeasonBoard, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._tasks: list[Task] = []
        self._grounds: KeepGrounds | None = None
        self.charts = ChartSaving(files, messages, self)
        self.outlook = OutlookReader(desk, self)
        self.outlook.told.connect(board.show_outlook)
        self.charts.follow(board.surface.chart.export_menu)
        self.dialog: YieldDialog | None = None
        self.keep_dialog: KeepDialog | None = None
        self.beside_dialog: BesideDialog | None = None

    def open(self) -> None:
        """What the picks of the chosen crop say."""
        board = self._desk.board
        if board is not None:
            self.dialog = YieldDialog(board.crop.name, self._desk.log.today(), self._window)
            self._run(yield_of, board.crop.id, on_done=self._show_view, on_failed=self._view_failed)
            open_beside(self.dialog, self._window)

    def open_keep(self) -> None:
        """Keep or clear of the chosen crop."""
        board = self._desk.board
        if board is not None:
            self._grounds = None
            self.keep_dialog = KeepDialog(board.crop, self._desk.log.today(), self._window)
            self.keep_dialog.asked.connect(self._weigh)
            self.charts.follow(self.keep_dialog.chart_menu)
            self._run(keep_grounds_of, board.crop.id, on_done=self._show_grounds,
                      on_failed=self._keep_failed)  # fmt: skip
            open_beside(self.keep_dialog, self._window)

    def open_beside(self) -> None:
        """The chosen crop beside another one that has picks, best of its own species, if there is one."""
        crops, chosen = self._desk.crops, self._desk.selection.crop_id
        species = next((c.cultivar.species for c in crops if c.crop.id == chosen), "")
        picked = [c for c in crops if c.crop.id != chosen and c.curve]
        others = [c.crop.id for c in sorted(picked, key=lambda c: c.cultivar.species != species)]
        first = [c for c in (chosen, *others[:1]) if c]
        choices = [(c.crop.id, c.crop.name) for c in crops]
        dialog = BesideDialog(choices, first, self._desk.pictures, self._window)
        self.beside_dialog = dialog
        dialog.crops_wanted.connect(self._read_crops)
        dialog.table_wanted.connect(self._save_table)
        self.charts.follow(dialog.chart_menu)
        dialog.show_waiting()
        self._read_crops(first)
        open_beside(dialog, self._window)

    def put_away(self) -> None:
        """Stops what is under way."""
        self.outlook.put_away()
        for task in self._tasks:
            task.cancel()
        self._tasks.clear()

    def _run(
        self, service: Callable[..., Any], *arguments: object, on_done: Callable[[Any], None],
        on_failed: Callable[[Exception], None],
    ) -> None:  # fmt: skip
        load_curve_tools()
        self._tasks.append(
            self._desk.runner.run(service, self._desk.log, *arguments, on_done=on_done, on_failed=on_failed)
        )

    def _show_view(self, view: YieldView) -> None:
        if self.dialog is not None:
            self.dialog.show_view(view)

    def _view_failed(self, _error: Exception) -> None:
        if self.dialog is not None:
            self.dialog.show_failure()

    def _show_grounds(self, grounds: KeepGrounds) -> None:
        if self.keep_dialog is not None:
            self._grounds = grounds
            self.keep_dialog.show_grounds(grounds)

    def _keep_failed(self, _error: Exception) -> None:
        if self.keep_dialog is not None:
            self.keep_dialog.show_failure()

    def _weigh(self, ask: KeepAsk) -> None:
        if self._grounds is not None:
            self._tasks.append(
                self._desk.runner.run(weigh_up, self._grounds, ask, on_done=self._show_keep,
                                      on_failed=self._keep_failed)
            )  # fmt: skip

    def _show_keep(self, view: KeepView) -> None:
        if self.keep_dialog is not None:
            self.keep_dialog.show_view(view)

    def _read_crops(self, crop_ids: list[str]) -> None:
        dialog = self.beside_dialog
        if dialog is not None:
            self._run(crops_beside, list(crop_ids), on_done=self._show_crops, on_failed=self._beside_failed)

    def _show_crops(self, crops: list[CropBeside]) -> None:
        dialog = self.beside_dialog
        if dialog is not None and set(dialog.chosen()) >= {c.crop.id for c in crops}:
            dialog.show_crops(crops)

    def _beside_failed(self, _error: Exception) -> None:
        if self.beside_dialog is not None:
            self.beside_dialog.show_failure()

    def _save_table(self, text: str) -> None:
        self.charts.save_text(say("side-by-side") + ".csv", text)
