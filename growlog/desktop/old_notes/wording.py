"""The sentences of the dialog."""

from growlog.services.old_notes.import_plan import ImportPlan, PlannedRow, RowOutcome
from growlog.words import say, say_count, show_day


def counts_line(plan: ImportPlan) -> str:
    """How many rows become what."""
    known, silent = plan.count(RowOutcome.KNOWN), plan.count(RowOutcome.SAYS_NOTHING)
    unusual, out = plan.unusual_count, len(plan.refused)
    parts = [say_count("{n} row goes in", "{n} rows go in", plan.count(RowOutcome.GOES_IN))]
    if unusual:
        parts.append(say_count("{n} of them is unusual", "{n} of them are unusual", unusual))
    if known:
        parts.append(say_count("{n} is in the logbook already", "{n} are in the logbook already", known))
    if silent:
        parts.append(say_count("{n} says nothing to carry in", "{n} say nothing to carry in", silent))
    if out:
        parts.append(say_count("{n} stays out", "{n} stay out", out))
    return " · ".join(parts)


def becomes(row: PlannedRow) -> str:
    """What a row becomes, in one line."""
    if row.outcome is RowOutcome.KNOWN:
        return say("in the logbook already")
    if row.outcome is RowOutcome.SAYS_NOTHING:
        return say("nothing to carry in")
    if row.stays_out:
        return say("stays out")
    return "; ".join(f"{e.detail.summary()}, {e.detail.second_line()}".rstrip(", ") for e in row.entries)


def remark(row: PlannedRow) -> str:
    """The reason why it stays out or what is unusual; else the note that goes in with it."""
    return row.reason or " ".join(e.note for e in row.entries if e.note and row.outcome is RowOutcome.GOES_IN)


def day_words(row: PlannedRow) -> str:
    """The day, with the time where one is stated."""
    at = row.entries[0].at if row.entries else None
    return "" if row.day is None else show_day(row.day) + (f" {at.strftime('%H:%M')}" if at else "")


def as_written(row: PlannedRow) -> str:
    """The cells as the file has them."""
    return " | ".join(str(cell) for cell in row.cells if cell != "")


def slips_sentence(n: int) -> str:
    """The question about rows a year off."""
    return say_count(
        "{n} row stands a year off the days around it. Take the year that fits?",
        "{n} rows stand a year off the days around them. Take the year that fits?",
        n,
    )
