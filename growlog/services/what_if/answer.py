"""The answer to a what-if: the partial budget of the change, per crop and per fruit, and where it breaks even."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.calculations.partial_budget import (
    BudgetLine,
    PartialBudget,
    break_even_price,
    break_even_yield_change,
    cost_lines,
    explain_break_even_price,
    explain_break_even_yield,
    explain_budget,
    partial_budget,
)
from growlog.records.money import decimals_of
from growlog.records.problems import refuse
from growlog.services.open_logbook import OpenLogbook
from growlog.services.review.crop_figures import CropFigures, crop_figures
from growlog.services.review.wording import money
from growlog.services.what_if.cost_changes import CostChange, cost_changes, picking_cost
from growlog.services.what_if.energy import power_now
from growlog.services.what_if.inputs import ChangedInput, WhatIf
from growlog.services.what_if.listed import listed_changes
from growlog.words import say, show_number

_PER_CENT = Decimal(100)


@dataclass(frozen=True)
class WhatIfStart:
    """The inputs as they were, to start a form from; None: not known."""

    lamp_w: float | None
    photoperiod_h: float | None
    price_per_kwh: Decimal | None
    plants: int
    system: str
    cultivar: str
    pollination_minutes: float
    currency: str


@dataclass(frozen=True)
class WhatIfAnswer:
    """What the change brings, amounts in the currency's main unit.

    changes: every input that was changed. parts: the four parts with their lines, in words. net: None where the yield
    change is not given though one is to be expected, or where the yield has no price. cost_change: added less reduced
    costs, without what follows the yield where that is not given. cost_per_fruit_*: None without fruit or costs.
    break_even_yield_percent: the yield change at which the change pays by the shop's price, None where there is none;
    same_cost_yield_percent: at which a fruit costs what it costs now. break_even_price: of a fruit. headline: the
    answer in a few words; sentences: what to know of it.
    """

    changes: tuple[ChangedInput, ...]
    budget: PartialBudget
    parts: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]
    yield_change_percent: Decimal | None
    net: Decimal | None
    cost_change: Decimal
    cost_per_fruit_now: Decimal | None
    cost_per_fruit_then: Decimal | None
    break_even_yield_percent: Decimal | None
    same_cost_yield_percent: Decimal | None
    break_even_price: Decimal | None
    headline: str
    sentences: tuple[str, ...]
    figures: tuple[Figure, ...]
    currency: str

    @property
    def needs_yield_change(self) -> bool:
        """Whether it waits for the yield change that is expected."""
        return self.yield_change_percent is None


def starting_point(log: OpenLogbook, crop_id: str) -> WhatIfStart:
    """The inputs of a crop as they stood last; LogbookProblem if it is not there."""
    with log.unit() as unit:
        crop = crop_figures(unit, crop_id, log.today())
        now = power_now(unit, crop.crop, log.today())
    return WhatIfStart(
        now.lamp_w, now.photoperiod_h, now.price_per_kwh, _plants(crop), crop.crop.system, crop.cultivar.name,
        crop.number("minutes-pollination") or 0.0, crop.currency,
    )  # fmt: skip


def what_if(log: OpenLogbook, crop_id: str, change: WhatIf, as_of: date | None = None) -> WhatIfAnswer:
    """The partial budget of growing a crop again in another way, against the crop as it was grown up to a day.

    RecordRefused with all that is wrong with the change; LogbookProblem if the crop is not there.
    """
    refuse(change.problems())
    day = as_of or log.today()
    with log.unit() as unit:
        crop = crop_figures(unit, crop_id, day)
        now = power_now(unit, crop.crop, day)
        yield_change = _yield_change(change, crop)
        costs = cost_changes(unit, crop, change, yield_change, _plants(crop))
    return _Answer(crop, change, yield_change, costs).told(listed_changes(change, crop, now, _plants(crop)))


def _plants(crop: CropFigures) -> int:
    return max(1, sum(p.lost_on is None or p.lost_on > crop.crop.day_zero for p in crop.plants))


def _yield_change(change: WhatIf, crop: CropFigures) -> Decimal | None:
    """In per cent: as given; in proportion to the plants where nothing else bears on it; None where it is not known."""
    if change.yield_change_percent is not None:
        return Decimal(str(change.yield_change_percent))
    if change.asks_for_yield:
        return None
    if change.plants is not None:
        return _PER_CENT * (Decimal(change.plants) / _plants(crop) - 1)
    return Decimal(0)


class _Answer:
    """The parts of an answer, worked out one from the other."""

    def __init__(self, crop: CropFigures, change: WhatIf, yield_change: Decimal | None, costs: CostChange) -> None:
        self._crop, self._change, self._yield_change, self._costs = crop, change, yield_change, costs
        self._currency = crop.currency
        self._decimals = decimals_of(crop.currency)
        self._worth = _worth_of_yield(crop)
        added, reduced = cost_lines([(label, round(amount, self._decimals)) for label, amount in costs.lines])
        self._budget = partial_budget(self._returns(1), reduced, added, self._returns(-1))

    def told(self, changes: tuple[ChangedInput, ...]) -> WhatIfAnswer:
        """The answer."""
        now, then = self._per_fruit(Decimal(0), Decimal(0)), self._then()
        by_price, by_cost = self._break_even_yields()
        return WhatIfAnswer(
            changes=changes,
            budget=self._budget,
            parts=self._parts(),
            yield_change_percent=self._yield_change,
            net=self._net(),
            cost_change=self._budget.cost_change,
            cost_per_fruit_now=now,
            cost_per_fruit_then=then,
            break_even_yield_percent=by_price,
            same_cost_yield_percent=by_cost,
            break_even_price=self._price(),
            headline=self._headline(now, then, by_price, by_cost),
            sentences=tuple(self._sentences(by_price, by_cost)),
            figures=tuple(self._figures(then)),
            currency=self._currency,
        )

    def _returns(self, sign: int) -> tuple[BudgetLine, ...]:
        if self._worth is None or not self._yield_change or self._yield_change * sign < 0:
            return ()
        label = say("more fruit") if sign > 0 else say("less fruit")
        return (BudgetLine(label, round(self._worth * abs(self._yield_change) / _PER_CENT, self._decimals)),)

    def _net(self) -> Decimal | None:
        if self._yield_change is None or (self._worth is None and self._yield_change):
            return None
        return self._budget.net

    def _then(self) -> Decimal | None:
        return None if self._yield_change is None else self._per_fruit(self._budget.cost_change, self._yield_change)

    def _per_fruit(self, cost_change: Decimal, yield_change: Decimal) -> Decimal | None:
        fruit = self._crop.facts.fruit_count * (1 + yield_change / _PER_CENT)
        known = self._crop.figure("cost") is not None or cost_change
        return (self._crop.costs.total + cost_change) / fruit if fruit and known else None

    def _break_even_yields(self) -> tuple[Decimal | None, Decimal | None]:
        """By the shop's price, and by the cost of a fruit; the costs without what follows the yield."""
        fixed, picking = self._costs.without_picking, picking_cost(self._crop)
        by_price = None
        if self._worth is not None and self._worth > picking:
            by_price = break_even_yield_change(fixed, self._worth - picking)
        total = self._crop.costs.total - picking
        by_cost = break_even_yield_change(fixed, total) if total > 0 and self._crop.facts.fruit_count else None
        return by_price, by_cost

    def _price(self) -> Decimal | None:
        if not self._yield_change:
            return None
        return break_even_price(self._budget.cost_change, self._more_fruit())

    def _more_fruit(self) -> Decimal:
        return self._crop.facts.fruit_count * (self._yield_change or Decimal(0)) / _PER_CENT

    def _parts(self) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
        parts = (
            (say("Added returns"), self._budget.added_returns),
            (say("Reduced costs"), self._budget.reduced_costs),
            (say("Added costs"), self._budget.added_costs),
            (say("Reduced returns"), self._budget.reduced_returns),
        )
        return tuple((title, tuple((li.label, self._money(li.amount)) for li in lines)) for title, lines in parts)

    def _headline(
        self, now: Decimal | None, then: Decimal | None, by_price: Decimal | None, by_cost: Decimal | None
    ) -> str:
        if now is not None and then is not None:
            difference = round(then - now, self._decimals)
            if not difference:
                return say("a fruit costs the same")
            amount = self._money(abs(difference))
            return say("{amount} a fruit cheaper", amount=amount) if difference < 0 else say(
                "{amount} a fruit dearer", amount=amount)  # fmt: skip
        needed = by_price if by_price is not None else by_cost
        if self._yield_change is None and needed is not None:
            return _needed(needed)
        cost = self._budget.cost_change
        if not cost and self._costs.notes:
            return say("what changes has no price yet")
        if not cost:
            return say("costs stay as they are")
        shown = self._money(abs(cost))
        return say("{amount} a crop cheaper", amount=shown) if cost < 0 else say("{amount} a crop dearer", amount=shown)

    def _sentences(self, by_price: Decimal | None, by_cost: Decimal | None) -> list[str]:
        found = list(self._costs.notes)
        if self._yield_change is None:
            sentence = say(
                "The yield change that you expect is not given, and a change of light, feed, system or cultivar "
                "brings one. So the answer is the yield change at which it pays."
            )
            found.insert(0, sentence)
            found += _break_evens(by_price, by_cost)
        if self._change.plants is not None and self._change.yield_change_percent is None and self._yield_change:
            sentence = say(
                "Each plant is taken to yield as before. Under the same lamps more plants often yield less each; give "
                "the change that you expect if you know better."
            )
            found.append(sentence)
        if self._worth is None:
            found.append(say("What a shop asks for such fruit is not stated with the crop, so it has no price here."))
        return found

    def _figures(self, then: Decimal | None) -> list[Figure]:
        found = [explain_budget(self._budget, self._currency, self._decimals)]
        if self._worth is not None:
            worth = max(self._worth - picking_cost(self._crop), Decimal(0))
            found.append(explain_break_even_yield(round(self._costs.without_picking, self._decimals),
                                                  round(worth, self._decimals), self._currency))  # fmt: skip
        if self._price() is not None:
            found.append(explain_break_even_price(self._budget.cost_change, round(self._more_fruit(), 2), say("fruit"),
                                                  self._currency, self._decimals))  # fmt: skip
        if then is not None:
            cost = self._crop.costs.total + self._budget.cost_change
            fruit = self._crop.facts.fruit_count + self._more_fruit()
            given = (Input("cost then", cost, self._currency), Input("fruit then", round(fruit, 2)))
            method = say("The costs of the crop as it was and the change of the costs, over the fruit then.")
            value = round(then, self._decimals + 2)
            unit = f"{self._currency}/{say('fruit')}"
            found.append(Figure("cost-per-fruit-then", value, unit, given, method, DEFINITION, Sure.ESTIMATE))
        return found

    def _money(self, amount: Decimal) -> str:
        return money(amount, self._currency)


def signed_percent(percent: Decimal) -> str:
    """A change in per cent with its sign."""
    sign = "+" if percent > 0 else "−" if percent < 0 else ""
    return f"{sign}{show_number(float(abs(percent)), 0 if abs(percent) >= 10 else 1)}\u2009%"


def _break_evens(by_price: Decimal | None, by_cost: Decimal | None) -> Iterator[str]:
    """Where it breaks even, in sentences; a yield cannot fall by more than all of it."""
    if by_cost is not None and by_cost > -_PER_CENT:
        yield say("A fruit costs what it costs now if the whole yield changes by {percent}.",
                  percent=signed_percent(by_cost))  # fmt: skip
    if by_price is not None and by_price <= -_PER_CENT:
        yield say("It saves more than the whole yield would cost in a shop, so by the shop's price it pays at any "
                  "yield. What a fruit costs says more here.")  # fmt: skip
    elif by_price is not None:
        yield say("By the shop's price it pays from a yield change of {percent} on.", percent=signed_percent(by_price))


def _needed(percent: Decimal) -> str:
    if percent > 0:
        return say("pays from {percent} more yield on", percent=signed_percent(percent).lstrip("+"))
    if percent <= -_PER_CENT:
        return say("saves more than the whole yield is worth")
    if percent < 0:
        return say("pays with up to {percent} less yield", percent=signed_percent(percent).lstrip("−"))
    return say("pays if the yield does not fall")


def _worth_of_yield(crop: CropFigures) -> Decimal | None:
    """What the yield would cost in a shop, main unit: by the fruit where that is stated, else by weight."""
    record, scale = crop.crop, -decimals_of(crop.currency)
    if record.shop_price_minor_per_fruit is not None:
        return Decimal(record.shop_price_minor_per_fruit * crop.facts.fruit_count).scaleb(scale)
    if record.shop_price_minor_per_kg is not None and crop.facts.weight_g:
        kg = Decimal(f"{crop.facts.weight_g / 1000:.6f}")
        return (record.shop_price_minor_per_kg * kg).scaleb(scale)
    return None
