"""mL per pH step, learned and never guessed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.ph_steps import PhCorrection, explain_ph_steps, learn_ph_steps

THREE = [PhCorrection(2.0, 20, 6.5, 6.0), PhCorrection(4.0, 20, 6.6, 5.8), PhCorrection(6.0, 20, 6.4, 5.9)]


def test_the_middle_of_three_corrections_is_learned_with_its_range() -> None:
    # By hand, per L and 0.1: 2/20/5 = 0.02, 4/20/8 = 0.025, 6/20/5 = 0.06.
    steps = learn_ph_steps(THREE, down=True)
    assert steps is not None
    assert (steps.low, steps.per_l, steps.high) == pytest.approx((0.02, 0.025, 0.06))
    assert steps.count == 3
    assert steps.for_move(10, 6.3, 6.0) == pytest.approx((0.75, 0.6, 1.8))


def test_before_three_there_is_no_dose() -> None:
    assert learn_ph_steps(THREE[:2], down=True) is None
    assert explain_ph_steps("acid", "mL", THREE[:2], down=True).value is None


def test_upward_moves_and_moves_too_small_to_read_do_not_count_downwards() -> None:
    others = [PhCorrection(1, 20, 5.5, 6.0), PhCorrection(1, 20, 6.0, 5.98)]
    assert learn_ph_steps([*THREE, *others], down=True) == learn_ph_steps(THREE, down=True)
    assert learn_ph_steps([*THREE, *others], down=False) is None


@given(st.floats(0.01, 1), st.lists(st.tuples(st.floats(1, 200), st.floats(0.2, 2)), min_size=3, max_size=8))
def test_a_product_that_always_does_the_same_is_learned_exactly(per_l: float, moves: list[tuple[float, float]]) -> None:
    corrections = [PhCorrection(per_l * litres * move / 0.1, litres, 7, 7 - move) for litres, move in moves]
    steps = learn_ph_steps(corrections, down=True)
    assert steps is not None
    assert (steps.per_l, steps.low, steps.high) == pytest.approx((per_l, per_l, per_l), rel=1e-6)


def test_the_figure_carries_each_correction() -> None:
    figure = explain_ph_steps("acid", "mL", THREE, down=True)
    assert (figure.value, figure.low, figure.high) == pytest.approx((0.025, 0.02, 0.06))
    assert [i.value for i in figure.inputs] == pytest.approx([0.02, 0.025, 0.06])


@pytest.mark.parametrize(
    ("correction", "named"),
    [
        (PhCorrection(0, 20, 6, 5), "amount"),
        (PhCorrection(1, 0, 6, 5), "volume_l"),
        (PhCorrection(1, 20, 15, 5), "ph_before"),
        (PhCorrection(1, 20, 6, -1), "ph_after"),
    ],
)
def test_what_cannot_be_is_refused_by_name(correction: PhCorrection, named: str) -> None:
    with pytest.raises(ValueError, match=named):
        learn_ph_steps([correction], down=True)
