"""Picks of a crop as the points that the yield is computed from."""

from collections.abc import Iterable

from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import PickPoint
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Pick


def pick_points(crop: Crop, entries: Iterable[Entry]) -> list[PickPoint]:
    """One point per pick entry, in order of plant age; a pick weighed in part gives one for each part."""
    points = [
        point
        for e in entries
        if isinstance(e.detail, Pick)
        for point in _points_of(e.detail, age_on(crop.day_zero, e.day))
    ]
    return sorted(points, key=lambda p: p.age)


def _points_of(pick: Pick, age: int) -> list[PickPoint]:
    known_g, weighed = pick.marketable_weight_g, len(pick.weights_g)
    if known_g is None and weighed:  # what was on the scale counts as weighed, the rest is estimated
        rest = PickPoint(age, pick.fruit_count - weighed, None)
        return [PickPoint(age, weighed, sum(pick.weights_g), pick.culled_count), rest]
    return [PickPoint(age, pick.fruit_count, known_g, pick.culled_count)]
