"""What is due today, at the foot of the rail."""

from collections.abc import Callable, Sequence
from datetime import date, timedelta
from functools import partial

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLayout, QMenu, QScrollArea, QVBoxLayout, QWidget

from growlog.desktop.crop_list.due_answer import DueQuestion, LeaveOutQuestion, PutOffQuestion
from growlog.desktop.crop_list.due_row import DueRow
from growlog.desktop.locale_forms import day_in_form
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import Button, SectionTitle, TextLabel
from growlog.services.due import DueHow, DueItem
from growlog.words import mark, say

_PUT_OFF = ((1, mark("Put off to tomorrow")), (3, mark("Put off for 3 days")), (7, mark("Put off for a week")))


class DueList(QWidget):
    """Shows what is due and announces the answers; each is written elsewhere, and the list is shown anew."""

    done = Signal(str)
    form_wanted = Signal(str)  # its entry, in full
    ticked = Signal(str)  # done without an entry
    put_off = Signal(str, object)  # key, date
    left_out = Signal(str, str)  # key, reason
    routines_wanted = Signal()
    height_changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("dueList")
        self.rows: list[DueRow] = []
        self.menu: QMenu | None = None
        self.question: DueQuestion | None = None
        self._today: date | None = None
        self._writable = True
        self.title = SectionTitle(say("Due today"))
        self.routines_button = IconButton("settings", say("Routines"), token="mute")
        self.routines_button.setObjectName("routines")
        self.nothing_label = TextLabel(say("Nothing more today."), "small", "mute")
        self.set_up_button = Button(say("Set up routines…"), "link", name="setUpRoutines")
        self._content = QWidget()
        self._content.setObjectName("scrolled")
        self._column = QVBoxLayout(self._content)
        self._scroll = QScrollArea()
        self._place()
        self.routines_button.clicked.connect(self.routines_wanted)
        self.set_up_button.clicked.connect(self.routines_wanted)

    def show_due(self, items: Sequence[DueItem], today: date, has_routines: bool, writable: bool) -> None:
        """What is due on a day; the keys stay at the row at which they were, or at the one that took its place."""
        place = next((i for i, row in enumerate(self.rows) if row.hasFocus()), None)
        self._today, self._writable = today, writable
        self.title.setToolTip(day_in_form(today, "MMMMEEEEd"))
        self._close_question()
        for row in self.rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.rows = [self._row(item) for item in items]
        for row in self.rows:
            self._column.addWidget(row)
            row.show()  # now, so that the keys can go to it
        self.nothing_label.setVisible(not items and (has_routines or not writable))
        self.set_up_button.setVisible(not has_routines and writable)
        self._scroll.setVisible(bool(items))
        if place is not None and self.rows:
            self._focus(min(place, len(self.rows) - 1))
        self.height_changed.emit()

    def focus_first(self) -> None:
        """The keys go to the first thing that is due, or to the routines where nothing is."""
        if self.rows:
            self._focus(0)
        else:
            routines = self.routines_button if self.set_up_button.isHidden() else self.set_up_button
            routines.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def ask_first_reason(self) -> None:
        """Asks why the first thing is left out."""
        if self.rows:
            self._ask_reason(self.rows[0].item.key)

    def natural_height(self) -> int:
        """The height at which nothing has to be scrolled."""
        rows = sum(row.height() for row in self.rows)
        for below in (self.nothing_label, self.set_up_button):
            rows += 0 if below.isHidden() else below.sizeHint().height()
        asked = 0 if self.question is None else self.question.sizeHint().height() + 6
        return self._head.sizeHint().height() + rows + asked + 6

    def _place(self) -> None:
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.setSizeConstraint(QLayout.SizeConstraint.SetMinAndMaxSize)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.setWidget(self._content)
        self._head = QWidget()
        head = QHBoxLayout(self._head)
        head.setContentsMargins(8, 0, 0, 0)
        head.addWidget(self.title, 1)
        head.addWidget(self.routines_button)
        self.nothing_label.setContentsMargins(8, 0, 0, 0)
        self._whole = QVBoxLayout(self)
        self._whole.setContentsMargins(0, 0, 0, 0)
        self._whole.setSpacing(2)
        self._whole.addWidget(self._head)
        self._whole.addWidget(self._scroll, 1)
        self._whole.addWidget(self.nothing_label)
        self._whole.addWidget(self.set_up_button, 0, Qt.AlignmentFlag.AlignLeft)

    def _row(self, item: DueItem) -> DueRow:
        row = DueRow(item, self._writable)
        row.done.connect(self.done)
        row.menu_wanted.connect(self._open_menu)
        row.step_wanted.connect(self._step)
        row.height_changed.connect(self.height_changed)
        return row

    def _find(self, key: str) -> int:
        return next(i for i, row in enumerate(self.rows) if row.item.key == key)

    def _step(self, key: str, by: int) -> None:
        place = self._find(key) + by
        if 0 <= place < len(self.rows):
            self._focus(place)

    def _focus(self, place: int) -> None:
        self.rows[place].setFocus(Qt.FocusReason.OtherFocusReason)
        self._scroll.ensureWidgetVisible(self.rows[place], 0, 0)

    def _open_menu(self, key: str, place: QPoint) -> None:
        item = self.rows[self._find(key)].item
        self.menu = QMenu(self)
        self.menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        if item.how in (DueHow.WRITES, DueHow.FORM) and item.entry_kind != "note":
            self._add(say("Write it in full…"), "form", partial(self.form_wanted.emit, key))
        if item.how is not DueHow.TICK:
            self._add(say("Done, without an entry"), "tick", partial(self.ticked.emit, key))
        for days, words in _PUT_OFF:
            self._add(say(words), f"putOff.{days}", partial(self._put_off_by, key, days))
        self._add(say("Put off to a day…"), "putOff", partial(self._ask_day, key))
        self._add(say("Leave out…"), "leaveOut", partial(self._ask_reason, key))
        self.menu.addSeparator()
        self._add(say("Routines…"), "routines", self.routines_wanted.emit)
        self.menu.popup(place)

    def _add(self, words: str, name: str, slot: Callable[[], object]) -> None:
        if self.menu is not None:
            action = self.menu.addAction(words)
            action.setObjectName(name)
            action.triggered.connect(slot)

    def _put_off_by(self, key: str, days: int) -> None:
        if self._today is not None:
            self.put_off.emit(key, self._today + timedelta(days=days))

    def _ask_day(self, key: str) -> None:
        if self._today is not None:
            question = PutOffQuestion(self.rows[self._find(key)].item, self._today)
            question.answered.connect(self.put_off)
            self._ask(question)

    def _ask_reason(self, key: str) -> None:
        question = LeaveOutQuestion(self.rows[self._find(key)].item)
        question.answered.connect(self.left_out)
        self._ask(question)

    def _ask(self, question: DueQuestion) -> None:
        self._close_question()
        self.question = question
        question.left.connect(self._leave_question)
        self._whole.addWidget(question)
        self.height_changed.emit()
        question.begin()

    def _leave_question(self) -> None:
        key = "" if self.question is None else self.question.item.key
        self._close_question()
        self.height_changed.emit()
        if any(row.item.key == key for row in self.rows):
            self._focus(self._find(key))

    def _close_question(self) -> None:
        if self.question is not None:
            self._whole.removeWidget(self.question)
            self.question.hide()
            self.question.deleteLater()
            self.question = None
