"""Air of the room, day by day: lamps warm it by day, the house cools it by night, leaves make it damp."""

import math
from dataclasses import dataclass
from datetime import date

from .growth_curves import organ_chance
from .scenario import LIGHT_STEPS, light_on


@dataclass(frozen=True)
class AirOfDay:
    """Air with lamps on (evening reading) and in the night before."""

    day_c: float
    night_c: float
    day_humidity_percent: float
    night_humidity_percent: float
    mean_c: float


def air_of(day: date, leaf_area_m2: float = 0.0) -> AirOfDay:
    """The air of one day; the house is warmest in late July and coolest in late January."""
    chance = organ_chance("air", day.isoformat())
    light = light_on(max(day, LIGHT_STEPS[0].from_day))
    season = math.cos(2 * math.pi * (day.timetuple().tm_yday - 207) / 365.25)
    lamp_warmth_c = 3.6 * light.dimming_percent / 100
    night_c = 20.1 + 1.5 * season + chance.gauss(0, 0.35)
    day_c = 20.9 + 1.6 * season + lamp_warmth_c + chance.gauss(0, 0.45)
    damp = 13 * min(leaf_area_m2, 1.8)
    day_humidity = 47 + 4 * season + damp * 0.9 + chance.gauss(0, 2.0)
    night_humidity = 58 + 4 * season + damp * 1.62 + chance.gauss(0, 2.2)
    mean_c = (day_c * light.hours_on + night_c * (24 - light.hours_on)) / 24
    return AirOfDay(day_c, night_c, day_humidity, night_humidity, mean_c)
