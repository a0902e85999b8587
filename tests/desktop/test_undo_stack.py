"""The window's undo: written first, then remembered; what is refused stays where it is."""

import pytest

from growlog.desktop.undo import UndoStack
from growlog.records.change import Change


def change(name: str) -> Change:
    return Change(name, name, (name,))


def inverse(of: Change) -> Change:
    """As the service does: a change of its own with the same title."""
    return Change(f"{of.group_id}'", of.title, of.record_ids)


def test_undo_and_redo_walk_back_and_forth(qapp: object) -> None:
    stack = UndoStack(inverse)
    stack.push(change("a"))
    stack.push(change("b"))
    written: list[str] = []
    stack.written.connect(lambda c: written.append(c.group_id))
    stack.undo()
    stack.undo()
    assert (stack.undo_title, stack.redo_title) == ("", "a")
    stack.redo()
    assert (stack.undo_title, stack.redo_title) == ("a", "b")
    assert written == ["b'", "a'", "a''"]


def test_a_new_change_ends_what_could_be_redone(qapp: object) -> None:
    stack = UndoStack(inverse)
    stack.push(change("a"))
    stack.undo()
    stack.push(change("b"))
    assert (stack.undo_title, stack.redo_title) == ("b", "")


def test_a_refused_undo_stays_on_the_stack(qapp: object) -> None:
    def refuse(_: Change) -> Change:
        raise LookupError("moved")

    stack = UndoStack(refuse)
    stack.push(change("a"))
    with pytest.raises(LookupError):
        stack.undo()
    assert (stack.undo_title, stack.redo_title) == ("a", "")


def test_with_nothing_done_undo_does_nothing(qapp: object) -> None:
    stack = UndoStack(inverse)
    stack.undo()
    stack.redo()
    assert (stack.undo_title, stack.redo_title) == ("", "")
