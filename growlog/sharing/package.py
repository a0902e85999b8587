"""A logbook as plain records, as the data package holds it."""

from dataclasses import dataclass
from datetime import date

from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import Cultivar
from growlog.records.entry import Entry
from growlog.records.logbook import LogbookFacts
from growlog.records.photo import Photo, PhotoUse
from growlog.records.recipe import Mix
from growlog.records.room import Lamp, Room, Tank


@dataclass(frozen=True)
class Package:
    """All records of a logbook but its bin and its history. as_of: the last day that it tells of."""

    logbook: LogbookFacts
    as_of: date
    rooms: tuple[Room, ...] = ()
    lamps: tuple[Lamp, ...] = ()
    tanks: tuple[Tank, ...] = ()
    cultivars: tuple[Cultivar, ...] = ()
    crops: tuple[Crop, ...] = ()
    plants: tuple[Plant, ...] = ()
    placements: tuple[Placement, ...] = ()
    mixes: tuple[Mix, ...] = ()
    photos: tuple[Photo, ...] = ()
    photo_uses: tuple[PhotoUse, ...] = ()
    entries: tuple[Entry, ...] = ()
