"""What a crop used so far: plants, floor, electricity, feed and labour, for the yield to be held against."""

from datetime import date

from growlog.calculations.yield_facts import Inputs
from growlog.records.crop import Crop
from growlog.records.entry import Feed
from growlog.records.room import EnergySharing
from growlog.services.energy.shares import shares_on
from growlog.services.entries import entries_of_crop
from growlog.services.light.statements import standing_in
from growlog.services.money.costs import CropCosts
from growlog.services.money.whose import Placed
from growlog.services.yield_view.season import CropSeason, plants_alive
from growlog.storage.unit_of_work import UnitOfWork


def used_so_far(unit: UnitOfWork, season: CropSeason, costs: CropCosts) -> Inputs:
    """Up to the season's day: plants alive and floor at the last pick, or on the day where nothing was picked."""
    crop = season.crop
    last_pick = max((e.day for e in season.entries if e.kind == "pick"), default=season.as_of)
    feed = _feed_l(unit, crop, season.as_of)
    kwh = costs.energy.kwh
    return Inputs(
        plants_alive=plants_alive(season.plants, last_pick) or None,
        floor_m2=floor_m2(unit, crop, last_pick),
        electricity_kwh=kwh or None,
        feed_l=feed or None,
        labour_minutes=costs.labour_minutes or None,
    )


def floor_m2(unit: UnitOfWork, crop: Crop, day: date) -> float | None:
    """The floor that a crop had in its room on a day: its stated share, or what others leave; None if not known."""
    for placement in unit.placements.all(crop_id=crop.id):
        if not placement.covers(day):
            continue
        room = unit.rooms.get(placement.room_id)
        share = shares_on(standing_in(unit, room.id), EnergySharing.BY_FLOOR, day).get(crop.id)
        return None if not room.floor_m2 or not share else room.floor_m2 * share
    return None


def _feed_l(unit: UnitOfWork, crop: Crop, until: date) -> float:
    placed = Placed.of(unit)
    feeds = [
        (e, e.detail.volume_l) for e in entries_of_crop(unit, crop) if e.day <= until and isinstance(e.detail, Feed)
    ]
    return sum(volume * placed.share(crop, e) for e, volume in feeds if volume)
