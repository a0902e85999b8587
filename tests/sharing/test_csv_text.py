"""CSV held against the rules of RFC 4180, section 2 (Shafranovich 2005)."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.sharing.csv_text import csv_text, read_csv
from growlog.sharing.problems import PackageProblem

# Lone surrogates are no text that a file could hold.
CELLS = st.text(st.characters(exclude_categories=["Cs"]))
ROWS = st.lists(st.lists(CELLS, min_size=2, max_size=3), max_size=4)


def test_lines_end_with_carriage_return_and_line_feed_as_rule_1_says() -> None:
    assert csv_text([["aaa", "bbb"], ["zzz", "yyy"]]) == "aaa,bbb\r\nzzz,yyy\r\n"


def test_quotes_stand_only_where_rules_6_and_7_need_them() -> None:
    assert csv_text([["b\r\nbb", 'c"c', "d,d", "e e", "'f"]]) == '"b\r\nbb","c""c","d,d",e e,\'f\r\n'


@given(rows=ROWS)
def test_every_text_comes_back_from_a_file(tmp_path_factory: pytest.TempPathFactory, rows: list[list[str]]) -> None:
    path = tmp_path_factory.mktemp("csv") / "rows.csv"
    path.write_bytes(csv_text([["first", "second"], *rows]).encode())
    assert read_csv(path)[1:] == rows


def test_a_byte_order_mark_that_a_spreadsheet_added_is_passed_over(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_bytes(b"\xef\xbb\xbfid,name\r\n")
    assert read_csv(tmp_path / "a.csv") == [["id", "name"]]


@pytest.mark.parametrize("content", [b"id\r\n\xff\r\n", b'id\r\n"a"b\r\n', b'id\r\n"open\r\n'])
def test_what_is_no_csv_is_refused_with_the_file_named(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "crops.csv").write_bytes(content)
    with pytest.raises(PackageProblem, match=r"^crops\.csv"):
        read_csv(tmp_path / "crops.csv")
