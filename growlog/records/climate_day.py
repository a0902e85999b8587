"""What an air logger recorded, and the days made of it. The days can be made again from the samples at any time."""

from dataclasses import dataclass
from datetime import date, datetime


@dataclass(frozen=True)
class ClimateSample:
    """One line of a logger file. at_utc: with its zone, UTC. A value that the logger did not give is None."""

    at_utc: datetime
    air_temperature_c: float | None = None
    relative_humidity_percent: float | None = None


@dataclass(frozen=True)
class ClimateDay:
    """A room's climate on a civil day of its zone. None: the samples of that day do not tell.

    night_humidity_mean_percent: while the lamps were off. hours_above_humidity: above the humidity that the grower
    watches. longest_gap_minutes: the longest time without a sample.
    """

    day: date
    sample_count: int
    temperature_min_c: float | None = None
    temperature_mean_c: float | None = None
    temperature_max_c: float | None = None
    humidity_min_percent: float | None = None
    humidity_mean_percent: float | None = None
    humidity_max_percent: float | None = None
    night_humidity_mean_percent: float | None = None
    vpd_mean_kpa: float | None = None
    vpd_max_kpa: float | None = None
    dew_point_max_c: float | None = None
    hours_above_humidity: float | None = None
    longest_gap_minutes: float | None = None
