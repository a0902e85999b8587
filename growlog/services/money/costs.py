"""The cost of a crop, by kind and by day, and what that is per fruit, kg and day."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_HALF_EVEN, Decimal

from growlog.calculations import per_figures
from growlog.calculations.explained_figure import Figure
from growlog.calculations.light_programme import days_between
from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import YieldSoFar, yield_so_far
from growlog.records.crop import Crop
from growlog.records.entry import Entry
from growlog.records.logbook import LogbookFacts
from growlog.records.money import decimals_of
from growlog.services.energy.of_crop import CropEnergy, crop_energy
from growlog.services.entries import entries_of_crop
from growlog.services.money.entry_costs import labour_lines, nutrient_lines, water_lines
from growlog.services.money.lines import CostKind, CostLine
from growlog.services.money.prices import facts_in
from growlog.services.money.spread import purchase_lines
from growlog.services.money.whose import Placed
from growlog.services.open_logbook import OpenLogbook
from growlog.services.picks import pick_points
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


@dataclass(frozen=True)
class CostDay:
    """What a day cost, in whole minor units by kind; kinds that cost nothing are left out."""

    day: date
    age: int
    by_kind: Mapping[CostKind, int]

    @property
    def total_minor(self) -> int:
        """All kinds together."""
        return sum(self.by_kind.values())


@dataclass(frozen=True)
class CostPer:
    """What the crop costs per unit; the value of a figure is None as long as there is none. Shop prices as stated."""

    per_fruit: Figure
    per_kg: Figure
    per_day: Figure
    kwh_per_kg: Figure
    minutes_per_fruit: Figure
    shop_per_kg_minor: int | None
    shop_per_fruit_minor: int | None


@dataclass(frozen=True)
class CropCosts:
    """A crop's cost up to a day. The days add up to the kinds, and the kinds to the total, exactly.

    notes: sentences on what is not counted because nothing is stated of it.
    """

    crop_id: str
    currency: str
    as_of: date
    days: tuple[CostDay, ...]
    by_kind: Mapping[CostKind, int]
    lines: tuple[CostLine, ...]
    energy: CropEnergy
    total_yield: YieldSoFar
    labour_minutes: float
    notes: tuple[str, ...]
    per: CostPer

    @property
    def total_minor(self) -> int:
        """In minor units of the currency."""
        return sum(self.by_kind.values())

    @property
    def total(self) -> Decimal:
        """In the currency's main unit."""
        return Decimal(self.total_minor).scaleb(-decimals_of(self.currency))


def costs_of_crop(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> CropCosts:
    """The cost of a crop up to a day, today if none is said; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        return crop_costs(unit, unit.crops.get(crop_id), as_of or log.today())


def crop_costs(unit: UnitOfWork, crop: Crop, until: date) -> CropCosts:
    """The same within a unit of work."""
    facts = facts_in(unit)
    placed = Placed.of(unit)
    own = [e for e in entries_of_crop(unit, crop) if e.day <= until]
    shared = [(e, share) for e in own if (share := placed.share(crop, e)) > 0]
    energy = crop_energy(unit, crop, until)
    recirculating = {t.id for t in unit.tanks.all(removed=True) if t.recirculates}
    nutrients, unpriced = nutrient_lines(unit, shared, facts, until)
    bought = purchase_lines(crop, list(placed.crops.values()), unit.purchases.all(), until)
    lines = [
        *bought, *nutrients, *water_lines(shared, facts, recirculating), *labour_lines(shared, facts),
        *_energy_lines(energy, facts.currency),
    ]  # fmt: skip
    days = _days(crop, lines)
    by_kind = _added(days)
    total_yield = yield_so_far(pick_points(crop, own))
    minutes = sum((e.labour_minutes or 0) * share for e, share in shared)
    total = Decimal(sum(by_kind.values())).scaleb(-decimals_of(facts.currency))
    return CropCosts(
        crop.id, facts.currency, until, days, by_kind, tuple(sorted(lines, key=lambda line: line.day)), energy,
        total_yield, minutes, tuple(_notes(facts, shared, energy, unpriced, nutrients, bought)),
        _per(crop, facts.currency, total if lines else None, total_yield, energy.kwh, minutes, until),
    )  # fmt: skip


def _energy_lines(energy: CropEnergy, currency: str) -> list[CostLine]:
    decimals = decimals_of(currency)
    lines = [
        CostLine(d.day, CostKind.ENERGY, d.cost.scaleb(decimals), say("electricity"))
        for d in energy.days
        if d.cost is not None
    ]
    worn = ((d, d.room_day.wear_minor * Decimal(f"{d.share:.9f}")) for d in energy.days)
    return lines + [CostLine(d.day, CostKind.GEAR, minor, say("bulbs")) for d, minor in worn if minor]


def _days(crop: Crop, lines: Iterable[CostLine]) -> tuple[CostDay, ...]:
    """Days in whole minor units. Each kind is rounded by its sum so far, so that the days add up to it exactly."""
    exact: dict[date, dict[CostKind, Decimal]] = defaultdict(lambda: defaultdict(Decimal))
    for line in lines:
        exact[line.day][line.kind] += line.minor
    so_far: dict[CostKind, Decimal] = defaultdict(Decimal)
    days = []
    for day in sorted(exact):
        whole = {}
        for kind, minor in exact[day].items():
            before, after = _rounded(so_far[kind]), _rounded(so_far[kind] + minor)
            so_far[kind] += minor
            if after != before:
                whole[kind] = after - before
        days.append(CostDay(day, age_on(crop.day_zero, day), whole))
    return tuple(days)


def _added(days: Iterable[CostDay]) -> dict[CostKind, int]:
    found = {kind: sum(d.by_kind.get(kind, 0) for d in days) for kind in CostKind}
    return {kind: minor for kind, minor in found.items() if minor}


def _rounded(minor: Decimal) -> int:
    return int(minor.to_integral_value(ROUND_HALF_EVEN))


def _per(
    crop: Crop, currency: str, cost: Decimal | None, total: YieldSoFar, kwh: float, minutes: float, until: date
) -> CostPer:
    decimals = decimals_of(currency)
    last = until if crop.cleared_on is None else min(until, crop.cleared_on)
    days = len(days_between(crop.day_zero, last))
    weight_g = 0.0 if total.unknown_count else total.weight_g
    return CostPer(
        per_figures.cost_per_fruit(cost, total.fruit_count, currency, decimals, until),
        per_figures.cost_per_kg(cost, weight_g, currency, decimals, until, total.estimated_g > 0),
        per_figures.cost_per_day(cost, days, currency, decimals, until),
        per_figures.kwh_per_kg(kwh, weight_g, until),
        per_figures.minutes_per_fruit(minutes, total.fruit_count, until),
        crop.shop_price_minor_per_kg,
        crop.shop_price_minor_per_fruit,
    )


def _notes(
    facts: LogbookFacts,
    shared: list[tuple[Entry, float]],
    energy: CropEnergy,
    unpriced: list[str],
    nutrients: list[CostLine],
    bought: list[CostLine],
) -> list[str]:
    found = list(energy.notes)
    if facts.labour_rate_minor_per_h is None and any(e.labour_minutes for e, _ in shared):
        found.append(say("What an hour of labour is worth is not stated, so labour is not counted. It may be nothing."))
    if facts.water_price_minor_per_m3 is None and any(getattr(e.detail, "volume_l", None) for e, _ in shared):
        found.append(say("The price of water is not stated, so water is not counted."))
    if unpriced:
        found.append(say("Without a price, and so not counted: {names}.", names=", ".join(unpriced)))
    if nutrients and any(line.kind is CostKind.NUTRIENTS for line in bought):
        found.append(
            say("Nutrients count by what feeds took from the shelf and by purchases. Is a bottle counted twice?")
        )
    return found
