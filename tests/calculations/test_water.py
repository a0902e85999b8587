"""Source water: units of alkalinity and blends."""

import pytest

from growlog.calculations.water import (
    RAIN_OR_REVERSE_OSMOSIS,
    Water,
    alkalinity_from_bicarbonate,
    alkalinity_from_german_degrees,
    alkalinity_meq_per_l,
    blend,
    check_water,
)

TAP = Water({"Ca": 80, "Mg": 10}, 0.6, 7.6, 200)


def test_alkalinity_is_the_same_in_every_unit() -> None:
    # By definition: 1 °dH is 10 mg/L CaO, 17.85 mg/L CaCO3; 61.02 mg/L bicarbonate is 1 meq/L, 50.04 mg/L CaCO3.
    assert alkalinity_from_german_degrees(10) == pytest.approx(178.5, rel=1e-3)
    assert alkalinity_from_bicarbonate(61.02) == pytest.approx(50.04, rel=1e-3)
    assert alkalinity_meq_per_l(TAP) == pytest.approx(4.0, rel=1e-2)


def test_a_blend_lies_between_its_waters_by_volume() -> None:
    half = blend([(TAP, 10), (Water(ec_ms_per_cm=0, alkalinity_mg_per_l_caco3=0), 30)])
    assert half.nutrients_mg_per_l == {"Ca": 20, "Mg": 2.5}
    assert half.ec_ms_per_cm == pytest.approx(0.15)
    assert half.alkalinity_mg_per_l_caco3 == pytest.approx(50)
    assert half.ph is None


def test_a_blend_with_an_unmeasured_water_does_not_pretend() -> None:
    assert blend([(TAP, 1), (RAIN_OR_REVERSE_OSMOSIS, 1)]).ec_ms_per_cm is None
    with pytest.raises(ValueError, match="volume"):
        blend([(TAP, 0)])


@pytest.mark.parametrize(
    ("water", "named"),
    [
        (Water({"Ca": -1}), "Ca"),
        (Water(ph=15), "ph"),
        (Water(ec_ms_per_cm=-0.1), "ec_ms"),
        (Water({}, 1, 7, -5), "alk"),
    ],
)
def test_an_impossible_analysis_is_refused_by_name(water: Water, named: str) -> None:
    with pytest.raises(ValueError, match=named):
        check_water(water)


def test_negative_hardness_is_refused() -> None:
    with pytest.raises(ValueError, match="degrees_dh"):
        alkalinity_from_german_degrees(-1)
    with pytest.raises(ValueError, match="bicarbonate"):
        alkalinity_from_bicarbonate(-1)
