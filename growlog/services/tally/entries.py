"""The entries that a tally becomes."""

import uuid
from dataclasses import replace
from datetime import time

from growlog.records.entry import (
    Detail,
    Entry,
    FruitCheck,
    Note,
    Owner,
    OwnerKind,
    Pick,
    Pollination,
    PollinationWay,
    Training,
)
from growlog.services.tally.crop_tally import CropTally
from growlog.services.tally.tally import Tally


def entries_of(tally: Tally) -> list[Entry]:
    """All entries of a tally, crop by crop: pick, pollination, training, fruit check, note.

    A crop's minutes stand on its first entry alone: on each of them they would be counted more than once, and the
    pick comes first because labour is mostly asked about beside the yield. A crop with nothing but minutes gets a
    note without words, so that they are not lost. An entry's id follows from the tally's, so that a tally which was
    written just before a crash is known to be in the log and is not written twice.
    """
    return [entry for crop in tally.crops for entry in _entries_of_crop(tally, crop)]


def _entries_of_crop(tally: Tally, crop: CropTally) -> list[Entry]:
    parts: list[tuple[Detail | None, time | None, str]] = [
        (_pick(crop), tally.at, ""),
        (pollination_of(crop), crop.pollinated_at, ""),
        (_training(crop), tally.at, ""),
        (_fruit_check(crop), tally.at, ""),
        (Note() if crop.note.strip() else None, tally.at, crop.note.strip()),
    ]
    owner = Owner(OwnerKind.CROP, crop.crop_id)
    found = [
        Entry(_entry_id(tally, crop, detail.kind), owner, tally.day, detail, at=at, note=note)
        for detail, at, note in parts
        if detail is not None
    ]
    if not found and crop.minutes:
        found = [Entry(_entry_id(tally, crop, Note.kind), owner, tally.day, Note(), at=tally.at)]
    return [replace(e, labour_minutes=crop.minutes) if place == 0 else e for place, e in enumerate(found)]


def pollination_of(crop: CropTally) -> Pollination | None:
    """The pollination of a crop, None where nothing was counted. What is known of single flowers belongs here."""
    if not (crop.females_pollinated or crop.males_open or crop.trusses_vibrated):
        return None
    return Pollination(
        crop.females_pollinated or None,
        crop.males_open or None,
        crop.trusses_vibrated or None,
        PollinationWay.SHAKEN if crop.trusses_vibrated and not crop.females_pollinated else None,
    )


def _pick(crop: CropTally) -> Pick | None:
    if not crop.fruit and not crop.culls:
        return None
    return Pick(len(crop.fruit), None, crop.weights_g, crop.culls)


def _training(crop: CropTally) -> Training | None:
    if not (crop.old_leaves_removed or crop.side_shoots_removed):
        return None
    return Training(crop.old_leaves_removed or None, crop.side_shoots_removed or None)


def _fruit_check(crop: CropTally) -> FruitCheck | None:
    return None if crop.fruit_check == FruitCheck() else crop.fruit_check


def _entry_id(tally: Tally, crop: CropTally, kind: str) -> str:
    return str(uuid.uuid5(uuid.UUID(tally.id), f"{crop.crop_id} {kind}"))
