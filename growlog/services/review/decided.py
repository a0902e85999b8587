"""Decisions on a crop as they were made, with the figures of their day."""

from datetime import date

from growlog.records.decision import Decision, QuotedFigure
from growlog.services.review.model import DecisionMade
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

_OF_MONEY = ("cost", "price")  # in the keys of quoted figures, which are left out where money is


def decisions_in(
    unit: UnitOfWork, crop_id: str, as_of: date, *, money: bool, notes: bool
) -> tuple[DecisionMade, ...]:  # fmt: skip
    """The decisions on a crop up to a day, the newest first. notes: whether the reasons, free text, are told."""
    made = [d for d in unit.decisions.all(crop_id=crop_id) if d.decided_on <= as_of]
    return tuple(_shown(d, money=money, notes=notes) for d in sorted(made, key=newest_first))


def newest_first(decision: Decision) -> tuple[int, str]:
    """The order of decisions; of one day the id decides, so that it stays the same."""
    return -decision.decided_on.toordinal(), decision.id


def _shown(decision: Decision, *, money: bool, notes: bool) -> DecisionMade:
    title = say(decision.verdict.label)
    return DecisionMade(
        decision.id,
        decision.decided_on,
        decision.verdict,
        title[:1].upper() + title[1:],
        decision.reasons.strip() if notes else "",
        decision.changes.strip() if notes else "",
        tuple(f for f in decision.figures if money or not _is_money(f)),
    )


def _is_money(figure: QuotedFigure) -> bool:
    return any(word in figure.figure_key for word in _OF_MONEY)
