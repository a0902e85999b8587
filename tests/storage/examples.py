"""One record of each type that came with the second schema, in the order in which their references allow writing."""

from datetime import UTC, date, datetime, time
from typing import Any

from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.records.decision import Decision, QuotedFigure, ReviewPhoto, Verdict
from growlog.records.feed_plan import FeedStep
from growlog.records.feed_target import FeedTarget, TargetRange
from growlog.records.light_plan import LightStep
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct, StockMove, StockMoveSort
from growlog.records.purchase import Purchase, PurchaseSort
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.records.room import Device, DeviceSort, EnergySharing, Lamp, Room
from growlog.records.routine import DueAnswer, DueOutcome, Routine, RoutineFor, RoutineWhen
from growlog.records.source_water import SourceWater
from growlog.records.tariff import Tariff, TariffBand

DAY = date(2026, 1, 18)
MOMENT = datetime(2026, 1, 18, 6, 30, tzinfo=UTC)
PRODUCT = ShelfProduct(
    "product", "Base A", ProductForm.LIQUID, LabelBasis.BY_WEIGHT, 1.17,
    (LabelShare("n_nitrate", 2.4), LabelShare("ca", 3.1)), "Fe-DTPA", 2.0, "mL/L", 4.0, 1000.0, 1450, "note",
)  # fmt: skip
WATER = SourceWater("water", "Tap", DAY, 0.62, 7.4, 180.0, 71.0, 9.0, 14.0, 22.0, 31.0, 2.0, 1.5, "note")

# A "crop", its first "mix", PRODUCT and WATER are there before.
RECORDS: tuple[Any, ...] = (
    Room("room-2", "Second room", 2.0, "Etc/UTC", EnergySharing.BY_HAND),
    Lamp("lamp-2", "room-2", "Panel", 1, 250.0, None, 2.1, DAY, None, "led-white", 4.0, 50000.0, DAY, 9900),
    Mix("mix-2", "A + B", 2, (MixPart("Base A", 2.0, "mL/L", "product"), MixPart("B", 1.5)), "",
        (WaterShare("water", 0.6), WaterShare("water", 0.4))),
    FeedTarget("target", "Fruit", (TargetRange("N", 140.0, 180.0), TargetRange("Ca", 150.0, None)), "note"),
    StockMove("move", "product", DAY, StockMoveSort.BOUGHT, 1000.0, 1450, None, "note"),
    Routine("routine", "Look under the leaves", RoutineFor.CROP, RoutineWhen.EVERY_DAYS, "crop", 3, None, DAY,
            date(2026, 3, 1), "problem", in_the_morning=True, is_on=False, note="note"),
    DueAnswer("answer", "routine:routine:crop", DAY, DueOutcome.PUT_OFF, "crop", date(2026, 1, 20), "away"),
    FeedStep("feed-step", "crop", 21, "mix-2", 75.0, 1.5, "note"),
    LightStep("light-step", "room-2", None, "crop", 30, 14.5, time(6), 80.0, 420.0, ("lamp-2",), "note"),
    Device("device", "room-2", "Fan", DeviceSort.FAN, 18.0, 12.0, with_lamps=False, duty_percent=50.0, from_day=DAY),
    Tariff("tariff", "Two rates", DAY, (TariffBand(time(6), time(22), "0.31"), TariffBand(time(22), time(6), "0.2045")),
           42, "note"),
    Purchase("purchase", "Pots", DAY, PurchaseSort.CONTAINERS, 1800, "crop", None, 4, "note"),
    Decision("decision", "crop", DAY, Verdict.REGROW_WITH_CHANGES, "Tasty.", "Sow later.",
             (QuotedFigure("yield_per_plant", "Yield of a plant", "1.2 kg"), QuotedFigure("cost", "Cost", "9.10"))),
    Photo("photo-2", "cd" * 32, "photos/a/c.jpg", 9, 3, 4, "image/jpeg", "c.jpg",
          CaptureTime(DAY, None, DateSource.FILE_NAME), MOMENT),
    PhotoUse("use-2", "photo-2", "crop", DAY),
    ReviewPhoto("review-photo", "crop", "use-2", 1),
    LoggerFile("file", "room-2", "air.csv", "ef" * 32, 2, MOMENT, MOMENT.replace(hour=7), MOMENT),
    ColumnMap("map", "date\tweight", (MappedColumn("Date", "day"), MappedColumn("Weight", "pick.total_weight_g", "kg",
              cumulative=True)), "dmy", ","),
)  # fmt: skip
