"""Whether a crop is grown again: the verdict, its reasons, and the figures as they stood that day."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from growlog.records.change import Change
from growlog.records.decision import Decision, QuotedFigure, Verdict
from growlog.records.problems import Problem, refuse
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.review.crop_figures import CropFigures, crop_figures
from growlog.services.review.decided import newest_first
from growlog.services.review.lead import first_pick
from growlog.services.review.wording import day_of_crop, days, grams, money, of_figure, work
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day, show_number


@dataclass(frozen=True)
class PastDecision:
    """A decision on an earlier crop of a cultivar, in a sentence for whoever sows it again."""

    crop_id: str
    crop_name: str
    decision: Decision
    sentence: str


def new_decision(log: OpenLogbook, crop_id: str, verdict: Verdict, reasons: str, changes: str = "") -> Decision:
    """A decision of today with the figures as they stand, not yet written; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        figures = quoted_figures(crop_figures(unit, crop_id, log.today()))
    return Decision(new_id(), crop_id, log.today(), verdict, reasons.strip(), changes.strip(), figures)


def check_decision(log: OpenLogbook, crop_id: str, verdict: Verdict, reasons: str, changes: str = "") -> list[Problem]:
    """All that is wrong with it. Writes nothing."""
    decision = Decision("", crop_id, log.today(), verdict, reasons.strip(), changes.strip())
    with log.unit() as unit:
        return decision.problems() + _standing_problems(unit, decision, log.today())


def decide(log: OpenLogbook, crop_id: str, verdict: Verdict, reasons: str, changes: str = "") -> Change:
    """Writes a decision of today; RecordRefused without a reason, or without a change where one is to be made."""
    refuse(check_decision(log, crop_id, verdict, reasons, changes))
    decision = new_decision(log, crop_id, verdict, reasons, changes)
    group = new_id()
    with log.unit() as unit:
        refuse(_standing_problems(unit, decision, log.today()))
        unit.add(group, decision)
        unit.commit()
    return _change(group, say("Decide: {verdict}", verdict=say(verdict.label)), decision)


def correct_decision(log: OpenLogbook, decision: Decision) -> Change:
    """Writes changed words of a decision; its figures and its day stay as they were. RecordRefused, or RecordMoved."""
    group = new_id()
    with log.unit() as unit:
        before = unit.decisions.get(decision.id)
        kept = Decision(
            before.id, before.crop_id, before.decided_on, decision.verdict, decision.reasons.strip(),
            decision.changes.strip(), before.figures, decision.version, before.removed_at,
        )  # fmt: skip
        refuse(kept.problems())
        unit.change(group, kept)
        unit.commit()
    return _change(group, say("Correct the decision"), kept)


def remove_decision(log: OpenLogbook, decision_id: str) -> Change:
    """Puts a decision into the bin."""
    group = new_id()
    with log.unit() as unit:
        decision = unit.decisions.get(decision_id)
        unit.remove(group, decision)
        unit.commit()
    return _change(group, say("Remove the decision"), decision)


def decisions_of(log: OpenLogbook, crop_id: str) -> list[Decision]:
    """The decisions on a crop, the newest first; the newest counts."""
    with log.unit() as unit:
        return sorted(unit.decisions.all(crop_id=crop_id), key=newest_first)


def decisions_for_cultivar(log: OpenLogbook, species: str, name: str) -> list[PastDecision]:
    """The latest decision on each earlier crop of a cultivar, the newest first, to be shown when it is sown again."""
    wanted = _plain(species), _plain(name)
    with log.unit() as unit:
        kinds = {c.id for c in unit.cultivars.all(removed=True) if (_plain(c.species), _plain(c.name)) == wanted}
        crops = {c.id: c.name for c in unit.crops.all() if c.cultivar_id in kinds}
        made = sorted(unit.decisions.all(crop_id=list(crops)), key=newest_first) if crops else []
    latest = list({d.crop_id: d for d in reversed(made)}.values())[::-1]
    return [PastDecision(d.crop_id, crops[d.crop_id], d, _sentence(crops[d.crop_id], d))
            for d in sorted(latest, key=newest_first)]  # fmt: skip


def quoted_figures(crop: CropFigures) -> tuple[QuotedFigure, ...]:
    """The figures that a decision quotes; those without data are left out."""
    return tuple(QuotedFigure(key, label, text) for key, label, text in _figures(crop) if text)


def _figures(crop: CropFigures) -> Iterator[tuple[str, str, str]]:
    first = first_pick(crop)
    yield "plant-age", say("Age"), days(crop.age)
    yield "fruit-count", say("Fruit"), show_number(crop.facts.fruit_count, 0)
    yield "yield-weight", say("Weight"), grams(crop.facts.weight_g)
    yield "first-pick-age", say("First pick"), "" if first is None else day_of_crop(first)
    yield "mean-fruit-weight", say("Mean fruit"), grams(crop.facts.mean_fruit_g)
    yield "kwh", say("Power"), of_figure(crop.figure("kwh"), 0) if crop.number("kwh") else ""
    yield "labour-minutes", say("Work"), work(crop.labour.minutes) if crop.labour.minutes else ""
    cost, each = crop.number("cost"), crop.number("cost-per-fruit")
    yield "cost", say("All costs"), "" if cost is None else money(cost, crop.currency)
    yield "cost-per-fruit", say("A fruit"), "" if each is None else money(each, crop.currency)


def _sentence(crop_name: str, decision: Decision) -> str:
    verdict, day = say(decision.verdict.label), show_day(decision.decided_on)
    said = say("{crop}, decided on {day}: {verdict}.", crop=crop_name, day=day, verdict=verdict)
    return " ".join(t for t in (said, decision.reasons.strip(), decision.changes.strip()) if t)


def _standing_problems(unit: UnitOfWork, decision: Decision, today: date) -> list[Problem]:
    crop = unit.crops.get(decision.crop_id)
    return [Problem("decided_on", say("This crop has not begun yet."))] if crop.day_zero > today else []


def _change(group: str, title: str, decision: Decision) -> Change:
    return Change(group, title, (decision.id,), frozenset({decision.crop_id}))


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())
