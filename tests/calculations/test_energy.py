"""Electricity against published examples and ratings."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations import energy


@pytest.mark.parametrize(
    ("watts", "hours", "days", "kwh"),
    # US Department of Energy, Estimating appliance and home electronic energy use, as quoted by utilities.
    [(200, 4, 120, 96), (270, 4, 365, 394.2), (250, 5, 1, 1.25), (250, 5, 30, 37.5), (250, 5, 365, 456.25)],
)
def test_electricity_is_that_of_the_published_examples(watts: float, hours: float, days: float, kwh: float) -> None:
    assert energy.energy_kwh(watts, hours, days) == pytest.approx(kwh, rel=1e-12)


def test_a_season_of_lamps_takes_what_the_trade_reckons() -> None:
    # Common practice, no source: 0.8 kW, 18 h a day for six weeks, then 12 h to day 120, before ballast loss.
    found = energy.energy_kwh(800, 18, 42) + energy.energy_kwh(800, 12, 78)
    assert found == pytest.approx(1353.6, rel=1e-12)


@pytest.mark.parametrize(
    ("lamp", "rated", "wall"),
    [
        # The fixture wattage table of a utility's incentive programme.
        ("metal-halide", 100, 128), ("metal-halide", 150, 190), ("metal-halide", 175, 215), ("metal-halide", 400, 458),
        ("metal-halide", 750, 850),
        # A lighting vendor's table of lamp and system watts.
        ("hps", 250, 295), ("hps", 400, 460), ("hps", 1000, 1100),
    ],
)  # fmt: skip
def test_watts_at_the_wall_are_the_published_ratings(lamp: str, rated: float, wall: float) -> None:
    figure = energy.explain_usual_wall_watts(lamp, rated)
    assert figure.value == wall
    assert figure.low == pytest.approx(rated * 1.05)
    assert figure.high == pytest.approx(rated * 1.3)


def test_between_two_ratings_lies_what_lies_between() -> None:
    assert 460 < energy.usual_wall_watts("hps", 600) < 1100
    with pytest.raises(ValueError, match="lamp_w 50 is outside 250 to 1000 W"):
        energy.usual_wall_watts("hps", 50)
    with pytest.raises(ValueError, match="No table of watts with ballast is known here for white-led"):
        energy.usual_wall_watts("white-led", 100)


def test_a_bulb_is_due_when_its_rated_hours_are_over() -> None:
    assert energy.days_until_bulb_due(10_000, 9_000, 20) == 50
    assert energy.days_until_bulb_due(10_000, 12_000, 0) == 0
    assert energy.days_until_bulb_due(10_000, 9_000, 0) is None


def test_shares_of_the_floor_over_the_whole_are_refused() -> None:
    assert energy.floor_shares(50, [40, 60]) == [20, 30]
    assert energy.floor_shares(50, [33.3, 33.3, 33.4])
    with pytest.raises(ValueError, match=r"sum of floor shares 101 is outside 0 to 100 %"):
        energy.floor_shares(50, [41, 60])
    with pytest.raises(ValueError, match="floor_share -1"):
        energy.floor_shares(50, [-1, 60])


def test_the_estimate_is_held_against_the_meter() -> None:
    assert energy.difference_percent(110, 100) == pytest.approx(10)
    assert energy.difference_percent(110, 0) is None


@pytest.mark.parametrize(("watts", "hours", "days"), [(-1, 4, 1), (100, 25, 1), (100, 4, -1), (100, float("nan"), 1)])
def test_devices_that_cannot_be_are_refused(watts: float, hours: float, days: float) -> None:
    with pytest.raises(ValueError, match="is outside"):
        energy.energy_kwh(watts, hours, days)


@given(st.floats(0, 5000), st.floats(0, 12), st.floats(0, 200))
def test_twice_the_hours_take_twice_the_electricity(watts: float, hours: float, days: float) -> None:
    assert energy.energy_kwh(watts, 2 * hours, days) == pytest.approx(2 * energy.energy_kwh(watts, hours, days))
