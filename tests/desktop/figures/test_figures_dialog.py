"""All figures of a crop: searched by word, each explained beside the table."""

from datetime import date

import pytest
from pytestqt.qtbot import QtBot

from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.desktop.figures.figures_dialog import FiguresDialog, NamedFigure
from tests.desktop.hands import choose, retype

DAY = date(2026, 3, 7)
SOWN = Input("sown", "2025-11-15")
AGE = Figure("plant-age", 112, "d", (SOWN,), "Days since sowing.", "by definition", Sure.PUBLISHED)
PER_FRUIT = Figure(
    "cost-per-fruit", None, "EUR/fruit", (Input("fruit", 0),), "The cost over the fruit.", "by definition",
    Sure.PUBLISHED, as_of=DAY,
)  # fmt: skip
COST = Figure("cost", 12.5, "EUR", (), "All that the crop bears.", "by definition", Sure.ESTIMATE, 11.0, 14.0, DAY)
NAMED = [
    NamedFigure("Plant age", "Crop", AGE),
    NamedFigure("Cost so far", "Money", COST),
    NamedFigure("Cost of a fruit", "Money", PER_FRUIT),
]


@pytest.fixture
def dialog(qtbot: QtBot) -> FiguresDialog:
    made = FiguresDialog([("gold", "Boxroom Gold"), ("violet", "Porch Violet")], "gold")
    qtbot.addWidget(made)
    made.show()
    return made


def test_it_waits_in_words_and_then_shows_all(dialog: FiguresDialog) -> None:
    assert dialog.waiting_label.isVisible()
    dialog.show_figures(NAMED)
    assert not dialog.waiting_label.isVisible()
    assert [row.cells[1].replace("\u2009", " ") for row in dialog.table.rows()] == ["112 d", "12.5 EUR", "none yet"]


@pytest.mark.parametrize("text, keys", [
    ("cost", ["cost", "cost-per-fruit"]), ("cost fruit", ["cost-per-fruit"]), ("SOWING", ["plant-age"]), ("zzz", []),
])  # fmt: skip
def test_the_search_looks_at_names_sorts_and_methods(dialog: FiguresDialog, text: str, keys: list[str]) -> None:
    dialog.show_figures(NAMED)
    retype(dialog.search_field, text)
    assert dialog.shown() == keys
    assert dialog.panel_card.isVisible() is bool(keys)


def test_a_sort_leaves_its_own(dialog: FiguresDialog) -> None:
    dialog.show_figures(NAMED)
    choose(dialog.family_field, "Crop")
    assert dialog.shown() == ["plant-age"]


def test_the_chosen_figure_is_explained_beside_the_table(dialog: FiguresDialog) -> None:
    dialog.show_figures(NAMED)
    dialog.table.choose("cost")
    assert dialog.name_label.text() == "Cost so far"
    said = dialog.panel.texts()
    assert "All that the crop bears." in said
    assert any("11 to 14" in text.replace("\u2009", " ") for text in said)


def test_a_crop_that_has_not_begun_is_a_sentence(dialog: FiguresDialog) -> None:
    dialog.say_problem("Boxroom Gold begins on 1 April 2026.")
    assert dialog.banner.isVisible()
    assert dialog.shown() == []


def test_another_crop_is_asked_for(dialog: FiguresDialog) -> None:
    wanted: list[str] = []
    dialog.crop_wanted.connect(wanted.append)
    choose(dialog.crop_field, "violet")
    assert wanted == ["violet"]
