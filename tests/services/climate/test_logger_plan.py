"""What a logger file would bring: counts, questions, and rows that are refused with a reason."""

from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pytest

from growlog.records.room import Room
from growlog.services.climate.logger_plan import Asked, LoggerAnswers, LoggerPlan, answered, plan_logger_file
from growlog.services.climate.wall_clock import RepeatedHour, moments_of, zone_of
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from tests.services.climate.conftest import WriteLogger

# Clocks in Europe/Berlin went back on 26 October 2025 at 3:00 and forward on 30 March 2025 at 2:00 (tz database).
AUTUMN, SPRING = "2025-10-26", "2025-03-30"


def planned(log: OpenLogbook, path: Path, room: Room, answers: LoggerAnswers | None = None) -> LoggerPlan:
    plan = plan_logger_file(log, path, room.id, answers)
    assert plan is not None
    return plan


def test_a_plain_file_is_ready_and_its_stamps_are_utc(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(["2026-01-10 13:00,21.5,60", "2026-01-10 13:10,21.7,61"]), room)
    assert (plan.ready, plan.sample_count, plan.refused_count, plan.questions) == (True, 2, 0, ())
    assert plan.first_at == datetime(2026, 1, 10, 12, tzinfo=UTC)


def test_a_humidity_of_six_tenths_is_asked_about_not_guessed(
    log: OpenLogbook, room: Room, logger_file: WriteLogger
) -> None:
    plan = planned(log, logger_file(["2026-01-10 13:00,21.5,0.6", "2026-01-10 13:10,21.7,0.61"]), room)
    assert [q.asked for q in plan.open_questions] == [Asked.HUMIDITY]
    assert not plan.ready
    assert "2 rows" in plan.questions[0].sentence
    parts = answered(log, plan, LoggerAnswers(humidity="fraction"))
    assert (parts.ready, parts.judged.humidity_percent.tolist()) == (True, [60, 61])
    as_written = answered(log, plan, LoggerAnswers(humidity="percent"))
    assert as_written.judged.humidity_percent.tolist() == [0.6, 0.61]


def test_a_column_headed_as_a_part_of_one_is_not_asked_about(
    log: OpenLogbook, room: Room, logger_file: WriteLogger
) -> None:
    plan = planned(log, logger_file(["2026-01-10 13:00,21.5,0.6"], heading="Time,Temp (°C),RH (0-1)"), room)
    assert (plan.ready, plan.judged.humidity_percent.tolist()) == (True, [60])


def test_a_temperature_without_a_unit_is_asked_about(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(["2026-01-10 13:00,50,60"], heading="Time,Temp,RH (%)"), room)
    assert [q.asked for q in plan.open_questions] == [Asked.TEMPERATURE_UNIT]
    fahrenheit = answered(log, plan, LoggerAnswers(temperature_unit="F"))
    assert (fahrenheit.ready, fahrenheit.judged.temperature_c.tolist()) == (True, [10])


def test_a_refused_row_keeps_what_the_file_says(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    rows = ["2026-01-10 13:00,999,60", "2026-01-10 13:10,21,161", "2026-01-10 13:20,20,60", "2026-01-10 13:20,23,60"]
    plan = planned(log, logger_file(rows), room)
    assert [(row.line, row.text) for row in plan.refused] == [(2, rows[0]), (3, rows[1]), (5, rows[3])]


def test_mixed_units_are_taken_as_each_value_says(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(["2026-01-10 13:00,10 °C,60", "2026-01-10 13:10,50 °F,60"]), room)
    assert plan.judged.temperature_c.tolist() == [10, 10]
    assert "The file mixes units; each value was taken as it says." in plan.notes


def test_an_hour_that_came_twice_is_asked_about_once(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    rows = [f"{AUTUMN} 01:30,20,60", f"{AUTUMN} 02:30,21,60", f"{AUTUMN} 02:30,22,60", f"{AUTUMN} 03:30,23,60"]
    plan = planned(log, logger_file(rows), room)
    assert [(q.asked, [c.value for c in q.choices]) for q in plan.open_questions] == [
        (Asked.REPEATED_HOUR, ["earlier", "later", "in-order"])
    ]
    in_order = answered(log, plan, LoggerAnswers(repeated_hour="in-order"))
    assert (in_order.sample_count, np.diff(in_order.judged.at_s).tolist()) == (3, [3600, 7200])
    assert in_order.refused_count == 1  # the same stamp twice is no step back: the second has other values


def test_rows_that_step_back_in_that_hour_are_the_later_ones() -> None:
    base = int(datetime(2025, 10, 26, 2, tzinfo=UTC).timestamp())
    wall = np.array([base, base + 1800, base, base + 1800])
    zone = zone_of("Europe/Berlin")
    found = {rule: np.diff(moments_of(wall, zone, rule).utc_s).tolist() for rule in RepeatedHour}
    assert found[RepeatedHour.IN_ORDER] == [1800, 1800, 1800]
    assert found[RepeatedHour.EARLIER] == found[RepeatedHour.LATER] == [1800, -1800, 1800]
    earlier, later = (moments_of(wall, zone, rule).utc_s for rule in (RepeatedHour.EARLIER, RepeatedHour.LATER))
    assert (later - earlier).tolist() == [3600] * 4


def test_an_hour_that_never_was_is_refused(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file([f"{SPRING} 01:30,20,60", f"{SPRING} 02:30,21,60", f"{SPRING} 03:30,20,60"]), room)
    assert (plan.sample_count, plan.longest_gap_minutes) == (2, 60)
    assert [(r.line, "did not exist" in r.reason) for r in plan.refused] == [(3, True)]


def test_stamps_with_an_offset_need_no_answer(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file([f"{AUTUMN}T02:30:00+02:00,20,60", f"{AUTUMN}T02:30:00+01:00,21,60"]), room)
    assert (plan.ready, plan.sample_count, plan.longest_gap_minutes) == (True, 2, 60)


def test_repeated_stamps_count_once(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    rows = ["2026-01-10 13:00,21,60", "2026-01-10 13:00,21,60", "2026-01-10 13:00,25,60"]
    plan = planned(log, logger_file(rows), room)
    assert (plan.sample_count, plan.repeated_count, plan.refused_count) == (1, 1, 1)
    assert plan.judged.temperature_c.tolist() == [21]
    assert plan.refused[0].reason == "This moment stands in the file already, with other values."


def test_gaps_are_counted(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file([f"2026-01-10 {h}:00,21,60" for h in ("10", "13", "14", "18")]), room)
    assert (plan.gap_count, plan.longest_gap_minutes) == (2, 240)


@pytest.mark.parametrize(
    ("row", "reason"),
    [
        ("1970-01-01 00:10,21,60", "The logger's clock was not set: this day cannot be."),
        ("2031-01-01 00:10,21,60", "The logger's clock was not set: this day cannot be."),
        ("2026-01-10 13:00,999,60", "The temperature is outside what a room can have."),
        ("2026-01-10 13:00,21,160", "The humidity is outside 0 to 100 %."),
    ],
)
def test_what_cannot_be_is_refused(
    log: OpenLogbook, room: Room, logger_file: WriteLogger, row: str, reason: str
) -> None:
    plan = planned(log, logger_file([row, "2026-01-10 14:00,21,60"]), room)
    assert [(r.line, r.reason) for r in plan.refused] == [(2, reason)]
    assert plan.sample_count == 1


def test_dates_that_could_be_both_are_asked_about(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(["02/03/2026 12:00,21,60"]), room)
    assert [q.asked for q in plan.open_questions] == [Asked.DATE_ORDER]
    found = answered(log, plan, LoggerAnswers(date_order="mdy"))
    assert (found.ready, found.first_at) == (True, datetime(2026, 2, 3, 11, tzinfo=UTC))


def test_a_file_that_cannot_be_read_is_a_plain_sentence(log: OpenLogbook, room: Room, tmp_path: Path) -> None:
    with pytest.raises(LogbookProblem, match=r"nothing\.csv cannot be read"):
        plan_logger_file(log, tmp_path / "nothing.csv", room.id)


def test_a_file_without_a_good_row_has_a_problem(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(["soon,21,60"]), room)
    assert (plan.ready, plan.problem) == (False, "No row of this file can be read in.")
