"""The session tally: what was done on one visit to the room, kept as one goes and written as one change."""

from growlog.services.tally.checks import TallyProblem, check_tally
from growlog.services.tally.crop_tally import COUNTERS, FRUIT_CHECKS, CannotTally, CropTally
from growlog.services.tally.crops import TallyCrop, tally_crops
from growlog.services.tally.drafts import FoundDraft, drop_draft, find_draft, new_tally, save_draft
from growlog.services.tally.entries import entries_of
from growlog.services.tally.stopwatch import Stopwatch
from growlog.services.tally.tally import Tally
from growlog.services.tally.writing import write_tally

__all__ = [
    "COUNTERS",
    "FRUIT_CHECKS",
    "CannotTally",
    "CropTally",
    "FoundDraft",
    "Stopwatch",
    "Tally",
    "TallyCrop",
    "TallyProblem",
    "check_tally",
    "drop_draft",
    "entries_of",
    "find_draft",
    "new_tally",
    "save_draft",
    "tally_crops",
    "write_tally",
]
