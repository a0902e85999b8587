"""Logger files of many shapes."""

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.sharing.logger_csv.reader import UNITS, LoggerRows, read_logger_file
from growlog.sharing.logger_csv.shape import LoggerFileUnreadable, columns_of


def read(folder: Path, text: str, encoding: str = "utf-8", order: str = "") -> LoggerRows:
    path = folder / "logger.csv"
    path.write_bytes(text.encode(encoding))
    rows = read_logger_file(path, order)
    assert rows is not None
    return rows


@pytest.mark.parametrize(
    ("text", "encoding"),
    [
        ("Time,Temperature (°C),Humidity (%)\n2026-03-07 12:00,21.5,60\n", "utf-8"),
        ("Time,Temperature (°C),Humidity (%)\r\n2026-03-07 12:00,21.5,60\r\n", "utf-8-sig"),
        ("Zeit;Temperatur (°C);Feuchte (%)\n07.03.2026 12:00;21,5;60,0\n", "cp1252"),
        ("Zeit\tTemperatur °C\tFeuchte %\n07.03.2026 12:00\t21,5\t60\n", "utf-16"),
        ('"Time";"Temp (°C)";"RH (%)"\n"2026-03-07 12:00";"21,5";"60"\n', "utf-8"),
        ("Logger 7\nInterval: 60 s\n\nDate,Time,Temp (°C),RH (%)\n2026-03-07,12:00:00,21.5,60\n", "utf-8"),
        ("No,Time,Temp,RH\n1,2026-03-07 12:00,21.5 °C,60 %\n", "utf-8"),
        ('Time,"Temp (°C)","RH (%)"\n2026-03-07 12:00,"21,5","60"\n', "utf-8"),
    ],
    ids=["plain", "mark", "comma", "utf-16", "quoted", "preamble", "units-in-cells", "quoted-comma"],
)
def test_a_file_of_any_usual_shape_is_read(tmp_path: Path, text: str, encoding: str) -> None:
    rows = read(tmp_path, text, encoding)
    assert (rows.temperature.tolist(), rows.humidity.tolist(), rows.refused_count) == ([21.5], [60], 0)
    assert [UNITS[int(rows.temperature_unit[0])], UNITS[int(rows.humidity_unit[0])]] == ["C", "percent"]


def test_unreadable_rows_are_listed_with_their_line_and_reason(tmp_path: Path) -> None:
    text = "Time,Temp (°C),RH (%)\nsoon,21,60\n2026-03-07 12:00,warm,60\n2026-03-07 12:01,,\n2026-03-07 12:02,21,60\n"
    rows = read(tmp_path, text)
    assert len(rows.line) == 1
    assert [(r.line, r.reason) for r in rows.refused] == [
        (2, "The day and time of this row cannot be read."),
        (3, "warm is not a number."),
        (4, "This row has neither a temperature nor a humidity."),
    ]


def test_a_value_that_is_missing_leaves_the_other(tmp_path: Path) -> None:
    rows = read(tmp_path, "Time,Temp (°C),RH (%)\n2026-03-07 12:00,21,--\n2026-03-07 12:01,NaN,60\n")
    assert np.isnan(rows.humidity).tolist() == [True, False]
    assert np.isnan(rows.temperature).tolist() == [False, True]


def test_a_heading_in_the_middle_changes_the_unit_from_there_on(tmp_path: Path) -> None:
    rows = read(tmp_path, "Time,Temp (°C)\n2026-03-07 12:00,21\nTime,Temp (°F)\n2026-03-07 13:00,70\n")
    assert [UNITS[u] for u in rows.temperature_unit.tolist()] == ["C", "F"]
    assert rows.refused_count == 0


def test_days_that_prove_their_order_are_read_by_it(tmp_path: Path) -> None:
    rows = read(tmp_path, "Time,Temp (°C)\n03/07/2026 12:00,21\n03/17/2026 12:00,21\n")
    assert (rows.order, rows.order_open, rows.refused_count, len(rows.line)) == ("mdy", False, 0, 2)


def test_days_that_could_be_both_leave_the_order_open(tmp_path: Path) -> None:
    text = "Time,Temp (°C)\n03/07/2026 12:00,21\n"
    assert read(tmp_path, text).order_open
    month_first = read(tmp_path, text, order="mdy")
    assert (month_first.order_open, month_first.stamp_s.tolist()) == (False, [1772884800])


def test_of_two_temperatures_the_one_in_celsius_is_taken_and_the_other_named(tmp_path: Path) -> None:
    rows = read(tmp_path, "Time,Temp (°F),Temp (°C)\n2026-03-07 12:00,70,21\n")
    assert (rows.temperature.tolist(), rows.shape.left_out) == ([21], ("Temp (°F)",))


@pytest.mark.parametrize("text", ["", "a,b\n1,2\n", "Time,Dew point (°C)\n2026-03-07 12:00,9\n"])
def test_a_file_that_heads_no_air_is_refused(tmp_path: Path, text: str) -> None:
    with pytest.raises(LoggerFileUnreadable, match="No line of this file heads a time"):
        read(tmp_path, text)


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "logger.csv"
    path.write_bytes(b"\x00\x01\x02PK" * 10)
    with pytest.raises(LoggerFileUnreadable, match="not a table as text"):
        read_logger_file(path)


def test_reading_tells_how_far_it_is_and_stops_when_asked(tmp_path: Path) -> None:
    path = tmp_path / "logger.csv"
    lines = (f"2026-03-{1 + i // 1440:02d} {i // 60 % 24:02d}:{i % 60:02d},21" for i in range(6000))
    path.write_text("Time,Temp (°C)\n" + "\n".join(lines))
    told: list[tuple[int, int]] = []
    assert read_logger_file(path, on_progress=lambda done, total: told.append((done, total))) is not None
    size = path.stat().st_size
    assert told[-1] == (size, size)
    assert told == sorted(told)
    assert read_logger_file(path, cancelled=lambda: True) is None


@given(st.lists(st.text(max_size=12), max_size=8))
def test_no_heading_is_too_odd_to_be_judged(cells: list[str]) -> None:
    found = columns_of(cells)
    assert found is None or found.stamp
