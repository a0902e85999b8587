"""The grower's own finished crops of a species, as what is usual for the next one."""

from dataclasses import dataclass
from datetime import date
from statistics import median

from growlog.calculations.curve_fit import earlier_season
from growlog.calculations.pick_intervals import Measure, PickIntervals, pick_intervals
from growlog.calculations.plant_age import age_on
from growlog.calculations.season_prior import EarlierSeason, SeasonPrior, season_like
from growlog.calculations.yield_forecast import LEAST_DAYS, LEAST_FRUIT, LEAST_SESSIONS, USUAL_SEASON_DAYS
from growlog.records.crop import Crop
from growlog.services.entries import own_entries
from growlog.services.picks import pick_points
from growlog.services.yield_view.usual_days import table_name
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class EarlierCrops:
    """prior: what is usual, moved towards them. usual_days: from first pick to clearing. count: how many there are."""

    prior: SeasonPrior
    usual_days: int
    count: int


def earlier_crops(unit: UnitOfWork, crop: Crop, species: str, as_of: date) -> EarlierCrops:
    """Those of the same kind of plant that were cleared by a day and had picks enough for a curve."""
    kinds = {c.id for c in unit.cultivars.all(removed=True) if table_name(c.species) == table_name(species)}
    finished = [c for c in unit.crops.all() if c.id != crop.id and c.cultivar_id in kinds and _was_cleared(c, as_of)]
    entries = own_entries(unit, [c.id for c in finished]) if finished else {}
    seasons: list[EarlierSeason] = []
    days: list[int] = []
    for other in finished:
        picks = pick_intervals(pick_points(other, entries[other.id]), Measure.FRUIT)
        if isinstance(picks, PickIntervals) and _is_enough(picks) and other.cleared_on is not None:
            cleared = age_on(other.day_zero, other.cleared_on)
            seasons.append(earlier_season(picks, cleared))
            days.append(cleared - round(picks.first_age))
    usual_days = max(14, round(median(days))) if days else USUAL_SEASON_DAYS
    return EarlierCrops(season_like(seasons), usual_days, len(seasons))


def _was_cleared(crop: Crop, as_of: date) -> bool:
    return crop.cleared_on is not None and crop.cleared_on <= as_of


def _is_enough(picks: PickIntervals) -> bool:
    """As many as a forecast would ask for."""
    long_enough = picks.edges[-1] - picks.first_age >= LEAST_DAYS
    return picks.sessions >= LEAST_SESSIONS and long_enough and picks.total >= LEAST_FRUIT
