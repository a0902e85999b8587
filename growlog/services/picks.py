"""Picks of a crop as the points that the yield is computed from."""

from collections.abc import Iterable

from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import PickPoint
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Pick


def pick_points(crop: Crop, entries: Iterable[Entry]) -> list[PickPoint]:
    """One point per pick entry, in order of plant age."""
    points = [
        PickPoint(
            age_on(crop.day_zero, e.day),
            e.detail.fruit_count,
            e.detail.marketable_weight_g,
            e.detail.culled_count,
        )
        for e in entries
        if isinstance(e.detail, Pick)
    ]
    return sorted(points, key=lambda p: p.age)
