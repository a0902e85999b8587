"""Plant age: civil days since day 0."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.plant_age import age_on, day_at, packet_age
from growlog.calculations.yield_curve import PickPoint, first_pick_age

DAYS = st.dates(date(1990, 1, 1), date(2100, 12, 31))


def test_the_day_of_sowing_is_day_0() -> None:
    assert age_on(date(2025, 11, 15), date(2025, 11, 15)) == 0


def test_a_leap_day_counts() -> None:
    # ISO 8601 calendar: 2028 has a 29 February, 2026 has none.
    assert age_on(date(2028, 2, 28), date(2028, 3, 1)) == 2
    assert age_on(date(2026, 2, 28), date(2026, 3, 1)) == 1


@given(DAYS, st.integers(-3000, 3000))
def test_age_and_day_are_each_others_inverse(day_zero: date, age: int) -> None:
    assert age_on(day_zero, day_at(day_zero, age)) == age


def test_a_packet_counts_from_the_day_that_it_names() -> None:
    sown, transplanted = date(2025, 11, 15), date(2025, 12, 20)
    assert packet_age(55, sown, sown) == 55
    assert packet_age(55, transplanted, sown) == 35 + 55
    assert packet_age(55, None, sown) is None


def test_a_first_pick_on_day_36_of_a_55_day_packet_is_19_days_early() -> None:
    # Common practice, no source: days to maturity are compared with the plant age of the first pick.
    sown = date(2025, 11, 15)
    promised = packet_age(55, sown, sown)
    picked = first_pick_age([PickPoint(50, 2, 120.0), PickPoint(36, 1, 60.0), PickPoint(30, 0, None, 1)])
    assert promised is not None
    assert picked is not None
    assert promised - picked == 19
