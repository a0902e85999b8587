"""A logbook as plain records, as the data package holds it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from growlog.records.climate_day import ClimateSample
from growlog.records.column_map import ColumnMap
from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import Cultivar
from growlog.records.decision import Decision, ReviewPhoto
from growlog.records.entry import Entry
from growlog.records.feed_plan import FeedStep
from growlog.records.feed_target import FeedTarget
from growlog.records.light_plan import LightStep
from growlog.records.logbook import LogbookFacts
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import Photo, PhotoUse
from growlog.records.product import ShelfProduct, StockMove
from growlog.records.purchase import Purchase
from growlog.records.recipe import Mix
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.records.routine import DueAnswer, Routine
from growlog.records.source_water import SourceWater
from growlog.records.tariff import Tariff


@dataclass(frozen=True)
class Package:
    """All records of a logbook but its bin and its history. as_of: the last day that it tells of.

    climate_samples: those of each logger file, by the file's id. photos_without_places: how many photos are no longer
    the originals, since what tells places was taken out of them.
    """

    logbook: LogbookFacts
    as_of: date
    rooms: tuple[Room, ...] = ()
    lamps: tuple[Lamp, ...] = ()
    tanks: tuple[Tank, ...] = ()
    cultivars: tuple[Cultivar, ...] = ()
    crops: tuple[Crop, ...] = ()
    plants: tuple[Plant, ...] = ()
    placements: tuple[Placement, ...] = ()
    products: tuple[ShelfProduct, ...] = ()
    waters: tuple[SourceWater, ...] = ()
    mixes: tuple[Mix, ...] = ()
    feed_targets: tuple[FeedTarget, ...] = ()
    photos: tuple[Photo, ...] = ()
    photo_uses: tuple[PhotoUse, ...] = ()
    entries: tuple[Entry, ...] = ()
    stock_moves: tuple[StockMove, ...] = ()
    routines: tuple[Routine, ...] = ()
    due_answers: tuple[DueAnswer, ...] = ()
    feed_steps: tuple[FeedStep, ...] = ()
    light_steps: tuple[LightStep, ...] = ()
    devices: tuple[Device, ...] = ()
    tariffs: tuple[Tariff, ...] = ()
    purchases: tuple[Purchase, ...] = ()
    decisions: tuple[Decision, ...] = ()
    review_photos: tuple[ReviewPhoto, ...] = ()
    logger_files: tuple[LoggerFile, ...] = ()
    column_maps: tuple[ColumnMap, ...] = ()
    climate_samples: Mapping[str, tuple[ClimateSample, ...]] = field(default_factory=dict)
    photos_without_places: int = 0
