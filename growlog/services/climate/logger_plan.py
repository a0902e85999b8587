"""What a logger file would bring, before anything is written: counts, questions, refused rows."""

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from enum import StrEnum
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from growlog.records.logger_file import LoggerFile
from growlog.records.room import Room
from growlog.services.climate.judging import Judged, judged
from growlog.services.climate.wall_clock import RepeatedHour, moment, zone_of
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.sharing.logger_csv.reader import (
    Cancelled,
    LoggerRows,
    Progress,
    RefusedRow,
    read_logger_file,
    texts_of_lines,
)
from growlog.sharing.logger_csv.shape import LoggerFileUnreadable
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, say_count

__all__ = ["Asked", "Choice", "LoggerAnswers", "LoggerPlan", "Question", "RefusedRow", "answered", "plan_logger_file"]


class Asked(StrEnum):
    """What a logger file may leave open; it is asked, never guessed."""

    DATE_ORDER = "date-order"
    TEMPERATURE_UNIT = "temperature-unit"
    HUMIDITY = "humidity"
    REPEATED_HOUR = "repeated-hour"


@dataclass(frozen=True)
class Choice:
    """One answer. value: as LoggerAnswers holds it and the command line takes it."""

    value: str
    label: str


@dataclass(frozen=True)
class Question:
    """A question about the whole file. answer: "" while it is open."""

    asked: Asked
    sentence: str
    choices: tuple[Choice, ...]
    answer: str = ""


@dataclass(frozen=True)
class LoggerAnswers:
    """Answers for the whole file. date_order: "dmy", "mdy"; temperature_unit: "C", "F"; humidity: "percent",
    "fraction"; repeated_hour: "earlier", "later", "in-order"; "" where not answered."""

    date_order: str = ""
    temperature_unit: str = ""
    humidity: str = ""
    repeated_hour: str = ""


@dataclass(frozen=True)
class LoggerPlan:
    """What would go in. first_at, last_at: UTC, None where nothing would. refused: the first thousand of refused_count.

    repeated_count: rows whose stamp stood before with the same values. gap_count: times of more than an hour without a
    sample; longest_gap_minutes of all. overlap_count: samples at times that another file of the room tells already.
    problem: why the file cannot go in at all, "" if it can. notes: sentences on what was found.
    """

    path: Path
    room: Room
    sha256: str
    answers: LoggerAnswers
    questions: tuple[Question, ...]
    sample_count: int
    first_at: datetime | None
    last_at: datetime | None
    refused: tuple[RefusedRow, ...]
    refused_count: int
    repeated_count: int
    gap_count: int
    longest_gap_minutes: float
    overlap_count: int
    notes: tuple[str, ...]
    problem: str = ""
    rows: LoggerRows = field(repr=False, compare=False, kw_only=True)
    judged: Judged = field(repr=False, compare=False, kw_only=True)

    @property
    def open_questions(self) -> tuple[Question, ...]:
        """Those that are not answered."""
        return tuple(q for q in self.questions if not q.answer)

    @property
    def ready(self) -> bool:
        """Whether it can be carried in."""
        return not self.problem and not self.open_questions and self.sample_count > 0


def plan_logger_file(
    log: OpenLogbook,
    path: Path,
    room_id: str,
    answers: LoggerAnswers | None = None,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> LoggerPlan | None:
    """Reads a file and says what it would bring into a room; None where cancelled. Writes nothing.

    on_progress is told bytes read and bytes in all. LogbookProblem with a sentence where the file cannot be read.
    """
    given = answers or LoggerAnswers()
    try:
        rows = read_logger_file(path, given.date_order, on_progress, cancelled)
        sha256 = _sha256(path)
    except LoggerFileUnreadable as error:
        raise LogbookProblem(say("{file}: {sentence}", file=path.name, sentence=error)) from error
    except OSError as error:
        reason = error.strerror or str(error)
        raise LogbookProblem(say("{file} cannot be read: {reason}.", file=path.name, reason=reason)) from error
    return None if rows is None else _plan(log, path, room_id, sha256, rows, given)


def answered(log: OpenLogbook, plan: LoggerPlan, answers: LoggerAnswers) -> LoggerPlan:
    """The plan with questions answered; only another order of dates reads the file again."""
    if answers.date_order and answers.date_order != plan.rows.order:
        again = plan_logger_file(log, plan.path, plan.room.id, answers)
        return again if again is not None else plan
    return _plan(log, plan.path, plan.room.id, plan.sha256, plan.rows, answers)


def _plan(
    log: OpenLogbook, path: Path, room_id: str, sha256: str, rows: LoggerRows, answers: LoggerAnswers
) -> LoggerPlan:
    with log.unit() as unit:
        room = unit.rooms.get(room_id)
        found = judged(
            rows,
            zone_of(room.zone),
            temperature_unit=answers.temperature_unit,
            humidity=answers.humidity,
            repeated=RepeatedHour(answers.repeated_hour or "earlier"),
            latest_s=int(log.clock.now().timestamp()) + 86_400,
        )
        same = next((f for f in unit.logger_files.all(sha256=sha256)), None)
        overlap = _overlap(unit, room_id, found)
    at_s = found.at_s
    gaps = np.diff(at_s) if len(at_s) > 1 else np.zeros(0, np.int64)
    return LoggerPlan(
        path, room, sha256, answers, _questions(rows, found, answers), len(at_s),
        moment(int(at_s[0])) if len(at_s) else None, moment(int(at_s[-1])) if len(at_s) else None,
        _with_text(path, rows, found.refused), found.refused_count, found.repeated_count,
        int((gaps > 3600).sum()), float(gaps.max(initial=0)) / 60, overlap,
        _notes(rows, found, overlap, zone_of(room.zone).key), _problem(same, room, found), rows=rows, judged=found,
    )  # fmt: skip


def _with_text(path: Path, rows: LoggerRows, refused: Sequence[RefusedRow]) -> tuple[RefusedRow, ...]:
    """Rows refused after they were read, with what stands in the file; the arrays do not keep it."""
    wanted = [row.line for row in refused if not row.text]
    texts = texts_of_lines(path, rows.shape.encoding, wanted) if wanted else {}
    return tuple(row if row.text else replace(row, text=texts.get(row.line, "")) for row in refused)


def _overlap(unit: UnitOfWork, room_id: str, found: Judged) -> int:
    """How many of the samples lie between the first and the last of the room's other files."""
    covered: NDArray[np.bool_] = np.zeros(len(found.at_s), np.bool_)
    for file in unit.logger_files.all(room_id=room_id):
        start, end = int(file.first_at.timestamp()), int(file.last_at.timestamp())
        covered |= (found.at_s >= start) & (found.at_s <= end)
    return int(covered.sum())


def _problem(same: LoggerFile | None, room: Room, found: Judged) -> str:
    if same is not None:
        return say("This file is in the logbook already, as {name}.", name=same.name)
    if not len(found.at_s):
        return say("No row of this file can be read in.")
    return ""


def _questions(rows: LoggerRows, found: Judged, answers: LoggerAnswers) -> tuple[Question, ...]:
    asked = []
    if rows.order_open or answers.date_order:
        asked.append(_date_order())
    if found.temperature_unit_open:
        sentence = say("The file does not say whether it is in °C or in °F.")
        asked.append(_asked(Asked.TEMPERATURE_UNIT, sentence, ("C", say("°C")), ("F", say("°F"))))
    if found.small_humidities:
        asked.append(_humidity(found.small_humidities))
    if found.in_repeated_hour:
        asked.append(_repeated_hour(found.in_repeated_hour))
    return tuple(replace(q, answer=getattr(answers, q.asked.value.replace("-", "_"))) for q in asked)


def _asked(asked: Asked, sentence: str, *choices: tuple[str, str]) -> Question:
    return Question(asked, sentence, tuple(Choice(value, label) for value, label in choices))


def _date_order() -> Question:
    sentence = say("Days in this file could be read in two ways. Which comes first?")
    return _asked(Asked.DATE_ORDER, sentence, ("dmy", say("the day")), ("mdy", say("the month")))


def _humidity(n: int) -> Question:
    sentence = say_count(
        "{n} row has a humidity up to 1. Is that a part of one, so that 0.6 is 60 %, or is it per cent as written?",
        "{n} rows have a humidity up to 1. Is that a part of one, so that 0.6 is 60 %, or is it per cent as written?",
        n,
    )
    return _asked(Asked.HUMIDITY, sentence, ("percent", say("per cent")), ("fraction", say("a part of one")))


def _repeated_hour(n: int) -> Question:
    sentence = say_count(
        "{n} row stands in an hour that came twice when the clocks went back. Which hour is meant?",
        "{n} rows stand in an hour that came twice when the clocks went back. Which hour is meant?",
        n,
    )
    return _asked(
        Asked.REPEATED_HOUR, sentence, ("earlier", say("the earlier one")), ("later", say("the later one")),
        ("in-order", say("as the rows follow each other")),
    )  # fmt: skip


def _notes(rows: LoggerRows, found: Judged, overlap: int, zone: str) -> tuple[str, ...]:
    notes = []
    if not rows.is_utc.all():
        notes.append(say("Stamps without an offset count by the wall clock of {zone}.", zone=zone))
    if rows.shape.left_out:
        notes.append(say("Not read: {columns}.", columns=", ".join(rows.shape.left_out)))
    if found.mixed_units:
        notes.append(say("The file mixes units; each value was taken as it says."))
    if found.repeated_count:
        notes.append(say_count("{n} row repeats another.", "{n} rows repeat others.", found.repeated_count))
    if overlap:
        notes.append(
            say_count(
                "{n} sample lies where another file tells already; it fills only what is missing there.",
                "{n} samples lie where another file tells already; they fill only what is missing there.",
                overlap,
            )
        )
    return tuple(notes)


def _sha256(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
