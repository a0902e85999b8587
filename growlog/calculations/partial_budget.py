"""What a change brings: added returns and reduced costs against added costs and reduced returns.

Only what changes is counted; what stays as it is stands on neither side. Source: the method that extension services
teach, as in the handout "Partial budget analysis" and in a farm-press article on partial budgets; both examples are
worked in the tests.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from growlog.calculations.allowed import require
from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.words import mark, say

SOURCE = mark('extension handout "Partial budget analysis": added returns and reduced costs, less added costs and '
              "reduced returns")  # fmt: skip


@dataclass(frozen=True)
class BudgetLine:
    """One thing that changes. amount: 0 or more, in the currency's main unit."""

    label: str
    amount: Decimal


@dataclass(frozen=True)
class PartialBudget:
    """The four parts of a partial budget; `partial_budget` checks them."""

    added_returns: tuple[BudgetLine, ...] = ()
    reduced_costs: tuple[BudgetLine, ...] = ()
    added_costs: tuple[BudgetLine, ...] = ()
    reduced_returns: tuple[BudgetLine, ...] = ()

    @property
    def gains(self) -> Decimal:
        """Added returns and reduced costs."""
        return _sum(self.added_returns) + _sum(self.reduced_costs)

    @property
    def losses(self) -> Decimal:
        """Added costs and reduced returns."""
        return _sum(self.added_costs) + _sum(self.reduced_returns)

    @property
    def net(self) -> Decimal:
        """What the change brings; below 0 it costs more than it brings."""
        return self.gains - self.losses

    @property
    def cost_change(self) -> Decimal:
        """Added costs less reduced costs; below 0 the change is cheaper."""
        return _sum(self.added_costs) - _sum(self.reduced_costs)


def partial_budget(
    added_returns: Sequence[BudgetLine] = (),
    reduced_costs: Sequence[BudgetLine] = (),
    added_costs: Sequence[BudgetLine] = (),
    reduced_returns: Sequence[BudgetLine] = (),
) -> PartialBudget:
    """The budget of a change; ValueError for an amount below 0 or above 1e12."""
    parts = (added_returns, reduced_costs, added_costs, reduced_returns)
    for line in (line for part in parts for line in part):
        require(line.label, float(line.amount), 0, 1e12)
    return PartialBudget(*(tuple(part) for part in parts))


def cost_lines(changes: Sequence[tuple[str, Decimal]]) -> tuple[tuple[BudgetLine, ...], tuple[BudgetLine, ...]]:
    """Changes of costs as (added costs, reduced costs): above 0 dearer, below 0 cheaper; what stays is left out."""
    added = tuple(BudgetLine(label, amount) for label, amount in changes if amount > 0)
    return added, tuple(BudgetLine(label, -amount) for label, amount in changes if amount < 0)


def break_even_yield_change(cost_change: Decimal, value_of_yield: Decimal) -> Decimal | None:
    """By how many per cent the yield must change for the change to pay for itself.

    cost_change: added less reduced costs. value_of_yield: what the whole yield is worth now, 0 or more, less what grows
    with it, such as the labour of picking. None where the yield is worth nothing. Below 0: it may fall by so much; at
    -100 or below the change pays even without a yield.
    """
    require("value_of_yield", float(value_of_yield), 0, 1e12)
    return None if value_of_yield == 0 else 100 * cost_change / value_of_yield


def break_even_price(cost_change: Decimal, more_yield: Decimal) -> Decimal | None:
    """The price of a unit of yield at which a change pays for itself exactly, in the currency's main unit.

    cost_change: added less reduced costs. more_yield: fruit or kg more (below 0: fewer). With more yield for more cost
    the price must be at least that; with less yield for less cost, at most that. None where the yield stays as it is,
    or where the change is better (or worse) at every price.
    """
    if more_yield == 0:
        return None
    price = cost_change / more_yield
    return price if price >= 0 else None


def explain_budget(budget: PartialBudget, currency: str = "", decimals: int = 2) -> Figure:
    """What the change brings, with each line that went in."""
    parts = (
        (say("added return"), budget.added_returns),
        (say("reduced cost"), budget.reduced_costs),
        (say("added cost"), budget.added_costs),
        (say("reduced return"), budget.reduced_returns),
    )
    given = tuple(
        Input(f"{name}: {line.label}", round(line.amount, decimals), currency) for name, part in parts for line in part
    )
    method = say("Added returns and reduced costs, less added costs and reduced returns; what stays is not counted.")
    return Figure("partial-budget", round(budget.net, decimals), currency, given, method, SOURCE, Sure.PUBLISHED)


def explain_break_even_yield(cost_change: Decimal, value_of_yield: Decimal, currency: str = "") -> Figure:
    """The yield change at which a change pays for itself, in per cent, with its explanation."""
    found = break_even_yield_change(cost_change, value_of_yield)
    given = (Input("change of costs", cost_change, currency), Input("worth of the yield", value_of_yield, currency))
    method = say("The change of the costs over what the yield of now is worth; at this change both sides are equal.")
    value = None if found is None else round(found, 1)
    return Figure("break-even-yield-change", value, "%", given, method, DEFINITION, Sure.PUBLISHED)


def explain_break_even_price(
    cost_change: Decimal, more_yield: Decimal, unit: str, currency: str = "", decimals: int = 2
) -> Figure:
    """The shop price at which a change pays for itself, with its explanation. unit: of the yield, fruit or kg."""
    found = break_even_price(cost_change, more_yield)
    given = (Input("change of costs", cost_change, currency), Input("change of the yield", more_yield, unit))
    method = say("The change of the costs over the change of the yield; at this price both sides are equal.")
    value = None if found is None else round(found, decimals)
    shown = f"{currency}/{unit}" if currency else f"/{unit}"
    return Figure("break-even-price", value, shown, given, method, DEFINITION, Sure.PUBLISHED)


def _sum(lines: Sequence[BudgetLine]) -> Decimal:
    return sum((line.amount for line in lines), Decimal(0))
