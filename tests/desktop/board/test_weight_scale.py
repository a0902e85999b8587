"""The weight axis has round steps in the unit that is read."""

import pytest

from growlog.desktop.board.weight_scale import weight_ticks, weight_unit
from growlog.words import show_units


def test_metric_ticks_are_round_in_g_and_kg() -> None:
    assert [weight_unit(90).text(t) for t in weight_ticks(90, 5)][1:] == [
        f"{n}\u2009g" for n in range(20, 100, 20)
    ]  # fmt: skip
    assert [weight_unit(2678).text(t) for t in weight_ticks(2678, 3)] == ["0\u2009kg", "1\u2009kg", "2\u2009kg"]


def test_us_ticks_are_round_in_oz_and_lb() -> None:
    show_units("us")
    # NIST Special Publication 811 (2008): 1 lb = 453.59237 g, 1 oz = 28.349523125 g
    assert weight_ticks(2678, 3) == pytest.approx([0, 2 * 453.59237, 4 * 453.59237])
    assert weight_unit(2678).text(2 * 453.59237) == "2\u2009lb"
    assert weight_unit(90).text(28.349523125) == "1\u2009oz"
