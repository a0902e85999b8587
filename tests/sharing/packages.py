"""A small package in which every table has a row, and texts that are hard on CSV and on spreadsheets."""

from datetime import UTC, date, datetime, time

from growlog.records.crop import Crop, Placement, Plant, StartedFrom
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.entry import (
    Calibration,
    Cull,
    CullCause,
    Detail,
    Entry,
    Feed,
    FruitCheck,
    LightChange,
    Note,
    Owner,
    OwnerKind,
    Pick,
    Pollination,
    PollinationWay,
    PottingOn,
    ProblemSeen,
    ProblemSort,
    Reading,
    StageSeen,
    Training,
    Treatment,
)
from growlog.records.logbook import LogbookFacts
from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
from growlog.records.recipe import Mix, MixPart
from growlog.records.room import Lamp, Room, Tank
from growlog.sharing.data_package import Package

AS_OF = date(2026, 3, 7)
PHOTO_BYTES = b"\xff\xd8\xff not much of a picture \xff\xd9"
PHOTO_SHA256 = "9176516ea5ca561069549d186be8cf9317464b9b4ec467eb764400c2714cfb30"
MADE_AT = datetime(2025, 11, 1, 7, 30, 0, tzinfo=UTC)


def identity(number: int) -> str:
    """A UUID for tests."""
    return f"00000000-0000-4000-8000-{number:012d}"


DETAILS: tuple[Detail, ...] = (
    Feed(identity(9), 4.5, 1.85, 5.9, 0.5, 2.4, 6.3),
    Feed(volume_l=2.0, water_only=True),
    Reading(24.5, 61, 21.25, 48, 5230, 410),
    Training(3, 2, 0, None, 1),
    Pollination(2, 5, None, PollinationWay.MALE_FLOWER),
    FruitCheck(2, 1, 0, None, 3),
    Pick(3, None, (181.5, 204.0, 0.1 + 0.2), (Cull(1, CullCause.BLOSSOM_END_ROT, 96.0), Cull(2, CullCause.CRACKED))),
    Pick(4, 612.0),
    StageSeen(("61", "71")),
    ProblemSeen(ProblemSort.PEST, "=aphids", 2),
    Treatment("soft soap", "aphids", "20 mL/L, \"fresh\"", 12, 3),
    LightChange(14.5, time(6, 0), 80, 420),
    PottingOn(15.0, "coir, perlite"),
    Calibration("pH", 7.0, 7.12),
    Note(),
)  # fmt: skip


def full_package(photo_sha256: str = PHOTO_SHA256) -> Package:
    """Every table filled."""
    crop, room, tank = identity(1), identity(2), identity(3)
    return Package(
        logbook=LogbookFacts(identity(0), "Box room", "EUR", MADE_AT),
        as_of=AS_OF,
        rooms=(Room(room, "Böx røøm", 1.2, "Europe/Berlin", "two\r\nlines, \"quoted\""),),
        lamps=(Lamp(identity(4), room, "bar lamp", 2, 100.0, 97.5, 2.7, date(2025, 11, 1)),),
        tanks=(Tank(tank, room, "20 L", 20, True),),
        cultivars=(Cultivar(identity(5), "pattypan", "Boxroom Gold", FloweringHabit.SEPARATE, 58, CountsFrom.SOWING),),
        crops=(Crop(crop, "Boxroom Gold", identity(5), StartedFrom.SEED, date(2025, 11, 15), date(2025, 11, 20),
                    container_l=11, seeds_sown=4, seeds_emerged=3, trying="-20 % light", note="'=kept"),),
        plants=(Plant(identity(6), crop, "1", date(2025, 11, 15)),),
        placements=(Placement(identity(7), crop, room, date(2025, 11, 15), None, tank, 0.5),),
        mixes=(Mix(identity(9), "growth", 1, (MixPart("part A", 2.5), MixPart("part B", 1e-05, "g/L"))),),
        photos=(_photo(photo_sha256),),
        photo_uses=(PhotoUse(identity(11), identity(10), crop, date(2026, 1, 18), time(18, 41, 2), True, "@home"),),
        entries=(
            *(_entry(n, detail, crop) for n, detail in enumerate(DETAILS)),
            Entry(identity(60), Owner(OwnerKind.ROOM, room), date(2026, 1, 1), Reading(22.0)),
            Entry(identity(61), Owner(OwnerKind.TANK, tank), date(2026, 1, 1), Reading(solution_temperature_c=20.0)),
            Entry(identity(62), Owner(OwnerKind.PLANT, identity(6)), date(2026, 1, 1), Note(), note="\ttab"),
        ),
    )  # fmt: skip


def _photo(sha256: str) -> Photo:
    captured = CaptureTime(date(2026, 1, 18), time(18, 41, 2), DateSource.EXIF_ORIGINAL, "25", "+01:00")
    path = f"photos/Boxroom Gold/2026-01-18_184102_{sha256[:8]}.jpg"
    return Photo(identity(10), sha256, path, len(PHOTO_BYTES), 3, 2, "image/jpeg", "IMG 1.jpg", captured, MADE_AT)


def _entry(number: int, detail: Detail, crop: str) -> Entry:
    at = time(8, number) if number % 2 else None
    day = date(2026, 1, 1 + number % 5)
    return Entry(identity(30 + number), Owner(OwnerKind.CROP, crop), day, detail, at, number or None, "", identity(99))
