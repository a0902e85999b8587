"""Canopy light from lux and foot-candles against published factors and examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.explained_figure import Sure
from growlog.calculations.lamp_light import (
    LAMP_FACTORS,
    LUX_PER_FOOT_CANDLE,
    explain_ppfd_from_foot_candles,
    explain_ppfd_from_lux,
    foot_candles_from_ppfd,
    lamp_factor,
    lux_from_ppfd,
    ppfd_from_foot_candles,
    ppfd_from_lux,
)
from tests.reference import published

# Thimijan and Heins (1983); Deitzer (1994, 2001); Runkle (2006); an instrument maker's conversion tables.
FACTORS = [row for row in published("light_factors") if row["source"] != "-"]
KINDS = {
    "sun and sky, daylight": "sunlight", "blue sky only": "blue sky", "high-pressure sodium, single-ended base": "hps",
    "ceramic metal halide, 4200 K": "cmh",
}  # fmt: skip
EXAMPLES = {row["id"]: row for row in published("dli_examples")}


@pytest.mark.parametrize("row", FACTORS, ids=lambda row: row["id"])
def test_every_published_factor_lies_within_a_tenth_and_in_the_range_shown(row: dict[str, str]) -> None:
    factor = lamp_factor(KINDS.get(row["lamp_type"], row["lamp_type"]))
    assert factor is not None
    lux = float(row["lux_per_umol_m2_s"] or float(row["footcandle_per_umol_m2_s"]) * LUX_PER_FOOT_CANDLE)
    assert factor.lux == pytest.approx(lux, rel=0.1)
    assert factor.low - 1e-9 <= lux <= factor.high + 1e-9


def test_a_factor_from_memory_says_so() -> None:
    from_memory = {row["lamp_type"] for row in FACTORS if row["status"] == "from memory"}
    assert {f.name for f in LAMP_FACTORS if f.from_memory} == from_memory
    assert all("from memory" in f.source for f in LAMP_FACTORS if f.from_memory)


@pytest.mark.parametrize("row_id", ["DL05", "DL07", "DL08"])
def test_foot_candles_under_sodium_are_the_published_ones(row_id: str) -> None:
    # Runkle, E., Lighting greenhouse vegetables: 7.6 foot-candles; the last is printed to the nearest 25.
    row = EXAMPLES[row_id]
    assert foot_candles_from_ppfd(float(row["ppfd_umol_m2_s"]), 7.6) == pytest.approx(float(row["exact_answer"]))
    assert foot_candles_from_ppfd(float(row["ppfd_umol_m2_s"]), 7.6) == pytest.approx(
        float(row["printed_answer"]), abs=12.5
    )


def test_light_from_foot_candles_is_the_published_one() -> None:
    # Runkle, E. (2006) Light it up: 500 foot-candles of sodium light are 66 (the answer from memory).
    assert explain_ppfd_from_foot_candles(500, "hps").value == pytest.approx(65.789, abs=5e-4)
    # Reply on the plant-ed list (2001): 10 000 foot-candles of sun times 0.195.
    assert explain_ppfd_from_foot_candles(10_000, "sun").value == pytest.approx(1950, rel=1e-3)


@pytest.mark.parametrize(("row_id", "factor"), [("DL12", 54), ("DL13", 82)])
def test_lux_is_the_published_one(row_id: str, factor: float) -> None:
    # An instrument maker's page on turning PPFD into lux.
    row = EXAMPLES[row_id]
    assert lux_from_ppfd(float(row["ppfd_umol_m2_s"]), factor) == float(row["printed_answer"])


def test_a_misprint_of_the_same_page_is_not_followed() -> None:
    # The page prints 40 800 lux for 200 µmol/m²/s of sun; 200 times its own factor of 54 is 10 800.
    assert lux_from_ppfd(200, 54) == float(EXAMPLES["DL15"]["exact_answer"]) == 10_800
    assert float(EXAMPLES["DL15"]["printed_answer"]) == 40_800


def test_converted_light_is_an_estimate_within_its_range() -> None:
    for factor in LAMP_FACTORS:
        for figure in (explain_ppfd_from_lux(10_000, factor.key), explain_ppfd_from_foot_candles(900, factor.key)):
            assert figure.sure is Sure.ESTIMATE
            assert isinstance(figure.low, float)
            assert isinstance(figure.high, float)
            assert isinstance(figure.value, float)
            assert figure.low <= figure.value <= figure.high
            assert figure.low < figure.high


@pytest.mark.parametrize("explain", [explain_ppfd_from_lux, explain_ppfd_from_foot_candles])
def test_the_factor_of_white_leds_is_asked_for_and_then_used(explain) -> None:
    with pytest.raises(ValueError, match="factor of yours"):
        explain(1000, "white LED")
    assert explain(1000, "white LED", 15).value == pytest.approx(1000 / 15)


def test_a_lamp_that_nobody_knows_is_refused_with_those_that_are_known() -> None:
    with pytest.raises(ValueError, match=r"no kind of lamp candle, only: sunlight.*white-led"):
        explain_ppfd_from_lux(1000, "candle")


@pytest.mark.parametrize(
    ("lux", "factor", "named"), [(-1, 82, "lux"), (1000, 0, "lux_per_umol"), (float("nan"), 82, "lux")]
)
def test_light_that_cannot_be_is_refused(lux: float, factor: float, named: str) -> None:
    with pytest.raises(ValueError, match=f"{named} .* is outside"):
        ppfd_from_lux(lux, factor)
    with pytest.raises(ValueError, match="foot_candles_per_umol"):
        ppfd_from_foot_candles(100, 0)


@given(st.floats(0, 2000), st.floats(10, 100))
def test_light_turned_into_lux_and_back_is_the_same(ppfd: float, factor: float) -> None:
    assert ppfd_from_lux(lux_from_ppfd(ppfd, factor), factor) == pytest.approx(ppfd)
