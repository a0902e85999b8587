"""What the grower wrote down, turned into the logbook's entries kind by kind."""

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import replace
from itertools import groupby
from typing import Any

from growlog.records.entry import (
    Calibration,
    Cull,
    CullCause,
    Detail,
    Entry,
    Feed,
    FlowerFate,
    FruitCheck,
    LightChange,
    MeterReading,
    Note,
    Owner,
    OwnerKind,
    Pick,
    Pollination,
    PollinationWay,
    PottingOn,
    ProblemSeen,
    ProblemSort,
    Reading,
    StageSeen,
    TaggedFruit,
    TagSeen,
    Training,
    Treatment,
)

from . import events
from .flower_tags import tag_of
from .identity import crop_id, identity
from .room_records import ROOM_ID, mix_id
from .season import Season

DISEASES = ("powdery mildew",)
LASTING_STAGES = "5678"  # buds, flowers and fruit keep coming once they began
THIN_SPACE = "\u2009"


def entries_of(season: Season) -> tuple[Entry, ...]:
    """All entries of crops and room."""
    written = list(_entries(Owner(OwnerKind.ROOM, ROOM_ID), season.room.name, season.room_events))
    for crop in season.crops:
        stages = stage_looks(e for e in crop.events if isinstance(e, events.StageSeen))
        others = [e for e in crop.events if not isinstance(e, events.StageSeen)]
        written += _entries(Owner(OwnerKind.CROP, crop_id(crop.plan.name)), crop.plan.name, [*stages, *others])
    return tuple(written)


def stage_looks(seen: Iterable[events.StageSeen]) -> list[events.StageSeen]:
    """One look for each day with a new code, naming all stages that run: bbch is then "19/51", the newest of each."""
    by_day = [list(day) for _, day in groupby(sorted(seen, key=lambda e: (e.day, e.bbch)), key=lambda e: e.day)]
    looks: list[events.StageSeen] = []
    latest: dict[str, str] = {}
    for number, new in enumerate(by_day):
        later = {e.bbch[0] for day in by_day[number + 1 :] for e in day}
        latest |= {e.bbch[0]: e.bbch for e in new}
        running = later | {e.bbch[0] for e in new} | set(LASTING_STAGES)
        codes = "/".join(sorted(code for stage, code in latest.items() if stage in running))
        meaning = "; ".join(e.meaning for e in new)
        looks.append(replace(new[0], at=min(e.at for e in new), bbch=codes, meaning=meaning))
    return looks


def _entries(owner: Owner, whose: str, written: Iterable[events.Event]) -> Iterable[Entry]:
    known: Counter[tuple[object, ...]] = Counter()
    for event in written:
        detail, words = DETAILS[type(event)](event)
        key = (whose, detail.kind, event.day.isoformat())
        known[key] += 1
        yield Entry(
            identity("entry", *key, known[key]),
            owner,
            event.day,
            detail,
            event.at,
            event.labour_min or None,
            words if not event.note else f"{words}. {event.note}" if words else event.note,
        )


def _stage(event: events.StageSeen) -> tuple[Detail, str]:
    return StageSeen(tuple(event.bbch.split("/"))), event.meaning


def _light(event: events.LightChange) -> tuple[Detail, str]:
    light = LightChange(float(event.hours_on), event.on_at, float(event.dimming_percent), float(event.ppfd_umol_m2_s))
    return light, ""


def _air(event: events.RoomReading) -> tuple[Detail, str]:
    night = f"Night before {_g(event.night_air_c, '°C')}, {_g(event.night_humidity_percent, '% RH')}"
    return Reading(event.air_c, event.humidity_percent), "" if event.night_air_c is None else night


def _feed(event: events.Feed) -> tuple[Detail, str]:
    feed = Feed(
        mix_id=mix_id(event.mix),
        volume_l=event.volume_l,
        ec_ms_per_cm=event.ec_ms_cm,
        ph=event.ph,
        drain_l=event.drain_l,
        drain_ec_ms_per_cm=event.drain_ec_ms_cm,
        drain_ph=event.drain_ph,
    )
    return feed, ""


def _water(event: events.PlainWater) -> tuple[Detail, str]:
    water = Feed(
        volume_l=event.volume_l,
        ec_ms_per_cm=event.ec_ms_cm,
        drain_l=event.drain_l,
        drain_ec_ms_per_cm=event.drain_ec_ms_cm,
        water_only=True,
    )
    return water, ""


def _calibration(event: events.MeterCalibration) -> tuple[Detail, str]:
    after = f"Reads {event.read_after:.2f} after"
    return Calibration(event.meter, event.standard_value, event.read_before), after


def _meter(event: events.MeterRead) -> tuple[Detail, str]:
    return MeterReading(event.kwh, event.starts_anew), ""


def _potting(event: events.PottingOn) -> tuple[Detail, str]:
    return PottingOn(event.to_volume_l, event.medium), f"From {_g(event.from_volume_l, 'L')}"


def _training(event: events.Training) -> tuple[Detail, str]:
    work = Training(
        old_leaves_removed=event.old_leaves_removed or None,
        side_shoots_removed=event.side_shoots_removed or None,
        stems_tied=1 if event.tied else None,
    )
    return work, ""


def _pollination(event: events.Pollination) -> tuple[Detail, str]:
    way = PollinationWay.MALE_FLOWER if event.method == "male flower" else PollinationWay(event.method)
    tags = _tags(event.crop, event.flower_numbers)
    return Pollination(event.females_pollinated, event.males_open, None, way, tags), ""


def _check(event: events.FruitCheck) -> tuple[Detail, str]:
    seen = [TagSeen(tag, FlowerFate.SET) for tag in _tags(event.crop, event.flowers_set)]
    seen += [TagSeen(tag, FlowerFate.DROPPED) for tag in _tags(event.crop, event.flowers_dropped)]
    counts = (event.flowers_open, event.set_fruit, event.dropped, event.thinned, event.hanging)
    return FruitCheck(*counts, tuple(seen)), ""


def _tags(crop: str | None, flower_numbers: Iterable[int]) -> tuple[str, ...]:
    return tuple(tag for number in flower_numbers if (tag := tag_of(crop, number)))


def _pick(event: events.Pick) -> tuple[Detail, str]:
    good = [fruit.weight_g for fruit in event.fruit if not fruit.culled]
    causes = sorted({fruit.culled for fruit in event.fruit if fruit.culled})
    culls = tuple(_cull(cause, [f.weight_g for f in event.fruit if f.culled == cause]) for cause in causes)
    tagged = tuple(
        TaggedFruit(tag, None if fruit.culled else fruit.weight_g)
        for fruit in event.fruit
        if (tag := tag_of(event.crop, fruit.flower_number))
    )
    return Pick(len(good), None, tuple(float(w) for w in good if w is not None), culls, tagged), ""


def _cull(cause: str, weights_g: list[float | None]) -> Cull:
    known = [weight for weight in weights_g if weight is not None]
    total_g = round(sum(known), 1) if len(known) == len(weights_g) else None
    return Cull(len(weights_g), CullCause(cause.replace(" ", "-")), total_g)


def _plant_reading(event: events.PlantReading) -> tuple[Detail, str]:
    leaves = {0: "", 1: "1 true leaf"}.get(event.leaves, f"{event.leaves} true leaves")
    return Reading(plant_height_cm=event.height_cm), leaves


def _problem(event: events.ProblemSeen) -> tuple[Detail, str]:
    sort = ProblemSort.DISEASE if event.problem in DISEASES else ProblemSort.DISORDER
    severity = 1 if event.share_percent <= 10 else 2 if event.share_percent <= 40 else 3
    where = f"{event.where[:1].upper()}{event.where[1:]}, about {_g(event.share_percent, '%')} of it"
    return ProblemSeen(sort, event.problem, severity), where


def _treatment(event: events.Treatment) -> tuple[Detail, str]:
    dose = f"{_g(event.dose_g_per_l, 'g/L')}, {_g(event.volume_l, 'L')}"
    treatment = Treatment(event.substance, DISEASES[0], dose, event.re_entry_h, event.harvest_interval_d)
    return treatment, ""


def _tasting(event: events.Tasting) -> tuple[Detail, str]:
    return Note(), f"Tasting: {event.taste}" + (f"; keeps: {event.keeping}" if event.keeping else "")


def _note(event: events.NoteWritten) -> tuple[Detail, str]:
    return Note(), ""


def _cleared(event: events.Cleared) -> tuple[Detail, str]:
    return Note(), f"Cleared: {event.reason}"


def _g(value: float | None, unit: str) -> str:
    return f"{value:g}{THIN_SPACE}{unit}"


DETAILS: dict[type[events.Event], Callable[[Any], tuple[Detail, str]]] = {
    events.StageSeen: _stage,
    events.LightChange: _light,
    events.RoomReading: _air,
    events.Feed: _feed,
    events.PlainWater: _water,
    events.MeterCalibration: _calibration,
    events.MeterRead: _meter,
    events.PottingOn: _potting,
    events.Training: _training,
    events.Pollination: _pollination,
    events.FruitCheck: _check,
    events.Pick: _pick,
    events.PlantReading: _plant_reading,
    events.ProblemSeen: _problem,
    events.Treatment: _treatment,
    events.Tasting: _tasting,
    events.NoteWritten: _note,
    events.Cleared: _cleared,
}
