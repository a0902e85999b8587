"""What a column of old notes can be read as: the fields that entries share, and those of each kind."""

from dataclasses import dataclass, fields
from enum import StrEnum
from functools import cache

from growlog.records.entry import KINDS, CullCause
from growlog.records.limits import LIMITS
from growlog.words import mark, say

# Entries of these kinds belong to a tank or a room, never to a crop.
_NOT_OF_A_CROP = {"tank-care", "meter"}


class Sort(StrEnum):
    """How the cells of a column are read."""

    NUMBER = "number"
    TEXT = "text"
    DAY = "day"
    TIME = "time"
    AGE = "age"
    CROP = "crop"
    CODES = "codes"
    WEIGHTS = "weights"
    CAUSE = "cause"


@dataclass(frozen=True)
class NoteField:
    """key: as kept in a column map. kind: of the entry, "" for what all entries share. unit: as kept, "" for counts."""

    key: str
    kind: str
    name: str
    label: str
    sort: Sort
    unit: str = ""
    whole: bool = False

    @property
    def words(self) -> str:
        """Its name for the screen, the kind first."""
        return f"{say(KINDS[self.kind].label)}: {say(self.label)}" if self.kind else say(self.label)

    @property
    def can_add_up(self) -> bool:
        """Whether its column may hold sums so far: only what happens anew each time adds up."""
        return self.sort is Sort.NUMBER and (self.whole or self.unit in ("g", "L")) and self.name not in _STATES


# What a look or an instrument saw at one time; the sum of such figures means nothing.
_STATES = {"container_weight_g", "container_l", "hanging", "males_open", "females_open", "weight_g", "severity"}
_SHARED = (
    NoteField("day", "", "day", mark("Date"), Sort.DAY),
    NoteField("at", "", "at", mark("Time"), Sort.TIME),
    NoteField("age", "", "age", mark("Plant age in days"), Sort.AGE, "d", whole=True),
    NoteField("crop", "", "crop", mark("Crop"), Sort.CROP),
    NoteField("note", "", "note", mark("Note"), Sort.TEXT),
    NoteField("labour_minutes", "", "labour_minutes", mark("Labour"), Sort.NUMBER, "min", whole=True),
)
_TEXTS = {
    "problem.name": mark("What was seen"),
    "treatment.product": mark("Product"),
    "treatment.target": mark("Against"),
    "treatment.dose": mark("Dose"),
    "potting-on.medium": mark("Medium"),
}
_OF_THEIR_OWN = (
    NoteField("pick.weight_g", "pick", "weight_g", mark("Weight of each fruit"), Sort.NUMBER, "g"),
    NoteField("pick.weights_g", "pick", "weights_g", mark("Single weights"), Sort.WEIGHTS, "g"),
    NoteField("pick.cull_count", "pick", "cull_count", mark("Culled"), Sort.NUMBER, whole=True),
    NoteField("pick.cull_cause", "pick", "cull_cause", mark("Cause of culling"), Sort.CAUSE),
    NoteField("stage.codes", "stage", "codes", mark("BBCH codes"), Sort.CODES),
    NoteField("note.text", "note", "text", mark("A note by itself"), Sort.TEXT),
)
CULLED = "culled_"  # before a cause: the count of fruit culled for it


@cache
def note_fields() -> dict[str, NoteField]:
    """All fields by key, in the order in which they are offered."""
    found = list(_SHARED)
    for kind, detail in KINDS.items():
        if kind in _NOT_OF_A_CROP:
            continue
        for own in fields(detail):
            key = f"{kind}.{own.name}"
            if own.name in LIMITS:
                bound = LIMITS[own.name]
                found.append(NoteField(key, kind, own.name, bound.label, Sort.NUMBER, bound.unit, bound.whole))
            elif key in _TEXTS:
                found.append(NoteField(key, kind, own.name, _TEXTS[key], Sort.TEXT))
        found += [f for f in _OF_THEIR_OWN if f.kind == kind]
        if kind == "pick":
            found += [_culled_for(cause) for cause in CullCause]
    return {f.key: f for f in found}


def kinds_offered() -> tuple[str, ...]:
    """The kinds that a row can become."""
    return tuple(dict.fromkeys(f.kind for f in note_fields().values() if f.kind))


def _culled_for(cause: CullCause) -> NoteField:
    label = say("Culled: {cause}", cause=say(cause.label))
    return NoteField(f"pick.{CULLED}{cause.value}", "pick", f"{CULLED}{cause.value}", label, Sort.NUMBER, whole=True)
