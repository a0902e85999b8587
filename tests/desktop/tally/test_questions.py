"""What is asked before a tally is written: per crop and field, answered once."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt

from growlog.records.problems import Problem
from growlog.services.tally import TallyProblem
from tests.desktop.tally.conftest import Clock, Hands, three_crops

pytestmark = pytest.mark.slow

CLOSED = "The label of Leaf wash asks for no pick before 21 January 2026."


def test_an_evening_pollination_is_asked_about_at_once_and_y_answers(hands: Callable[..., Hands], clock: Clock) -> None:
    clock.moment += timedelta(hours=11)
    someone = hands()
    someone.type("pp")
    assert "Pollinated at 19:05: the flowers of pattypan open for one morning" in someone.questions[0]
    someone.write()
    assert someone.written == []
    assert "answer the question above first" in someone.said
    someone.type("y")
    assert someone.questions == []
    someone.type("p")
    assert someone.questions == []  # the same question is not asked again
    someone.write()
    assert len(someone.written) == 1


def test_a_pick_within_a_harvest_interval_is_warned_of_as_soon_as_it_is_tallied(hands: Callable[..., Hands]) -> None:
    rows = three_crops()
    rows[0] = replace(rows[0], harvest_closed=CLOSED)
    someone = hands(crops=rows)
    assert someone.questions == []
    someone.type("93\n78\n")
    assert someone.questions == [CLOSED]
    someone.click("yes")
    assert someone.questions == []
    someone.write()
    assert len(someone.written) == 1


def test_an_open_question_of_another_crop_brings_that_crop_up(hands: Callable[..., Hands]) -> None:
    rows = three_crops()
    rows[0] = replace(rows[0], harvest_closed=CLOSED)
    someone = hands(crops=rows)
    someone.type("93\n")
    someone.key(Qt.Key.Key_F3)
    someone.type("12\n")
    assert someone.questions == []
    assert someone.dialog.rail.rows[0].about_label.text() == "a question is open"
    someone.write()
    assert (someone.tally.chosen, someone.written) == ("gold", [])
    someone.type("y")
    someone.write()
    assert len(someone.written) == 1


def test_a_heavy_fruit_is_taken_and_asked_about(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("6000\n")
    assert someone.tally.of("gold").fruit == (6000.0,)
    assert "6000\u2009g is unusual. Is it right?" in someone.questions[0]
    someone.type("7000\n")
    assert len(someone.questions) == 1
    someone.type("y")
    someone.write()
    assert len(someone.written) == 1


def test_y_without_a_question_is_refused(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("y")
    assert "none is open" in someone.said


def test_what_the_logbook_refuses_stands_at_its_crop_and_nothing_is_lost(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n")
    someone.key(Qt.Key.Key_F3)
    someone.type("12\n")
    refusal = TallyProblem("day", "Boxroom Gold was cleared on 17 January 2026.", False, "gold")
    someone.dialog.show_problems([refusal])
    assert someone.tally.chosen == "gold"
    assert someone.questions == [refusal.sentence]
    assert [c.crop_id for c in someone.tally.crops] == ["gold", "light"]
    someone.dialog.refuse("Nothing was written.")
    assert someone.dialog.note_label.text() == "Nothing was written."


def test_a_refusal_of_no_crop_is_said_in_the_dialog(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.dialog.show_problems([Problem("fruit", "Nothing is tallied yet.")])
    assert "Nothing is tallied yet." in someone.said
