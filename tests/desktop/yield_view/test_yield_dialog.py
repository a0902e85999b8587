"""The dialog that tells what the picks say, full, empty and failed."""

from pytestqt.qtbot import QtBot

from growlog.desktop.explanation import ExplanationDialog
from growlog.desktop.look.icons import IconButton
from growlog.desktop.yield_view.yield_dialog import YieldDialog
from growlog.records.crop import Crop
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.view import yield_of
from tests.services.yield_view.seasons import SEASON, at, picked, pollinated

FLOWERS = {39: 2, 43: 4, 46: 5, 50: 6, 53: 7, 57: 7, 60: 7, 64: 6, 67: 5, 71: 4, 75: 4}


def shown(qtbot: QtBot, log: OpenLogbook, crop: Crop, age: int = 77) -> YieldDialog:
    dialog = YieldDialog(crop.name, at(age))
    qtbot.addWidget(dialog)
    dialog.show_view(yield_of(log, crop.id, at(age)))
    dialog.show()
    return dialog


def test_a_season_is_told_with_forecast_milestones_facts_and_fruit_set(
    qtbot: QtBot, log: OpenLogbook, crop: Crop
) -> None:
    picked(log, crop)
    pollinated(log, crop, FLOWERS)
    dialog = shown(qtbot, log, crop)
    assert dialog.coming.head.text().endswith("by 14 February 2026.")
    assert "more by 28 February 2026, in four cases out of five" in dialog.forecast.head.text()
    assert "44\u2009d" in dialog.milestones.texts()
    assert "Against the packet: 14 days, 24 %, early." in dialog.maturity.text()
    assert "29" in dialog.facts.texts()
    assert "Of 100 flowers" in dialog.fruit_set_words.text()
    assert not dialog.waiting.isVisible()


def test_each_figure_opens_how_it_is_worked_out(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    dialog = shown(qtbot, log, crop)
    button = dialog.milestones.findChild(IconButton, "explain-milestone-first-pick")
    assert button is not None
    button.click()
    explained = dialog.findChild(ExplanationDialog)
    assert explained is not None
    assert any("Whole civil days since sowing" in text for text in explained.panel.texts())
    explained.close()


def test_without_picks_it_says_so_and_explains_nothing(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, crop)
    assert dialog.forecast.more.text() == "Nothing was picked yet."
    assert not dialog.forecast.head.isVisible()
    assert not dialog.forecast.explain.isVisible()
    assert dialog.maturity.text() == "Nothing was picked yet."
    assert "not yet" in dialog.milestones.texts()


def test_counts_without_weights_have_their_reason_in_place_of_grams(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop, [(age, fruit, None) for age, fruit, _ in SEASON])
    dialog = shown(qtbot, log, crop)
    assert "No fruit was weighed, so nothing can be said by weight" in dialog.forecast.more.text()
    assert "not weighed" in dialog.facts.texts()
    assert "no yield by weight" in dialog.notes.text()


def test_picks_before_any_pollination_are_told(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    pollinated(log, crop, {74: 2, 76: 3})
    dialog = shown(qtbot, log, crop)
    assert "without a flower written down" in dialog.fruit_set_words.text()
    assert "not from flowers" in dialog.coming.more.text()
    assert dialog.fruit_set.texts() == []


def test_while_it_is_worked_out_and_if_that_fails_there_is_a_sentence(qtbot: QtBot) -> None:
    dialog = YieldDialog("Boxroom Gold", at(77))
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.waiting.isVisible()
    dialog.show_failure()
    assert "could not be worked out" in dialog.waiting.sentence_label.text()
