"""Opens the room and writes what is changed there."""

from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.room.room_dialog import RoomDialog
from growlog.desktop.windows.placing import open_beside
from growlog.services.room_changes import room_book, save_room
from growlog.words import say


class RoomWindows(QObject):
    """The room, its light programme and the readings of its loggers; one of each at a time."""

    def __init__(self, desk: Desk, window: QWidget, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._files = files
        self._messages = messages
        self.room: RoomDialog | None = None

    def open_room(self) -> None:
        """Opens the rooms."""
        _close(self.room)
        book = room_book(self._desk.log)
        self.room = RoomDialog(book, book.room_of(self._desk.selection.crop_id), self._window)
        self.room.save_button.setEnabled(self._desk.log.writable)
        self.room.confirmed.connect(self._save_room)
        open_beside(self.room, self._window)

    def _save_room(self, changed: list[Any], removed: list[Any]) -> None:
        if self.room is None:
            return
        change = self._desk.write(save_room, changed, removed, on_problems=self.room.show_problems)
        if change is not None:
            self.room.accept()
            self._messages.inform(say("Saved: {what}.", what=change.title), say("Undo"), self._desk.undo)


def _close(dialog: QWidget | None) -> None:
    if dialog is not None and isValid(dialog):
        dialog.close()
