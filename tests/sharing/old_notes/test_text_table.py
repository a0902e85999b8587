"""Tables as text: encodings, separators and quotation marks are found out; a broken row costs itself only."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.sharing.old_notes.old_file import read_old_file, write_refused
from growlog.sharing.old_notes.raw_rows import OldNotesUnreadable, RawTable
from growlog.sharing.old_notes.text_table import text_rows
from tests.sharing.old_notes.written_tables import write_text

PLAIN = "date,room °C,note\n2026-01-05,24.5,hot\n2026-01-06,23,\n"


def cells(table: RawTable) -> list[tuple[object, ...]]:
    """The cells of all rows."""
    return [row.cells for row in table.rows]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_the_usual_encodings_are_told_apart(tmp_path: Path, encoding: str) -> None:
    table = read_old_file(write_text(tmp_path / "notes.csv", PLAIN, encoding))
    assert cells(table)[0] == ("date", "room °C", "note")
    assert cells(table)[1] == ("2026-01-05", "24.5", "hot")


@pytest.mark.parametrize("separator", [",", ";", "\t", "|"])
def test_the_separator_is_found_out(tmp_path: Path, separator: str) -> None:
    table = read_old_file(write_text(tmp_path / "notes.txt", PLAIN.replace(",", separator)))
    assert cells(table)[2] == ("2026-01-06", "23", "")


def test_decimal_commas_do_not_pass_for_separators(tmp_path: Path) -> None:
    table = read_old_file(write_text(tmp_path / "n.csv", "day;EC;pH\n5.1.2026;1,8;6,1\n6.1.2026;1,9;6,0\n"))
    assert cells(table)[1] == ("5.1.2026", "1,8", "6,1")


def test_a_line_that_names_the_separator_is_taken_at_its_word(tmp_path: Path) -> None:
    table = read_old_file(write_text(tmp_path / "n.csv", "sep=|\nday|a,b\n1|2\n"))
    assert [(row.line, row.cells) for row in table.rows] == [(2, ("day", "a,b")), (3, ("1", "2"))]


def test_a_quoted_cell_may_hold_separators_and_line_breaks(tmp_path: Path) -> None:
    table = read_old_file(write_text(tmp_path / "n.csv", 'day,note\n1,"a, ""b""\nsecond line"\n2,c\n'))
    assert cells(table)[1] == ("1", 'a, "b"\nsecond line')
    assert table.rows[2].line == 4


def test_a_quotation_that_never_ends_costs_its_own_row_only(tmp_path: Path) -> None:
    lines = "".join(f"{n},ok\n" for n in range(200))
    table = read_old_file(write_text(tmp_path / "n.csv", f'day,note\n1,"open\n{lines}'))
    assert [row.line for row in table.rows if row.problem] == [2]
    assert len(table.rows) == 202


def test_an_inch_mark_in_a_cell_is_no_quotation(tmp_path: Path) -> None:
    table = read_old_file(write_text(tmp_path / "n.csv", 'day,note\n1,5" pot\n2,ok\n'))
    assert cells(table)[1:] == [("1", '5" pot'), ("2", "ok")]


def test_what_is_no_text_is_refused_in_words(tmp_path: Path) -> None:
    (tmp_path / "n.csv").write_bytes(b"\x00\x01\x02" * 50)
    with pytest.raises(OldNotesUnreadable, match="not a table as text"):
        read_old_file(tmp_path / "n.csv")


def test_a_cell_longer_than_any_note_is_a_refused_row(tmp_path: Path) -> None:
    table = read_old_file(write_text(tmp_path / "n.csv", f"day,note\n1,{'x' * 30_000}\n2,ok\n"))
    assert "longer" in table.rows[1].problem
    assert not table.rows[2].problem


def test_refused_rows_read_back_as_they_were(tmp_path: Path) -> None:
    path = tmp_path / "left out.csv"
    write_refused(path, ["day", "note"], [(7, "=why", ("-5", "=1+1")), (9, "no, not this", ("a\nb", '"'))])
    assert cells(read_old_file(path))[1:] == [("7", "=why", "-5", "=1+1"), ("9", "no, not this", "a\nb", '"')]
    assert "'=1+1" in path.read_text(encoding="utf-8-sig")  # no spreadsheet computes it


@given(st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\x00"), max_size=200))
def test_no_text_stumbles_and_every_line_is_accounted_for(text: str) -> None:
    rows = list(text_rows(text))
    filled = [n for n, line in enumerate(text.replace("\r\n", "\n").replace("\r", "\n").split("\n"), 1) if line.strip()]
    assert [row.line for row in rows] == sorted({row.line for row in rows})
    assert not filled or (rows and rows[-1].line <= filled[-1])


@pytest.mark.parametrize("quote", ["", '"'])
def test_a_field_longer_than_any_note_costs_its_own_row_at_most(tmp_path: Path, quote: str) -> None:
    long = quote + "x" * 200_000 + quote
    table = read_old_file(write_text(tmp_path / "n.csv", f"date,fruit,note\n2026-01-05,3,{long}\n2026-01-06,4,dry\n"))
    assert cells(table)[2] == ("2026-01-06", "4", "dry")
    assert "longer than 131072 characters" in table.rows[1].problem if quote else len(table.rows[1].cells) == 3
