"""The words of the figures in this dialog."""

from growlog.calculations.explained_figure import Figure
from growlog.desktop.locale_forms import day_in_form
from growlog.desktop.yield_view.figure_grid import FigureLine, line_of
from growlog.records.display import THIN, weight
from growlog.records.entry import CullCause
from growlog.services.facts.facts import fact_keys
from growlog.services.yield_view.milestones_seen import MilestoneSeen
from growlog.services.yield_view.view import YieldView
from growlog.words import say, show_number


def fact_names() -> dict[str, str]:
    """What each figure is called."""
    return {key.key: say(key.meaning) for _, key in fact_keys()}


def milestone_lines(view: YieldView) -> list[FigureLine]:
    """Each milestone at its plant age, with its day."""
    lines = [_milestone(m) for m in view.milestones]
    figure = view.maturity.flower_to_pick_figure
    if figure is not None:
        lines.append(line_of(figure, say("first flower to first pick")))
    return lines


def yield_lines(view: YieldView) -> list[FigureLine]:
    """What was picked and what it took."""
    facts, names = view.facts, fact_names()
    estimated = say("estimated in part") if facts.estimated_g else ""
    lines = [
        FigureLine(say("Marketable fruit"), str(facts.fruit_count)),
        FigureLine(say("Their weight"), weight(facts.weight_g) if facts.weight_g else say("not weighed"), estimated),
        FigureLine(say("Culled"), str(facts.culled_count), _causes(view)),
        FigureLine(say("Picking sessions"), str(facts.sessions), _between(view)),
        FigureLine(say("Fruit of a session"), _number(facts.fruit_per_session)),
    ]
    lines += [line_of(f, names.get(f.key, f.key)) for f in view.figures if f.value is not None]
    return lines


def fruit_set_lines(figures: tuple[Figure, ...]) -> list[FigureLine]:
    """Set rate and days to pick with their ranges."""
    names = fact_names()
    return [line_of(f, names[f.key]) for f in figures]


def _milestone(seen: MilestoneSeen) -> FigureLine:
    if seen.age is None or seen.day is None:
        return FigureLine(seen.words, say("not yet"))
    return FigureLine(seen.words, f"{seen.age}{THIN}d", day_in_form(seen.day, "yMMMd"), seen.figure)


def _causes(view: YieldView) -> str:
    causes = view.facts.culls
    return ", ".join(f"{causes[c.value]} {say(c.label)}" for c in CullCause if causes.get(c.value))


def _between(view: YieldView) -> str:
    days, gap = view.facts.days_between_sessions, view.facts.longest_gap_days
    if days is None or gap is None:
        return ""
    return say("every {days} days, the longest gap {gap}", days=show_number(days, 1), gap=gap)


def _number(value: float | None) -> str:
    return say("none yet") if value is None else show_number(value, 1)
