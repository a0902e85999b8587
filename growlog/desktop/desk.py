"""What lies on the desk: the open logbook, the chosen crop as read, and the way every change goes in."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date, timedelta
from functools import partial

from PySide6.QtCore import QObject, Signal

from growlog.desktop.background import TaskRunner
from growlog.desktop.pictures import Pictures
from growlog.desktop.selection import Selection
from growlog.desktop.slow_undo import SlowUndo
from growlog.desktop.undo import UndoStack
from growlog.records.change import Change
from growlog.records.problems import Problem, RecordRefused
from growlog.services.board import Board, Curve, board_of, curve_of
from growlog.services.board_use import BoardUse
from growlog.services.crops import CropSummary, crops_of
from growlog.services.day_sheet import CropDays, DaySheet, crop_days_of
from growlog.services.due import DueItem, board_ahead, due_items, due_marks
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.photo_uses import sharp_picture, small_picture, small_picture_made
from growlog.services.undo import takes_long, undo
from growlog.words import say

DUE_AHEAD_DAYS = 14


class Desk(QObject):
    """Reads for the panels and writes for the dialogs; a refused change is announced, never lost in silence."""

    crops_changed = Signal(object)  # list[CropSummary]
    board_changed = Signal(object)  # Board | None
    sheet_changed = Signal(object)  # DaySheet | None
    due_changed = Signal(object)  # list[DueItem] of today
    written = Signal(object)  # Change
    refused = Signal(str)
    told = Signal(str)

    def __init__(self, log: OpenLogbook, runner: TaskRunner, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.log = log
        self.runner = runner
        self.selection = Selection(self)
        self.pictures = Pictures(
            runner, partial(small_picture, log), partial(sharp_picture, log), self, partial(small_picture_made, log)
        )
        self.undo_stack = UndoStack(partial(undo, log), self)
        self.slow_undo = SlowUndo(log, runner, self.undo_stack, self)
        self.crops: list[CropSummary] = []
        self.due: list[DueItem] = []  # of today and the days ahead
        self.board: Board | None = None
        self.days: CropDays | None = None
        self.selection.crop_changed.connect(self._read_crop)
        self.selection.day_changed.connect(self._show_day)
        self.undo_stack.written.connect(self._taken_back)
        self.slow_undo.refused.connect(self.refused)
        self.slow_undo.told.connect(self.told)

    @property
    def sheet(self) -> DaySheet | None:
        """The sheet of the chosen day."""
        day = self.selection.day
        return None if self.days is None or day is None else self.days.sheet(day)

    @property
    def due_today(self) -> list[DueItem]:
        """What is due today, late things first."""
        return [item for item in self.due if item.due_day == self.log.today()]

    def open_first(self) -> None:
        """Reads the crops and chooses the one that had something last, or none."""
        self._read_crops()
        if self.crops:
            self.selection.choose_crop(self.crops[0].crop.id)
        else:
            self._read_crop("")

    def choose_age(self, age: int) -> None:
        """Moves the day line to a plant age, kept within the crop's days."""
        if self.board is not None:
            self.selection.choose_day(self.board.date_of(max(0, min(age, self.board.last_age))))

    def step_day(self, by: int) -> None:
        """Moves the day line by days."""
        if self.board is not None and self.selection.day is not None:
            self.choose_age((self.selection.day - self.board.day_zero).days + by)

    def age_of(self, day: date) -> int:
        """The plant age of a day of the chosen crop."""
        return 0 if self.board is None else (day - self.board.day_zero).days

    def lay_use(self, use: BoardUse) -> None:
        """Puts a crop's use by day, read beside the board, onto it; passed over where another crop is on the board."""
        if self.board is not None and self.board.crop.id == use.crop_id:
            self.board = replace(self.board, use=use)
            self.board_changed.emit(self.board)

    def other_curve(self, crop_id: str) -> Curve | None:
        """The curve of another crop, None for none."""
        return curve_of(self.log, crop_id) if crop_id else None

    def write(
        self,
        service: Callable[..., Change],
        *arguments: object,
        on_problems: Callable[[Iterable[Problem]], None] | None = None,
        **named: object,
    ) -> Change | None:
        """Runs a service that changes the logbook; None if it was refused.

        A refusal goes to on_problems, to be shown beside its field, or is announced where there is none.
        """
        try:
            change = service(self.log, *arguments, **named)
        except RecordRefused as refusal:
            if on_problems is not None:
                on_problems(refusal.problems)
            else:
                self.refused.emit(str(refusal))
            return None
        except LogbookProblem as problem:
            self.refused.emit(str(problem))
            return None
        self.take(change)
        return change

    def take(self, change: Change) -> None:
        """A change that was written elsewhere (photos, in the background): remember and show it."""
        self.undo_stack.push(change)
        self.refresh()
        self.written.emit(change)

    def undo(self) -> None:
        """Takes the last change back, or says why that cannot be."""
        self._turn(say("Undo"), self.undo_stack.next_undo, self.undo_stack.undo)

    def redo(self) -> None:
        """Does the last undone change again, or says why that cannot be."""
        self._turn(say("Redo"), self.undo_stack.next_redo, self.undo_stack.redo)

    def refresh(self) -> None:
        """Reads again what is on the desk; the chosen crop and day stay where that can be."""
        self._read_crops()
        kept = {c.crop.id for c in self.crops}
        if self.selection.crop_id in kept:
            self._read_crop(self.selection.crop_id)
        elif self.crops:
            self.selection.choose_crop(self.crops[0].crop.id)
        else:
            self.selection.choose_crop("")

    def _turn(self, word: str, change: Change | None, act: Callable[[], None]) -> None:
        if self.slow_undo.is_under_way:
            self.slow_undo.say_under_way()
        elif change is not None and takes_long(self.log, change):
            self.slow_undo.start(change, f"{word}: {change.title}")
        else:
            self._try(act)

    def _try(self, act: Callable[[], None]) -> None:
        try:
            act()
        except (RecordRefused, LogbookProblem) as problem:
            self.refused.emit(str(problem))

    def _taken_back(self, change: Change) -> None:
        self.refresh()
        self.written.emit(change)

    def _read_crops(self) -> None:
        self.crops = crops_of(self.log)
        today = self.log.today()
        self.due = due_items(self.log, today, today + timedelta(days=DUE_AHEAD_DAYS))
        self.crops_changed.emit(self.crops)
        self.due_changed.emit(self.due_today)

    def _read_crop(self, crop_id: str) -> None:
        if not crop_id:
            self.board = self.days = None
            self.board_changed.emit(None)
            self.sheet_changed.emit(None)
            return
        self.board = self._with_due(board_of(self.log, crop_id))
        self.days = crop_days_of(self.log, crop_id)
        self.board_changed.emit(self.board)
        day = self.selection.day
        if day is None or not 0 <= self.age_of(day) <= self.board.last_age:
            self.choose_age(self.board.last_age)
        else:
            self._show_day(day)

    def _with_due(self, board: Board) -> Board:
        if not board.crop.growing:
            return board
        today = self.log.today()
        marks = due_marks(self.due, board.crop.id, board.day_zero, board_ahead(today, board.last_age))
        return replace(board, due=marks)

    def _show_day(self, _day: date) -> None:
        self.sheet_changed.emit(self.sheet)
