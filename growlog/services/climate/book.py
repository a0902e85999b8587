"""All that the climate's dialog shows of a crop, read in one go so that it can be read off the window's thread."""

from collections.abc import Sequence
from dataclasses import dataclass

from growlog.calculations.degree_day_bases import DegreeDayBase, degree_day_bases
from growlog.calculations.degree_days import DegreeDayMethod
from growlog.records.crop import Crop
from growlog.services.climate.of_crop import ClimateOfCrop, DegreeDaySum, climate_of_crop, sum_degree_days
from growlog.services.open_logbook import OpenLogbook
from growlog.words import say


@dataclass(frozen=True)
class DegreeDayWay:
    """How degree days are counted, in °C. ceiling_c: None for none."""

    method: DegreeDayMethod
    base_c: float
    ceiling_c: float | None = None


@dataclass(frozen=True)
class ClimateBook:
    """A crop's climate, and its degree days (None: no way was chosen, or none fits; then problem says why).

    base: what is known for the species, None where nothing is.
    """

    crop: Crop
    climate: ClimateOfCrop
    base: DegreeDayBase | None
    way: DegreeDayWay | None
    degree_days: DegreeDaySum | None
    problem: str = ""


def climate_book(
    log: OpenLogbook, crop_id: str, humid_above_percent: float, way: DegreeDayWay | None = None
) -> ClimateBook:
    """The book of a crop; without a way the one known for its species is taken. LogbookProblem if it is not there."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        species = unit.cultivars.get(crop.cultivar_id).species
    base = next(iter(degree_day_bases(species)), None)
    taken = way or (None if base is None else way_of(base))
    climate = climate_of_crop(log, crop_id, humid_above_percent=humid_above_percent)
    if taken is None:
        return ClimateBook(crop, climate, base, None, None)
    try:
        found = sum_degree_days(crop, climate.days, log.today(), taken.method, taken.base_c, taken.ceiling_c)
    except ValueError:
        return ClimateBook(crop, climate, base, taken, None, _unfit(taken))
    return ClimateBook(crop, climate, base, taken, found)


def way_of(base: DegreeDayBase) -> DegreeDayWay:
    """The way that a source counts; by the simple average where it names none."""
    ceiling = None if base.ceiling_f is None else _celsius(base.ceiling_f)
    return DegreeDayWay(base.method or DegreeDayMethod.SIMPLE_AVERAGE, _celsius(base.base_f), ceiling)


def warned_ages(climate: ClimateOfCrop, kind: str) -> Sequence[int]:
    """The plant ages with a warning of a kind: "condensation" or "humid-night"."""
    return [warning.age for warning in climate.warnings if warning.kind == kind]


def _unfit(way: DegreeDayWay) -> str:
    if way.method is DegreeDayMethod.MAXIMUM_MIRRORED and way.ceiling_c is None:
        return say("This method needs a ceiling.")
    if way.method in (DegreeDayMethod.SIMPLE_AVERAGE, DegreeDayMethod.PIECEWISE) and way.ceiling_c is not None:
        return say("This method knows no ceiling: leave it empty.")
    return say("The base must lie below the ceiling.")


def _celsius(fahrenheit: float) -> float:
    return round((fahrenheit - 32) / 1.8, 2)
