"""An entry while the line is being read, and how it becomes a detail."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import time

from growlog.records.entry import (
    CullCause,
    Detail,
    Feed,
    FruitCheck,
    Note,
    Pollination,
    PollinationWay,
    Reading,
    StageSeen,
    Training,
)
from growlog.records.problems import check_quantity
from growlog.services.quick_line.pick_numbers import PickedNumber, pick_of
from growlog.services.quick_line.reading import DraftedEntry, KnownMix, LineProblem
from growlog.words import say


@dataclass
class DraftedCull:
    """Culled fruit. cause: None until it is said; from_sum: its count was said for several causes together."""

    count: float
    cause: CullCause | None = None
    weight_g: float | None = None


@dataclass(eq=False)  # two drafts of the same content are two entries
class Draft:
    """An entry as far as it was read. mode: "drain" or "cull" while the numbers speak of these."""

    kind: str
    head_said: bool = False
    mode: str = ""
    values: dict[str, float] = field(default_factory=dict)
    numbers: list[PickedNumber] = field(default_factory=list)
    culls: list[DraftedCull] = field(default_factory=list)
    codes: list[str] = field(default_factory=list)
    way: PollinationWay | None = None
    mix: KnownMix | None = None
    water_only: bool = False
    at: time | None = None
    labour_minutes: float | None = None
    note: str = ""

    @property
    def has_content(self) -> bool:
        """Whether anything beside its kind was said."""
        said = (self.values, self.numbers, self.culls, self.codes, self.way, self.mix, self.note, self.water_only)
        return any(said)

    def has(self, name: str) -> bool:
        """Whether a field is filled."""
        return name in self.values


def drafted(
    draft: Draft, number: int, line_at: time | None, shown_units: str
) -> tuple[DraftedEntry, list[LineProblem]]:
    """A draft as an entry with what is wrong or asked about it. number: its place in the line."""
    detail, own = _MAKERS[draft.kind](draft, shown_units)
    named = draft.mix.name if draft.mix is not None else ""
    entry = DraftedEntry(detail, draft.at or line_at, _plain(draft.labour_minutes), draft.note, named)
    checked = check_quantity("labour_minutes", entry.labour_minutes) + detail.problems()
    found: Found = own + [(p.sentence, p.asks) for p in checked]
    # One refusal at a time: what is wrong beside it often follows from it.
    refused = [one for one in found if not one[1]][:1]
    shown = refused or [one for one in found if one[1]]
    return entry, [LineProblem(sentence, asks, number) for sentence, asks in dict.fromkeys(shown)]


Found = list[tuple[str, bool]]  # sentences, each with whether it asks


def _plain(value: float | None) -> float | int | None:
    """A whole number without its point, as the records keep counts."""
    return int(value) if value is not None and value == int(value) else value


def _counts(draft: Draft) -> dict[str, float | int | None]:
    return {name: _plain(value) for name, value in draft.values.items()}


def _feed(draft: Draft, _units: str) -> tuple[Detail, Found]:
    mix_id = draft.mix.id if draft.mix is not None else None
    return Feed(mix_id=mix_id, water_only=draft.water_only, **draft.values), []


def _pollination(draft: Draft, _units: str) -> tuple[Detail, Found]:
    return Pollination(way=draft.way, **_counts(draft)), []  # type: ignore[arg-type]


def _training(draft: Draft, _units: str) -> tuple[Detail, Found]:
    return Training(**_counts(draft)), []  # type: ignore[arg-type]


def _fruit_check(draft: Draft, _units: str) -> tuple[Detail, Found]:
    return FruitCheck(**_counts(draft)), []  # type: ignore[arg-type]


def _reading(draft: Draft, _units: str) -> tuple[Detail, Found]:
    return Reading(**draft.values), []  # type: ignore[arg-type]


def _stage(draft: Draft, _units: str) -> tuple[Detail, Found]:
    return StageSeen(tuple(dict.fromkeys(draft.codes))), []


def _note(draft: Draft, _units: str) -> tuple[Detail, Found]:
    return Note(), [] if draft.note else [(say("Write the note behind the word note."), False)]


def _pick(draft: Draft, shown_units: str) -> tuple[Detail, Found]:
    culls, found = _settled(draft.culls)
    pick, asked = pick_of(draft.values, draft.numbers, culls, shown_units)
    return pick, found + asked


def _settled(culls: list[DraftedCull]) -> tuple[list[tuple[int | float, CullCause, float | None]], Found]:
    """Culls with their causes; a count without one is the sum of those with one, or a refusal."""
    caused = [(_whole(c.count), c.cause, c.weight_g) for c in culls if c.cause is not None]
    open_ones = [c for c in culls if c.cause is None]
    is_sum = len(open_ones) == 1 and caused and sum(count for count, _, _ in caused) == open_ones[0].count
    if not open_ones or is_sum:
        return caused, []
    sentence = say("Say why fruit was culled: misshapen, blossom-end rot, cracked, oversize or damaged.")
    return caused, [(sentence, False)]


def _whole(value: float) -> int | float:
    return int(value) if value == int(value) else value


_MAKERS: dict[str, Callable[[Draft, str], tuple[Detail, Found]]] = {
    "feed": _feed,
    "pick": _pick,
    "pollination": _pollination,
    "training": _training,
    "fruit-check": _fruit_check,
    "reading": _reading,
    "stage": _stage,
    "note": _note,
}
