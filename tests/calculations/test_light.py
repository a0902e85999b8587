"""Light: the daily integral against published examples."""

import pytest

from growlog.calculations.light import daily_light_integral, highest_mean_ppfd
from tests.reference import published

# Sources by row: Faust, Light management in greenhouses I; an instrument maker's conversion page; Yan et al. 2019.
DLI_EXAMPLES = [
    row for row in published("dli_examples") if row["kind"] == "dli" and row["printed_answer"] and row["hours"]
]


@pytest.mark.parametrize("row", DLI_EXAMPLES, ids=lambda row: row["id"])
def test_the_daily_light_integral_is_the_published_one(row: dict[str, str]) -> None:
    dli = daily_light_integral(float(row["ppfd_umol_m2_s"]), float(row["hours"]))
    assert dli == pytest.approx(float(row["exact_answer"]), rel=1e-9)
    decimals = len(row["printed_answer"].partition(".")[2])
    assert round(dli, decimals) == float(row["printed_answer"])


def test_the_light_needed_for_a_published_integral_gives_it_again() -> None:
    # Horticulturae 2021, 7(10), 361: DLI 6.0 in 6 h and in 10 h; the PPFD computed from them.
    for hours, ppfd in ((6, 277.778), (10, 166.667)):
        assert daily_light_integral(ppfd, hours) == pytest.approx(6.0, rel=1e-5)


@pytest.mark.parametrize(("ppfd", "hours", "named"), [(-1, 12, "ppfd"), (3001, 12, "ppfd"), (200, 24.1, "photoperiod")])
def test_light_outside_its_range_is_refused_with_its_name(ppfd: float, hours: float, named: str) -> None:
    with pytest.raises(ValueError, match=named):
        daily_light_integral(ppfd, hours)


def test_lamps_give_watts_times_efficacy_over_the_floor() -> None:
    # By definition: 200 W at 2.5 µmol/J at 40 % is 200 µmol/s, on 0.8 m² it is 250 µmol/m²/s.
    assert highest_mean_ppfd(200, 2.5, 40, 0.8) == pytest.approx(250)
    with pytest.raises(ValueError, match="floor_m2"):
        highest_mean_ppfd(200, 2.5, 40, 0)
