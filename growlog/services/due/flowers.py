"""On which days the flowers of a crop count as open, read from its entries."""

from collections.abc import Iterable
from datetime import date

from growlog.calculations.due import Span
from growlog.calculations.flowering import FEMALES_SEEN_HOLDS_DAYS, FLOWERS_SEEN_HOLDS_DAYS, common_days, open_spans
from growlog.calculations.growth_stage import principal_stage, stage_spans
from growlog.calculations.plant_age import age_on, day_at
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import Entry, FruitCheck, Pollination, StageSeen
from growlog.services.due.facts import CropFacts

_FLOWERING = 6  # BBCH principal stage


def female_spans(facts: CropFacts, until: date) -> tuple[Span, ...]:
    """Days on which female flowers count as open.

    The rule: the crop bears females of their own; its stage is flowering (BBCH 6x), where that was ever noted; and
    some were seen open or pollinated that day or up to three days before. The first look at stage 6x is such a sight.
    A pollination or fruit check that states none ends it.
    """
    if facts.cultivar.habit is not FloweringHabit.SEPARATE:
        return ()
    staged = _staged(facts, until)
    counts = [(e.day, n) for e in facts.entries if (n := _females(e)) is not None]
    seen = [day for day, n in counts if n] + [start for start, _ in staged or ()]
    spans = open_spans(seen, [day for day, n in counts if not n], FEMALES_SEEN_HOLDS_DAYS)
    return spans if staged is None else common_days(spans, staged)


def flowering_spans(facts: CropFacts, until: date) -> tuple[Span, ...]:
    """Days on which it flowers: while its stage is 6x; where that was never noted, a week from each sight of some."""
    staged = _staged(facts, until)
    if staged is not None:
        return staged
    return open_spans([e.day for e in facts.entries if _shows_flowers(e)], [], FLOWERS_SEEN_HOLDS_DAYS)


def _staged(facts: CropFacts, until: date) -> tuple[Span, ...] | None:
    """The days of stage 6x, None where no look ever saw it. It ends the day before a look no longer sees it."""
    zero = facts.crop.day_zero
    looks = [(age_on(zero, e.day), e.detail.codes) for e in facts.of_kind("stage") if isinstance(e.detail, StageSeen)]
    if not any(_flowers(codes) for _, codes in looks):
        return None
    last_look, last_age = max(age for age, _ in looks), max(age_on(zero, until), *(age for age, _ in looks))
    spans = [s for s in stage_spans(looks, last_age) if s.principal == _FLOWERING]
    seen_last = any(_flowers(codes) for age, codes in looks if age == last_look)
    ends = [s.end_age - (0 if seen_last and s.end_age == last_age else 1) for s in spans]
    return tuple(
        (day_at(zero, s.start_age), day_at(zero, max(end, s.start_age))) for s, end in zip(spans, ends, strict=True)
    )


def _flowers(codes: Iterable[str]) -> bool:
    return any(principal_stage(code) == _FLOWERING for code in codes)


def _females(entry: Entry) -> int | None:
    """How many females a look counted, None where it did not count them."""
    detail = entry.detail
    if isinstance(detail, Pollination):
        return detail.females_pollinated
    return detail.females_open if isinstance(detail, FruitCheck) else None


def _shows_flowers(entry: Entry) -> bool:
    detail = entry.detail
    if isinstance(detail, Pollination):
        return bool(detail.females_pollinated or detail.males_open or detail.trusses_vibrated)
    return isinstance(detail, FruitCheck) and bool(detail.females_open)
