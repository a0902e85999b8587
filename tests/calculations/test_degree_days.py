"""Degree days against published examples of each method."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.degree_days import DegreeDayMethod as Method
from growlog.calculations.degree_days import degree_days, explain_degree_days
from tests.reference import published

# Iowa State University, Agronomy 541; a county's column (2018); University of California IPM; Midwestern Regional
# Climate Center; Journey North; Perry and Wehner (1996); Met Éireann. The status of each row says what was computed.
ROWS = [row for row in published("gdd_examples") if row["id"] != "GD16"]


def method_of(words: str) -> Method:
    """The method that a row's words name."""
    starts = {"substitute": Method.SUBSTITUTION, "daily maximum": Method.SUBSTITUTION,
              "maximum only": Method.MAXIMUM_MIRRORED, "piecewise": Method.PIECEWISE}  # fmt: skip
    return next((method for start, method in starts.items() if words.startswith(start)), Method.SIMPLE_AVERAGE)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])
def test_degree_days_are_the_published_ones(row: dict[str, str]) -> None:
    highest = float(row["tmax"].strip("(mean )"))
    lowest = float(row["tmin"] or highest - 10 if "mean" not in row["tmax"] else highest)
    ceiling = float(row["upper"]) if row["upper"] else None
    found = degree_days(method_of(row["method"]), highest, lowest, float(row["lower"]), ceiling)
    assert found == pytest.approx(float(row["exact_answer"]))


def test_the_same_day_counts_differently_by_two_methods() -> None:
    # By definition: 60 and 40 °F on base 50 °F.
    assert degree_days(Method.SIMPLE_AVERAGE, 60, 40, 50) == 0
    assert degree_days(Method.SUBSTITUTION, 60, 40, 50, 86) == 5


@pytest.mark.parametrize(
    ("highest", "lowest", "expected"),
    [(20, 12, 6), (20, 6, 4), (14, 2, 1), (9, 2, 0)],
    ids=["all", "most", "few", "none"],
)
def test_the_four_cases_of_the_piecewise_method(highest: float, lowest: float, expected: float) -> None:
    # Met Éireann's rule, base 10 °C, computed by hand: (20-10)/2 - (10-6)/4 = 4, (14-10)/4 = 1.
    assert degree_days(Method.PIECEWISE, highest, lowest, 10) == pytest.approx(expected)


def test_a_sine_that_swings_evenly_about_the_base_has_its_known_area() -> None:
    # By integration: a sine of amplitude a about the base has an area of a/π above it in a day.
    assert degree_days(Method.SINGLE_SINE, 20, 0, 10) == pytest.approx(10 / 3.141592653589793)


def test_the_explanation_names_the_method_and_the_degrees() -> None:
    figure = explain_degree_days(Method.SUBSTITUTION, 90, 65, 50, 86, "°F")
    assert (figure.value, figure.unit, figure.inputs[0].value) == (25.5, "°F·d", "substitution")


@pytest.mark.parametrize(
    ("method", "highest", "lowest", "base", "ceiling"),
    [
        (Method.SIMPLE_AVERAGE, 10, 20, 5, None),
        (Method.SIMPLE_AVERAGE, 20, 10, 5, 30),
        (Method.MAXIMUM_MIRRORED, 20, 10, 5, None),
        (Method.SUBSTITUTION, 20, 10, 15, 12),
        (Method.SINGLE_SINE, float("nan"), 10, 5, None),
    ],
)
def test_days_that_do_not_fit_are_refused(
    method: Method, highest: float, lowest: float, base: float, ceiling: float | None
) -> None:
    with pytest.raises(ValueError, match=r"is outside|ceiling"):
        degree_days(method, highest, lowest, base, ceiling)


@given(st.floats(-40, 50), st.floats(0, 30), st.floats(0, 20), st.sampled_from(list(Method)))
def test_no_day_counts_below_zero_or_above_its_highest_temperature(
    lowest: float, swing: float, base: float, method: Method
) -> None:
    ceiling = 35.0 if method is Method.MAXIMUM_MIRRORED else None
    found = degree_days(method, lowest + swing, lowest, base, ceiling)
    assert -1e-9 <= found <= max(0, lowest + swing - base) + 1e-9
