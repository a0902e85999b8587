"""What was planned, entered and read about the light, gathered as statements in the order of days."""

from collections.abc import Iterable
from datetime import date, timedelta

from growlog.calculations.lamp_light import explain_ppfd_from_lux, own_factor
from growlog.calculations.light_programme import CanopyLight, CanopyWay, Statement, after, mean_canopy
from growlog.records.crop import Crop, Placement
from growlog.records.entry import Entry, LightChange, Reading
from growlog.records.light_plan import LightStep
from growlog.storage.unit_of_work import UnitOfWork

_STEP, _ENTRY, _READING = 0, 1, 2


def room_statements(unit: UnitOfWork, room_id: str) -> list[Statement]:
    """Of a room: its plan, its entries, and those of the crops on the days they stood there. No readings."""
    entries = unit.entries.all(room_id=room_id, kind="light")
    for crop, placement in standing_in(unit, room_id):
        entries += [e for e in own_light(unit, crop) if stands(crop, placement, e.day)]
    return step_statements(unit, room_id) + list(map(said, _once(entries)))


def crop_statements(unit: UnitOfWork, crop: Crop) -> list[Statement]:
    """Of a crop: its own entries and readings; the plan, entries and readings of the rooms it stood in.

    What held in a room when the crop came holds from that day on.
    """
    own = [e for e in _own(unit, crop, ("light", "reading")) if e.day >= crop.day_zero]
    light = [e for e in own if e.kind == "light"]
    readings = [e for e in own if e.kind == "reading"]
    statements: list[Statement] = []
    for placement in sorted(unit.placements.all(crop_id=crop.id), key=lambda p: p.from_day):
        came = max(placement.from_day, crop.day_zero)
        if not placement.covers(came):
            continue
        of_room = step_statements(unit, placement.room_id)
        of_room += map(said, unit.entries.all(room_id=placement.room_id, kind="light"))
        read = unit.entries.all(room_id=placement.room_id, kind="reading")
        statements += _found(of_room + reading_statements(read), came)
        statements += [s for s in of_room if s.day >= came and placement.covers(s.day)]
        readings += [e for e in read if e.day >= came and placement.covers(e.day)]
    return statements + list(map(said, light)) + reading_statements(readings)


def step_statements(unit: UnitOfWork, room_id: str) -> list[Statement]:
    """The steps of a room's plan on their days."""
    found = [(day, step) for step in unit.light_steps.all(room_id=room_id) if (day := step_day(unit, step)) is not None]
    return [
        Statement(day, _STEP, step.photoperiod_h, step.on_at, step.dimming_percent, step.lamp_ids,
                  _stated(step.canopy_ppfd_umol, day))
        for day, step in sorted(found, key=lambda pair: pair[0])
    ]  # fmt: skip


def step_day(unit: UnitOfWork, step: LightStep) -> date | None:
    """The day on which a step starts; None where its crop does not stand in the room at that age."""
    if step.from_day is not None:
        return step.from_day
    crop = unit.crops.find(step.crop_id or "")
    if crop is None or crop.removed_at is not None or step.from_age is None:
        return None
    day = crop.day_zero + timedelta(days=step.from_age)
    placements = unit.placements.all(crop_id=crop.id, room_id=step.room_id)
    return day if any(stands(crop, p, day) for p in placements) else None


def reading_statements(entries: Iterable[Entry]) -> list[Statement]:
    """What sensors and lux meters showed at the canopy, the mean of each day. A reading of 0 was taken in the dark."""
    by_day: dict[date, list[CanopyLight]] = {}
    for entry in entries:
        if isinstance(entry.detail, Reading) and (canopy := _read(entry.detail, entry.day)) is not None:
            by_day.setdefault(entry.day, []).append(canopy)
    return [Statement(day, _READING, canopy=mean_canopy(readings)) for day, readings in sorted(by_day.items())]


def standing_in(unit: UnitOfWork, room_id: str) -> list[tuple[Crop, Placement]]:
    """The crops that stand or stood in a room with their placements there."""
    crops = {c.id: c for c in unit.crops.all()}
    return [(crops[p.crop_id], p) for p in unit.placements.all(room_id=room_id) if p.crop_id in crops]


def stands(crop: Crop, placement: Placement, day: date) -> bool:
    """Whether a crop stands in its place on a day: from day 0 until it was cleared, that day with it."""
    return placement.covers(day) and crop.day_zero <= day and (crop.cleared_on is None or day <= crop.cleared_on)


def own_light(unit: UnitOfWork, crop: Crop) -> list[Entry]:
    """The light changes entered for a crop or one of its plants."""
    return _own(unit, crop, ("light",))


def said(entry: Entry) -> Statement:
    """A light change as a statement."""
    detail = entry.detail
    if not isinstance(detail, LightChange):
        raise TypeError(f"{entry.kind} is no light change")
    return Statement(
        entry.day, _ENTRY, detail.photoperiod_h, detail.on_at, detail.dimming_percent, None,
        _stated(detail.canopy_ppfd_umol, entry.day),
    )  # fmt: skip


def _own(unit: UnitOfWork, crop: Crop, kinds: tuple[str, ...]) -> list[Entry]:
    found = unit.entries.all(crop_id=crop.id, kind=list(kinds))
    plants = [p.id for p in unit.plants.all(crop_id=crop.id)]
    return found + (unit.entries.all(plant_id=plants, kind=list(kinds)) if plants else [])


def _found(of_room: list[Statement], came: date) -> list[Statement]:
    """What the crop found when it came, as one statement of that day."""
    now = None
    for statement in sorted((s for s in of_room if s.day < came), key=lambda s: (s.day, s.rank)):
        now = after(now, statement)
    if now is None:
        return []
    return [Statement(came, -1, now.photoperiod_h, now.on_at, now.dimming_percent, now.lamp_ids, now.canopy)]


def _stated(ppfd_umol: float | None, day: date) -> CanopyLight | None:
    return None if ppfd_umol is None else CanopyLight(ppfd_umol, CanopyWay.STATED, day=day)


def _read(reading: Reading, day: date) -> CanopyLight | None:
    if reading.canopy_ppfd_umol:
        return CanopyLight(reading.canopy_ppfd_umol, CanopyWay.SENSOR, day=day)
    if not reading.canopy_lux or not reading.lamp_kind:
        return None
    try:
        kind, factor = own_factor(reading.lamp_kind)
        figure = explain_ppfd_from_lux(reading.canopy_lux, kind, factor)
    except ValueError:
        return None  # no factor is known for these lamps
    low, high = (v if isinstance(v, (int, float)) else None for v in (figure.low, figure.high))
    return CanopyLight(float(figure.value or 0), CanopyWay.LUX, low, high, day)


def _once(entries: Iterable[Entry]) -> list[Entry]:
    return list({e.id: e for e in entries}.values())
