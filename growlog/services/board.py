"""The season board of a crop: everything on the one axis of plant age, as plain values ready to be drawn."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date

from growlog.calculations.crop_light import UsualLight, usual_light
from growlog.calculations.growth_stage import StageSpan, stage_spans
from growlog.calculations.light import LightSpan
from growlog.calculations.light_programme import light_spans
from growlog.calculations.plant_age import age_on, day_at, packet_age
from growlog.calculations.yield_curve import CurvePoint, YieldSoFar, cumulative_yield, first_pick_age, yield_so_far
from growlog.records.crop import Crop
from growlog.records.cultivar import CountsFrom, Cultivar
from growlog.records.entry import Entry, Feed, Pick, Pollination, StageSeen
from growlog.records.recipe import Mix
from growlog.services.as_it_stood import known_on
from growlog.services.board_use import BoardUse
from growlog.services.climate.of_crop import CropClimateDay, climate_days_of_crop
from growlog.services.crops import first_flower_day
from growlog.services.drain_series import DrainPoint, drain_points
from growlog.services.entries import entries_of_crop, own_entries
from growlog.services.light.programme import crop_light_days
from growlog.services.money.whose import Placed
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_uses import photos_of_crop
from growlog.services.picks import pick_points
from growlog.storage.unit_of_work import UnitOfWork

_EVENTS = ("problem", "treatment", "potting-on", "tank-care", "calibration", "meter", "note", "fruit-check")


@dataclass(frozen=True)
class PhotoDay:
    """A day with photos: the leading one and how many there are."""

    age: int
    sha256: str
    use_id: str
    photo_count: int


@dataclass(frozen=True)
class Mark:
    """An entry at a plant age, with its one line and its second line."""

    age: int
    entry_id: str
    kind: str
    text: str
    more: str


@dataclass(frozen=True)
class Tally:
    """A day's count for a lane of bars or squares: culled counts only for picks."""

    age: int
    count: int
    culled: int
    text: str
    entry_id: str = ""  # the first of the day


@dataclass(frozen=True)
class FeedPoint:
    """A feed: EC in and of the drain (mS/cm), volume (L)."""

    age: int
    ec_ms_per_cm: float | None
    drain_ec_ms_per_cm: float | None
    volume_l: float | None
    water_only: bool
    text: str
    entry_id: str = ""


@dataclass(frozen=True)
class DueMark:
    """Something due at a plant age of today or later. kind: of the entry that does it, "photo" or ""."""

    age: int
    kind: str
    text: str


@dataclass(frozen=True)
class MixBand:
    """One mix in use from a plant age to another, inclusive."""

    start_age: int
    end_age: int
    label: str


@dataclass(frozen=True)
class Curve:
    """A crop's cumulative yield at its own plant ages, up to last_age."""

    crop_id: str
    name: str
    points: tuple[CurvePoint, ...]
    last_age: int


@dataclass(frozen=True)
class Board:
    """Everything that the season board shows of a crop. Ages are plant ages in days."""

    crop: Crop  # as it stood that evening: to be shown, never to be written
    cultivar: Cultivar
    day_zero: date
    last_age: int  # today, or clearing
    photo_days: tuple[PhotoDay, ...]
    stages: tuple[StageSpan, ...]
    light: tuple[LightSpan, ...]
    mixes: tuple[MixBand, ...]
    feeds: tuple[FeedPoint, ...]
    training: tuple[Mark, ...]
    pollination: tuple[Tally, ...]
    picks: tuple[Tally, ...]
    events: tuple[Mark, ...]  # problems, treatments, potting-on, calibrations, notes
    readings: tuple[Mark, ...]
    curve: Curve
    total: YieldSoFar
    females_pollinated: int
    packet_maturity_age: int | None
    first_flower_age: int | None
    first_pick_age: int | None
    labour_minutes: int  # with its part of the work on room and tank
    climate: tuple[CropClimateDay, ...] = ()
    use: BoardUse | None = None  # put in by who reads it beside the board
    usual_light: UsualLight | None = None  # the range that the crop's daily light is held against
    drains: tuple[DrainPoint, ...] = ()
    due: tuple[DueMark, ...] = ()  # put in by who knows the routines; the board is read without them

    def date_of(self, age: int) -> date:
        """The civil date of a plant age of this crop."""
        return day_at(self.day_zero, age)

    @property
    def missing_photo_ages(self) -> tuple[int, ...]:
        """Days without a photo between the first and the last day that have one."""
        have = {p.age for p in self.photo_days}
        return tuple(a for a in range(min(have), max(have)) if a not in have) if have else ()


def board_of(log: OpenLogbook, crop_id: str) -> Board:
    """The board of a crop as it stood this evening; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        crop = known_on(unit.crops.get(crop_id), log.today())
        cultivar = unit.cultivars.get(crop.cultivar_id)
        entries = [e for e in entries_of_crop(unit, crop) if e.day <= log.today()]
        mixes = {m.id: m for m in unit.mixes.all(removed=True)}
        photo_days = _photo_days(unit, crop, log.today())
        last_age = _last_age(crop, log.today(), photo_days)
        until = day_at(crop.day_zero, last_age)
        light = _light(unit, crop, until)
        climate = tuple(climate_days_of_crop(unit, crop, until, entries))
        minutes = round(_labour(unit, crop, entries))
    board = _board(crop, cultivar, entries, mixes, photo_days, light, last_age)
    return replace(board, climate=climate, labour_minutes=minutes)


def curve_of(log: OpenLogbook, crop_id: str) -> Curve:
    """The curve of another crop, to be laid under at the same plant age."""
    with log.unit() as unit:
        crop = known_on(unit.crops.get(crop_id), log.today())
        entries = [e for e in own_entries(unit, [crop_id])[crop_id] if e.day <= log.today()]
    points = pick_points(crop, entries)
    return Curve(
        crop_id, crop.name, tuple(cumulative_yield(points)), age_on(crop.day_zero, crop.cleared_on or log.today())
    )


def _board(
    crop: Crop,
    cultivar: Cultivar,
    entries: list[Entry],
    mixes: dict[str, Mix],
    photo_days: tuple[PhotoDay, ...],
    light: tuple[LightSpan, ...],
    last_age: int,
) -> Board:
    def age(entry: Entry) -> int:
        return age_on(crop.day_zero, entry.day)

    points = pick_points(crop, entries)
    flower = crop.first_flower_on or first_flower_day(entries)
    typed_pick = crop.first_pick_on
    return Board(
        crop=crop,
        cultivar=cultivar,
        day_zero=crop.day_zero,
        last_age=last_age,
        photo_days=photo_days,
        stages=tuple(
            stage_spans(((age(e), e.detail.codes) for e in entries if isinstance(e.detail, StageSeen)), last_age)
        ),
        light=light,
        mixes=_mix_bands(entries, mixes, age),
        feeds=tuple(_feed_point(e, e.detail, age(e)) for e in entries if isinstance(e.detail, Feed)),
        training=_marks(entries, age, ("training",)),
        pollination=_pollination(entries, age),
        picks=_picks(entries, age),
        events=_marks(entries, age, _EVENTS),
        readings=_marks(entries, age, ("reading",)),
        curve=Curve(crop.id, crop.name, tuple(cumulative_yield(points)), last_age),
        total=yield_so_far(points),
        females_pollinated=sum(e.detail.females_pollinated or 0 for e in entries if isinstance(e.detail, Pollination)),
        packet_maturity_age=packet_age_of(crop, cultivar),
        first_flower_age=None if flower is None else age_on(crop.day_zero, flower),
        first_pick_age=age_on(crop.day_zero, typed_pick) if typed_pick else first_pick_age(points),
        drains=tuple(drain_points(entries, crop.day_zero)),
        labour_minutes=0,
        usual_light=next(iter(usual_light(cultivar.species)), None),
    )


def _last_age(crop: Crop, today: date, photo_days: tuple[PhotoDay, ...]) -> int:
    end = age_on(crop.day_zero, crop.cleared_on or max(today, crop.day_zero))
    return max([end, 0, *(p.age for p in photo_days)])


def packet_age_of(crop: Crop, cultivar: Cultivar) -> int | None:
    """The plant age at which the packet promises the first pick; None where it says nothing or its day is not known."""
    if cultivar.packet_days is None:
        return None
    starts = {
        CountsFrom.SOWING: crop.sown_on,
        CountsFrom.EMERGENCE: crop.emerged_on,
        CountsFrom.TRANSPLANTING: crop.transplanted_on,
    }
    return packet_age(cultivar.packet_days, starts[cultivar.packet_counts_from], crop.day_zero)


def _photo_days(unit: UnitOfWork, crop: Crop, today: date) -> tuple[PhotoDay, ...]:
    days: dict[date, PhotoDay] = {}
    for shown in photos_of_crop(unit, crop.id, today):
        day, first = shown.use.day, days.get(shown.use.day)
        if first is None:
            days[day] = PhotoDay(age_on(crop.day_zero, day), shown.photo.sha256, shown.use.id, 1)
        else:
            days[day] = PhotoDay(first.age, first.sha256, first.use_id, first.photo_count + 1)
    return tuple(days.values())


def _light(unit: UnitOfWork, crop: Crop, until: date) -> tuple[LightSpan, ...]:
    """The light of each day by the programme, entries and readings; days alike are one span."""
    days, _ = crop_light_days(unit, crop, until)
    return tuple(light_spans(days, crop.day_zero))


def _mix_bands(entries: list[Entry], mixes: dict[str, Mix], age: Callable[[Entry], int]) -> tuple[MixBand, ...]:
    bands: list[MixBand] = []
    for entry in entries:
        detail = entry.detail
        if not isinstance(detail, Feed) or detail.mix_id is None or detail.mix_id not in mixes:
            continue
        label, now = mixes[detail.mix_id].name, age(entry)
        if bands and bands[-1].label == label:
            bands[-1] = MixBand(bands[-1].start_age, now, label)
        else:
            bands.append(MixBand(now, now, label))
    return tuple(bands)


def _feed_point(entry: Entry, feed: Feed, age: int) -> FeedPoint:
    text = "; ".join(t for t in (feed.summary(), feed.second_line()) if t)
    return FeedPoint(age, feed.ec_ms_per_cm, feed.drain_ec_ms_per_cm, feed.volume_l, feed.water_only, text, entry.id)


def _marks(entries: list[Entry], age: Callable[[Entry], int], kinds: tuple[str, ...]) -> tuple[Mark, ...]:
    return tuple(
        Mark(age(e), e.id, e.kind, e.detail.summary(), "; ".join(t for t in (e.detail.second_line(), e.note) if t))
        for e in entries
        if e.kind in kinds
    )


def _pollination(entries: list[Entry], age: Callable[[Entry], int]) -> tuple[Tally, ...]:
    days: dict[int, Tally] = {}
    for entry in entries:
        detail = entry.detail
        if isinstance(detail, Pollination) and (detail.females_pollinated or detail.trusses_vibrated):
            count = (detail.females_pollinated or 0) + (detail.trusses_vibrated or 0)
            _add(days, age(entry), count, 0, entry)
    return tuple(days.values())


def _picks(entries: list[Entry], age: Callable[[Entry], int]) -> tuple[Tally, ...]:
    days: dict[int, Tally] = {}
    for entry in entries:
        if isinstance(entry.detail, Pick):
            _add(days, age(entry), entry.detail.fruit_count, entry.detail.culled_count, entry)
    return tuple(days.values())


def _add(days: dict[int, Tally], age: int, count: int, culled: int, entry: Entry) -> None:
    had, text = days.get(age), entry.detail.summary()
    if had is None:
        days[age] = Tally(age, count, culled, text, entry.id)
    else:
        days[age] = Tally(age, had.count + count, had.culled + culled, f"{had.text}; {text}", had.entry_id)


def _labour(unit: UnitOfWork, crop: Crop, entries: list[Entry]) -> float:
    """Minutes: the crop's own, and its part of those that were spent on its room or tank."""
    placed = Placed.of(unit)
    return sum(e.labour_minutes * placed.share(crop, e) for e in entries if e.labour_minutes)
