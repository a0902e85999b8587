"""Where labels go: of several places the first that covers nothing, else the one that covers least."""

from collections.abc import Callable, Iterable, Sequence

from PySide6.QtCore import QRectF

_OUTSIDE_WEIGHT = 400.0
_TAKEN_WEIGHT = 200.0  # so much worse than anything else that a place which is free is always taken


def best_place(
    places: Iterable[QRectF],
    taken: Sequence[QRectF],
    bounds: QRectF,
    also_covers: Callable[[QRectF], float] | None = None,
) -> QRectF:
    """The first place inside the bounds that covers nothing taken; else the least bad one.

    also_covers: what else a place costs, in square pixels covered. Raises ValueError if there is no place at all.
    """
    best, least = None, float("inf")
    for place in places:
        cost = _cost(place, taken, bounds) + (also_covers(place) if also_covers else 0.0)
        if cost < least:
            best, least = place, cost
        if cost <= 0:
            break
    if best is None:
        raise ValueError("there is no place to choose from")
    return best


def beside(x: float, tops: Iterable[float], width: float, height: float, gap: float) -> Iterable[QRectF]:
    """At each height in turn a place to the left and one to the right of an upright line."""
    for top in tops:
        yield QRectF(x - gap - width, top, width, height)
        yield QRectF(x + gap, top, width, height)


def _cost(place: QRectF, taken: Sequence[QRectF], bounds: QRectF) -> float:
    inside = _area(place.intersected(bounds))
    outside = max(_area(place) - inside, 0.0)
    return _OUTSIDE_WEIGHT * outside + _TAKEN_WEIGHT * sum(_area(place.intersected(other)) for other in taken)


def _area(box: QRectF) -> float:
    return box.width() * box.height() if box.isValid() else 0.0
