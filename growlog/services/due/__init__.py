"""What is due: read from routines, packets, treatments and plans; answered by entries, ticks, or a later day."""

from growlog.services.due.answering import leave_out, mark_done, put_off, tick
from growlog.services.due.drafts import drafted_entry
from growlog.services.due.due_list import board_ahead, due_items, due_marks
from growlog.services.due.item import DueHow, DueItem
from growlog.services.due.routine_source import rule_words
from growlog.services.due.routines import (
    ANSWERS,
    Offered,
    add_routines,
    change_routine,
    new_routine,
    remove_routine,
    routines_of,
    starting_routines,
)

__all__ = [
    "ANSWERS",
    "DueHow",
    "DueItem",
    "Offered",
    "add_routines",
    "board_ahead",
    "change_routine",
    "drafted_entry",
    "due_items",
    "due_marks",
    "leave_out",
    "mark_done",
    "new_routine",
    "put_off",
    "remove_routine",
    "routines_of",
    "rule_words",
    "starting_routines",
    "tick",
]
