"""The feed plan: its steps by age, the present one, and what a step refuses."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.feed_plan import FeedPlanDialog
from growlog.desktop.feed_plan.step_form import StepForm
from growlog.records.crop import Crop
from growlog.records.feed_plan import FeedStep
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from tests.logbooks import SOWN

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier
CROP = Crop("gold", "Boxroom Gold", "pattypan", sown_on=SOWN)
MIXES = [Mix("young", "Young plants", 1, ()), Mix("every", "Everyday", 2, ())]
STEPS = [FeedStep("a", "gold", 10, "young", 50.0, 0.5), FeedStep("b", "gold", 40, "every", 100.0, 2.0)]


@pytest.fixture
def dialog(qtbot: QtBot) -> FeedPlanDialog:
    made = FeedPlanDialog(CROP, 64)
    qtbot.addWidget(made)
    made.show_plan(STEPS, MIXES, {m.id: m.name for m in MIXES})
    with qtbot.waitActive(made):
        made.show()
    return made


def form_of(dialog: FeedPlanDialog) -> StepForm:
    assert dialog.form is not None
    return dialog.form


def test_a_row_says_age_mix_strength_day_and_volume_and_the_present_one_is_marked(dialog: FeedPlanDialog) -> None:
    first, second = dialog.rows
    assert first.title_label.text().replace("\u2009", " ") == "From day 10: Young plants at 50 %"
    assert first.line_label.text().replace("\u2009", " ") == "25 November, 0.5 L"
    assert (first.present_label.isVisible(), second.present_label.isVisible()) == (False, True)


def test_a_step_is_added_by_typing(dialog: FeedPlanDialog, qtbot: QtBot) -> None:
    dialog.new_button.click()
    form = form_of(dialog)
    assert form.age_field.value() == 64  # from today on
    form.mix_field.box.setCurrentIndex(form.mix_field.box.findText("Everyday"))
    form.strength_field.line.clear()
    QTest.keyClicks(form.strength_field.line, "120")
    QTest.keyClicks(form.volume_field.line, "2.5")
    with qtbot.waitSignal(dialog.saved) as saved:
        QTest.keyClick(form.volume_field.line, Key.Key_Return, Control)
    step = saved.args[0]
    assert (step.crop_id, step.from_age, step.mix_id) == ("gold", 64, "every")
    assert (step.strength_percent, step.volume_l) == (120.0, 2.5)


def test_a_step_without_an_age_is_refused(dialog: FeedPlanDialog, qtbot: QtBot) -> None:
    dialog.new_button.click()
    form_of(dialog).age_field.line.clear()
    with qtbot.assertNotEmitted(dialog.saved):
        form_of(dialog).write_button.click()
    assert form_of(dialog).age_field.is_refused


def test_a_strength_beyond_any_feed_is_refused_beside_its_field(dialog: FeedPlanDialog, qtbot: QtBot) -> None:
    dialog.new_button.click()
    form_of(dialog).strength_field.line.clear()
    QTest.keyClicks(form_of(dialog).strength_field.line, "900")
    with qtbot.assertNotEmitted(dialog.saved):
        form_of(dialog).write_button.click()
    assert form_of(dialog).strength_field.is_refused


def test_a_refusal_of_the_logbook_stands_beside_the_age(dialog: FeedPlanDialog) -> None:
    dialog.new_button.click()
    dialog.show_problems([Problem("from_age", "The plan has a step from this age already.")])
    assert form_of(dialog).age_field.refusal == "The plan has a step from this age already."


def test_a_step_is_changed_and_removed_by_its_row(dialog: FeedPlanDialog, qtbot: QtBot) -> None:
    dialog.rows[0].change_button.click()
    assert form_of(dialog).mix_field.value() == "young"
    with qtbot.waitSignal(dialog.removed) as removed:
        dialog.rows[0].remove_button.click()
    assert removed.args == [STEPS[0]]


def test_without_a_saved_mix_the_plan_leads_to_the_mixer(dialog: FeedPlanDialog, qtbot: QtBot) -> None:
    from growlog.desktop.look.widgets import EmptyState

    dialog.show_plan([], [], {})
    assert not dialog.new_button.isVisible()
    empty = dialog.findChildren(EmptyState)[-1]
    with qtbot.waitSignal(dialog.mixer_wanted):
        empty.button.click()
