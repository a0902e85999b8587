"""The dialog of keep or clear: what it takes from the logbook, what is typed, what it answers."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from functools import partial

import pytest
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.calculations.pick_intervals import Measure
from growlog.desktop.keep_or_clear.inputs_form import FRUIT, GUESS, InputsForm
from growlog.desktop.keep_or_clear.keep_chart import keep_chart
from growlog.desktop.keep_or_clear.keep_dialog import KeepDialog
from growlog.records.crop import Crop
from growlog.services.crops import change_crop, clear_crop, crop_and_cultivar
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.keep import Guess, KeepAsk, weigh_up
from growlog.services.yield_view.keep_grounds import KeepGrounds, keep_grounds_of
from tests.logbooks import plant_crop
from tests.services.yield_view.seasons import at, picked

pytestmark = pytest.mark.slow


def answer(dialog: KeepDialog, grounds: KeepGrounds, ask: KeepAsk) -> None:
    dialog.show_view(weigh_up(grounds, ask))


def shown(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> KeepDialog:
    """Answers at once, as the window does a little later."""
    grounds = keep_grounds_of(log, crop.id, at(77))
    dialog = KeepDialog(crop, at(77))
    qtbot.addWidget(dialog)
    answers: Callable[[KeepAsk], None] = partial(answer, dialog, grounds)
    dialog.asked.connect(answers)
    dialog.show_grounds(grounds)
    dialog.show()
    return dialog


def priced(log: OpenLogbook, crop: Crop) -> Crop:
    changed = replace(crop, shop_price_minor_per_kg=900, planned_clearing_on=at(110))
    change_crop(log, changed, crop_and_cultivar(log, crop.id)[1])
    picked(log, crop)
    return changed


def cleared_before(log: OpenLogbook) -> Crop:
    crop = plant_crop(log, "Attic Gold", at(0) - timedelta(days=90), species="squash")
    picked(log, crop)
    clear_crop(log, crop.id, crop.day_zero + timedelta(days=84))
    return crop


def test_price_costs_and_cleared_crops_of_the_logbook_stand_in_the_form(
    qtbot: QtBot, log: OpenLogbook, crop: Crop
) -> None:
    priced(log, crop)
    before = cleared_before(log)
    dialog = shown(qtbot, log, crop)
    form = dialog.form
    assert form is not None
    assert form.value_field.value() == 9
    assert form.value_source.text() == "The shop price stated with the crop."
    assert form.crop_boxes[before.id].isChecked()
    assert form.crop_boxes[before.id].text().startswith("Attic Gold: 85 days, 0.236 a day")
    assert len(dialog.sentences.text().splitlines()) == 3
    assert dialog.chart.data is not None
    assert [line.name for line in dialog.chart.data.lines] == ["another week of this crop",
                                                               "what would stand there instead"]  # fmt: skip
    assert dialog.explain.isVisible()


def test_without_a_value_it_says_what_to_state_and_draws_nothing(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    dialog = shown(qtbot, log, crop)
    assert dialog.form is not None
    assert dialog.form.instead.value() == GUESS  # nothing was cleared yet
    assert "another crop would bring" in dialog.sentences.text()
    assert not dialog.chart.isVisible()
    assert not dialog.chart_menu.isVisible()


def test_a_guess_that_is_typed_is_weighed_up(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    priced(log, crop)
    dialog = shown(qtbot, log, crop)
    assert dialog.form is not None
    with qtbot.waitSignal(dialog.asked) as asked:
        QTest.keyClicks(dialog.form.net_field.line, "500")
        QTest.keyClicks(dialog.form.days_field.line, "80")
    ask = asked.args[0]
    assert ask.guess.net_value == 500
    assert ask.guess.days == 80
    assert "your guess" in dialog.sentences.text()
    assert "clearing would pay more from today on" in dialog.sentences.text()


def test_counting_fruit_asks_for_the_worth_of_a_fruit(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    priced(log, crop)
    cleared_before(log)
    dialog = shown(qtbot, log, crop)
    assert dialog.form is not None
    with qtbot.waitSignal(dialog.asked) as asked:
        dialog.form.measure.set_value(FRUIT)
    assert asked.args[0].measure is Measure.FRUIT
    assert dialog.form.value_field.label.text() == "A fruit is worth"
    assert dialog.form.value_field.value() is None
    assert "worth to you" in dialog.sentences.text()


def test_labour_counts_once_it_is_ticked(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    priced(log, crop)
    cleared_before(log)
    dialog = shown(qtbot, log, crop)
    assert dialog.form is not None
    assert not dialog.form.labour_part.isVisible()
    with qtbot.waitSignal(dialog.asked) as asked:
        dialog.form.labour_box.click()
        QTest.keyClicks(dialog.form.labour_field.line, "12")
    assert asked.args[0].with_labour
    assert asked.args[0].labour_rate_per_h == Decimal("12.0")
    assert dialog.form.labour_part.isVisible()


def test_without_picks_the_reason_stands_in_place_of_curves(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    cleared_before(log)
    dialog = shown(qtbot, log, crop)
    assert dialog.sentences.text() == "Nothing was picked yet."
    assert not dialog.chart.isVisible()


def test_it_advises_and_says_what_it_does_not_know(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    priced(log, crop)
    assert "Whether you like the plant is not among them" in shown(qtbot, log, crop).note_label.text()


def test_the_logbooks_running_costs_are_asked_with_as_exactly_as_they_are_known(
    qtbot: QtBot, log: OpenLogbook, crop: Crop
) -> None:
    priced(log, crop)
    grounds = replace(keep_grounds_of(log, crop.id, at(77)), running_per_day=Decimal("0.774321"))
    form = InputsForm(grounds)
    qtbot.addWidget(form)
    asked = form.ask()
    assert asked is None or asked.running_per_day is None
    form.instead.set_value(GUESS)
    form.net_field.set_value(30)
    form.days_field.set_value(90)
    exact = form.ask()
    form.running_field.set_value(0.9)
    typed = form.ask()
    assert exact is not None
    assert typed is not None
    assert (exact.running_per_day, typed.running_per_day) == (None, Decimal("0.9"))


def test_where_clearing_pays_from_today_the_chart_does_not_say_that_the_curves_meet(
    qtbot: QtBot, log: OpenLogbook, crop: Crop
) -> None:
    changed = priced(log, crop)
    grounds = keep_grounds_of(log, crop.id, at(77))
    view = weigh_up(grounds, KeepAsk(running_per_day=Decimal(9), guess=Guess(Decimal(-10), 90)))
    data = keep_chart(changed, view)
    assert data is not None
    assert [mark.words for mark in data.uprights] == ["clearing pays more from 31 January"]
    assert view.notes[0] == "At this value both cost more than their fruit brings."
