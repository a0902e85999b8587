"""Opens the intake tray, the photo in the whole window and the comparison of two days."""

from collections.abc import Iterable
from datetime import date
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from growlog.desktop.day_sheet.compare import CompareView
from growlog.desktop.day_sheet.full_photo import FullPhoto
from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.intake.intake_tray import IntakeTray
from growlog.desktop.messages import Messages
from growlog.desktop.windows.move_photo_dialog import MovePhotoDialog
from growlog.desktop.windows.placing import open_beside
from growlog.records.change import Change
from growlog.services.photo_intake import judge, look_at, take_in
from growlog.services.photo_uses import DayPhoto, let_lead, move_photo, remove_photo, small_picture
from growlog.words import say


class PhotoWindows(QObject):
    """Everything that shows or takes photos beside the day sheet."""

    def __init__(self, desk: Desk, window: QWidget, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._files = files
        self._messages = messages
        self.tray: IntakeTray | None = None
        self.full: FullPhoto | None = None
        self.comparison: CompareView | None = None
        self.mover: MovePhotoDialog | None = None

    def open_tray(self, paths: Iterable[Path] = ()) -> None:
        """Opens the intake tray, or adds to the open one."""
        if not self._desk.log.writable:
            return
        if self.tray is None or not self.tray.isVisible():
            self.tray = self._new_tray()
            open_beside(self.tray, self._window)
        dropped = list(paths)
        if dropped:
            self.tray.start(dropped)

    def open_tray_window(self) -> IntakeTray | None:
        """The intake tray if it stands open."""
        return self.tray if self.tray is not None and self.tray.isVisible() else None

    def let_lead(self, use_id: str) -> None:
        """Makes a photo the leading one of its day."""
        self._desk.write(let_lead, use_id)

    def move(self, use_id: str) -> None:
        """Asks for another day or crop for a photo."""
        sheet = self._desk.sheet
        if sheet is not None:
            self.mover = MovePhotoDialog(use_id, sheet.day, self._desk.crops, sheet.crop.id, parent=self._window)
            self.mover.moved.connect(self._write_moved)
            open_beside(self.mover, self._window)

    def remove(self, use_id: str) -> None:
        """Takes a photo off its day; one click brings it back."""
        if self._desk.write(remove_photo, use_id) is not None:
            sentence = say("The photo was taken off this day. The original stays in the logbook.")
            self._messages.inform(sentence, say("Undo"), self._desk.undo)

    def open_full(self, shown: DayPhoto | None = None) -> None:
        """Shows the day's photo in the whole window."""
        sheet = self._desk.sheet
        photo = shown or (sheet.photos[0] if sheet is not None and sheet.photos else None)
        if photo is None or sheet is None:
            return
        self.close_full()
        self.full = FullPhoto(self._desk.pictures, self._window)
        self.full.step.connect(self._step_full)
        self.full.closed.connect(self.close_full)
        self.full.show_photo(photo, sheet.age)

    def close_full(self) -> None:
        """Back to the board."""
        if self.full is not None:
            self.full.hide()
            self.full.deleteLater()
            self.full = None

    def compare(self, other_age: int | None = None) -> None:
        """Lays two days side by side: the chosen one and another."""
        days, sheet = self._desk.days, self._desk.sheet
        if days is None or sheet is None or self._desk.board is None or not days.photo_ages:
            return
        ages = days.photo_ages
        right = min(ages, key=lambda a: abs(a - sheet.age))
        left = other_age if other_age is not None else min(ages, key=lambda a: abs(a - (right - 7)))
        self.comparison = CompareView(
            self._desk.pictures,
            self._photo_of,
            ages,
            self._desk.board.date_of,
            left,
            right,
            sheet.crop.name,
            self._window,
        )
        open_beside(self.comparison, self._window)

    def _write_moved(self, use_id: str, crop_id: str, day: date) -> None:
        if self._desk.write(move_photo, [use_id], crop_id=crop_id, day=day) is not None and self.mover is not None:
            self.mover.close()
            self.mover = None

    def _photo_of(self, age: int) -> DayPhoto | None:
        days, board = self._desk.days, self._desk.board
        if days is None or board is None:
            return None
        photos = days.sheet(board.date_of(age)).photos
        return photos[0] if photos else None

    def _step_full(self, by: int) -> None:
        days, sheet = self._desk.days, self._desk.sheet
        if days is None or sheet is None or self.full is None:
            return
        ahead = [a for a in days.photo_ages if (a > sheet.age if by > 0 else a < sheet.age)]
        if ahead:
            self._desk.choose_age(min(ahead) if by > 0 else max(ahead))
            now = self._desk.sheet
            if now is not None and now.photos:
                self.full.show_photo(now.photos[0], now.age)

    def _new_tray(self) -> IntakeTray:
        log = self._desk.log
        tray = IntakeTray(
            self._desk.runner,
            partial(look_at, log),
            partial(judge, log),
            partial(take_in, log),
            self._desk.crops,
            self._desk.selection.crop_id or None,
            partial(small_picture, log),
            self._files,
            log.today(),
            parent=self._window,
        )
        tray.taken_in.connect(self._taken)
        return tray

    def _taken(self, change: Change | None) -> None:
        if change is not None:
            self._desk.take(change)
            self._messages.inform(change.title, say("Undo"), self._desk.undo)
