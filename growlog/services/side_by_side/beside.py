"""Crops read to be laid beside each other."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from growlog.calculations.explained_figure import Figure
from growlog.calculations.plant_age import age_on, day_at
from growlog.calculations.yield_curve import CurvePoint, cumulative_yield, first_pick_age
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar
from growlog.services.facts.families import FAMILIES
from growlog.services.facts.source import FactSource, fact_source
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_uses import DayPhoto, photos_of_crop
from growlog.services.yield_view.used import used_so_far
from growlog.words import say


@dataclass(frozen=True)
class CropBeside:
    """A crop as of a day, or up to its clearing. cost_by_age: minor units up to and with a plant age, in order.

    plants_alive, floor_m2: at the last pick, None where not known. photos: the leading one of each plant age.
    """

    crop: Crop
    cultivar: Cultivar
    last_age: int
    curve: tuple[CurvePoint, ...]
    first_pick_age: int | None
    plants_alive: int | None
    floor_m2: float | None
    cost_by_age: tuple[tuple[int, int], ...]
    currency: str
    photos: dict[int, DayPhoto]
    figures: tuple[Figure, ...]

    def day_of(self, age: int) -> date:
        """The civil date of a plant age."""
        return day_at(self.crop.day_zero, age)

    def photo_near(self, age: int, within_days: int = 3) -> tuple[int, DayPhoto] | None:
        """The photo nearest to a plant age, with its own age; None where there is none within so many days."""
        near = min(self.photos, key=lambda own: (abs(own - age), own), default=None)
        return None if near is None or abs(near - age) > within_days else (near, self.photos[near])


def crops_beside(log: OpenLogbook, crop_ids: Sequence[str], as_of: date | None = None) -> list[CropBeside]:
    """The crops in the order asked for, without those that were not sown by the day. Not for the window's thread."""
    day = as_of or log.today()
    with log.unit() as unit:
        sources = [fact_source(unit, crop_id, day) for crop_id in dict.fromkeys(crop_ids)]
        return [_beside(source) for source in sources if source.crop.day_zero <= day]


def not_a_trial() -> str:
    """What is to be said wherever crops stand beside each other."""
    return say("One plant of each is not a trial: a difference may come from the plant, its place or its weeks.")


def _beside(source: FactSource) -> CropBeside:
    crop, season = source.crop, source.season
    used = used_so_far(source.unit, season, source.costs)
    photos: dict[int, DayPhoto] = {}
    for shown in photos_of_crop(source.unit, crop.id):
        if shown.use.day <= source.as_of:
            photos.setdefault(age_on(crop.day_zero, shown.use.day), shown)
    total, costs = 0, []
    for cost_day in source.costs.days:
        total += cost_day.total_minor
        costs.append((cost_day.age, total))
    return CropBeside(
        crop, source.cultivar, source.age, tuple(cumulative_yield(season.points)), first_pick_age(season.points),
        used.plants_alive, used.floor_m2, tuple(costs), source.costs.currency, photos,
        tuple(figure for family in FAMILIES for figure in family.work(source)),
    )  # fmt: skip
