"""Brings a planned logger file into the logbook: its samples as they are and the days made of them, all or nothing."""

from collections.abc import Iterator
from datetime import datetime
from math import isnan

from growlog.records.change import Change
from growlog.records.climate_day import ClimateSample
from growlog.records.file_names import keepable
from growlog.records.logger_file import LoggerFile
from growlog.records.problems import Problem, RecordRefused
from growlog.services.climate.days import remake_days
from growlog.services.climate.logger_plan import LoggerPlan
from growlog.services.climate.wall_clock import moment
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.sharing.logger_csv.reader import TELL_EVERY, Cancelled, Progress
from growlog.words import say


class _Stopped(Exception):
    """The person stopped it; nothing is kept."""


def carry_in_logger(
    log: OpenLogbook, plan: LoggerPlan, on_progress: Progress | None = None, cancelled: Cancelled | None = None
) -> Change | None:
    """Writes a file's samples and the days of its room in one transaction; None where cancelled, nothing is kept then.

    RecordRefused where the plan has open questions (each names its question), or a problem such as a file that is in
    the logbook already. on_progress is told samples written and samples in all.
    """
    _check(plan)
    group = new_id()
    with log.unit() as unit:
        if unit.logger_files.all(sha256=plan.sha256):
            raise RecordRefused([Problem("file", say("This file is in the logbook already."))])
        file = _record(plan, unit.now)
        unit.add(group, file)
        try:
            unit.climate_samples.insert(file.id, file.room_id, _samples(plan, on_progress, cancelled))
        except _Stopped:
            return None
        remake_days(unit, file, in_hand={file.id: plan.judged.samples})
        unit.commit()
    return Change(group, say("Read in {name}", name=file.name), (file.id,), None)


def remove_logger_file(log: OpenLogbook, file_id: str) -> Change:
    """Puts a file into the bin with all its samples, and makes the days of its room again."""
    group = new_id()
    with log.unit() as unit:
        file = unit.logger_files.get(file_id)
        unit.remove(group, file)
        remake_days(unit, file)
        unit.commit()
    return Change(group, say("Remove {name}", name=file.name), (file_id,), None)


def logger_files_of(log: OpenLogbook, room_id: str) -> list[LoggerFile]:
    """The files read in for a room, in the order in which they begin."""
    with log.unit() as unit:
        return sorted(unit.logger_files.all(room_id=room_id), key=lambda f: (f.first_at, f.name))


def _check(plan: LoggerPlan) -> None:
    if plan.problem:
        raise RecordRefused([Problem("file", plan.problem)])
    problems = [Problem(q.asked.value, q.sentence) for q in plan.open_questions]
    if problems:
        raise RecordRefused(problems)


def _record(plan: LoggerPlan, now: datetime) -> LoggerFile:
    if plan.first_at is None or plan.last_at is None:
        raise ValueError("a plan without samples cannot be carried in")
    name = keepable(plan.path.name)
    return LoggerFile(new_id(), plan.room.id, name, plan.sha256, plan.sample_count, plan.first_at, plan.last_at, now)


def _samples(plan: LoggerPlan, on_progress: Progress | None, cancelled: Cancelled | None) -> Iterator[ClimateSample]:
    found, total = plan.judged, plan.sample_count
    rows = zip(found.at_s.tolist(), found.temperature_c.tolist(), found.humidity_percent.tolist(), strict=True)
    for number, (at_s, temperature, humidity) in enumerate(rows):
        if number % TELL_EVERY == 0:
            if cancelled is not None and cancelled():
                raise _Stopped
            if on_progress is not None:
                on_progress(number, total)
        yield ClimateSample(
            moment(at_s), None if isnan(temperature) else temperature, None if isnan(humidity) else humidity
        )
    if on_progress is not None:
        on_progress(total, total)
