"""The unfinished tally of a logbook: kept as the grower goes, offered again, let go of."""

import uuid
from dataclasses import dataclass
from datetime import datetime

from growlog.services.open_logbook import LogbookProblem, OpenLogbook, new_id
from growlog.services.tally.kept_form import UnreadableDraft, tally_of, text_of
from growlog.services.tally.tally import Tally
from growlog.services.tally.writing import is_written
from growlog.storage.drafts import read_draft, remove_draft, set_draft_aside, write_draft
from growlog.words import say, show_day

_NAME = "tally"


@dataclass(frozen=True)
class FoundDraft:
    """tally: what was not finished, None if nothing. sentence: what to tell about it, "" for nothing."""

    tally: Tally | None = None
    sentence: str = ""


def new_tally(log: OpenLogbook, now: datetime) -> Tally:
    """An empty tally of today. now: local time; where another day counts as today, that day with this time."""
    today = log.today()
    return Tally(new_id(), datetime.combine(today, now.time().replace(microsecond=0)), today)


def save_draft(log: OpenLogbook, tally: Tally) -> None:
    """Keeps a tally in the logbook's folder, or lets go of the kept one if nothing stands in it.

    A logbook that is open for reading only keeps none. LogbookProblem if the disk does not take it.
    """
    if not log.disk.writable:
        return
    if tally.is_touched:
        write_draft(log.folder, _NAME, text_of(tally))
    else:
        remove_draft(log.folder, _NAME)


def find_draft(log: OpenLogbook) -> FoundDraft:
    """The unfinished tally, if there is one. One that cannot be read is set aside, with a sentence that says where."""
    if not log.disk.writable:
        return FoundDraft()
    try:
        text = read_draft(log.folder, _NAME)
        tally = None if text is None else tally_of(text)
        if tally is not None:
            uuid.UUID(tally.id)
    except (OSError, ValueError, UnreadableDraft):
        return _set_aside(log)
    if tally is None:
        return FoundDraft()
    if is_written(log, tally):
        drop_draft(log)
        return FoundDraft()
    sentence = say(
        "A tally from {day}, {time} was not finished.",
        day=show_day(tally.started_at.date()),
        time=f"{tally.started_at:%H:%M}",
    )
    return FoundDraft(tally, sentence)


def drop_draft(log: OpenLogbook) -> None:
    """Lets go of the unfinished tally."""
    if log.disk.writable:
        remove_draft(log.folder, _NAME)


def _set_aside(log: OpenLogbook) -> FoundDraft:
    try:
        aside = set_draft_aside(log.folder, _NAME, log.clock.now())
    except LogbookProblem as problem:
        return FoundDraft(None, str(problem))
    sentence = say(
        "An unfinished tally could not be read. It was set aside as {file} in the logbook's folder.",
        file=aside.relative_to(log.folder),
    )
    return FoundDraft(None, sentence)
