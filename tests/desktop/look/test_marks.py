"""Marks tell the kinds apart by shape alone."""

import itertools

import pytest
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from growlog.desktop.look.marks import KINDS, MarkSign, mark_icon, mark_path, mark_pixmap
from growlog.desktop.look.theme import current
from growlog.desktop.look.tokens import DARK, LIGHT, MARK_TOKENS


def shape_of(kind: str, size_px: int) -> list[int]:
    """How much of each pixel the mark covers, 0 to 255; the colour is left out."""
    image = mark_pixmap(kind, size_px, LIGHT, 1.0).toImage().convertToFormat(QImage.Format.Format_ARGB32)
    return [image.pixelColor(x, y).alpha() for y in range(size_px) for x in range(size_px)]


def test_any_two_marks_differ_in_shape_by_a_tenth_of_their_square(qapp: object) -> None:
    shapes = {kind: shape_of(kind, 16) for kind in KINDS}
    pairs = list(itertools.combinations(KINDS, 2))
    assert len(pairs) == 120
    for one, other in pairs:
        difference = sum(abs(a - b) for a, b in zip(shapes[one], shapes[other], strict=True)) / 255
        assert difference > 0.1 * 16 * 16, f"{one} and {other} look alike"


@pytest.mark.parametrize("kind", KINDS)
def test_a_mark_stays_in_its_square(kind: str) -> None:
    bounds = mark_path(kind).boundingRect()
    assert bounds.left() >= -0.54
    assert bounds.right() <= 0.54
    assert bounds.top() >= -0.54
    assert bounds.bottom() <= 0.56


def test_a_mark_takes_the_colour_of_its_kind_in_each_palette(qapp: object) -> None:
    for palette in (LIGHT, DARK):
        middle = mark_pixmap("pick", 16, palette, 1.0).toImage().pixelColor(8, 8)
        assert middle.name().upper() == palette.pick


def test_there_is_an_icon_for_every_kind(qapp: object) -> None:
    assert len(KINDS) == len(MARK_TOKENS)
    assert all(not mark_icon(kind).isNull() for kind in KINDS)


def test_a_sign_paints_its_kind(qtbot: QtBot) -> None:
    sign = MarkSign("feed", 16)
    qtbot.addWidget(sign)
    sign.resize(16, 16)
    assert sign.grab().toImage().pixelColor(8, 8).name().upper() == current().palette.feed
    sign.set_kind("pick")
    assert sign.grab().toImage().pixelColor(8, 8).name().upper() == current().palette.pick


def test_an_unknown_kind_is_refused() -> None:
    with pytest.raises(KeyError):
        mark_path("weather")
