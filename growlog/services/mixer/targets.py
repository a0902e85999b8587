"""What a tank is held against: published ranges by crop and stage, another mix, or the grower's own."""

from collections.abc import Iterable
from dataclasses import dataclass

from growlog.calculations.nutrients import elements
from growlog.records.feed_target import FeedTarget
from growlog.records.recipe import Mix
from growlog.services.mixer.bench import Bench, bench_of, content_of, state_with_mix, water_of
from growlog.services.mixer.shown import TargetView
from growlog.services.mixer.state import MixerState, MixTarget, OwnTarget, PublishedTarget, Range, Target
from growlog.services.mixing import CropTarget, crop_targets, result_of
from growlog.services.open_logbook import OpenLogbook
from growlog.sharing.mix_file import TARGET_WORDS
from growlog.words import mark, say

POINT_WIDTH = 0.10  # about a figure that is printed or reached as a single one; a judgement
_EVERY_STAGE, _GENERAL, _NO_CROP = "all stages", "general", "source water (any crop)"
_ABOVE_WATER = "above source water"
_CERTAINTY = {"low": mark("low"), "medium": mark("medium"), "high": mark("high")}
# What the table calls the fruit that others name differently; common practice, no source.
_OTHER_NAMES = {
    "pattypan": "zucchini", "squash": "zucchini", "courgette": "zucchini", "marrow": "zucchini",
    "aubergine": "eggplant", "chilli": "pepper", "capsicum": "pepper", "paprika": "pepper", "gherkin": "cucumber",
}  # fmt: skip


@dataclass(frozen=True)
class TargetOffer:
    """A target to choose. suits: whether it is published for the crop's species. note: source and certainty."""

    label: str
    target: Target
    note: str
    suits: bool


def target_offers(log: OpenLogbook, state: MixerState) -> list[TargetOffer]:
    """All targets to choose from: the grower's own, published ones for the crop's species, saved mixes, other crops."""
    return offers_at(bench_of(log, state))


def offers_at(bench: Bench) -> list[TargetOffer]:
    """The same at a bench."""
    kind = _published_name(bench.species)
    published = [_offer(crop, stage, kind) for crop, stage in _stages()]
    suiting = sorted((o for o in published if o.suits), key=_says_no_elements)
    newest: dict[str, Mix] = {}
    for mix in sorted(bench.mixes.values(), key=lambda m: m.edition):
        if mix.removed_at is None and mix.parts:
            newest[mix.name.strip().casefold()] = mix
    mixes = [TargetOffer(m.name, MixTarget(m.id), say("this mix, 10 % about it"), True) for m in newest.values()]
    own = [_offer_own(t) for t in sorted(bench.targets, key=lambda t: t.name.casefold())]
    others = sorted((o for o in published if not o.suits), key=lambda o: o.label)
    return [*own, *suiting, *sorted(mixes, key=lambda o: o.label.casefold()), *others]


def _says_no_elements(offer: TargetOffer) -> bool:
    """Whether it states EC and pH only: of less use, so it stands after those that state elements."""
    view = _published(offer.target, 0.0) if isinstance(offer.target, PublishedTarget) else None
    return view is None or not view.ranges


def target_view(bench: Bench, state: MixerState, water_ec_ms_per_cm: float) -> TargetView | None:
    """The ranges of a state's target; None without one. ValueError for a mix that cannot be worked out."""
    target = state.target
    if isinstance(target, PublishedTarget):
        return _published(target, water_ec_ms_per_cm)
    if isinstance(target, MixTarget):
        return _of_mix(bench, state, target)
    if isinstance(target, OwnTarget):
        label = target.name or say("grower's own")
        return TargetView(label, {k: _widened(r) for k, r in target.ranges.items()}, None, None, "")
    return None


def _stages() -> list[tuple[str, str]]:
    """The crops and stages of the table that say something of the feed itself, in its order."""
    named = [(t.crop, t.stage) for t in crop_targets() if t.stage != _EVERY_STAGE and t.crop != _NO_CROP]
    return [key for key in dict.fromkeys(named) if _published(PublishedTarget(*key), 0.0) is not None]


def _offer_own(target: FeedTarget) -> TargetOffer:
    ranges = {r.element: Range(r.low_mg_per_l, r.high_mg_per_l) for r in target.ranges}
    return TargetOffer(target.name, OwnTarget(ranges, target.name), say("grower's own"), True)


def _offer(crop: str, stage: str, kind: str) -> TargetOffer:
    view = _published(PublishedTarget(crop, stage), 0.0)
    note = view.note if view else ""
    return TargetOffer(view.label if view else crop, PublishedTarget(crop, stage), note, crop == kind)


def _published(target: PublishedTarget, water_ec_ms_per_cm: float) -> TargetView | None:
    of_crop = [t for t in crop_targets() if t.crop == target.crop]
    own = [t for t in of_crop if t.stage == target.stage]
    rows = own + [t for t in of_crop if t.stage == _EVERY_STAGE]
    nutrients = {t.parameter: _range(t) for t in rows if t.unit == "mg/L" and t.parameter in TARGET_WORDS}
    if not any(t.parameter in nutrients for t in own):
        nutrients = {}  # what holds for all stages is no target by itself
    usual = own + [t for t in of_crop if t.stage == _GENERAL]
    ec = _first(usual, "EC", water_ec_ms_per_cm)
    ph = _first(usual, "pH", 0.0)
    used = [r for r in (*nutrients.values(), *(r for r in (ec, ph) if r)) if r.source]
    if not used:
        return None
    label = (
        f"{target.crop}, {target.stage}"
        if nutrients
        else say("{crop}, EC and pH", crop=f"{target.crop}, {target.stage}")
    )
    return TargetView(label, nutrients, ec, ph, _note(used))


def _first(rows: Iterable[CropTarget], parameter: str, water_ec_ms_per_cm: float) -> Range | None:
    row = next((t for t in rows if t.parameter == parameter), None)
    if row is None:
        return None
    shift = water_ec_ms_per_cm if row.unit.endswith(_ABOVE_WATER) else 0.0
    low, high = (None if v is None else v + shift for v in (row.low, row.high))
    return Range(low, high, _source(row), row.certainty)


def _range(row: CropTarget) -> Range:
    return _widened(Range(row.low, row.high, _source(row), row.certainty))


def _widened(stated: Range) -> Range:
    """A single figure as a range about it."""
    if stated.low is None or stated.low != stated.high:
        return stated
    width = stated.low * POINT_WIDTH
    return Range(stated.low - width, stated.low + width, stated.source, stated.certainty, about_a_point=True)


def _source(row: CropTarget) -> str:
    return f"{row.source} ({row.status})"


def _note(ranges: Iterable[Range]) -> str:
    """Sources and how certain, each once; the least certain decides."""
    listed = list(ranges)
    rank = list(_CERTAINTY)
    certainty = min((r.certainty for r in listed if r.certainty in rank), key=rank.index, default="low")
    sources = "; ".join(dict.fromkeys(r.source for r in listed))
    return say("{sources}. Certainty: {certainty}.", sources=sources, certainty=say(_CERTAINTY[certainty]))


def _of_mix(bench: Bench, state: MixerState, target: MixTarget) -> TargetView | None:
    mix = bench.mixes.get(target.mix_id)
    if mix is None:
        return None
    asked = state_with_mix(bench, mix, MixerState(strength_percent=target.strength_percent))
    if not mix.waters:
        asked = MixerState(
            doses=asked.doses, strength_percent=asked.strength_percent, typed_water=water_of(bench, state)
        )
    result = result_of(content_of(bench, asked))
    contents = {**elements(result.nutrients_mg_per_l)}
    if "NH4-N" in result.nutrients_mg_per_l:
        contents["NH4-N"] = result.nutrients_mg_per_l["NH4-N"]
    ranges = {key: _widened(Range(mg, mg)) for key, mg in contents.items()}
    ec = _widened(Range(result.ec.estimate, result.ec.estimate))
    return TargetView(mix.name, ranges, ec, None, say("this mix, 10 % about it"))


def _published_name(species: str) -> str:
    word = species.casefold()
    crops = {t.crop for t in crop_targets()}
    named = next((crop for crop in sorted(crops) if crop in word), "")
    return named or next((other for alias, other in _OTHER_NAMES.items() if alias in word), "")
