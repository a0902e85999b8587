"""Does what is due today: writes at once, or opens the form, the intake or the clearing that does it."""

from datetime import date

from PySide6.QtCore import QObject

from growlog.desktop.crop_list.due_list import DueList
from growlog.desktop.desk import Desk
from growlog.desktop.messages import Messages
from growlog.desktop.windows.crop_windows import CropWindows
from growlog.desktop.windows.entry_windows import EntryWindows
from growlog.desktop.windows.photo_windows import PhotoWindows
from growlog.services.due import DueHow, DueItem, drafted_entry, leave_out, mark_done, put_off, tick
from growlog.words import say


class DueWindows(QObject):
    """The answers to what is due; each that is written can be taken back with one click."""

    def __init__(
        self, desk: Desk, entries: EntryWindows, photos: PhotoWindows, crops: CropWindows, messages: Messages
    ) -> None:
        super().__init__(desk)
        self._desk = desk
        self._entries = entries
        self._photos = photos
        self._crops = crops
        self._messages = messages

    def follow(self, shown: DueList) -> None:
        """Does what is asked for in the list."""
        shown.done.connect(self.done)
        shown.form_wanted.connect(self.write_in_full)
        shown.ticked.connect(self.tick)
        shown.put_off.connect(self.put_off)
        shown.left_out.connect(self.leave_out)

    def done(self, key: str) -> None:
        """Does it with as little as it needs."""
        item = self._find(key)
        if item is None:
            return
        if item.how is DueHow.FORM:
            self._open_form(item)
        elif item.how is DueHow.PHOTO:
            self._go_to(item)
            self._photos.open_tray()
        elif item.how is DueHow.CLEARING:
            self._crops.clear(item.crop_id or "")
        else:
            self._tell(self._desk.write(mark_done, item) is not None)

    def write_in_full(self, key: str) -> None:
        """Opens the form of its entry."""
        item = self._find(key)
        if item is not None:
            self._open_form(item)

    def tick(self, key: str) -> None:
        """Remembers that it was done, without an entry."""
        item = self._find(key)
        if item is not None:
            self._tell(self._desk.write(tick, item) is not None)

    def put_off(self, key: str, until: date) -> None:
        """Puts it off to a later day."""
        item = self._find(key)
        if item is not None:
            self._tell(self._desk.write(put_off, item, until) is not None)

    def leave_out(self, key: str, reason: str) -> None:
        """Leaves it out this time."""
        item = self._find(key)
        if item is not None:
            self._tell(self._desk.write(leave_out, item, reason) is not None)

    def _find(self, key: str) -> DueItem | None:
        return next((item for item in self._desk.due_today if item.key == key), None)

    def _go_to(self, item: DueItem) -> bool:
        """Puts its crop on the board, at today; what is the room's is written from any growing crop."""
        growing = [c.crop.id for c in self._desk.crops if c.crop.growing]
        chosen = self._desk.selection.crop_id
        crop_id = item.crop_id or (chosen if chosen in growing else next(iter(growing), ""))
        if not crop_id:
            return False
        self._desk.selection.choose_crop(crop_id)
        self._desk.selection.choose_day(self._desk.log.today())
        return True

    def _open_form(self, item: DueItem) -> None:
        if self._go_to(item):
            self._entries.open_draft(drafted_entry(self._desk.log, item, self._desk.selection.crop_id))

    def _tell(self, went_in: bool) -> None:
        title = self._desk.undo_stack.undo_title
        if went_in:
            self._messages.inform(f"{title}.", say("Undo"), self._desk.undo)
