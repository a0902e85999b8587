"""Small logbooks for tests: real files, a real SQLite, a clock that stands still."""

import atexit
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from functools import cache
from pathlib import Path

from sqlalchemy import event

from growlog.photos.decode_pool import DecodePool
from growlog.photos.preview_cache import PreviewCache
from growlog.records.crop import Crop, Plant
from growlog.records.entry import Detail, Entry, Owner, OwnerKind
from growlog.records.plain import to_plain
from growlog.records.room import Room, Tank
from growlog.services.crops import add_crop, new_crop
from growlog.services.entries import add_entry
from growlog.services.logbooks import new_logbook, open_log
from growlog.services.open_logbook import Clock, OpenLogbook, new_id
from growlog.services.rooms import place_crop, save_thing

TODAY = date(2026, 3, 7)
SOWN = date(2025, 11, 15)


def still_clock(today: date = TODAY, hour: int = 12) -> Clock:
    """A clock that stands at an hour of a day, noon if not given."""
    moment = datetime.combine(today, time(hour), UTC)
    return Clock(now=lambda: moment, today=lambda: today)


class SharedReaders(DecodePool):
    """Readers that outlive the logbooks that use them; `end` stops them. Starting workers takes most of a test."""

    def __init__(self, cache_folder: Path) -> None:
        super().__init__(cache_folder)
        self.cache = PreviewCache(cache_folder)

    def close(self) -> None:
        """Does nothing: a logbook that closes leaves them running."""

    def end(self) -> None:
        """Stops the workers."""
        super().close()


@cache
def _empty_logbook() -> Path:
    """An empty logbook made once in this process; making one runs all schema steps, copying it does not."""
    home = Path(tempfile.mkdtemp(prefix="empty-logbook-"))
    atexit.register(shutil.rmtree, home, ignore_errors=True)
    new_logbook(home / "room", still_clock(), "Box room")
    (home / "room" / "logbook.lock").unlink(missing_ok=True)
    return home / "room"


def _without_waiting(connection: sqlite3.Connection, _record: object) -> None:
    # Waiting for the disk after each commit is half of a test's time; that it waits is tested with storage.
    connection.execute("PRAGMA synchronous = OFF")


@contextmanager
def logbook(
    folder: Path, today: date = TODAY, *, make: bool = True, readers: SharedReaders | None = None
) -> Iterator[OpenLogbook]:
    """An open logbook in folder/room, made new unless told otherwise, closed at the end.

    readers: shared ones with their preview cache instead of its own.
    """
    clock = still_clock(today)
    if make:
        shutil.copytree(_empty_logbook(), folder / "room")
    log = open_log(folder / "room", clock, folder / "cache")
    event.listen(log.disk._engine, "connect", _without_waiting)
    if readers is not None:
        log.readers, log.previews = readers, readers.cache
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


def content_of(log: OpenLogbook) -> dict[str, list[dict[str, object]]]:
    """All that the logbook holds by record type, without versions, the bin left out: what undo must bring back."""
    with log.unit() as unit:
        stores = (unit.rooms, unit.lamps, unit.tanks, unit.cultivars, unit.crops, unit.plants, unit.placements,
                  unit.mixes, unit.photos, unit.photo_uses, unit.entries)  # fmt: skip
        records = [record for store in stores for record in store.all()]  # type: ignore[attr-defined]
    found: dict[str, list[dict[str, object]]] = {}
    for record in sorted(records, key=lambda r: r.id):
        plain = {k: v for k, v in to_plain(record).items() if k != "version"}
        found.setdefault(type(record).__name__, []).append(plain)
    return found


def furnish(log: OpenLogbook, crop: Crop, from_day: date = SOWN, share: float = 0.5) -> tuple[Room, Tank]:
    """A room with a tank, and the crop in it from a day on."""
    room = Room(new_id(), "Box room", 1.2)
    tank = Tank(new_id(), room.id, "Blue tank", 20)
    save_thing(log, room)
    save_thing(log, tank)
    place_crop(log, crop.id, room.id, from_day, floor_share=share, tank_id=tank.id)
    return room, tank


def write_for(log: OpenLogbook, kind: OwnerKind, owner_id: str, day: date, detail: Detail) -> Entry:
    """A written entry of a plant, a tank or a room."""
    entry = Entry(new_id(), Owner(kind, owner_id), day, detail)
    add_entry(log, entry)
    return entry


def add_plant(log: OpenLogbook, crop: Crop, label: str = "2", from_day: date = SOWN) -> Plant:
    """Another written plant of a crop."""
    plant = Plant(new_id(), crop.id, label, from_day)
    with log.unit() as unit:
        unit.add(new_id(), plant)
        unit.commit()
    return plant
