"""Source waters: saved, blended, entered in the units of a report."""

from dataclasses import replace

import pytest

from growlog.records.problems import RecordRefused
from growlog.records.recipe import WaterShare
from growlog.services.open_logbook import OpenLogbook
from growlog.services.undo import undo
from growlog.services.waters import (
    ALKALINITY_UNITS,
    alkalinity_of,
    blend_name,
    blended,
    calc_water,
    check_water,
    new_water,
    remove_water,
    save_water,
    source_water,
    waters_of,
)

TAP = replace(new_water("tap"), ca_mg_per_l=80.0, so4_mg_per_l=96.06, ec_ms_per_cm=0.6, alkalinity_mg_per_l_caco3=200.0)
RAIN = new_water("rain")
BY_ID = {w.id: w for w in (TAP, RAIN)}


def test_a_water_is_saved_changed_removed_and_each_is_taken_back(log: OpenLogbook) -> None:
    saved = save_water(log, TAP)
    changed = save_water(log, replace(TAP, ca_mg_per_l=90.0))
    assert waters_of(log)[0].ca_mg_per_l == 90
    undo(log, changed)
    removed = remove_water(log, TAP.id)
    assert waters_of(log) == []
    undo(log, removed)
    assert waters_of(log)[0].ca_mg_per_l == 80
    undo(log, saved)
    assert waters_of(log) == []


def test_a_wrong_water_is_told_beside_its_field(log: OpenLogbook) -> None:
    save_water(log, TAP)
    wrong = replace(new_water("TAP"), ca_mg_per_l=-1.0, ph=15.0)
    assert sorted(p.field for p in check_water(log, wrong)) == ["ca_mg_per_l", "name", "ph"]
    with pytest.raises(RecordRefused):
        save_water(log, wrong)


def test_alkalinity_is_the_same_in_every_unit_of_a_report() -> None:
    # By definition: 1 °dH is 10 mg/L CaO, 17.85 mg/L CaCO3; 61.02 mg/L bicarbonate is 1 meq/L, 50.04 mg/L CaCO3.
    values = [alkalinity_of(v, u) for v, u in zip((178.5, 10, 217.6, 3.567), ALKALINITY_UNITS, strict=True)]
    assert values == pytest.approx([178.5] * 4, rel=1e-3)
    with pytest.raises(ValueError, match="grains"):
        alkalinity_of(1, "grains")


def test_sulfate_of_a_report_is_counted_as_sulfur() -> None:
    # SO4 to S: 0.33376 by atomic weights; Virginia Tech SPES-201NP prints 0.3339.
    assert calc_water(TAP).nutrients_mg_per_l["S"] == pytest.approx(96.06 * 0.3339, rel=1e-3)
    back = source_water(calc_water(TAP), "tap")
    assert replace(back, id=TAP.id, so4_mg_per_l=TAP.so4_mg_per_l) == TAP
    assert back.so4_mg_per_l == pytest.approx(96.06)


def test_half_rain_halves_the_tap() -> None:
    halves = (WaterShare(TAP.id, 0.5), WaterShare(RAIN.id, 0.5))
    water = blended(BY_ID, halves)
    assert (water.nutrients_mg_per_l["Ca"], water.ec_ms_per_cm, water.alkalinity_mg_per_l_caco3) == (40, 0.3, 100)
    assert blend_name(BY_ID, halves) == "tap 50 %, rain 50 %"
    assert blend_name(BY_ID, ()) == "rain or reverse osmosis"
    assert blended(BY_ID, (WaterShare(TAP.id, 1.0),)) == calc_water(TAP)
    assert blended({}, halves).nutrients_mg_per_l == {}
