"""Which other photos a photo is worth being laid beside."""

from collections.abc import Sequence

_BACK = (7, 14, 21, 28)


def suggested_age(age: int, photo_ages: Sequence[int]) -> int | None:
    """The age with a photo that is nearest to a week before, else the nearest other one; None if there is none."""
    earlier = [a for a in photo_ages if a < age]
    others = earlier or [a for a in photo_ages if a != age]
    return min(others, key=lambda a: (abs(a - (age - 7)), a), default=None)


def suggested_ages(age: int, photo_ages: Sequence[int]) -> list[int]:
    """The first and the last photo, and those nearest to one to four weeks before and one after, in order."""
    others = sorted(a for a in photo_ages if a != age)
    if not others:
        return []
    wanted = [age - days for days in _BACK if age - days >= others[0]] + [age + 7]
    near = {min(others, key=lambda a: (abs(a - w), a)) for w in wanted}
    return sorted(near | {others[0], others[-1]})
