"""Single figures worked out from the command line, with how they were worked out."""

import json
from decimal import Decimal
from typing import Any

import pytest

from growlog.services.workable_figures import WORKABLES
from tests.command_line.commands import Terminal


def figure(terminal: Terminal, *arguments: str) -> dict[str, Any]:
    """The figure that the command printed as JSON."""
    assert terminal("work-out", *arguments, "--json") == 0, terminal.err
    values: dict[str, Any] = json.loads(terminal.out)["figure"]
    return values


@pytest.mark.parametrize(
    ("arguments", "value", "unit"),
    [
        # Yan, Z. et al. (2019) HortScience 54(10): 1737.
        ("dli ppfd=200 hours=14", 10.08, "mol/m²/d"),
        # Horticulturae 2021, 7(10), 361.
        ("ppfd-needed dli=6 hours=10", 166.667, "µmol/m²/s"),
        # An instrument maker's page on turning PPFD into lux.
        ("ppfd-from-lux lux=16400 lamp=hps", 200, "µmol/m²/s"),
        ("ppfd-from-lux lux=13000 lamp=led factor=65", 200, "µmol/m²/s"),
        # Runkle, E. (2006) Light it up.
        ("ppfd-from-foot-candles fc=500 lamp=HPS", 65.789, "µmol/m²/s"),
        # By definition.
        ("ppfd-from-lamps watts=0.2kW efficacy=2.5 dimming=40% floor_m2=0.8m2", 250, "µmol/m²/s"),
        ("kwh watts=800 hours=18 days=42", 604.8, "kWh"),
        ("kwh kw=0.8 hours=18 days=42", 604.8, "kWh"),
        ("lamp-hours hours=18 days=6weeks", 756, "h"),
        ("wall-watts watts=400 loss=15%", 460, "W"),
        # A lighting vendor's table of lamp and system watts.
        ("wall-watts watts=400 lamp=hps", 460, "W"),
        # FAO Irrigation and Drainage Paper 56 (1998), equations 10 and 11, computed by hand.
        ("vpd temp_c=25 humidity=60", 1.2671, "kPa"),
        ("vpd temp=77F rh=60%", 1.2671, "kPa"),
        ("vpd-leaf air=25 leaf=23 humidity=60", 0.9086, "kPa"),
        ("dew-point temp_f=77 humidity=60", 16.70, "°C"),
        ("saturation-vapour-pressure temp_c=25", 3.1678, "kPa"),
        # Iowa State University, Agronomy 541; Perry and Wehner (1996).
        ("degree-days tmax=70F tmin=50F base=50F ceiling=86F method=substitution", 10, "°F·d"),
        ("degree-days tmax=95 tmin=70 base=60 ceiling=90 method=maximum-mirrored unit=F", 25, "°F·d"),
        ("degree-days tmax=30 tmin=18 base=10 method=average", 14, "°C·d"),
        ("degree-days tmax=30 tmin=18 base=50F method=simple-average", None, ""),
        ("plant-age sown=2025-12-01 day=2026-01-18", 48, "d"),
        # NIST Special Publication 811 (2008), appendix B.8.
        ("unit value=1gal to=L", 3.785412, "L"),
        ("unit value=77F to=C", 25, "C"),
        # US Department of Energy, as quoted: 96 kWh at 8.5 cents are 8.16.
        ("cost kwh=96 price=8.5c currency=usd", 8.16, "USD"),
        ("cost watts=200 hours=4 days=120 price=0.085", 8.16, ""),
        # By hand: 7 h at 0.30 and 9 h at 0.18 for a kilowatt.
        ("cost watts=1kW on_at=20:00 hours=16 bands=07:00-22:00@0.30,22:00-07:00@18c", 3.72, ""),
        ("labour-cost minutes=1.5h rate=12.40", 18.6, ""),
    ],
)  # fmt: skip
def test_a_figure_comes_out_as_its_source_has_it(
    terminal: Terminal, arguments: str, value: float | None, unit: str
) -> None:
    if value is None:
        assert terminal("work-out", *arguments.split()) == 2
        assert "behind each temperature, or behind none" in terminal.err
        return
    found = figure(terminal, *arguments.split())
    assert found["value"] == pytest.approx(value, rel=3e-4)
    assert found["unit"] == unit


def test_the_json_holds_all_of_the_explanation(terminal: Terminal) -> None:
    assert figure(terminal, "kwh", "watts=250", "hours=5") == {
        "key": "kwh", "value": 1.25, "unit": "kWh",
        "inputs": [
            {"name": "watts", "value": 250.0, "unit": "W", "date": None},
            {"name": "hours", "value": 5.0, "unit": "h/d", "date": None},
            {"name": "days", "value": 1.0, "unit": "d", "date": None},
        ],
        "method": "Watts at the wall times hours a day times days, over a thousand.",
        "source": "by definition", "sure": "published", "low": None, "high": None, "as_of": None,
    }  # fmt: skip


def test_people_read_the_figure_its_range_and_how_it_came_about(terminal: Terminal) -> None:
    assert terminal("work-out", "ppfd-from-lux", "lux=7100", "lamp=metal halide") == 0
    lines = terminal.out.splitlines()
    assert lines[:2] == ["ppfd-from-lux: 100\u2009µmol/m²/s", "Between 90.909 and 111.11\u2009µmol/m²/s"]
    assert [line.partition(":")[0] for line in lines[2:]] == ["How this is worked out", "From", "Source", "How sure"]


def test_numbers_are_told_to_five_digits(terminal: Terminal) -> None:
    terminal("work-out", "dli", "ppfd=0.05", "hours=7")
    assert terminal.out.startswith("dli: 0.00126\u2009")
    terminal("work-out", "kwh", "watts=987654", "hours=10", "days=10")
    assert terminal.out.startswith("kwh: 98765\u2009")


def test_before_the_first_fruit_there_is_none_yet(terminal: Terminal) -> None:
    assert terminal("work-out", "cost-per-fruit", "cost=12.30", "fruit=0") == 0
    assert terminal.out.startswith("cost-per-fruit: none yet\n")
    assert figure(terminal, "cost-per-fruit", "cost=12.30", "fruit=0")["value"] is None


def test_money_is_written_to_the_last_coin(terminal: Terminal) -> None:
    terminal("work-out", "cost", "kwh=1", "price=0.105", "currency=EUR")
    assert terminal.out.startswith("cost: 0.10\u2009EUR\n")
    assert Decimal(str(figure(terminal, "cost", "kwh=1000000.1", "price=0.1")["value"])) == Decimal("100000.01")


def test_the_list_names_every_figure_and_what_it_takes(terminal: Terminal) -> None:
    assert terminal("work-out", "--list") == 0
    assert [line.partition(":")[0] for line in terminal.out.splitlines()[::2]] == [w.key for w in WORKABLES]
    assert "humidity=… (%)" in terminal.out


def test_the_day_that_counts_as_today_is_taken_where_none_is_said(terminal: Terminal) -> None:
    found = figure(terminal, "plant-age", "sown=2025-12-01", "--as-of", "2026-01-18")
    assert (found["value"], found["as_of"]) == (48, "2026-01-18")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ("vpd temp_c=25 humidity=0.6", "is that 60 %, or 0.6 %?"),
        ("dew-point temp_c=25 humidity=0%", "outside"),
        ("dli ppfd=200 hours=25", "hours 25"),
        ("dli ppfd=200", "dli also needs hours"),
        ("dli ppfd=200 hours=14 colour=red", "dli takes no colour"),
        ("dli ppfd=200 hours=14 hours=15", "said twice"),
        ("dli ppfd=200 hours=14 photoperiod=15", "say the same thing"),
        ("dli ppfd=200 14", "Write it as key=value"),
        ("dli ppfd=200lux hours=14", "cannot be turned into"),
        ("dli ppfd=bright hours=14", "is not a number"),
        ("dli ppfd=nan hours=14", "is not a number"),
        ("dli ppfd=200 hours=14fortnightsandsome", "cannot be turned into"),
        ("moonlight ppfd=200", "There is no figure moonlight, only: dli"),
        ("ppfd-from-lux lux=13000 lamp=white-led", "factor of yours"),
        ("ppfd-from-lux lux=13000 lamp=candle", "There is no kind of lamp candle, only: sunlight"),
        ("wall-watts watts=400 lamp=led", "No table of watts with ballast is known here for white-led"),
        ("dli ppfd=1,5 hours=14", "ppfd=1,5 is not a number"),
        ("dli ppfd=-1 hours=14", "ppfd -1.0 is outside"),
        ("degree-days tmax=30 tmin=18 base=10 method=guess", "There is no method guess"),
        ("degree-days tmax=10 tmin=18 base=10 method=simple-average", "tmin 18 is outside -100 to 10"),
        ("cost kwh=96 price=cheap", "is not a price"),
        ("cost kwh=96", "Say the price"),
        (
            "cost watts=10 on_at=20:00 hours=9 bands=07:00-22:00@1,21:00-07:00@2",
            "Two bands of the tariff hold at 21:00.",
        ),
        ("cost watts=10 on_at=20:00 hours=9 bands=07:00-22:00@1", "no price at 00:00"),
        ("cost watts=10 on_at=25:00 hours=9 bands=00:00-24:00@1", "is not a time of day"),
        ("plant-age sown=18.1.2026", "is not a date"),
        ("unit value=2gal to=W", "cannot be turned into"),
        ("unit value=2 to=L", "Write the unit behind the value"),
        ("cost-per-fruit cost=12 fruit=-1", "is not a whole number"),
        ("wall-watts watts=400", "loss=15%"),
        ("cost-per-fruit cost=1e99 fruit=1", "cost 1e+99 is outside"),
        ("unit value=1e99m^9 to=fm^9", "too large"),
        ("cost watts=10 on_at=20:00 hours=25 bands=00:00-24:00@1", "hours 25 is outside 0 to 24 h"),
        ("cost watts=10 on_at=20:00 hours=5 days=-1 bands=00:00-24:00@1", "days -1 is outside"),
        ("vpd temp_c=77 humidity=60", "temperature 77"),
    ],
)
def test_what_cannot_be_used_is_told_in_one_sentence(terminal: Terminal, arguments: str, said: str) -> None:
    assert terminal("work-out", *arguments.split()) == 2
    assert said in terminal.err
    assert (terminal.out, terminal.err.count("\n")) == ("", 1)


@pytest.mark.parametrize("unit", ["(((", "**", "m**m", "1e9", "__import__", "m^999999", "°", "W W W /"])
def test_nonsense_for_a_unit_is_told_in_one_sentence(terminal: Terminal, unit: str) -> None:
    assert terminal("work-out", "unit", f"value=2{unit}", "to=L") == 2
    assert terminal.err.count("\n") == 1
    assert terminal("work-out", "unit", "value=2gal", f"to={unit}") == 2
