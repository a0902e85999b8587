"""A logger's file brought in, against a plain loop that splits its lines and inserts them into an empty database."""

import csv
import sqlite3
from datetime import datetime, timedelta
from pathlib import Path
from time import perf_counter

from growlog.records.room import Room
from growlog.services.climate.carry_in import carry_in_logger
from growlog.services.climate.logger_plan import plan_logger_file
from growlog.services.open_logbook import new_id
from growlog.services.rooms import save_thing
from tests.logbooks import logbook


def make_file(path: Path, rows: int) -> Path:
    """A sample a minute."""
    start = datetime(2025, 1, 1)  # noqa: DTZ001 - the wall clock of a room in UTC
    with path.open("w", encoding="utf-8") as file:
        file.write("Time,Temperature (°C),Humidity (%)\n")
        for i in range(rows):
            stamp = (start + timedelta(minutes=i)).isoformat(sep=" ")
            file.write(f"{stamp},{20 + i % 50 / 10:.1f},{50 + i % 30}\n")
    return path


def plain(path: Path, database: Path) -> float:
    """What cannot be avoided: split, read two numbers, insert."""
    start = perf_counter()
    connection = sqlite3.connect(database)
    connection.execute("CREATE TABLE sample (at TEXT PRIMARY KEY, t REAL, h REAL) WITHOUT ROWID")
    with path.open(encoding="utf-8", newline="") as file:
        reader = csv.reader(file)
        next(reader)
        rows = ((at, float(t), float(h)) for at, t, h in reader)
        connection.executemany("INSERT INTO sample VALUES (?, ?, ?)", rows)
    connection.commit()
    connection.close()
    return perf_counter() - start


def ratio(folder: Path, rows: int, rounds: int) -> float:
    """The best of each, run in turn so that a noisy minute meets both."""
    path = make_file(folder / "logger.csv", rows)
    pairs = [(_ours(folder / f"ours-{i}", path), plain(path, folder / f"plain-{i}.sqlite3")) for i in range(rounds)]
    return min(p[0] for p in pairs) / min(p[1] for p in pairs)


def _ours(folder: Path, path: Path) -> float:
    folder.mkdir()
    with logbook(folder) as log:
        room = Room(new_id(), "Box room")
        save_thing(log, room)
        start = perf_counter()
        plan = plan_logger_file(log, path, room.id)
        if plan is None or carry_in_logger(log, plan) is None:
            raise RuntimeError("the file did not go in")
        return perf_counter() - start
