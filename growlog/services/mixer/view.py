"""What the mixer shows of a state, worked out afresh from the bench; problems beside their fields, no exception."""

from dataclasses import replace

from growlog.calculations.clashes import coir_note
from growlog.calculations.conductivity import meter_ppm
from growlog.calculations.mix_figures import ec_figure
from growlog.records.problems import Problem
from growlog.services.mix_checks import dose_warnings
from growlog.services.mixer.bench import Bench, bench_of, content_of
from growlog.services.mixer.checks import all_problems
from growlog.services.mixer.costs import batch_cost
from growlog.services.mixer.element_lines import element_lines, range_words, ratios_of
from growlog.services.mixer.lines import dose_rows
from growlog.services.mixer.readings import last_reading, learned_offset
from growlog.services.mixer.shown import EcView, MixerView, TargetView
from growlog.services.mixer.state import MixerState
from growlog.services.mixer.targets import target_view
from growlog.services.mixing import MixResult, result_of
from growlog.services.open_logbook import OpenLogbook
from growlog.sharing.mix_file import MixFile
from growlog.words import say

_COIR_WORDS = ("coir", "coco")


def mixer_view(log: OpenLogbook, state: MixerState) -> MixerView:
    """All that the mixer shows of a state, the bench read afresh."""
    return view_at(bench_of(log, state), state)


def view_at(bench: Bench, state: MixerState) -> MixerView:
    """The same at a bench read before: for each key stroke, since it reads nothing."""
    rows = dose_rows(bench, state)
    problems = all_problems(bench, state, rows)
    cost = batch_cost(rows, state.tank_l, bench.currency)
    lines = tuple(row.shown(tuple(p for f, p in problems if f == i)) for i, row in enumerate(rows))
    told = tuple(_beside(field, problem) for field, problem in problems)
    if any(not p.asks for p in told):
        return MixerView(told, lines, (), None, None, None, None, (), (), (), cost, ())
    content = content_of(bench, state)
    result = result_of(content)
    water = result_of(_only_water(content))
    target = target_view(bench, state, water.ec.estimate)
    return MixerView(
        problems=told,
        lines=lines,
        elements=element_lines(content, result, target),
        ratios=ratios_of(result),
        charges=result.charges,
        ec=_ec_view(bench, result, water.ec.estimate),
        target=target,
        order=result.steps if rows else (),
        warnings=(*_own_warnings(content, result), *_target_warnings(result, target)),
        cautions=(*result.cautions, *_medium_cautions(bench)),
        cost=cost,
        unknown_products=result.unknown_products,
    )


def _beside(field: int | str, problem: Problem) -> Problem:
    return problem if isinstance(field, str) else replace(problem, field=f"doses.{field}.{problem.field}")


def _only_water(content: MixFile) -> MixFile:
    return MixFile(tank_l=content.tank_l, water=content.water)


def _ec_view(bench: Bench, result: MixResult, of_water: float) -> EcView:
    learned = learned_offset(bench)
    offset = learned.offset
    ec = result.ec
    return EcView(
        estimate=ec.estimate,
        low=ec.low,
        high=ec.high,
        of_water=of_water,
        us_per_cm=ec.estimate * 1000,
        meter_scales=meter_ppm(ec.estimate),
        offset=offset,
        offset_words=learned.words,
        offset_figure=learned.figure,
        your_meter=None if offset is None else offset.expected_reading(ec.estimate),
        last_reading=last_reading(bench),
        figure=ec_figure(ec, result.nutrients_mg_per_l),
    )


def _own_warnings(content: MixFile, result: MixResult) -> list[str]:
    """All but those that stand beside a dose already."""
    beside = set(dose_warnings(replace(content, ignored=())))
    return [w for w in result.warnings if w not in beside]


def _target_warnings(result: MixResult, target: TargetView | None) -> list[str]:
    if target is None or target.ec_ms_per_cm is None:
        return []
    low, high = target.ec_ms_per_cm.low, target.ec_ms_per_cm.high
    ec = result.ec.estimate
    if (low is not None and ec < low) or (high is not None and ec > high):
        return [say("The EC is outside the target's {range} mS/cm.", range=range_words(low, high))]
    return []


def _medium_cautions(bench: Bench) -> tuple[str, ...]:
    medium = bench.crop.medium.casefold() if bench.crop else ""
    return (coir_note(),) if any(word in medium for word in _COIR_WORDS) else ()
