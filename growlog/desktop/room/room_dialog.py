"""The room's dialog: each room on a page of its own; one save for all that was changed."""

from collections.abc import Iterable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QWidget

from growlog.desktop.look.widgets import Banner, Button, ChoiceField
from growlog.desktop.room.room_page import RoomPage
from growlog.desktop.tall_dialog import TallDialog
from growlog.records.problems import Problem
from growlog.services.room_changes import RoomBook
from growlog.words import say


class RoomDialog(TallDialog):
    """Saving emits `confirmed` with the records that are new or changed and those taken off, of all rooms together.

    It stays open until it is told to close, so that a refusal loses nothing.
    """

    confirmed = Signal(object, object)  # list[RoomRecord], list[Removable]
    light_plan_wanted = Signal(str)  # the id of the room
    logger_wanted = Signal(str)

    def __init__(self, book: RoomBook, room_id: str = "", parent: QWidget | None = None) -> None:
        """room_id: whose page is shown first."""
        super().__init__(say("Room"), "", parent, 720)
        self.setObjectName("roomDialog")
        self._book = book
        self.pages = [RoomPage(book, view) for view in book.rooms] or [RoomPage(book)]
        self.page = next((page for page in self.pages if page.room_id == room_id), self.pages[0])
        self.room_field = ChoiceField(say("Room"), [], name="room", beside=True)
        self.new_button = Button(say("Another room"), "", "plus", "anotherRoom")
        self.banner = Banner()
        self.light_button = self.add_button(say("Light programme…"), name="lightPlan", left=True)
        self.logger_button = self.add_button(say("Logger readings in…"), name="loggerReadings", left=True)
        self.leave_button = self.add_button(say("Leave as it was"), name="leave")
        self.save_button = self.add_button(f"{say('Save the room')}  Ctrl \u23ce", "primary", "save")
        self.save_button.setDefault(False)
        self._fill_body()
        self._connect()
        self._show_page(self.page)
        self.page.name_field.setFocus()

    def save(self) -> None:
        """Emits what is to be saved, closes where there is nothing, or goes to the first field that is refused."""
        self.banner.hide()
        for page in self.pages:
            if not page.check():
                self._show_page(page)
                page.check()
                return
        changed = [record for page in self.pages for record in page.changed_records()]
        removed = [record for page in self.pages for record in page.removed_records()]
        if changed or removed:
            self.confirmed.emit(changed, removed)
        else:
            self.accept()

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Why nothing was written."""
        self.banner.show_message(" ".join(dict.fromkeys(p.sentence for p in problems)), "problem")
        self.banner.show()

    def add_room(self) -> None:
        """A page for another room."""
        page = RoomPage(self._book)
        self.pages.append(page)
        self.body.insertWidget(self.body.indexOf(self.pages[-2]) + 1, page)
        self._show_page(page)
        page.name_field.setFocus()
        page.name_field.value_changed.connect(self._name_changed)

    def _fill_body(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.room_field)
        row.addWidget(self.new_button, 0, Qt.AlignmentFlag.AlignBottom)
        row.addStretch(1)
        self.banner.hide()
        self.body.addLayout(row)
        self.body.addWidget(self.banner)
        for page in self.pages:
            self.body.addWidget(page)
        self.body.addStretch(1)

    def _connect(self) -> None:
        self.room_field.value_changed.connect(self._room_chosen)
        self.new_button.clicked.connect(self.add_room)
        self.leave_button.clicked.connect(self.reject)
        self.save_button.clicked.connect(self.save)
        self.light_button.clicked.connect(self._want_light)
        self.logger_button.clicked.connect(self._want_logger)
        self.banner.closed.connect(self.banner.hide)
        for page in self.pages:
            page.name_field.value_changed.connect(self._name_changed)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.save)

    def _show_page(self, page: RoomPage) -> None:
        self.page = page
        for one in self.pages:
            one.setVisible(one is page)
        self._name_changed()

    def _name_changed(self) -> None:
        named = [(page.room_id, page.name_field.value() or say("new room")) for page in self.pages]
        self.room_field.set_choices(named, self.page.room_id)
        self.room_field.setVisible(len(self.pages) > 1)
        self.new_button.setVisible(len(self.pages) > 1 or not self.page.is_new)
        known = not self.page.is_new
        self.light_button.setEnabled(known)
        self.logger_button.setEnabled(known)
        self.set_title(say("Room") if not known and len(self.pages) == 1 else dict(named)[self.page.room_id])

    def _room_chosen(self) -> None:
        self._show_page(next(page for page in self.pages if page.room_id == self.room_field.value()))

    def _want_light(self) -> None:
        self.light_plan_wanted.emit(self.page.room_id)

    def _want_logger(self) -> None:
        self.logger_wanted.emit(self.page.room_id)
