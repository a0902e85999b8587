"""The entries that belong to the room: lamps, air in the evening, meters."""

from collections.abc import Callable
from datetime import date, time, timedelta

from .climate import air_of
from .events import Event, LightChange, MeterCalibration, RoomReading
from .growth_curves import organ_chance
from .power_records import meter_events
from .scenario import LAST_DAY, LIGHT_STEPS
from .times import at_about

CALIBRATION_EVERY_D = 30
SKIPPED_EVENINGS = 0.03
KCL_STANDARD_MS_CM = 1.413  # 0.01 mol/L potassium chloride at 25 °C, the usual meter standard
PH_STANDARDS = (7.01, 4.01)


def room_entries(leaf_area_m2: Callable[[date], float], away: frozenset[date]) -> list[Event]:
    """Everything written about the room."""
    written = [*_light_changes(), *_air(leaf_area_m2), *_calibrations(), *meter_events()]
    return sorted((event for event in written if event.day not in away), key=lambda event: (event.day, event.at))


def _light_changes() -> list[Event]:
    return [
        LightChange(
            crop=None,
            day=step.from_day,
            at=time(9, 30),
            labour_min=5,
            hours_on=step.hours_on,
            dimming_percent=step.dimming_percent,
            on_at=step.on_at,
            ppfd_umol_m2_s=step.ppfd_umol_m2_s,
            note=step.why,
        )
        for step in LIGHT_STEPS
    ]


def _air(leaf_area_m2: Callable[[date], float]) -> list[Event]:
    written: list[Event] = []
    day = LIGHT_STEPS[0].from_day
    while day <= LAST_DAY:
        if organ_chance("evening", day.isoformat()).random() >= SKIPPED_EVENINGS:
            air = air_of(day, leaf_area_m2(day))
            written.append(
                RoomReading(
                    crop=None,
                    day=day,
                    at=at_about(20, 0, "air", day.isoformat()),
                    labour_min=1,
                    air_c=round(air.day_c, 1),
                    humidity_percent=float(round(air.day_humidity_percent)),
                    night_air_c=round(air.night_c, 1),
                    night_humidity_percent=float(round(air.night_humidity_percent)),
                )
            )
        day += timedelta(days=1)
    return written


def _calibrations() -> list[Event]:
    written: list[Event] = []
    day = LIGHT_STEPS[0].from_day + timedelta(days=5)
    while day <= LAST_DAY:
        chance = organ_chance("calibration", day.isoformat())
        off = chance.uniform(-0.035, 0.05)
        written.append(
            MeterCalibration(
                crop=None,
                day=day,
                at=time(10, 15),
                labour_min=6,
                meter="EC",
                standard_value=KCL_STANDARD_MS_CM,
                standard_unit="mS/cm",
                read_before=round(KCL_STANDARD_MS_CM + off, 2),
                read_after=1.41,
            )
        )
        for minute, standard in zip((25, 32), PH_STANDARDS, strict=True):
            written.append(
                MeterCalibration(
                    crop=None,
                    day=day,
                    at=time(10, minute),
                    labour_min=4,
                    meter="pH",
                    standard_value=standard,
                    standard_unit="pH",
                    read_before=round(standard + chance.uniform(-0.12, 0.15), 2),
                    read_after=standard,
                )
            )
        day += timedelta(days=CALIBRATION_EVERY_D)
    return written
