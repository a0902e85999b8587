"""Growth stages as spans: BBCH codes seen on single days, drawn as what ran when.

Source of the principal stages: Meier, U. (ed.) (2001) Growth stages of mono- and dicotyledonous plants, BBCH
monograph, 2nd edition. The short meanings are our own words.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from growlog.words import mark

PRINCIPAL_STAGES: dict[int, str] = {
    0: mark("sprouting"),
    1: mark("leaves"),
    2: mark("side shoots"),
    3: mark("stem lengthens"),
    4: mark("harvestable parts"),
    5: mark("buds"),
    6: mark("flowering"),
    7: mark("fruit grows"),
    8: mark("ripening"),
    9: mark("ageing"),
}


@dataclass(frozen=True)
class StageSpan:
    """A principal stage (0 to 9) from a plant age to another, inclusive; codes as seen, in order."""

    principal: int
    start_age: int
    end_age: int
    codes: tuple[str, ...]


def principal_stage(code: str) -> int:
    """The principal stage of a BBCH code of two or three digits; ValueError for anything else."""
    if not (code.isascii() and code.isdigit() and len(code) in (2, 3)):
        raise ValueError(f"BBCH code {code!r} is outside 00 to 99 and 000 to 999")
    return int(code[0])


def stage_spans(seen: Iterable[tuple[int, tuple[str, ...]]], until_age: int) -> list[StageSpan]:
    """Spans of principal stages from (plant age, codes seen that day).

    All that was seen on one day is one look. A stage runs from the first look that saw it to the first later look
    that no longer did; one that the last look saw is drawn to until_age. A stage that comes back is a second span.
    Common practice, no source.
    """
    looks: dict[int, list[str]] = {}
    for age, codes in seen:
        looks.setdefault(age, []).extend(codes)
    open_spans: dict[int, tuple[int, list[str]]] = {}
    done: list[StageSpan] = []
    for age in sorted(looks):
        now: dict[int, list[str]] = {}
        for code in looks[age]:
            now.setdefault(principal_stage(code), []).append(code)
        for principal in [p for p in open_spans if p not in now]:
            start, seen_codes = open_spans.pop(principal)
            done.append(StageSpan(principal, start, age, tuple(seen_codes)))
        for principal, here in now.items():
            codes_so_far = open_spans.setdefault(principal, (age, []))[1]
            codes_so_far += [c for c in dict.fromkeys(here) if c not in codes_so_far]
    done += [StageSpan(p, start, max(until_age, start), tuple(codes)) for p, (start, codes) in open_spans.items()]
    return sorted(done, key=lambda s: (s.principal, s.start_age))
