"""The decision on a crop: asked for, quoted, corrected, and shown when its cultivar is sown again."""

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from growlog.desktop.look.widgets import TextLabel
from growlog.desktop.review.decision_dialog import DecisionDialog
from growlog.records.decision import Verdict
from growlog.services.decisions import decide, decisions_of
from tests.desktop.review.at_the_desk import Desktop

pytestmark = pytest.mark.slow


def asked(desktop: Desktop) -> DecisionDialog:
    assert desktop.window.opened is not None
    desktop.window.actions_table.by_name["decide"].trigger()
    desktop.wait()
    assert desktop.window.opened.reviews.decision is not None
    return desktop.window.opened.reviews.decision


def test_the_figures_of_today_stand_beside_it_and_are_kept_with_it(desktop: Desktop) -> None:
    dialog = asked(desktop)
    said = " ".join(label.text() for label in dialog.findChildren(QLabel))
    assert "7 March 2026" in said
    assert "Weight: 500\u2009g" in said
    dialog.verdicts[Verdict.REGROW].click()
    QTest.keyClicks(dialog.reasons_field.box, "early and even")
    dialog.confirm_button.click()
    (made,) = decisions_of(desktop.log, desktop.crop.id)
    assert (made.verdict, made.reasons) == (Verdict.REGROW, "early and even")
    assert ("Weight", "500\u2009g") in [(f.label, f.value_text) for f in made.figures]
    assert desktop.messages.informed == ["Written: Decide: regrow."]


def test_no_verdict_is_proposed_and_a_reason_is_asked_for(desktop: Desktop) -> None:
    dialog = asked(desktop)
    dialog.confirm()
    assert dialog.verdict() is None
    assert "whether it is grown again" in dialog.banner.sentence
    assert dialog.reasons_field.is_refused
    assert decisions_of(desktop.log, desktop.crop.id) == []


def test_regrowing_with_changes_asks_what_is_to_change(desktop: Desktop) -> None:
    dialog = asked(desktop)
    assert not dialog.changes_field.isVisible()
    dialog.verdicts[Verdict.REGROW_WITH_CHANGES].click()
    assert dialog.changes_field.isVisible()
    dialog.reasons_field.set_value("set fell after day 80")
    dialog.confirm()
    assert dialog.changes_field.is_refused
    dialog.changes_field.set_value("air by night")
    dialog.confirm()
    assert [d.changes for d in decisions_of(desktop.log, desktop.crop.id)] == ["air by night"]


def test_the_review_shows_it_and_undo_takes_it_back(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert desktop.window.desk is not None
    desktop.window.desk.write(decide, desktop.crop.id, Verdict.DO_NOT_REGROW, "bitter <fruit>")
    desktop.wait()
    assert dialog.page is not None
    said = [label.text() for label in dialog.page.decision.findChildren(TextLabel)]
    assert {"Do not regrow", "bitter <fruit>"} <= set(said)
    assert any(text.startswith("As it stood on 7 March 2026: ") for text in said)
    desktop.window.desk.undo()
    desktop.wait()
    assert dialog.page is not None
    assert "Not decided yet" in [label.text() for label in dialog.page.decision.findChildren(TextLabel)]


def test_corrected_words_leave_the_figures_and_the_day_as_they_were(desktop: Desktop) -> None:
    decide(desktop.log, desktop.crop.id, Verdict.REGROW, "erly")
    (before,) = decisions_of(desktop.log, desktop.crop.id)
    dialog = desktop.review()
    assert dialog.page is not None
    dialog.page.decision.correct_button.click()
    assert desktop.window.opened is not None
    form = desktop.window.opened.reviews.decision
    assert form is not None
    form.reasons_field.set_value("early")
    form.confirm()
    (after,) = decisions_of(desktop.log, desktop.crop.id)
    assert (after.reasons, after.decided_on, after.figures) == ("early", before.decided_on, before.figures)
    desktop.wait()


def test_it_is_shown_when_the_cultivar_is_sown_again(desktop: Desktop) -> None:
    decide(desktop.log, desktop.crop.id, Verdict.REGROW_WITH_CHANGES, "set fell after day 80", "air by night")
    assert desktop.window.opened is not None
    desktop.window.opened.crops.new()
    form = desktop.window.opened.crops.dialog
    QTest.keyClicks(form.form.name_field.line, "Gold the second")
    species = form.form.species_field.box.lineEdit()
    species.selectAll()
    QTest.keyClicks(species, "pattypan")
    assert not form.past.isVisible()
    QTest.keyClicks(form.form.cultivar_field.line, "boxroom gold")
    assert form.past.isVisible()
    for words in ("Boxroom Gold", "regrow with changes", "set fell after day 80", "air by night", "Weight 500\u2009g"):
        assert words in form.past.sentence
    QTest.keyClicks(form.form.cultivar_field.line, "en")
    assert not form.past.isVisible()
    form.close()


def test_a_decision_is_removed_and_brought_back(desktop: Desktop) -> None:
    decide(desktop.log, desktop.crop.id, Verdict.REGROW, "early and even")
    dialog = desktop.review()
    assert dialog.page is not None
    dialog.page.decision.remove_button.click()
    desktop.wait()
    assert decisions_of(desktop.log, desktop.crop.id) == []
    assert desktop.messages.informed == ["The decision was removed."]
    assert not dialog.page.decision.remove_button.isVisible()
    assert desktop.window.desk is not None
    desktop.window.desk.undo()
    desktop.wait()
    assert [d.reasons for d in decisions_of(desktop.log, desktop.crop.id)] == ["early and even"]
