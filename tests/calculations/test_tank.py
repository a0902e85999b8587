"""Care of a tank by mass balance. Judged by the balance itself: L times mS/cm before, added, left."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.tank import (
    Tank,
    TopUp,
    drain_minus_feed,
    drain_share_percent,
    explain_drain_difference,
    explain_drain_share,
    explain_top_up,
    explain_uptake,
    top_up,
    uptake,
    uptake_to_waste,
)


def test_a_tank_is_topped_up_to_volume_and_strength() -> None:
    # By hand: 12 L at 2.0 hold 24; 20 L at 1.8 want 36; 8 L of water at 0.2 bring 1.6; 10.4 are missing, 6.5 L of 1.6.
    found = top_up(Tank(12, 2.0), Tank(20, 1.8), 0.2, 1.6)
    assert found.drain_l == 0
    assert found.water_l == pytest.approx(8)
    assert found.full_strength_l == pytest.approx(6.5)


def test_a_tank_that_is_strong_enough_gets_water_only() -> None:
    assert top_up(Tank(10, 3.0), Tank(20, 1.5), 0.0, 2.0) == TopUp(0, 10, 0)


def test_a_tank_that_is_too_strong_is_drained_and_refilled() -> None:
    # By hand: 20 L at 3.0 to 2.0 with water of 0.5: 8 L out leave 36, 8 L in bring 4, in all 40.
    found = top_up(Tank(20, 3.0), Tank(20, 2.0), 0.5, 2.0)
    assert (found.drain_l, found.water_l) == (pytest.approx(8), pytest.approx(8))
    assert found.full_strength_l == 0


def test_a_smaller_tank_lets_the_surplus_out_and_is_then_strengthened() -> None:
    found = top_up(Tank(20, 1.0), Tank(15, 1.5), 0.2, 2.0)
    assert (found.drain_l, found.water_l, found.full_strength_l) == (5, 0, pytest.approx(3.75))


def test_water_stronger_than_what_is_wanted_cannot_thin() -> None:
    with pytest.raises(ValueError, match="of the water and above"):
        top_up(Tank(20, 3.0), Tank(20, 0.4), 0.5, 2.0)


TANKS = st.builds(Tank, st.floats(0, 200), st.floats(0, 6))


@given(TANKS, st.builds(Tank, st.floats(1, 200), st.floats(0.8, 4)), st.floats(0, 0.7), st.floats(0.5, 3))
def test_what_is_let_out_and_added_makes_the_wanted_tank(now: Tank, wanted: Tank, water: float, mix: float) -> None:
    found = top_up(now, wanted, water, mix)
    assert 0 <= found.drain_l <= now.volume_l + 1e-9
    assert found.water_l >= -1e-9
    assert found.full_strength_l >= 0
    assert now.volume_l - found.drain_l + found.water_l == pytest.approx(wanted.volume_l)
    salts = (now.volume_l - found.drain_l) * now.ec_ms_per_cm + found.water_l * water + found.full_strength_l * mix
    assert salts == pytest.approx(wanted.salts, rel=1e-6, abs=1e-4)


@given(st.floats(1, 100), st.floats(0.5, 4), st.floats(0.1, 0.9), st.floats(0, 3))
def test_uptake_comes_back_from_what_is_left(volume_l: float, ec: float, share: float, taken: float) -> None:
    used = volume_l * share
    left_salts = volume_l * ec - used * min(taken, ec)
    after = Tank(volume_l - used, left_salts / (volume_l - used))
    if after.ec_ms_per_cm <= 20:
        found = uptake(Tank(volume_l, ec), after, Tank(0, 0))
        assert found is not None
        assert found.water_l == pytest.approx(used, rel=1e-6)
        assert found.ec_ms_per_cm == pytest.approx(min(taken, ec), abs=1e-6)


def test_uptake_counts_what_was_added_and_is_weaker_where_the_tank_rose() -> None:
    # By hand: 20 L at 2.0 and 10 L of water at 0.2 hold 42; 20 L at 1.9 are left, so 10 L took 4: 0.4 mS/cm.
    found = uptake(Tank(20, 2.0), Tank(20, 1.9), Tank(10, 0.2))
    assert found is not None
    assert found.ec_ms_per_cm == pytest.approx(0.4)
    assert found.difference_ms_per_cm == pytest.approx(-1.6)
    assert uptake(Tank(20, 2.0), Tank(20, 2.0), Tank(0, 0)) is None


def test_drain_to_waste_takes_its_drain_away() -> None:
    found = uptake_to_waste(10, 2.0, 2, 3.0)
    assert found is not None
    assert (found.water_l, found.ec_ms_per_cm) == (8, pytest.approx(1.75))
    assert uptake_to_waste(10, 2.0, 10, 2.0) is None
    assert drain_share_percent(10, 2) == 20
    assert drain_minus_feed(2.0, 2.6) == pytest.approx(0.6)


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: top_up(Tank(-1, 1), Tank(20, 1), 0, 1), "volume_l -1"),
        (lambda: top_up(Tank(1, 1), Tank(0, 1), 0, 1), "wanted volume_l 0"),
        (lambda: top_up(Tank(1, 1), Tank(1, 1), 0, 0), "mix_ec_ms_per_cm 0"),
        (lambda: uptake(Tank(1, 99), Tank(1, 1), Tank(0, 0)), "ec_ms_per_cm 99"),
        (lambda: drain_share_percent(0, 1), "feed_l 0"),
    ],
)
def test_what_cannot_be_is_refused_by_name(call: object, named: str) -> None:
    with pytest.raises(ValueError, match=named):
        call()  # type: ignore[operator]


def test_each_figure_explains_itself() -> None:
    figures = [
        *explain_top_up(Tank(12, 2.0), Tank(20, 1.8), 0.2, 1.6),
        explain_uptake(Tank(20, 2.0), Tank(10, 2.2), Tank(0, 0)),
        explain_drain_share(10, 2),
        explain_drain_difference(2.0, 2.6),
    ]
    assert [f.value for f in figures] == pytest.approx([0, 8, 6.5, 1.8, 20, 0.6])
    assert all(f.inputs and f.method and f.source for f in figures)
    assert explain_uptake(Tank(20, 2.0), Tank(20, 2.0), Tank(0, 0)).value is None
