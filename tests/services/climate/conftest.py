"""A room in a zone with clock changes, and logger files."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.records.room import Room
from growlog.services.open_logbook import OpenLogbook
from growlog.services.rooms import save_thing
from tests.logbooks import furnish

WriteLogger = Callable[..., Path]


@pytest.fixture
def room(log: OpenLogbook, crop: Crop) -> Room:
    """The crop's room, in a zone whose clocks change."""
    made, _ = furnish(log, crop)
    zoned = replace(made, zone="Europe/Berlin")
    save_thing(log, zoned)
    return zoned


@pytest.fixture
def logger_file(tmp_path: Path) -> WriteLogger:
    """Writes a logger file of rows, or of one sample every so many minutes from a moment on."""

    def make(
        rows: Sequence[str] = (),
        *,
        name: str = "logger.csv",
        heading: str = "Time,Temp (°C),RH (%)",
        start: datetime | None = None,
        count: int = 0,
        every_min: int = 10,
        cells: str = "21.5,60",
    ) -> Path:
        path = tmp_path / name
        stamps = [start + timedelta(minutes=i * every_min) for i in range(count)] if start else []
        lines = [heading, *rows, *(f"{s:%Y-%m-%d %H:%M},{cells}" for s in stamps)]
        path.write_text("\n".join(lines), encoding="utf-8")
        return path

    return make
