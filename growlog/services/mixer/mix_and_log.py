"""Mix and log: one change that saves the mix, writes the feeds and draws the bottles down."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time

from growlog.records.change import Change
from growlog.records.entry import Entry, Feed, Owner, OwnerKind
from growlog.records.problems import Problem, refuse
from growlog.records.product import StockMove, StockMoveSort
from growlog.records.recipe import Mix
from growlog.services.entries import crops_concerned, standing_entry_problems
from growlog.services.mixer.bench import Bench, read_bench
from growlog.services.mixer.lines import DoseRow, dose_rows
from growlog.services.mixer.saving import parts_of
from growlog.services.mixer.state import MixerState
from growlog.services.mixer.view import view_at
from growlog.services.mixes import edition_of
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf.move_ids import move_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


@dataclass(frozen=True)
class FeedTo:
    """Whose feed it is, and how much of the tank; None: an equal share of what the others leave."""

    owner: Owner
    volume_l: float | None = None


@dataclass(frozen=True)
class Mixed:
    """What the meters showed after mixing (None: not measured), and what belongs to the entries."""

    ec_ms_per_cm: float | None = None
    ph: float | None = None
    at: time | None = None
    labour_minutes: int | None = None
    note: str = ""


_NOT_MEASURED = Mixed()


def mix_and_log(log: OpenLogbook, state: MixerState, feeds: Sequence[FeedTo], mixed: Mixed = _NOT_MEASURED) -> Change:
    """Writes a feed for each of the crops, plants or the tank, all of the state's day, as one undoable change.

    The whole tank is drawn from the bottles, shared over the feeds by their volume. The mix is saved as the next
    edition unless the newest of its name says the same. RecordRefused with all that is wrong; fields of the state,
    "feeds", and those of a feed.
    """
    group = new_id()
    day = state.day or log.today()
    with log.unit() as unit:
        bench = read_bench(unit, day, state.crop_id, state.tank_id)
        refuse([*view_at(bench, state).problems, *_feeds_problems(state, feeds)])
        rows = [row for row in dose_rows(bench, state) if row.dose.amount > 0]
        mix, is_new = _mix_of(unit, bench, state, rows)
        entries = _entries(state, feeds, mixed, mix, group, day)
        refuse([p for e in entries for p in e.problems() + standing_entry_problems(unit, e, log.today())])
        if mix is not None and is_new:
            unit.add(group, mix)
        unit.add(group, *entries)
        unit.add(group, *_moves(unit.now, rows, entries, day))
        crops = crops_concerned(unit, entries)
        unit.commit()
    title = say("Mix and log {name}", name=mix.name) if mix else say("Log water")
    return Change(group, title, tuple(e.id for e in entries), crops)


def split_volume(log: OpenLogbook, owners: Sequence[Owner], total_l: float, day: date) -> list[FeedTo]:
    """A volume shared over crops by their plants alive on a day; a plant or a tank counts as one."""
    with log.unit() as unit:
        counts = [_plants(unit, owner, day) for owner in owners]
    in_all = sum(counts)
    return [FeedTo(owner, total_l * count / in_all) for owner, count in zip(owners, counts, strict=True)]


def _plants(unit: UnitOfWork, owner: Owner, day: date) -> int:
    if owner.kind is not OwnerKind.CROP:
        return 1
    plants = unit.plants.all(crop_id=owner.id)
    return max(1, sum(p.from_day <= day and (p.lost_on is None or p.lost_on >= day) for p in plants))


def _feeds_problems(state: MixerState, feeds: Sequence[FeedTo]) -> list[Problem]:
    if not state.tank_l:
        return [Problem("tank_l", say("Say how much is mixed."))]
    if not feeds:
        return [Problem("feeds", say("Choose the crops or the tank that get it."))]
    if len({feed.owner for feed in feeds}) < len(feeds):
        return [Problem("feeds", say("One of them is named twice."))]
    if any(feed.volume_l is not None and feed.volume_l < 0 for feed in feeds):
        return [Problem("feeds", say("A volume is never negative."))]
    if sum(feed.volume_l or 0.0 for feed in feeds) > state.tank_l * 1.001:
        return [Problem("feeds", say("More is given than the tank holds."))]
    return []


def _mix_of(unit: UnitOfWork, bench: Bench, state: MixerState, rows: list[DoseRow]) -> tuple[Mix | None, bool]:
    if not rows:
        return None, False
    owner = bench.crop.name if bench.crop else bench.tank.name if bench.tank else ""
    name = state.mix_name.strip() or (say("Mix for {name}", name=owner) if owner else say("Mix"))
    return edition_of(unit, name, parts_of(bench, state), state.waters)


def _entries(
    state: MixerState, feeds: Sequence[FeedTo], mixed: Mixed, mix: Mix | None, group: str, day: date
) -> list[Entry]:
    entries = []
    for number, (feed, volume_l) in enumerate(zip(feeds, _volumes(state, feeds), strict=True)):
        detail = Feed(
            mix_id=mix.id if mix else None,
            strength_percent=state.strength_percent if mix else None,
            volume_l=volume_l,
            ec_ms_per_cm=mixed.ec_ms_per_cm,
            ph=mixed.ph,
            water_only=mix is None,
        )
        minutes = mixed.labour_minutes if number == 0 else None  # the tank was mixed once
        shared = group if len(feeds) > 1 else None
        entries.append(Entry(new_id(), feed.owner, day, detail, mixed.at, minutes, mixed.note, shared))
    return entries


def _volumes(state: MixerState, feeds: Sequence[FeedTo]) -> list[float]:
    left = max((state.tank_l or 0.0) - sum(f.volume_l or 0.0 for f in feeds), 0.0)
    open_ones = sum(f.volume_l is None for f in feeds)
    return [left / open_ones if f.volume_l is None else f.volume_l for f in feeds]


def _moves(now: datetime, rows: list[DoseRow], entries: list[Entry], day: date) -> list[StockMove]:
    """What each feed took from each bottle: its share by volume of what the whole tank took."""
    given = [getattr(e.detail, "volume_l", 0.0) or 0.0 for e in entries]
    in_all = sum(given)
    moves = []
    for row in rows:
        if row.item is None or row.own_amount is None:
            continue
        for entry, volume_l in zip(entries, given, strict=True):
            share = volume_l / in_all if in_all > 0 else 1 / len(entries)
            amount = row.own_amount * share
            if amount > 0:
                used = StockMoveSort.USED
                moves.append(StockMove(move_id(now), row.item.product.id, day, used, amount, entry_id=entry.id))
    return moves
