"""Entries and their kinds. KINDS is the list that storage, forms and lanes go through."""

from growlog.records.entry.base import Detail, Entry, Owner, OwnerKind
from growlog.records.entry.feed import Feed
from growlog.records.entry.health import ProblemSeen, ProblemSort, Treatment
from growlog.records.entry.meter import MeterReading
from growlog.records.entry.pick import Cull, CullCause, Pick, TaggedFruit
from growlog.records.entry.plant_work import (
    FlowerFate,
    FruitCheck,
    Pollination,
    PollinationWay,
    PottingOn,
    TagSeen,
    Training,
)
from growlog.records.entry.reading import Calibration, Reading
from growlog.records.entry.stage_and_light import LightChange, Note, StageSeen
from growlog.records.entry.tank_care import TankCare, TankDose, TankWork

KINDS: dict[str, type[Detail]] = {
    detail.kind: detail
    for detail in (
        Feed,
        Reading,
        Training,
        Pollination,
        FruitCheck,
        Pick,
        StageSeen,
        ProblemSeen,
        Treatment,
        LightChange,
        PottingOn,
        Calibration,
        TankCare,
        MeterReading,
        Note,
    )
}

__all__ = [
    "KINDS",
    "Calibration",
    "Cull",
    "CullCause",
    "Detail",
    "Entry",
    "Feed",
    "FlowerFate",
    "FruitCheck",
    "LightChange",
    "MeterReading",
    "Note",
    "Owner",
    "OwnerKind",
    "Pick",
    "Pollination",
    "PollinationWay",
    "PottingOn",
    "ProblemSeen",
    "ProblemSort",
    "Reading",
    "StageSeen",
    "TagSeen",
    "TaggedFruit",
    "TankCare",
    "TankDose",
    "TankWork",
    "Training",
    "Treatment",
]
