"""What people type is read, or answered with one sentence."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from growlog.services import typed_values as typed
from growlog.services.typed_values import NotUnderstood, exact, quantity

ANY_UNIT = (typed.CELSIUS, typed.HOURS, typed.WATTS, typed.AREA, typed.PPFD, typed.PERCENT, typed.PLAIN)


@pytest.mark.parametrize(
    ("unit", "text", "value"),
    [
        (typed.CELSIUS, "25", 25),
        (typed.CELSIUS, "77F", 25),
        (typed.CELSIUS, "77 °F", 25),
        (typed.CELSIUS, "298.15K", 25),
        (typed.HOURS, "90min", 1.5),
        (typed.WATTS, "0.4 kW", 400),
        (typed.AREA, "10.7639ft2", 1.0),
        (typed.AREA, "2 m²", 2),
        (typed.PPFD, "200 µmol/m²/s", 200),
        (typed.PPFD, "200umol/m2/s", 200),
        (typed.DLI, "10 mol/m2/d", 10),
        (typed.LUX, "1fc", 10.7639),
        (typed.DAYS, "6 weeks", 42),
        (typed.PERCENT, "40%", 40),
        (typed.KWH, "1.5MWh", 1500),
    ],
)
def test_units_are_read_as_people_write_them(unit: typed.Unit, text: str, value: float) -> None:
    # Factors: NIST Special Publication 811 (2008), appendix B.
    assert quantity(unit)("key", text, "") == pytest.approx(value, rel=1e-5)


def test_decimals_stay_as_they_were_typed() -> None:
    assert str(exact(typed.KWH)("kwh", "0.10", "")) == "0.10"
    assert exact(typed.WATTS)("watts", "1.1kW", "") == Decimal("1100")


@pytest.mark.parametrize(
    ("text", "amount"), [("0.17", "0.17"), ("17c", "0.17"), ("8.5 ct/kWh", "0.085"), ("12/h", "12")]
)
def test_prices_are_read_with_and_without_cents(text: str, amount: str) -> None:
    assert typed.price("price", text, "") == Decimal(amount)


@pytest.mark.parametrize("text", ["0.6", "1", "1.0", ".05"])
def test_humidity_that_may_be_a_part_of_one_is_asked_about(text: str) -> None:
    with pytest.raises(NotUnderstood, match="is that"):
        typed.humidity("humidity", text, "")
    assert typed.humidity("humidity", f"{text}%", "") == float(text)


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=12) | st.from_regex(r"-?[0-9]{1,4}[ ]?[a-zA-Zµ°²%/^*()]{1,6}", fullmatch=True))
def test_any_text_is_read_or_answered(text: str) -> None:
    readers = [*(quantity(u) for u in ANY_UNIT), exact(typed.KWH), typed.humidity, typed.price, typed.clock_time,
               typed.civil_day, typed.whole]  # fmt: skip
    for read in readers:
        try:
            read("key", text, "")
        except NotUnderstood as answer:
            assert str(answer)  # noqa: PT017 - one of the two may happen
