"""The what-if in the window: each changed input listed, a blank yield change never taken as zero."""

import pytest
from PySide6.QtTest import QTest

from growlog.desktop.review.what_if_dialog import WhatIfDialog
from tests.desktop.review.at_the_desk import Desktop

pytestmark = pytest.mark.slow


def opened(desktop: Desktop) -> WhatIfDialog:
    assert desktop.window.opened is not None
    desktop.window.actions_table.by_name["what_if"].trigger()
    dialog = desktop.window.opened.reviews.what_if.dialog
    assert dialog is not None
    assert dialog.waiting_label.isVisible()
    desktop.wait()
    assert dialog.form is not None
    return dialog


def answered(desktop: Desktop, dialog: WhatIfDialog) -> list[str]:
    dialog.ask()
    desktop.wait()
    assert dialog.view is not None
    return [text.replace("\u2009", " ") for text in dialog.view.texts()]


def test_nothing_is_answered_before_something_is_changed(desktop: Desktop) -> None:
    dialog = opened(desktop)
    with desktop.qtbot.assertNotEmitted(dialog.asked):
        dialog.ask()
    assert dialog.empty.isVisible()


def test_another_cost_stands_among_the_added_costs_and_lowers_what_the_change_brings(desktop: Desktop) -> None:
    dialog = opened(desktop)
    assert dialog.form is not None
    QTest.keyClicks(dialog.form.other_label.line, "a net")
    QTest.keyClicks(dialog.form.other_amount.line, "12.5")
    said = answered(desktop, dialog)
    assert said[said.index("a net", said.index("Gains")) + 1] == "12.50"
    assert dialog.view is not None
    assert dialog.view.net_label.text().startswith("\u221212.50")
    assert dialog.view.explain_button.isEnabled()


def test_a_blank_yield_change_leaves_the_answer_open_and_nought_does_not(desktop: Desktop) -> None:
    dialog = opened(desktop)
    assert dialog.form is not None
    dialog.form.feed.set_value(80)
    said = answered(desktop, dialog)
    assert "80 % of it" in said
    assert "open: the yield change is not given" in said
    assert dialog.view is not None
    assert "open" in dialog.view.net_label.text()
    assert "do you expect" in dialog.form.yield_hint.text()
    QTest.keyClicks(dialog.form.yield_change.line, "0")
    assert "open: the yield change is not given" not in answered(desktop, dialog)


def test_what_cannot_be_is_said_beside_its_field(desktop: Desktop) -> None:
    dialog = opened(desktop)
    assert dialog.form is not None
    QTest.keyClicks(dialog.form.photoperiod_h.line, "25")
    with desktop.qtbot.assertNotEmitted(dialog.asked):
        dialog.ask()
    assert dialog.form.photoperiod_h.refusal.startswith("At most 24")
    dialog.form.photoperiod_h.clear()
    QTest.keyClicks(dialog.form.other_amount.line, "5")
    dialog.ask()
    assert dialog.form.other_label.refusal == "Say what it is."


def test_what_it_was_stands_in_grey_in_the_empty_fields(desktop: Desktop) -> None:
    form = opened(desktop).form
    assert form is not None
    assert form.plants.line.placeholderText() == "1"
    assert form.cultivar.line.placeholderText() == "Boxroom Gold"
    assert form.plants.value() is None
