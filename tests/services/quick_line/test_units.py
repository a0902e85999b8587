"""Units as they are written, against the factors of NIST Special Publication 811 (2008), appendix B, from memory."""

import pytest

from growlog.services.quick_line.units import UNITS, unit_at, unit_named
from tests.services.quick_line.lines import detail_of

NIST = {
    "oz": 28.34952,
    "lb": 453.5924,
    "gal": 3.785412,
    "US gal": 3.785412,
    "imp gal": 4.54609,
    "fl oz": 2.957353e-2,
    "tsp": 4.928922e-3,
    "tbsp": 1.478676e-2,
    "in": 2.54,
    "ft": 30.48,
}


@pytest.mark.parametrize(("name", "factor"), NIST.items())
def test_a_unit_is_as_much_as_the_guide_of_nist_says(name: str, factor: float):
    assert UNITS[name].kept(1) == pytest.approx(factor, rel=5e-7)


def test_a_teaspoon_and_a_tablespoon_and_an_ounce_fill_a_gallon():
    assert UNITS["tsp"].kept(768) == pytest.approx(UNITS["tbsp"].kept(256)) == pytest.approx(UNITS["gal"].kept(1))
    assert UNITS["fl oz"].kept(128) == pytest.approx(3.785411784)


def test_temperatures_meet_at_forty_below():
    assert UNITS["°F"].kept(-40) == -40
    assert UNITS["°F"].kept(212) == 100
    assert UNITS["°C"].kept(24.6) == 24.6


@pytest.mark.parametrize("unit", UNITS.values(), ids=lambda u: u.name)
def test_each_spelling_of_a_unit_is_read_back_as_that_unit(unit: object):
    for written in unit.written:  # type: ignore[attr-defined]
        for typed in (written, written.upper(), f" {written}"):
            found = unit_at(f"5{typed} ", 1)
            assert found is not None, typed
            assert found == (unit_named(written), 1 + len(typed))
            assert found[0] is unit


@pytest.mark.parametrize("text", ["grape", "left", "cold", "inside", "in all", "g/L", "mL/L", "minty", "hot", "furry"])
def test_a_word_that_only_begins_like_a_unit_is_none(text: str):
    assert unit_at(f"5 {text}", 1) is None


@pytest.mark.parametrize(
    ("line", "field", "kept"),
    [
        ("feed 1200 mL", "volume_l", 1.2),
        ("feed 2 gal", "volume_l", 7.570823568),
        ("feed 2 imp gal", "volume_l", 9.09218),
        ("feed 1 L EC 1900 uS/cm", "ec_ms_per_cm", 1.9),
        ("feed 1 L EC 1.9 dS/m", "ec_ms_per_cm", 1.9),
        ("feed 1 L EC 1.9 mS", "ec_ms_per_cm", 1.9),
        ("8 fruit 1 lb", "total_weight_g", 453.59237),
        ("8 fruit 16 oz", "total_weight_g", 453.59237),
        ("air 77 °F", "air_temperature_c", 25),
        ("height 18 in", "plant_height_cm", 45.72),
        ('height 18"', "plant_height_cm", 45.72),
        ("height 450 mm", "plant_height_cm", 45),
        ("canopy 600 μmol/m²/s", "canopy_ppfd_umol", 600),
    ],
)
def test_what_is_written_in_any_unit_is_kept_in_one(line: str, field: str, kept: float):
    assert getattr(detail_of(line), field) == pytest.approx(kept, rel=1e-11)
