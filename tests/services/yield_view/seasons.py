"""Seasons for the tests of what the picks say: a crop with picks and pollinations at plant ages."""

from collections.abc import Iterable, Mapping
from datetime import date, timedelta

from growlog.records.crop import Crop
from growlog.records.entry import Detail, FruitCheck, Pick, Pollination
from growlog.services.entries import add_entries
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import SOWN, entry_on

# Every third or fourth day: (plant age, fruit, weight in g)
SEASON = ((44, 1, 80.0), (48, 2, 170.0), (51, 3, 250.0), (55, 3, 260.0), (58, 4, 330.0), (62, 4, 340.0),
          (65, 4, 325.0), (69, 3, 255.0), (72, 3, 240.0), (76, 2, 165.0))  # fmt: skip


def at(age: int) -> date:
    """The day of a plant age of a crop sown on the usual day."""
    return SOWN + timedelta(days=age)


def write_all(log: OpenLogbook, crop: Crop, details: Iterable[tuple[int, Detail]], **more: object) -> None:
    """Writes entries at plant ages as one change."""
    add_entries(log, [entry_on(crop, crop.day_zero + timedelta(days=age), detail, **more) for age, detail in details])


def pick(fruit: int, grams: float | None = None) -> Pick:
    """A pick, weighed or not."""
    return Pick(fruit_count=fruit, total_weight_g=grams)


def picked(log: OpenLogbook, crop: Crop, picks: Iterable[tuple[int, int, float | None]] = SEASON) -> None:
    """Writes picks: plant age, fruit, g."""
    write_all(log, crop, [(age, pick(fruit, grams)) for age, fruit, grams in picks])


def pollinated(log: OpenLogbook, crop: Crop, flowers: Mapping[int, int]) -> None:
    """Writes pollinations: how many at each plant age."""
    write_all(log, crop, [(age, Pollination(females_pollinated=n, males_open=1)) for age, n in flowers.items()])


def seen_open(log: OpenLogbook, crop: Crop, flowers: Mapping[int, int]) -> None:
    """Writes fruit checks that counted open females at each plant age."""
    write_all(log, crop, [(age, FruitCheck(females_open=n)) for age, n in flowers.items()])
