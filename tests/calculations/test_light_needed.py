"""Light that is needed, and light that lamps can give."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.explained_figure import Sure
from growlog.calculations.light import daily_light_integral
from growlog.calculations.light_needed import (
    dli_of_readings,
    dli_of_sun,
    explain_dli,
    explain_ppfd_from_lamps,
    explain_ppfd_needed,
    more_than_lamps_give,
    ppfd_needed,
)
from tests.reference import published

EXAMPLES = published("dli_examples")


@pytest.mark.parametrize("row", [r for r in EXAMPLES if r["kind"] == "ppfd_needed"], ids=lambda row: row["id"])
def test_the_light_needed_is_that_of_the_paper(row: dict[str, str]) -> None:
    # Horticulturae 2021, 7(10), 361: DLI and hours read, PPFD computed from them.
    dli = float(row["other_input"].removeprefix("DLI "))
    assert ppfd_needed(dli, float(row["hours"])) == pytest.approx(float(row["exact_answer"]), abs=5e-4)


def test_the_light_of_the_sun_follows_the_published_factor() -> None:
    # Logan, J., Sams, C. and Faust, J. (2016) Mapping daily light integrals for greenhouse production.
    assert dli_of_sun(1) == 7.058


def test_lamp_watts_become_light_by_their_efficacy() -> None:
    # By definition: 100 µmol/m²/s from 81 W/m² is 1.2346 µmol/J; on one m² that gives the 100 again.
    figure = explain_ppfd_from_lamps(81, 1.2346, 100, 1)
    assert figure.value == pytest.approx(100, rel=1e-4)
    assert (figure.high, figure.sure) == (figure.value, Sure.ESTIMATE)


def test_the_explanations_name_what_went_in() -> None:
    assert [(i.name, i.value) for i in explain_dli(200, 14).inputs] == [("ppfd_umol", 200), ("hours", 14)]
    assert explain_ppfd_needed(6, 6).unit == "µmol/m²/s"


@pytest.mark.parametrize(("dli", "hours"), [(-1, 12), (81, 12), (10, 0), (10, 25)])
def test_light_that_no_lamp_gives_is_refused(dli: float, hours: float) -> None:
    with pytest.raises(ValueError, match="is outside"):
        ppfd_needed(dli, hours)
    with pytest.raises(ValueError, match="floor_m2 0 is outside above 0"):
        explain_ppfd_from_lamps(100, 2, 100, 0)


@given(st.floats(0.01, 50), st.floats(6, 24))
def test_the_light_needed_gives_the_integral_again(dli: float, hours: float) -> None:
    assert daily_light_integral(ppfd_needed(dli, hours), hours) == pytest.approx(dli)


@given(st.floats(0, 2000), st.floats(0, 24), st.integers(1, 50))
def test_readings_of_constant_light_give_what_the_multiplier_gives(ppfd: float, hours: float, parts: int) -> None:
    readings = [(hours * 3600 / parts * (1 - 1e-12), ppfd)] * parts
    assert dli_of_readings(readings) == pytest.approx(daily_light_integral(ppfd, hours), rel=1e-9, abs=1e-9)


def test_readings_of_more_than_a_day_are_refused() -> None:
    with pytest.raises(ValueError, match="seconds of the day"):
        dli_of_readings([(80_000, 100), (80_000, 100)])


def test_more_light_than_the_lamps_can_give_is_noticed() -> None:
    assert more_than_lamps_give(280, 250)
    assert not more_than_lamps_give(270, 250)
    assert not more_than_lamps_give(280, 250, lit_part_of_floor=0.5)
