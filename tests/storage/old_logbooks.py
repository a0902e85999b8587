"""Logbooks of earlier schemas with known content: kept as SQL text, with the records they must give as JSON.

`python -m tests.storage.old_logbooks` writes the files of the present schema; those of earlier ones stay as they are.
"""

import json
import sqlite3
import tempfile
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from growlog.records.plain import from_plain, to_plain
from growlog.storage.database import APPLICATION_ID, HEAD_REVISION
from growlog.storage.logbook_folder import BACKUPS, DATABASE, PHOTOS, LogbookFolder, open_logbook
from growlog.storage.row_translation import RECORD_TYPES

FOLDER = Path(__file__).parents[1] / "data" / "logbooks"


def clock() -> datetime:
    """A clock that stands still."""
    return datetime(2026, 3, 7, 12, tzinfo=UTC)


def restore(revision: str, folder: Path) -> None:
    """Makes the logbook of a revision in a folder."""
    for name in (PHOTOS, BACKUPS):
        (folder / name).mkdir(parents=True)
    connection = sqlite3.connect(folder / DATABASE)
    connection.executescript((FOLDER / f"{revision}.sql").read_text(encoding="utf-8"))
    connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    connection.commit()
    connection.close()


def all_records(disk: LogbookFolder) -> dict[str, list[Any]]:
    """Every record of a logbook, the bin included, as plain values."""
    with disk.unit() as unit:
        found = {name: unit.store(kind).all(removed=True) for name, kind in RECORD_TYPES.items()}
    return {name: sorted((to_plain(r) for r in records), key=_id) for name, records in found.items()}


def known_records(revision: str) -> dict[str, list[Any]]:
    """What the logbook of a revision must give; what the records of that day did not know has its default."""
    known = json.loads((FOLDER / f"{revision}.json").read_text(encoding="utf-8"))
    return {
        name: [to_plain(from_plain(RECORD_TYPES[name], plain)) for plain in records] for name, records in known.items()
    }


def _id(plain: dict[str, Any]) -> str:
    return str(plain["id"])


def _write_present() -> None:
    """A logbook with each record type and each entry kind, one changed and one removed."""
    from growlog.records.climate_day import ClimateDay, ClimateSample
    from growlog.records.crop import Placement, Plant
    from growlog.records.logbook import LogbookFacts
    from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
    from growlog.records.room import Lamp, Room, Tank
    from growlog.storage.logbook_folder import make_logbook
    from tests.storage.examples import PRODUCT, RECORDS, WATER
    from tests.storage.test_unit_of_work import CROP, CULTIVAR, DETAILS, MIX, entry

    day = date(2026, 1, 18)
    capture = CaptureTime(day, None, DateSource.FILE_NAME)
    with tempfile.TemporaryDirectory() as name:
        make_logbook(Path(name) / "room")
        disk = open_logbook(Path(name) / "room", clock)
        with disk.unit() as unit:
            unit.add("1", LogbookFacts("log", "Box room", "EUR", 1500, 420, clock()), Room("room", "Box room", 1.1))
            unit.add("1", Lamp("lamp", "room", "Lamp", 2, None, 120.0, 2.6), Tank("tank", "room", "Tank", 20.0, True))
            unit.add("1", CULTIVAR, replace(CROP, taste="nutty", shop_price_minor_per_kg=490), MIX, PRODUCT, WATER)
            unit.add("1", Plant("plant", "crop", "1", CROP.day_zero))
            unit.add("1", Placement("place", "crop", "room", CROP.day_zero, None, "tank", 0.5, 0.25))
            photo = Photo("photo", "ab" * 32, "photos/a/b.jpg", 9, 3, 4, "image/jpeg", "b.jpg", capture, clock())
            unit.add("1", photo, PhotoUse("use", "photo", "crop", day, leads=True))
            unit.add("1", *(entry(detail, f"e-{kind}") for kind, detail in DETAILS.items()))
            for record in RECORDS:
                unit.add("1", record)
            unit.climate_samples.insert("file", "room-2", [ClimateSample(clock(), 21.5, 60.0)])
            unit.climate_samples.write_days("room-2", [ClimateDay(day, 1, 21.5, 21.5, 21.5)])
            unit.remove("2", unit.entries.get("e-note"))
            unit.commit()
        known = json.dumps(all_records(disk), indent=1, ensure_ascii=False)
        disk.close()
        connection = sqlite3.connect(Path(name) / "room" / DATABASE)
        text = "\n".join(connection.iterdump())
        connection.close()
    (FOLDER / f"{HEAD_REVISION}.json").write_text(known + "\n", encoding="utf-8")
    (FOLDER / f"{HEAD_REVISION}.sql").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    _write_present()
