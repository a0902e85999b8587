"""Units of doses, against NIST Handbook 44 and the trade's own checks."""

import pytest

from growlog.calculations.dose_units import (
    DOSE_UNITS,
    ML_PER_IMPERIAL_FLUID_OUNCE,
    ML_PER_US_FLUID_OUNCE,
    ML_PER_US_TEASPOON,
    DosePerLitre,
    dose_in_unit,
    dose_per_litre,
    measure_of,
    mixes_gallons,
    read_unit,
)


@pytest.mark.parametrize(
    ("unit", "per_l"),
    [
        # Source: NIST Handbook 44, appendix C, exact by its definitions.
        ("oz/100gal_us", 0.07489151707),
        ("oz/gal_us", 7.489151707),
        ("lb/gal_us", 119.8264273),
        ("fl_oz/gal_us", 7.8125),
        ("tsp/gal_us", 1.302083333),
        ("fl_oz_imp/gal_imp", 6.25),
        ("mL/gal_imp", 1 / 4.54609),
        ("tsp_metric/L", 5),
        ("kg/1000L", 1),
    ],
)
def test_a_unit_is_so_much_per_litre(unit: str, per_l: float) -> None:
    assert dose_per_litre(1, unit).amount == pytest.approx(per_l, rel=1e-4)


def test_ounces_and_spoons_are_those_of_the_handbook() -> None:
    # NIST Handbook 44, appendix C.
    assert pytest.approx(29.57352956, rel=1e-8) == ML_PER_US_FLUID_OUNCE
    assert pytest.approx(4.928921594, rel=1e-8) == ML_PER_US_TEASPOON
    assert pytest.approx(28.4130625, rel=1e-8) == ML_PER_IMPERIAL_FLUID_OUNCE


def test_the_trade_s_rule_of_thumb_for_gallons_holds() -> None:
    # Common practice, no source.
    assert round(dose_per_litre(10, "mL/gal_us").amount, 2) == 2.64
    assert round(dose_per_litre(3, "mL/gal_us").amount, 2) == 0.79


@pytest.mark.parametrize("unit", DOSE_UNITS)
def test_every_unit_leads_there_and_back(unit: str) -> None:
    per_l = dose_per_litre(3.5, unit, tank_l=40)
    assert per_l.measure == measure_of(unit)
    assert dose_in_unit(per_l, unit, tank_l=40) == pytest.approx(3.5)


@pytest.mark.parametrize(
    ("amount", "unit", "tank_l", "named"),
    [
        (-1, "mL/L", None, "amount"),
        (1, "mL/bucket", None, "unit"),
        (1, "g/tank", None, "tank_l"),
        (1, "g/tank", 0, "0"),
    ],
)
def test_an_impossible_dose_is_refused_by_name(amount: float, unit: str, tank_l: float | None, named: str) -> None:
    with pytest.raises(ValueError, match=named):
        dose_per_litre(amount, unit, tank_l)


def test_a_unit_is_read_however_it_is_typed() -> None:
    assert [read_unit(u) for u in ("ml/l", "G / L", "ML/GAL_US", "fl.oz/gal_us")] == [
        "mL/L",
        "g/L",
        "mL/gal_us",
        "fl_oz/gal_us",
    ]
    assert read_unit("pinch") == "pinch"


def test_weight_is_not_read_as_volume() -> None:
    with pytest.raises(ValueError, match="mL/L"):
        dose_in_unit(DosePerLitre(1, "g"), "mL/L")


def test_two_kinds_of_gallon_in_one_mix_are_seen() -> None:
    assert mixes_gallons(["mL/gal_us", "mL/gal_imp"])
    assert mixes_gallons(["fl_oz/L", "g/100gal_imp"])
    assert not mixes_gallons(["mL/gal_us", "oz/100gal_us", "g/L"])
