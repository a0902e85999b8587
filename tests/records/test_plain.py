"""Records to plain values and back, for the history and for files."""

import json
from datetime import UTC, date, datetime, time

import pytest

from growlog.records.crop import Crop, StartedFrom
from growlog.records.entry import Cull, CullCause, Entry, LightChange, Owner, OwnerKind, Pick, StageSeen
from growlog.records.photo import CaptureTime, DateSource, Photo
from growlog.records.plain import from_plain, to_plain
from growlog.records.recipe import Mix, MixPart

ROOM = Owner(OwnerKind.ROOM, "r")
DAY = date(2026, 1, 18)
MOMENT = datetime(2026, 1, 18, 18, 41, 2, tzinfo=UTC)
RECORDS = [
    Crop("1", "Boxroom Gold", "c", sown_on=DAY, started_from=StartedFrom.SEED, removed_at=MOMENT),
    Entry("2", ROOM, DAY, Pick(2, None, (80.0, 90.5), (Cull(1, CullCause.CRACKED, 40.0),)), time(18, 20), 4, "ripe"),
    Entry("3", ROOM, DAY, LightChange(16.0, time(6), 40.0, 200.0)),
    Entry("4", ROOM, DAY, StageSeen(("61", "109"))),
    Mix("5", "A + B", 2, (MixPart("A", 2.0), MixPart("salt", 0.15, "g/L"))),
    Photo("6", "ab" * 32, "photos/x/y.jpg", 1, 2, 3, "image/jpeg", "y.jpg",
          CaptureTime(DAY, time(18, 41, 2), DateSource.EXIF_ORIGINAL, "25", "+01:00"), MOMENT),
]  # fmt: skip


@pytest.mark.parametrize("record", RECORDS, ids=lambda r: type(r).__name__ + r.id)
def test_a_record_comes_back_from_json_as_it_was(record: object) -> None:
    text = json.dumps(to_plain(record))
    assert from_plain(type(record), json.loads(text)) == record
