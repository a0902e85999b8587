"""Sheets of xlsx and ods: values as last computed, and formulas without a value named by their place."""

from datetime import date, datetime, time
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

import pytest

from growlog.sharing.old_notes import spreadsheet
from growlog.sharing.old_notes.old_file import read_old_file
from growlog.sharing.old_notes.raw_rows import OldNotesUnreadable
from tests.sharing.old_notes.written_tables import write_ods, write_xlsx


def test_days_times_and_numbers_come_as_what_they_are(tmp_path: Path) -> None:
    moment = datetime.combine(date(2026, 1, 6), time(7))
    rows = [["Date", "g", "at"], [date(2026, 1, 5), 65.5, time(8, 30)], [moment, 3, ""]]
    path = write_xlsx(tmp_path / "n.xlsx", Picks=rows)
    rows = read_old_file(path).rows
    assert rows[1].cells == (date(2026, 1, 5), 65.5, time(8, 30))
    assert rows[2].cells == (moment, 3, "")


def test_a_sheet_is_chosen_by_name_and_the_first_is_the_default(tmp_path: Path) -> None:
    path = write_xlsx(tmp_path / "n.xlsx", First=[["a"]], Second=[["b"]])
    assert read_old_file(path).rows[0].cells == ("a",)
    assert read_old_file(path).sheets == ("First", "Second")
    assert read_old_file(path, "Second").rows[0].cells == ("b",)
    with pytest.raises(OldNotesUnreadable, match="First, Second"):
        read_old_file(path, "Third")


def test_a_formula_without_a_result_is_a_refused_row_with_its_place(tmp_path: Path) -> None:
    path = write_xlsx(tmp_path / "n.xlsx", Notes=[["day", "g"], [1, 5], [2, "=B2*2"], [3, 7]])
    problems = [row.problem for row in read_old_file(path).rows]
    assert "B3" in problems[2]
    assert problems[0] == problems[1] == problems[3] == ""


def test_a_formula_with_a_result_is_its_result(tmp_path: Path) -> None:
    path = write_ods(
        tmp_path / "n.ods", [["day", "g"], ["2026-01-05", ("=[.B1]*2", 130)], ["2026-01-06", ("=1/0", None)]]
    )
    rows = read_old_file(path).rows
    assert rows[1].cells == ("2026-01-05", 130)
    assert rows[1].problem == ""
    assert "B3" in rows[2].problem


def test_an_error_in_a_cell_is_named(tmp_path: Path) -> None:
    path = write_xlsx(tmp_path / "n.xlsx", Notes=[["day", "g"], [1, "#DIV/0!"]])
    assert "#DIV/0!" in read_old_file(path).rows[1].problem


def test_lines_are_those_that_the_spreadsheet_shows(tmp_path: Path) -> None:
    path = write_xlsx(tmp_path / "n.xlsx", Notes=[[], [], ["", "day"], ["", 1], [], ["", "=A1"]])
    rows = read_old_file(path).rows
    assert (rows[2].line, rows[2].cells) == (3, ("", "day"))
    assert (rows[-1].line, "B6" in rows[-1].problem) == (6, True)


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 torn off", b"PK\x03\x04" + b"\x00" * 200])
def test_a_damaged_spreadsheet_is_refused_in_words(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "n.xlsx"
    path.write_bytes(content)
    with pytest.raises(OldNotesUnreadable, match="Save it again"):
        read_old_file(path)


def test_a_spreadsheet_that_unpacks_to_very_much_is_refused_before(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(spreadsheet, "_LARGEST_UNPACKED", 1000)
    with ZipFile(tmp_path / "n.xlsx", "w", ZIP_DEFLATED) as archive:
        archive.writestr("xl/worksheets/sheet1.xml", b" " * 2000)
    with pytest.raises(OldNotesUnreadable, match="too large"):
        read_old_file(tmp_path / "n.xlsx")
