"""What stands against a tally, and what is asked before it is written; each with its crop and field."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import time

from growlog.records.problems import Problem
from growlog.services.tally.crop_tally import CropTally
from growlog.services.tally.crops import TallyCrop
from growlog.services.tally.entries import entries_of
from growlog.services.tally.tally import Tally
from growlog.words import say

NOON = time(12)


@dataclass(frozen=True)
class TallyProblem(Problem):
    """A sentence about one field of one crop's tally. As it is a plain value, an answer given to it stays given."""

    crop_id: str = ""


def check_tally(tally: Tally, crops: Iterable[TallyCrop]) -> list[TallyProblem]:
    """All problems and questions, each once per crop and field, in the order of the crops."""
    rows = {row.crop_id: row for row in crops}
    found: list[TallyProblem] = []
    for crop in tally.crops:
        row = rows.get(crop.crop_id)
        if row is not None:
            found += _standing(crop, row) + _evening(crop, row)
    for entry in entries_of(tally):
        found += [TallyProblem(p.field, p.sentence, p.asks, entry.owner.id) for p in entry.problems()]
    return _once_per_field(found)


def _once_per_field(found: list[TallyProblem]) -> list[TallyProblem]:
    sentences: dict[tuple[str, str, bool], dict[str, None]] = {}
    for p in found:
        sentences.setdefault((p.crop_id, p.field, p.asks), {})[p.sentence] = None
    return [TallyProblem(field, " ".join(said), asks, crop) for (crop, field, asks), said in sentences.items()]


def _standing(crop: CropTally, row: TallyCrop) -> list[TallyProblem]:
    if row.cannot:
        return [TallyProblem("day", row.cannot, False, crop.crop_id)]
    if row.harvest_closed and (crop.fruit or crop.culls):
        return [TallyProblem("fruit", row.harvest_closed, True, crop.crop_id)]
    return []


def _evening(crop: CropTally, row: TallyCrop) -> list[TallyProblem]:
    at = crop.pollinated_at
    if not row.shuts_by_noon or not crop.females_pollinated or at is None or at < NOON:
        return []
    sentence = say(
        "Pollinated at {time}: the flowers of {species} open for one morning and shut by noon. Is the time right?",
        time=f"{at:%H:%M}",
        species=row.species,
    )
    return [TallyProblem("pollinated_at", sentence, True, crop.crop_id)]
