"""What keep or clear is weighed by, as found in the logbook: forecasts, running costs, labour, finished crops."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from functools import cached_property

from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_forecast import YieldForecast
from growlog.records.crop import Crop
from growlog.records.money import decimals_of
from growlog.services.facts.source import FactSource, fact_source
from growlog.services.money.costs import crop_costs
from growlog.services.money.labour import crop_labour
from growlog.services.money.lines import CostKind, CostLine
from growlog.services.money.prices import facts_in
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.season import CropSeason
from growlog.services.yield_view.used import floor_m2
from growlog.services.yield_view.usual_days import table_name
from growlog.services.yield_view.view import begun
from growlog.storage.unit_of_work import UnitOfWork

RUNNING = (CostKind.ENERGY, CostKind.NUTRIENTS, CostKind.WATER)
RECENT_DAYS = 14
_NO_PLAN_DAYS = 56  # how far is looked ahead where no clearing is planned
_NOT_AGAIN = (CostKind.GEAR, CostKind.LABOUR)  # gear stays, labour counts only where it is wanted


@dataclass(frozen=True)
class FinishedCrop:
    """A cleared crop: what it brought and took, over its days. costs: without gear and labour, main unit.

    floor_ratio: this crop's floor over that one's, by which it is scaled; 1 where either is not known.
    """

    crop_id: str
    name: str
    same_kind: bool
    days: int
    fruit_count: int
    weight_g: float
    per_kg: Decimal | None
    per_fruit: Decimal | None
    costs: Decimal
    labour_minutes: float
    floor_ratio: float


@dataclass(frozen=True)
class KeepGrounds:
    """Found in the logbook as of a day; money in the main unit of the currency.

    running_per_day: electricity, nutrients and water of the last two weeks; labour_minutes_per_day likewise.
    """

    season: CropSeason
    currency: str
    decimals: int
    per_kg: Decimal | None
    per_fruit: Decimal | None
    running_per_day: Decimal
    labour_minutes_per_day: float
    labour_rate_per_h: Decimal | None
    finished: tuple[FinishedCrop, ...]

    @cached_property
    def horizon_days(self) -> int:
        """Up to the planned clearing, else eight weeks."""
        end = self.season.planned_end_age
        return _NO_PLAN_DAYS if end is None else max(end - self.season.age, 1)

    @cached_property
    def by_count(self) -> YieldForecast | NotYet:
        """The forecast in fruit."""
        return self.season.forecast(Measure.FRUIT, self.horizon_days)

    @cached_property
    def by_weight(self) -> YieldForecast | NotYet:
        """The forecast in g."""
        return self.season.forecast(Measure.GRAMS, self.horizon_days)

    def forecast(self, measure: Measure) -> YieldForecast | NotYet:
        """In a measure."""
        return self.by_count if measure is Measure.FRUIT else self.by_weight


def keep_grounds_of(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> KeepGrounds:
    """The grounds of a crop on a day, today if none is said. Not for the window's thread."""
    day = as_of or log.today()
    with log.unit() as unit:
        source = fact_source(unit, crop_id, day)
        begun(source.crop, day)
        return keep_grounds(source)


def keep_grounds(source: FactSource) -> KeepGrounds:
    """The same from a source of figures."""
    facts = facts_in(source.unit)
    decimals = decimals_of(facts.currency)
    days = max(1, min(RECENT_DAYS, source.age + 1))
    since = source.as_of - timedelta(days=days - 1)
    recent = [line for line in source.costs.lines if line.day >= since and line.kind in RUNNING]
    minutes = sum(m for age, m in source.labour.by_age if age > source.age - days)
    return KeepGrounds(
        source.season, facts.currency, decimals,
        _main(source.crop.shop_price_minor_per_kg, decimals), _main(source.crop.shop_price_minor_per_fruit, decimals),
        _sum(recent, decimals) / days, minutes / days, _main(facts.labour_rate_minor_per_h, decimals),
        tuple(_finished(source, decimals)),
    )  # fmt: skip


def _finished(source: FactSource, decimals: int) -> Iterable[FinishedCrop]:
    unit, own = source.unit, source.crop
    kinds = {c.id: table_name(c.species) for c in unit.cultivars.all(removed=True)}
    floor = floor_m2(unit, own, min(source.as_of, own.cleared_on or source.as_of))
    for crop in sorted(unit.crops.all(), key=lambda c: c.cleared_on or date.max):
        if crop.id != own.id and crop.cleared_on is not None and crop.cleared_on <= source.as_of:
            same_kind = kinds.get(crop.cultivar_id) == kinds.get(own.cultivar_id)
            yield _finished_crop(unit, crop, crop.cleared_on, same_kind, floor, decimals)


def _finished_crop(
    unit: UnitOfWork, crop: Crop, cleared: date, same_kind: bool, floor: float | None, decimals: int
) -> FinishedCrop:
    costs = crop_costs(unit, crop, cleared)
    other = floor_m2(unit, crop, cleared)
    return FinishedCrop(
        crop.id, crop.name, same_kind, age_on(crop.day_zero, cleared) + 1, costs.total_yield.fruit_count,
        costs.total_yield.weight_g, _main(crop.shop_price_minor_per_kg, decimals),
        _main(crop.shop_price_minor_per_fruit, decimals),
        _sum((line for line in costs.lines if line.kind not in _NOT_AGAIN), decimals),
        crop_labour(unit, crop, cleared).minutes, floor / other if floor and other else 1.0,
    )  # fmt: skip


def _sum(lines: Iterable[CostLine], decimals: int) -> Decimal:
    return sum((line.minor for line in lines), Decimal(0)).scaleb(-decimals)


def _main(minor: int | None, decimals: int) -> Decimal | None:
    return None if minor is None else Decimal(minor).scaleb(-decimals)
