"""What the grower's meter showed after mixing, beside what the mixes were estimated to read."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from growlog.calculations.explained_figure import Figure
from growlog.calculations.meter_offset import FEWEST_READINGS, MeterOffset, explain_meter_offset, learn_meter_offset
from growlog.calculations.plant_age import age_on
from growlog.records.entry import Entry, Feed, TankCare, TankWork
from growlog.records.recipe import Mix
from growlog.services.mixer.bench import Bench, content_of, state_with_mix
from growlog.services.mixer.shown import LastReading
from growlog.services.mixer.state import MixerState
from growlog.services.mixing import result_of
from growlog.words import say_count

_LATEST = 20  # a meter drifts over a season; older readings say little about it


def last_reading(bench: Bench) -> LastReading | None:
    """The last EC read of the crop's or tank's own feed, up to the bench's day."""
    for entry in reversed(bench.readings):
        ec = _ec_read(entry)
        if ec is not None and entry.id in bench.own_ids:
            age = age_on(bench.crop.day_zero, entry.day) if bench.crop else None
            return LastReading(ec, entry.day, age, entry.id)
    return None


@dataclass(frozen=True)
class LearnedOffset:
    """The offset of the grower's meter (None before three readings), from which readings, and how it is worked out."""

    offset: MeterOffset | None
    words: str
    figure: Figure


def learned_offset(bench: Bench) -> LearnedOffset:
    """From the crop's or tank's own readings after mixing where there are three, else from those of all crops."""
    own = _pairs(bench, (e for e in bench.readings if e.id in bench.own_ids))
    if len(own) >= FEWEST_READINGS:
        words = say_count("from {n} reading of this crop or tank", "from {n} readings of this crop or tank", len(own))
        return LearnedOffset(learn_meter_offset(own), words, explain_meter_offset(own))
    every = _pairs(bench, bench.readings)
    missing = FEWEST_READINGS - len(every)
    if missing > 0:
        words = say_count(
            "not yet: {n} reading after mixing is missing", "not yet: {n} readings after mixing are missing", missing
        )
    else:
        words = say_count("from {n} reading of all crops", "from {n} readings of all crops", len(every))
    return LearnedOffset(learn_meter_offset(every), words, explain_meter_offset(every))


def mix_content_ec(bench: Bench, mix: Mix, strength_percent: float = 100.0) -> float | None:
    """The estimate in mS/cm of a saved mix in its own water; None where it holds something unknown or impossible."""
    state = state_with_mix(bench, mix, MixerState(strength_percent=strength_percent))
    try:
        result = result_of(content_of(bench, state))
    except ValueError:
        return None
    return None if result.unknown_products else result.ec.estimate


def _pairs(bench: Bench, entries: Iterable[Entry]) -> list[tuple[float, float]]:
    @lru_cache
    def estimate(mix_id: str, strength: float) -> float | None:
        return mix_content_ec(bench, bench.mixes[mix_id], strength)

    found = []
    for entry in entries:
        mixed, read = _mixed(entry), _ec_read(entry)
        if mixed is None or not read or mixed[0] not in bench.mixes or not bench.mixes[mixed[0]].parts:
            continue
        expected = estimate(*mixed)
        if expected:
            found.append((expected, read))
    return found[-_LATEST:]


def _mixed(entry: Entry) -> tuple[str, float] | None:
    """The mix that was freshly made for this entry, and its strength in per cent."""
    detail = entry.detail
    if isinstance(detail, Feed) and detail.mix_id and not detail.water_only:
        return detail.mix_id, 100.0 if detail.strength_percent is None else detail.strength_percent
    if isinstance(detail, TankCare) and detail.work is TankWork.RENEWAL and detail.mix_id:
        return detail.mix_id, 100.0
    return None


def _ec_read(entry: Entry) -> float | None:
    detail = entry.detail
    if isinstance(detail, Feed):
        return None if detail.water_only else detail.ec_ms_per_cm
    return detail.ec_after_ms_per_cm if isinstance(detail, TankCare) else None
