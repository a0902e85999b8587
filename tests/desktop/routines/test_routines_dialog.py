"""The routines' dialog: what it offers, adds, changes, switches off and refuses."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.routines import RoutinesDialog
from growlog.records.cultivar import FloweringHabit
from growlog.records.routine import Routine, RoutineFor, RoutineWhen
from growlog.services.due import starting_routines
from tests.logbooks import TODAY

OFFERED = starting_routines([FloweringHabit.SEPARATE], TODAY)
FEED = Routine("feed", "Feed", every_days=2, from_day=TODAY, entry_kind="feed")


@pytest.fixture
def dialog(qtbot: QtBot) -> RoutinesDialog:
    """With one routine."""
    made = RoutinesDialog(TODAY, [("gold", "Boxroom Gold")])
    qtbot.addWidget(made)
    made.show_routines([FEED], OFFERED)
    with qtbot.waitActive(made):
        made.show()
    return made


def test_where_there_is_none_what_fits_is_ticked_and_only_the_ticked_are_added(
    dialog: RoutinesDialog, qtbot: QtBot
) -> None:
    dialog.show_routines([], OFFERED)
    assert dialog.offered is not None
    ticked = [box.text() for box in dialog.offered.boxes if box.isChecked()]
    assert ticked == ["Feed", "Photo", "Pollinate", "Clean up dropped flowers", "Calibrate the meters"]
    for box in dialog.offered.boxes[1:]:
        box.setChecked(False)
    with qtbot.waitSignal(dialog.added) as added:
        QTest.keyClick(dialog.offered.add_button, Qt.Key.Key_Space)
    assert [r.name for r in added.args[0]] == ["Feed"]
    dialog.offered.boxes[0].setChecked(False)
    assert not dialog.offered.add_button.isEnabled()


def test_a_row_says_its_rule_whom_it_is_for_and_what_does_it(dialog: RoutinesDialog) -> None:
    assert dialog.rows[0].line_label.text() == "every 2 days; each crop; done by: Feed"
    own = replace(FEED, who=RoutineFor.CROP, crop_id="gold", when=RoutineWhen.AT_AGE, at_age=20, is_on=False)
    dialog.show_routines([own], OFFERED)
    assert dialog.rows[0].line_label.text() == "switched off; at plant age 20; Boxroom Gold; done by: Feed"


def test_a_routine_is_added_by_typing(dialog: RoutinesDialog, qtbot: QtBot) -> None:
    dialog.add_button_.click()
    form = dialog.form
    assert form is not None
    QTest.keyClicks(form.name.line, "Turn the pot")
    form.every.line.clear()
    QTest.keyClicks(form.every.line, "4")
    with qtbot.waitSignal(dialog.added) as added:
        QTest.keyClick(form.every.line, Qt.Key.Key_Return)
    made = added.args[0][0]
    assert (made.name, made.every_days, made.from_day, made.entry_kind) == ("Turn the pot", 4, TODAY, "")


def test_only_the_fields_of_the_rule_are_shown_and_kept(dialog: RoutinesDialog, qtbot: QtBot) -> None:
    dialog.change(FEED)
    form = dialog.form
    assert form is not None
    assert (form.every.isVisible(), form.age.isVisible()) == (True, False)
    form.when.box.setCurrentIndex(form.when.box.findData("at-age"))
    assert (form.every.isVisible(), form.age.isVisible(), form.until_day.isVisible()) == (False, True, False)
    QTest.keyClicks(form.age.line, "20")
    form.whom.box.setCurrentIndex(form.whom.box.findText("Boxroom Gold"))
    with qtbot.waitSignal(dialog.changed) as changed:
        form.write_button.click()
    expected = replace(FEED, when=RoutineWhen.AT_AGE, every_days=None, at_age=20, who=RoutineFor.CROP, crop_id="gold")
    assert changed.args == [expected]


def test_what_the_rule_lacks_is_said_beside_its_field_and_nothing_is_announced(
    dialog: RoutinesDialog, qtbot: QtBot
) -> None:
    dialog.new()
    form = dialog.form
    assert form is not None
    form.every.line.clear()
    QTest.keyClicks(form.name.line, "Turn the pot")
    with qtbot.assertNotEmitted(dialog.added):
        QTest.keyClick(form.every.line, Qt.Key.Key_Return)
    assert form.every.refusal == "Say after how many days it comes again."


def test_escape_leaves_the_form_and_shows_the_list_again(dialog: RoutinesDialog) -> None:
    dialog.new()
    assert dialog.form is not None
    assert not dialog.rows[0].isVisible()
    QTest.keyClick(dialog.form.name.line, Qt.Key.Key_Escape)
    assert dialog.form is None
    assert dialog.rows[0].isVisible()
    assert dialog.isVisible()


def test_a_routine_is_switched_off_and_removed(dialog: RoutinesDialog, qtbot: QtBot) -> None:
    with qtbot.waitSignal(dialog.changed) as changed:
        QTest.keyClick(dialog.rows[0].on_box, Qt.Key.Key_Space)
    assert changed.args == [replace(FEED, is_on=False)]
    with qtbot.waitSignal(dialog.removed) as removed:
        dialog.rows[0].remove_button.click()
    assert removed.args == [FEED]
