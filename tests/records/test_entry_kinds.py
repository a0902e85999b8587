"""What each kind of entry refuses, asks and says."""

from datetime import time

import pytest

from growlog.records.entry import (
    KINDS,
    Calibration,
    Cull,
    CullCause,
    Detail,
    Feed,
    FlowerFate,
    FruitCheck,
    LightChange,
    MeterReading,
    Pick,
    Pollination,
    PollinationWay,
    PottingOn,
    ProblemSeen,
    Reading,
    StageSeen,
    TaggedFruit,
    TagSeen,
    TankCare,
    TankDose,
    TankWork,
    Training,
    Treatment,
)


@pytest.mark.parametrize("kind", [k for k in KINDS if k not in ("note", "potting-on", "calibration")])
def test_an_empty_entry_is_refused(kind: str) -> None:
    firm = [p for p in KINDS[kind]().problems() if not p.asks]
    assert firm


@pytest.mark.parametrize(
    ("detail", "field"),
    [
        (Pick(2, 100.0, (60.0, 60.0)), "total_weight_g"),
        (Pick(1, None, (60.0, 60.0)), "weights_g"),
        (Pick(0, 80.0, (), (Cull(1, CullCause.CRACKED),)), "total_weight_g"),
        (Pick(-1), "fruit_count"),
        (Pick(1, None, (), (Cull(0, CullCause.CRACKED),)), "culls"),
        (Feed(mix_id="m", volume_l=1, water_only=True), "mix_id"),
        (StageSeen(("6x",)), "codes"),
        (StageSeen(("6",)), "codes"),
        (ProblemSeen(name="thrips", severity=4), "severity"),
        (LightChange(photoperiod_h=25), "photoperiod_h"),
        (Feed(volume_l=1, strength_percent=401), "strength_percent"),
        (Reading(canopy_lux=-1), "canopy_lux"),
        (Reading(lamp_kind="led-white"), "air_temperature_c"),
        (Pollination(1, tags=("11", "12")), "tags"),
        (Pollination(2, tags=("11", "11 ")), "tags"),
        (Pollination(2, tags=("11", " ")), "tags"),
        (FruitCheck(tags_seen=(TagSeen("11", FlowerFate.SET), TagSeen("11", FlowerFate.DROPPED))), "tags_seen"),
        (Pick(1, tagged=(TaggedFruit("11"), TaggedFruit("12"))), "tagged"),
        (Pick(1, tagged=(TaggedFruit("11", 0.0),)), "tagged"),
        (TankCare(volume_before_l=10, drained_l=10.5), "drained_l"),
        (TankCare(doses=(TankDose("acid", -1.0),)), "doses"),
        (TankCare(ph_after=15), "ph_after"),
        (MeterReading(-1.0), "meter_kwh"),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(detail: Detail, field: str) -> None:
    assert field in {p.field for p in detail.problems() if not p.asks}


def test_a_tag_on_a_culled_fruit_is_a_tag_of_the_pick() -> None:
    assert Pick(0, culls=(Cull(1, CullCause.CRACKED),), tagged=(TaggedFruit("11"),)).problems() == []


def test_a_fruit_check_may_see_nothing_but_tags() -> None:
    assert FruitCheck(tags_seen=(TagSeen("11", FlowerFate.SET),)).problems() == []


def test_a_meter_at_nought_was_read() -> None:
    assert MeterReading(0.0).problems() == []


def test_a_humidity_of_a_share_is_asked_about() -> None:
    problems = Reading(relative_humidity_percent=0.6).problems()
    assert problems
    assert all(p.asks for p in problems)


def test_more_drain_than_feed_is_asked_about() -> None:
    assert [p.asks for p in Feed(volume_l=1, drain_l=1.5).problems()] == [True]


def test_the_weight_of_a_pick_is_its_total_or_the_sum_of_all_its_fruit() -> None:
    assert Pick(2, 171.0).marketable_weight_g == 171.0
    assert Pick(2, None, (93.0, 78.0)).marketable_weight_g == 171.0
    assert Pick(3, None, (93.0, 78.0)).marketable_weight_g is None
    assert Pick(0, culls=(Cull(1, CullCause.OVERSIZE),)).marketable_weight_g == 0.0


@pytest.mark.parametrize(
    ("detail", "title", "more"),
    [
        (Pick(1, 86.0), "Picked 1, 86\u2009g", ""),
        (Pick(2), "Picked 2, not weighed", ""),
        (Feed(volume_l=2.8, ec_ms_per_cm=1.88, ph=5.9, drain_l=0.6, drain_ec_ms_per_cm=2.24), "Feed 2.8\u2009L",
         "EC 1.88\u2009mS/cm, pH 5.9; drain 0.6\u2009L, EC 2.24"),
        (Pollination(2, 9, None, PollinationWay.BRUSH), "Pollinated 2 flowers", "9 males open, brush"),
        (Training(2, stems_tied=1), "2 old leaves removed", "stems tied: 1"),
        (Reading(24.6, 58), "Air 24.6\u2009°C, 58\u2009% RH", ""),
        (FruitCheck(hanging=0, dropped=2), "0 fruit hanging", "dropped 2"),
        (StageSeen(("61", "71")), "Growth stage 61/71", ""),
        (LightChange(16, time(6), 40, 200), "Light 16\u2009h a day", "on at 06:00, lamps at 40\u2009%,"
         " canopy 200\u2009µmol/m²/s"),
        (Treatment("bicarbonate", "mildew", harvest_interval_days=1), "bicarbonate against mildew",
         "no pick for 1 day"),
        (PottingOn(11, "coir"), "Potted on, 11.0\u2009L", "coir"),
        (Calibration("pH", 7.0, 7.2), "pH meter calibrated", "reference 7.00, read 7.20 before"),
        (TankCare(TankWork.PH, ph_before=6.4, ph_after=5.8, doses=(TankDose("acid", 3.0),)), "pH moved",
         "acid 3\u2009mL, pH 6.4 to 5.8"),
        (MeterReading(10432.5, starts_anew=True), "Meter 10432.5\u2009kWh", "counting starts anew"),
        (Pick(2, 171.0, tagged=(TaggedFruit("11"), TaggedFruit("12"))), "Picked 2, 171\u2009g", "tags 11, 12"),
    ],
)  # fmt: skip
def test_an_entry_says_what_happened(detail: Detail, title: str, more: str) -> None:
    assert detail.problems() == []
    assert detail.summary() == title
    assert detail.second_line() == more
