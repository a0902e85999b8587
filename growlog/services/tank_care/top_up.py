"""Topping up and correcting a tank by mass balance, and the record of its care."""

from dataclasses import dataclass, replace

from growlog.calculations import tank
from growlog.calculations.explained_figure import Figure
from growlog.calculations.tank import Tank
from growlog.records.change import Change
from growlog.records.entry import Entry, TankCare, TankDose, TankWork
from growlog.records.problems import Problem, RecordRefused, check_quantity, refuse
from growlog.services.entries import add_entries
from growlog.services.mix_order import Portion, volume_words
from growlog.services.mixer.bench import Bench, bench_of, content_of
from growlog.services.mixer.lines import DoseRow, dose_rows
from growlog.services.mixer.state import MixerState
from growlog.services.mixing import result_of
from growlog.services.open_logbook import OpenLogbook
from growlog.words import say, show_number


@dataclass(frozen=True)
class TopUpAsked:
    """A tank as it is and as wanted: L, and mS/cm at 25 °C. water_ec: None: as the state's water is estimated."""

    volume_now_l: float
    ec_now_ms_per_cm: float
    volume_wanted_l: float
    ec_wanted_ms_per_cm: float
    water_ec_ms_per_cm: float | None = None


@dataclass(frozen=True)
class TopUpProposal:
    """drain_l first, then water_l, then the doses (a mix's worth for full_strength_l litres, its volume part of the
    water).

    strength_percent: of the mix, over the litres of water added; None where no water is added. steps: the same in
    words.
    """

    drain_l: float
    water_l: float
    full_strength_l: float
    strength_percent: float | None
    doses: tuple[Portion, ...]
    steps: tuple[str, ...]
    water_ec_ms_per_cm: float
    mix_ec_ms_per_cm: float
    figures: tuple[Figure, ...]


def top_up_proposal(log: OpenLogbook, state: MixerState, asked: TopUpAsked) -> TopUpProposal:
    """Concentrate and water, or what to drain and refill, with the doses and the water of the state.

    RecordRefused with fields of TopUpAsked, "doses" for a mix that adds nothing or is not known.
    """
    refuse(_asked_problems(asked))
    bench = bench_of(log, state)
    water_ec, mix_ec = _ecs(bench, state)
    water_ec = water_ec if asked.water_ec_ms_per_cm is None else asked.water_ec_ms_per_cm
    now = Tank(asked.volume_now_l, asked.ec_now_ms_per_cm)
    wanted = Tank(asked.volume_wanted_l, asked.ec_wanted_ms_per_cm)
    try:
        found = tank.top_up(now, wanted, water_ec, mix_ec)
    except ValueError as error:
        sentence = say("The water alone has {ec} mS/cm, more than is wanted.", ec=show_number(water_ec, 2))
        raise RecordRefused([Problem("ec_wanted_ms_per_cm", sentence)]) from error
    doses = tuple(_portions(dose_rows(bench, _full(state)), found.full_strength_l))
    strength = 100 * found.full_strength_l / found.water_l if found.water_l > 0 else None
    figures = tank.explain_top_up(now, wanted, water_ec, mix_ec)
    steps = _steps(found, doses)
    return TopUpProposal(
        found.drain_l, found.water_l, found.full_strength_l, strength, doses, steps, water_ec, mix_ec, figures
    )


def care_of(asked: TopUpAsked, proposal: TopUpProposal, mix_id: str | None = None) -> TankCare:
    """The record of a proposal as it was carried out, its EC after still to be measured."""
    doses = tuple(
        TankDose(p.product.name, round(p.amount or 0.0, 3), p.measure, p.product_id) for p in proposal.doses if p.amount
    )
    return TankCare(
        work=TankWork.CORRECTION if proposal.drain_l > 0 else TankWork.TOP_UP,
        volume_before_l=asked.volume_now_l,
        water_added_l=round(proposal.water_l, 3),
        drained_l=round(proposal.drain_l, 3) or None,
        ec_before_ms_per_cm=asked.ec_now_ms_per_cm,
        mix_id=mix_id if doses else None,
        doses=doses,
    )


def log_tank_care(log: OpenLogbook, entry: Entry) -> Change:
    """Writes the care of a tank and draws what went in from the bottles, as one undoable change; RecordRefused."""
    detail = entry.detail
    if not isinstance(detail, TankCare):
        raise TypeError(f"{entry.kind} is no tank care")
    return add_entries(log, [entry], say("Tank care: {work}", work=say(detail.work.label)))


def _asked_problems(asked: TopUpAsked) -> list[Problem]:
    found = check_quantity("volume_before_l", asked.volume_now_l, "volume_now_l")
    found += check_quantity("tank_l", asked.volume_wanted_l, "volume_wanted_l")
    found += check_quantity("ec_before_ms_per_cm", asked.ec_now_ms_per_cm, "ec_now_ms_per_cm")
    found += check_quantity("ec_after_ms_per_cm", asked.ec_wanted_ms_per_cm, "ec_wanted_ms_per_cm")
    return found + check_quantity("ec_ms_per_cm", asked.water_ec_ms_per_cm, "water_ec_ms_per_cm")


def _full(state: MixerState) -> MixerState:
    return replace(state, strength_percent=100.0)


def _ecs(bench: Bench, state: MixerState) -> tuple[float, float]:
    """The estimate of the water alone, and what the mix at full strength adds to it."""
    content = content_of(bench, _full(state))
    try:
        whole = result_of(content)
        water = result_of(replace(content, doses=(), products=()))
    except ValueError as error:
        raise RecordRefused([Problem("doses", say("A dose of this mix is not right yet."))]) from error
    if whole.unknown_products:
        names = ", ".join(whole.unknown_products)
        raise RecordRefused([Problem("doses", say("What {names} adds to the EC is not known.", names=names))])
    added = whole.ec.estimate - water.ec.estimate
    if added <= 0.01:
        raise RecordRefused([Problem("doses", say("Choose a mix first: these doses add nothing to the EC."))])
    return water.ec.estimate, added


def _portions(rows: list[DoseRow], full_strength_l: float) -> list[Portion]:
    if full_strength_l <= 0:
        return []
    return [
        Portion(row.product, row.per_l.amount * full_strength_l, row.per_l.measure, _shelf_id(row))
        for row in rows
        if row.per_l is not None and row.per_l.amount > 0
    ]


def _shelf_id(row: DoseRow) -> str | None:
    return row.item.product.id if row.item else None


def _steps(found: tank.TopUp, doses: tuple[Portion, ...]) -> tuple[str, ...]:
    steps = []
    if found.drain_l > 0:
        steps.append(say("Let out {volume}.", volume=volume_words(found.drain_l)))
    if found.water_l > 0:
        steps.append(say("Fill in {volume} of water.", volume=volume_words(found.water_l)))
    if doses:
        words = ", ".join(p.words for p in doses)
        steps.append(say("Add about four fifths of {doses}, one after the other; stir.", doses=words))
        steps.append(say("Measure the EC, then add the rest as needed."))
    if not steps:
        steps.append(say("Nothing is needed."))
    return (*steps, say("Measure the pH last."))
