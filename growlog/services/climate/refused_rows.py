"""The refused rows of a logger file kept as a table of their own, to be looked at beside the original."""

from pathlib import Path

from growlog.services.climate.logger_plan import LoggerPlan
from growlog.services.open_logbook import LogbookProblem
from growlog.sharing.csv_text import csv_text
from growlog.sharing.whole_file import write_whole
from growlog.words import say


def save_refused_rows(plan: LoggerPlan, path: Path) -> int:
    """Writes line, reason and text of the listed rows as CSV; how many they are. LogbookProblem if it cannot."""
    rows = [("line", "reason", "text"), *((str(row.line), row.reason, row.text) for row in plan.refused)]
    try:
        write_whole(path, csv_text(rows).encode())
    except OSError as error:
        reason = error.strerror or str(error)
        raise LogbookProblem(say("{file} could not be written: {reason}.", file=path.name, reason=reason)) from error
    return len(plan.refused)
