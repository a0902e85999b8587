"""Contrast of the colours, by the formula of WCAG 2.2 (W3C Recommendation, 2023).

Relative luminance and contrast ratio are as the recommendation's glossary defines them; 4.5:1 for text is success
criterion 1.4.3, 3:1 for graphical objects and the outlines of fields is 1.4.11.
"""

import itertools

import pytest

from growlog.desktop.look.tokens import COLOUR_TOKENS, DARK, LIGHT, MARK_TOKENS, Palette, blend

GROUNDS = ("paper", "card", "soft")
MARKS = ("feed", "light", "training", "pollination", "pick", "reading", "problem", "stage", "edge")
BOTH = pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_the_formula_gives_the_published_end_points() -> None:
    # WCAG 2.2, glossary "contrast ratio": ratios range from 1 to 21; black on white is 21.
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#777777", "#777777") == 1.0


@BOTH
@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("text", ["ink", "mute", "accent", "problem"])
def test_text_reaches_four_and_a_half_on_every_ground(palette: Palette, ground: str, text: str) -> None:
    assert contrast(palette.colour(text), palette.colour(ground)) >= 4.5


@BOTH
@pytest.mark.parametrize("ground", GROUNDS[:2])
@pytest.mark.parametrize("mark", MARKS)
def test_marks_and_outlines_reach_three_on_paper_and_card(palette: Palette, ground: str, mark: str) -> None:
    assert contrast(palette.colour(mark), palette.colour(ground)) >= 3.0


@BOTH
def test_text_on_the_accent_can_be_read(palette: Palette) -> None:
    assert contrast(palette.on_accent, palette.accent) >= 4.5


@BOTH
@pytest.mark.parametrize("share", [0.0, 0.25, 0.5, 0.75, 1.0])
def test_ink_on_every_stage_band_can_be_read(palette: Palette, share: float) -> None:
    assert contrast(palette.ink, palette.stage_band(share)) >= 4.5


@BOTH
def test_every_token_is_a_whole_colour(palette: Palette) -> None:
    assert len(COLOUR_TOKENS) == 19
    for token in COLOUR_TOKENS:
        colour = palette.colour(token)
        assert len(colour) == 7
        assert int(colour[1:], 16) >= 0


def test_every_kind_of_entry_has_a_colour() -> None:
    assert len(MARK_TOKENS) == 16
    assert LIGHT.mark("pick") == "#C04A00"
    assert {LIGHT.mark(kind) for kind in MARK_TOKENS} <= {LIGHT.colour(token) for token in COLOUR_TOKENS}


def test_a_token_that_does_not_exist_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match="shadow"):
        LIGHT.colour("shadow")


def test_blending_ends_at_its_ends_and_refuses_more() -> None:
    assert [blend("#000000", "#FF8040", share) for share in (0, 0.5, 1)] == ["#000000", "#804020", "#FF8040"]
    with pytest.raises(ValueError, match="0 to 1"):
        blend("#000000", "#FFFFFF", 1.2)


def test_the_hues_of_the_marks_differ_within_a_palette() -> None:
    for palette in (LIGHT, DARK):
        colours = [palette.colour(token) for token in MARKS]
        assert all(one != other for one, other in itertools.combinations(colours, 2))
