"""How a figure is worked out, on the screen: every part of it, and what is said where a part is missing."""

from datetime import date
from decimal import Decimal

import pytest
from pytestqt.qtbot import QtBot

from growlog.calculations.explained_figure import COMMON_PRACTICE, Figure, Input, Sure
from growlog.desktop.explanation import ExplanationButton, ExplanationPanel, show_explanation
from growlog.desktop.explanation.figure_words import value_text

EC = Figure(
    "ec", 1.8412, "mS/cm", (Input("Ca", 149.2, "mg/L"), Input("reading", 1.9, "mS/cm", date(2026, 3, 1))),
    "Each ion's conductivity times its amount.", "A. Author, A book, 2010", Sure.ESTIMATE, low=1.71, high=1.97,
    as_of=date(2026, 3, 7),
)  # fmt: skip
COST = Figure("cost", None, "EUR", (), "Price of a pack by its content.", COMMON_PRACTICE, Sure.COMMON_PRACTICE)


def test_the_panel_says_value_range_way_inputs_with_their_day_source_and_certainty(qtbot: QtBot) -> None:
    panel = ExplanationPanel(EC)
    qtbot.addWidget(panel)
    told = [text.replace("\u2009", " ") for text in panel.texts()]
    assert told == [
        "1.841 mS/cm", "1.71 to 1.97 mS/cm, up to 7 March 2026", "Each ion's conductivity times its amount.", "Ca",
        "149.2 mg/L", "reading", "1 March 2026", "1.9 mS/cm", "A. Author, A book, 2010", "an estimate",
    ]  # fmt: skip


def test_an_input_that_is_a_day_is_said_once(qtbot: QtBot) -> None:
    age = Figure("age", 3, "d", (Input("sown", "2026-03-01", "", date(2026, 3, 1)),), "Days.", "by definition",
                 Sure.PUBLISHED)  # fmt: skip
    panel = ExplanationPanel(age)
    qtbot.addWidget(panel)
    assert "1 March 2026" in panel.texts()
    assert "2026-03-01" not in panel.texts()


def test_a_figure_without_a_value_says_none_yet(qtbot: QtBot) -> None:
    panel = ExplanationPanel(COST)
    qtbot.addWidget(panel)
    assert panel.texts() == [
        "none yet", "Price of a pack by its content.", "common practice, no source", "by common practice",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (12, "12"), (1234.56, "1235"), (0.012345, "0.01235"), (Decimal("1.50"), "1.5"), ("noon", "noon")],
)
def test_numbers_are_told_to_four_figures(value: float | str | Decimal, text: str) -> None:
    assert value_text(value) == text


def test_the_button_opens_the_dialog_of_its_window_and_rests_without_a_figure(qtbot: QtBot) -> None:
    button = ExplanationButton()
    qtbot.addWidget(button)
    assert not button.isEnabled()
    button.show_figures([EC, COST], {"ec": "EC at 25 °C"})
    button.click()
    assert button.dialog is not None
    assert button.dialog.choice.box.currentText() == "EC at 25 °C"
    button.dialog.choice.box.setCurrentIndex(1)
    assert button.dialog.panel.figure == COST
    button.dialog.close()


def test_one_figure_of_several_can_be_shown_first(qtbot: QtBot) -> None:
    dialog = show_explanation([EC, COST], key="cost")
    assert dialog.panel.figure == COST
    dialog.close()


def test_one_figure_alone_is_named_in_the_title_and_offers_no_choice(qtbot: QtBot) -> None:
    dialog = show_explanation(EC, names={"ec": "EC at 25 °C"})
    assert dialog.subtitle_label.text() == "EC at 25 °C"
    assert not dialog.choice.isVisible()
    dialog.close()
