"""A small package in which every table has a row, and texts that are hard on CSV and on spreadsheets."""

from datetime import UTC, date, datetime, time
from typing import Any

from growlog.records.climate_day import ClimateSample
from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.records.crop import Crop, Placement, Plant, StartedFrom
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.decision import Decision, QuotedFigure, ReviewPhoto, Verdict
from growlog.records.entry import (
    Calibration,
    Cull,
    CullCause,
    Detail,
    Entry,
    Feed,
    FlowerFate,
    FruitCheck,
    LightChange,
    MeterReading,
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
    TaggedFruit,
    TagSeen,
    TankCare,
    TankDose,
    TankWork,
    Training,
    Treatment,
)
from growlog.records.feed_plan import FeedStep
from growlog.records.feed_target import FeedTarget, TargetRange
from growlog.records.light_plan import LightStep
from growlog.records.logbook import LogbookFacts
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct, StockMove, StockMoveSort
from growlog.records.purchase import Purchase, PurchaseSort
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.records.room import Device, DeviceSort, EnergySharing, Lamp, Room, Tank
from growlog.records.routine import DueAnswer, DueOutcome, Routine, RoutineFor, RoutineWhen
from growlog.records.source_water import SourceWater
from growlog.records.tariff import Tariff, TariffBand
from growlog.sharing.data_package import Package

AS_OF = date(2026, 3, 7)
PHOTO_BYTES = b"\xff\xd8\xff not much of a picture \xff\xd9"
PHOTO_SHA256 = "9176516ea5ca561069549d186be8cf9317464b9b4ec467eb764400c2714cfb30"
MADE_AT = datetime(2025, 11, 1, 7, 30, 0, tzinfo=UTC)
AS_OF_NOON = datetime(2026, 3, 7, 12, 0, 0, tzinfo=UTC)


def identity(number: int) -> str:
    """A UUID for tests."""
    return f"00000000-0000-4000-8000-{number:012d}"


DETAILS: tuple[Detail, ...] = (
    Feed(identity(9), 80.0, 4.5, 1.85, 5.9, 0.5, 2.4, 6.3),
    Feed(volume_l=2.0, water_only=True),
    Reading(24.5, 61, 21.25, 48, 5230, 410, 24000.0, "led-white"),
    Training(3, 2, 0, None, 1),
    Pollination(2, 5, None, PollinationWay.MALE_FLOWER, ("11", "=12")),
    FruitCheck(2, 1, 0, None, 3, (TagSeen("11", FlowerFate.SET), TagSeen("=12", FlowerFate.DROPPED))),
    Pick(3, None, (181.5, 204.0, 0.1 + 0.2), (Cull(1, CullCause.BLOSSOM_END_ROT, 96.0), Cull(2, CullCause.CRACKED))),
    Pick(4, 612.0, tagged=(TaggedFruit("11", 181.5), TaggedFruit("13"))),
    StageSeen(("61", "71")),
    ProblemSeen(ProblemSort.PEST, "=aphids", 2),
    Treatment("soft soap", "aphids", "20 mL/L, \"fresh\"", 12, 3),
    LightChange(14.5, time(6, 0), 80, 420),
    PottingOn(15.0, "coir, perlite"),
    Calibration("pH", 7.0, 7.12),
    Note(),
    TankCare(TankWork.RENEWAL, 18.0, 20.0, 17.5, 2.1, 1.8, 6.6, 5.8, identity(9),
             (TankDose("part A", 40.0, "mL", identity(12)), TankDose("acid", 3.5))),
    MeterReading(10432.5, starts_anew=True),
)  # fmt: skip


def full_package(photo_sha256: str = PHOTO_SHA256) -> Package:
    """Every table filled."""
    crop, room, tank = identity(1), identity(2), identity(3)
    return Package(
        logbook=LogbookFacts(identity(0), "Box room", "EUR", 1500, 420, MADE_AT),
        as_of=AS_OF,
        rooms=(Room(room, "Böx røøm", 1.2, "Europe/Berlin", EnergySharing.BY_HAND, "two\r\nlines, \"quoted\""),),
        lamps=(Lamp(identity(4), room, "bar lamp", 2, 100.0, 97.5, 2.7, date(2025, 11, 1), None, "led-white",
                    4.0, 50000.0, date(2025, 11, 2), 9900),),
        tanks=(Tank(tank, room, "20 L", 20, True),),
        cultivars=(Cultivar(identity(5), "pattypan", "Boxroom Gold", FloweringHabit.SEPARATE, 58, CountsFrom.SOWING),),
        crops=(Crop(crop, "Boxroom Gold", identity(5), StartedFrom.SEED, date(2025, 11, 15), date(2025, 11, 20),
                    container_l=11, seeds_sown=4, seeds_emerged=3, trying="-20 % light", taste="nutty",
                    fruit_shape="flat", keeping="a week", shop_price_minor_per_kg=490,
                    shop_price_minor_per_fruit=80, note="'=kept"),),
        plants=(Plant(identity(6), crop, "1", date(2025, 11, 15)),),
        placements=(Placement(identity(7), crop, room, date(2025, 11, 15), None, tank, 0.5, 0.25),),
        mixes=(Mix(identity(9), "growth", 1, (MixPart("part A", 2.5, "mL/L", identity(12)),
                   MixPart("part B", 1e-05, "g/L")), "", (WaterShare(identity(13), 1.0),)),),
        photos=(_photo(photo_sha256),),
        photo_uses=(PhotoUse(identity(11), identity(10), crop, date(2026, 1, 18), time(18, 41, 2), True, "@home"),),
        entries=(
            *(_entry(n, detail, crop) for n, detail in enumerate(DETAILS)),
            Entry(identity(60), Owner(OwnerKind.ROOM, room), date(2026, 1, 1), Reading(22.0)),
            Entry(identity(61), Owner(OwnerKind.TANK, tank), date(2026, 1, 1), Reading(solution_temperature_c=20.0)),
            Entry(identity(62), Owner(OwnerKind.PLANT, identity(6)), date(2026, 1, 1), Note(), note="\ttab"),
        ),
        **later_records(crop, room),
    )  # fmt: skip


def later_records(crop: str, room: str) -> dict[str, Any]:
    """What packages of the first format did not know, by the package's field."""
    day, note = date(2026, 1, 18), "=note"
    return {
        "products": (ShelfProduct(identity(12), "part A", ProductForm.LIQUID, LabelBasis.BY_WEIGHT, 1.17,
                                  (LabelShare("n_nitrate", 2.4), LabelShare("ca", 3.1)), "Fe-DTPA", 2.0, "mL/L", 4.0,
                                  1000.0, 1450, note),),
        "waters": (SourceWater(identity(13), "Tap", day, 0.62, 7.4, 180.0, 71.0, 9.0, 14.0, 22.0, 31.0, 2.0, 1.5,
                               note),),
        "feed_targets": (FeedTarget(identity(59), "Fruit", (TargetRange("N", 140.0, 180.0), TargetRange("Ca", 150.0)),
                                    note),),
        "stock_moves": (StockMove(identity(14), identity(12), day, StockMoveSort.USED, 40.0, None, identity(45),
                                  note),),
        "routines": (Routine(identity(15), "Look under leaves", RoutineFor.CROP, RoutineWhen.EVERY_DAYS, crop, 3, None,
                             day, date(2026, 3, 1), "problem", in_the_morning=True, is_on=False, note=note),),
        "due_answers": (DueAnswer(identity(16), "routine:x", day, DueOutcome.DONE, crop, None, "", identity(32)),),
        "feed_steps": (FeedStep(identity(17), crop, 21, identity(9), 75.0, 1.5, note),),
        "light_steps": (LightStep(identity(18), room, None, crop, 30, 14.5, time(6), 80.0, 420.0, (identity(4),),
                                  note),),
        "devices": (Device(identity(19), room, "Fan", DeviceSort.FAN, 18.0, 12.0, False, 50.0, day),),
        "tariffs": (Tariff(identity(20), "Two rates", day, (TariffBand(time(6), time(22), "0.31"),
                           TariffBand(time(22), time(6), "0.2045")), 42, note),),
        "purchases": (Purchase(identity(21), "Pots", day, PurchaseSort.CONTAINERS, 1800, crop, None, 4, note),),
        "decisions": (Decision(identity(22), crop, day, Verdict.REGROW_WITH_CHANGES, "Tasty.", "Sow later.",
                               (QuotedFigure("cost", "Cost", "9.10"),)),),
        "review_photos": (ReviewPhoto(identity(23), crop, identity(11), 1),),
        "logger_files": (LoggerFile(identity(24), room, "air.csv", "ef" * 32, 2, MADE_AT, AS_OF_NOON, MADE_AT),),
        "column_maps": (ColumnMap(identity(25), "date\tweight", (MappedColumn("Date", "day"), MappedColumn("Weight",
                                  "pick.total_weight_g", "kg", cumulative=True)), "dmy", ","),),
        "climate_samples": {identity(24): (ClimateSample(MADE_AT, 21.5, 60.0), ClimateSample(AS_OF_NOON, None, 61.0))},
    }  # fmt: skip


def _photo(sha256: str) -> Photo:
    captured = CaptureTime(date(2026, 1, 18), time(18, 41, 2), DateSource.EXIF_ORIGINAL, "25", "+01:00")
    path = f"photos/Boxroom Gold/2026-01-18_184102_{sha256[:8]}.jpg"
    return Photo(identity(10), sha256, path, len(PHOTO_BYTES), 3, 2, "image/jpeg", "IMG 1.jpg", captured, MADE_AT)


def _entry(number: int, detail: Detail, crop: str) -> Entry:
    at = time(8, number) if number % 2 else None
    day = date(2026, 1, 1 + number % 5)
    return Entry(identity(30 + number), Owner(OwnerKind.CROP, crop), day, detail, at, number or None, "", identity(99))
