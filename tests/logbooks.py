"""Small logbooks for tests: real files, a real SQLite, a clock that stands still."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from pathlib import Path

from growlog.records.crop import Crop
from growlog.records.entry import Detail, Entry, Owner, OwnerKind
from growlog.services.crops import add_crop, new_crop
from growlog.services.entries import add_entry
from growlog.services.logbooks import new_logbook, open_log
from growlog.services.open_logbook import Clock, OpenLogbook, new_id

TODAY = date(2026, 3, 7)
SOWN = date(2025, 11, 15)


def still_clock(today: date = TODAY) -> Clock:
    """A clock that stands at noon of a day."""
    moment = datetime.combine(today, time(12), UTC)
    return Clock(now=lambda: moment, today=lambda: today)


@contextmanager
def logbook(folder: Path, today: date = TODAY, *, make: bool = True) -> Iterator[OpenLogbook]:
    """An open logbook in folder/room, made new unless told otherwise, closed at the end."""
    clock = still_clock(today)
    if make:
        new_logbook(folder / "room", clock, "Box room")
    log = open_log(folder / "room", clock, folder / "cache")
    try:
        yield log
    finally:
        log.close()


def plant_crop(log: OpenLogbook, name: str = "Boxroom Gold", sown: date = SOWN, species: str = "pattypan") -> Crop:
    """A written crop."""
    crop, cultivar = new_crop(name, species, sown, packet_days=58)
    add_crop(log, crop, cultivar)
    return crop


def entry_on(crop: Crop, day: date, detail: Detail, **more: object) -> Entry:
    """An unwritten entry of a crop."""
    return Entry(new_id(), Owner(OwnerKind.CROP, crop.id), day, detail, **more)  # type: ignore[arg-type]


def write(log: OpenLogbook, crop: Crop, day: date, detail: Detail, **more: object) -> Entry:
    """A written entry of a crop."""
    entry = entry_on(crop, day, detail, **more)
    add_entry(log, entry)
    return entry
