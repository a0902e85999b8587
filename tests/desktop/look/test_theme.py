"""The look put on the application."""

from collections.abc import Iterator

import pytest
from PySide6.QtGui import QFont, QFontInfo, QFontMetricsF, QRawFont
from PySide6.QtWidgets import QApplication, QListWidget, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.look.theme import FAMILY, Look, apply_theme, current, make_font, style_sheet, theme_signal
from growlog.desktop.look.tokens import DARK, LIGHT
from growlog.desktop.resources import resource_path


@pytest.fixture
def app(qapp: QApplication) -> Iterator[QApplication]:
    """The application, given back in its usual look."""
    yield qapp
    apply_theme(qapp, "light", 100)


def test_light_and_dark_change_the_palette_and_say_so(app: QApplication, qtbot: QtBot) -> None:
    with qtbot.waitSignal(theme_signal().changed):
        apply_theme(app, "dark", 100)
    assert current().palette == DARK
    assert app.palette().window().color().name().upper() == DARK.paper
    apply_theme(app, "light", 100)
    assert current().palette == LIGHT


def test_larger_text_scales_the_font_and_the_lengths(app: QApplication) -> None:
    apply_theme(app, "light", 200)
    assert current().scale == 2.0
    assert app.font().pixelSize() == 26
    assert current().px(8) == 16


@pytest.mark.parametrize(("mode", "percent"), [("sepia", 100), ("light", 90), ("light", 250)])
def test_a_look_that_does_not_exist_is_refused(app: QApplication, mode: str, percent: int) -> None:
    with pytest.raises(ValueError, match="allowed"):
        apply_theme(app, mode, percent)


def test_the_system_mode_takes_one_of_the_two_palettes(app: QApplication) -> None:
    apply_theme(app, "system", 100)
    assert current().palette in (LIGHT, DARK)


@pytest.mark.parametrize("look", [Look(), Look(DARK, 2.0)], ids=["light", "dark and large"])
def test_the_style_sheet_has_every_value_put_in(app: QApplication, look: Look) -> None:
    sheet = style_sheet(look)
    assert "$" not in sheet
    assert look.palette.accent in sheet
    assert sheet.count("{") == sheet.count("}")


def test_the_bundled_font_is_the_one_in_use(app: QApplication) -> None:
    assert QFontInfo(app.font()).family() == FAMILY


@pytest.mark.parametrize("weight", ["Regular", "Medium", "SemiBold", "Bold"])
def test_the_font_has_every_sign_the_program_writes(app: QApplication, weight: str) -> None:
    font = QRawFont(str(resource_path("font", f"LogbookSans-{weight}.otf")), 13)
    signs = "µμ²³₂₃₄°−–…×·½≤≥⏎⇧⌫↑↓\u2009\u202fÄÖÜßåøłčěșŽАЯяαω€£"
    missing = [sign for sign in signs if not font.supportsCharacter(ord(sign))]
    assert missing == []


def test_the_font_files_are_small() -> None:
    sizes = [path.stat().st_size for path in resource_path("font").glob("*.otf")]
    assert len(sizes) == 4
    assert max(sizes) < 150_000


@pytest.mark.parametrize("weight", [QFont.Weight.Normal, QFont.Weight.Medium, QFont.Weight.DemiBold, QFont.Weight.Bold])
def test_figures_are_of_one_width(app: QApplication, weight: QFont.Weight) -> None:
    metrics = QFontMetricsF(make_font(13, weight))
    widths = [metrics.horizontalAdvance(figure * 10) / 10 for figure in "0123456789"]
    assert max(widths) - min(widths) < 0.05  # pixels; a proportional 1 is 2 to 3 pixels narrower


def test_rows_of_a_list_do_not_lie_over_each_other(app: QApplication, qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    layout = QVBoxLayout(window)
    rows = QListWidget()
    rows.addItems(["one", "two"])
    layout.addWidget(rows)
    window.show()
    first, second = (rows.visualItemRect(rows.item(row)) for row in (0, 1))
    assert first.height() >= 28
    assert second.top() == first.bottom() + 1
