"""An entry of the line in words, as it will stand on the day sheet."""

from collections.abc import Iterable

from growlog.records.display import fixed, weight
from growlog.records.entry import Detail, Feed, Pick
from growlog.services.quick_line.reading import DraftedEntry
from growlog.words import say


def title_of(draft: DraftedEntry) -> str:
    """What happened; the name of the kind where nothing was said yet."""
    detail = draft.detail
    if isinstance(detail, Pick) and not detail.fruit_count and not detail.culls:
        return say(detail.label)
    if detail.kind == "note":
        return draft.note or say(detail.label)
    return f"{detail.summary()}, {draft.mix_name}" if draft.mix_name else detail.summary()


def more_of(draft: DraftedEntry) -> str:
    """The particulars, the labour and the time of day."""
    minutes = fixed(draft.labour_minutes, 0, "min") if draft.labour_minutes else ""
    at = say("at {time}", time=draft.at.strftime("%H:%M")) if draft.at is not None else ""
    return "; ".join(part for part in (draft.detail.second_line(), *_unsaid(draft.detail), minutes, at) if part)


def _unsaid(detail: Detail) -> list[str]:
    """What the day sheet leaves out, so that everything which was understood can be seen before it is written."""
    if isinstance(detail, Pick):
        hidden = detail.weights_g if " + " not in detail.second_line() and len(detail.weights_g) > 1 else ()
        culls = [cull.weight_g for cull in detail.culls if cull.weight_g is not None]
        return ([_sum(hidden)] if hidden else []) + ([say("culls weigh {weight}", weight=_sum(culls))] if culls else [])
    if isinstance(detail, Feed) and detail.strength_percent is not None:
        return [say("strength {percent}", percent=fixed(detail.strength_percent, 0, "%"))]
    return []


def _sum(weights_g: Iterable[float]) -> str:
    return " + ".join(weight(w) for w in weights_g)
