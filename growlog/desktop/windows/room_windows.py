"""Opens the room, its light programme and the readings of its loggers, and writes what is changed there."""

from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QDialog, QWidget
from shiboken6 import isValid

from growlog.desktop.background import Lane, Task
from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.light_plan.light_plan_dialog import LightPlanDialog
from growlog.desktop.logger.logger_dialog import LoggerDialog
from growlog.desktop.logger.work import LoggerServices
from growlog.desktop.messages import Messages
from growlog.desktop.room.room_dialog import RoomDialog
from growlog.desktop.windows.placing import open_beside
from growlog.desktop.write_behind import WriteBehind
from growlog.records.change import Change
from growlog.records.light_plan import LightStep
from growlog.services.climate.carry_in import carry_in_logger, logger_files_of, remove_logger_file
from growlog.services.climate.logger_plan import answered, plan_logger_file
from growlog.services.climate.refused_rows import save_refused_rows
from growlog.services.light.plan_book import LightPlanBook, light_plan_book
from growlog.services.light.steps import remove_step, save_step
from growlog.services.room_changes import room_book, save_room
from growlog.words import say


class RoomWindows(QObject):
    """One dialog of each sort at a time; they follow what is written and what is undone."""

    def __init__(self, desk: Desk, window: QWidget, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._files = files
        self._messages = messages
        self._plan_room = ""
        self._reading: Task | None = None
        self._behind: WriteBehind | None = None
        self.room: RoomDialog | None = None
        self.light_plan: LightPlanDialog | None = None
        self.logger: LoggerDialog | None = None
        desk.written.connect(self._follow)

    def open_room(self) -> None:
        """Opens the rooms, that of the chosen crop first."""
        _close(self.room)
        book = room_book(self._desk.log)
        self.room = RoomDialog(book, self._own_room(), self._window)
        self.room.save_button.setEnabled(self._desk.log.writable)
        self.room.confirmed.connect(self._save_room)
        self.room.light_plan_wanted.connect(self.open_light_plan)
        self.room.logger_wanted.connect(self.open_logger)
        open_beside(self.room, self._window)

    def open_light_plan(self, room_id: str = "") -> None:
        """Opens the light programme of a room, that of the chosen crop if none is named."""
        _close(self.light_plan)
        self._plan_room = room_id or self._own_room()
        self.light_plan = dialog = LightPlanDialog(self._desk.log.writable, self._window)
        dialog.saved.connect(self._save_step)
        dialog.removed.connect(self._remove_step)
        dialog.room_wanted.connect(self._plan_of)
        dialog.lamps_wanted.connect(self.open_room)
        open_beside(dialog, self._window)
        self._read_plan()

    def open_logger(self, room_id: str = "", path: Path | None = None) -> None:
        """Opens what brings the readings of a logger in, with a file where one is named."""
        if not _is_open(self.logger):
            log = self._desk.log
            services = LoggerServices(
                partial(plan_logger_file, log), partial(answered, log), partial(carry_in_logger, log),
                save_refused_rows, partial(logger_files_of, log),
            )  # fmt: skip
            rooms = [view.room for view in room_book(log).rooms]
            self.logger = LoggerDialog(
                self._desk.runner, services, rooms, room_id or self._own_room(), self._files, log.writable, self._window
            )
            self.logger.carried_in.connect(self._carried_in)
            self.logger.remove_wanted.connect(self._remove_file)
            self.logger.room_wanted.connect(self.open_room)
        if self.logger is not None:
            open_beside(self.logger, self._window)
            if path is not None:
                self.logger.read(path)

    def put_away(self) -> None:
        """Before the logbook is closed."""
        if self.logger is not None and isValid(self.logger):
            self.logger.stop_and_wait()
        if self._behind is not None and isValid(self._behind):
            self._behind.wait(20)
        self._desk.slow_undo.wait(20)

    def _own_room(self) -> str:
        return room_book(self._desk.log).room_of(self._desk.selection.crop_id or "")

    def _save_room(self, changed: list[Any], removed: list[Any]) -> None:
        if self.room is None:
            return
        change = self._desk.write(save_room, changed, removed, on_problems=self.room.show_problems)
        if change is not None:
            self.room.accept()
            self._say_written(change)

    def _plan_of(self, room_id: str) -> None:
        self._plan_room = room_id
        self._read_plan()

    def _read_plan(self) -> None:
        if self._reading is not None and isValid(self._reading):
            self._reading.cancel()
        work = (light_plan_book, self._desk.log, self._plan_room)
        self._reading = self._desk.runner.run(*work, on_done=self._show_plan, lane=Lane.DATABASE)

    def _show_plan(self, book: LightPlanBook) -> None:
        if _is_open(self.light_plan) and self.light_plan is not None:
            self.light_plan.show_book(book)

    def _save_step(self, step: LightStep) -> None:
        self._write_step(save_step, step)

    def _remove_step(self, step: LightStep) -> None:
        self._write_step(remove_step, step)

    def _write_step(self, service: Any, step: LightStep) -> None:
        """Days of the climate follow the light, which takes seconds where loggers told much."""
        if self.light_plan is not None and self._behind is None:
            self.light_plan.set_waiting(True)
            shown = self.light_plan.show_problems
            self._behind = WriteBehind(self._desk, service, step, on_over=self._step_written, on_problems=shown)

    def _step_written(self, change: Change | None) -> None:
        self._behind = None
        if _is_open(self.light_plan) and self.light_plan is not None:
            self.light_plan.set_waiting(False)
            if change is not None:
                self.light_plan.close_form()
        if change is not None:
            self._say_written(change)

    def _carried_in(self, change: Change) -> None:
        self._desk.take(change)
        self._say_written(change)

    def _remove_file(self, file_id: str) -> None:
        if self._behind is None:
            self._behind = WriteBehind(self._desk, remove_logger_file, file_id, on_over=self._file_removed)

    def _file_removed(self, change: Change | None) -> None:
        self._behind = None
        if change is not None:
            self._say_written(change)

    def _follow(self, _change: object) -> None:
        if _is_open(self.light_plan):
            self._read_plan()
        if _is_open(self.logger) and self.logger is not None:
            self.logger.show_files()

    def _say_written(self, change: Change) -> None:
        self._messages.inform(say("Written: {what}.", what=change.title), say("Undo"), self._desk.undo)


def _is_open(dialog: QDialog | None) -> bool:
    return dialog is not None and isValid(dialog) and dialog.isVisible()


def _close(dialog: QDialog | None) -> None:
    if dialog is not None and isValid(dialog):
        dialog.close()
