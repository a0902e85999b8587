"""A meter's offset, learned from readings."""

import pytest

from growlog.calculations.meter_offset import explain_meter_offset, learn_meter_offset


def test_a_meter_that_reads_high_is_learned_despite_one_slip() -> None:
    offset = learn_meter_offset([(2.0, 2.1), (1.0, 1.05), (1.6, 1.68), (2.0, 0.2)])
    assert offset is not None
    assert offset.expected_reading(2.4) == pytest.approx(2.52)
    assert offset.spread < 0.01
    assert offset.readings == 4


def test_the_offset_explains_itself() -> None:
    figure = explain_meter_offset([(2.0, 2.1), (1.0, 1.05), (1.6, 1.60)])
    assert (figure.value, len(figure.inputs)) == (pytest.approx(1.05), 3)
    assert figure.method
    assert explain_meter_offset([]).value is None


def test_two_readings_are_too_few() -> None:
    assert learn_meter_offset([(2.0, 2.1), (1.0, 1.05)]) is None


def test_a_reading_of_nothing_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="reading 0"):
        learn_meter_offset([(2.0, 0.0)])
