"""Cells: what is written is what is read, and no spreadsheet takes a text for a formula."""

from datetime import UTC, date, datetime, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.sharing.cells import Column, Sort, guard, read_cell, unguard, write_cell

TEXT = Column("note", Sort.STRING, "", empty_is_none=False)
NUMBER = Column("ph", Sort.NUMBER, "", lowest=0, highest=14)
COUNT = Column("n", Sort.INTEGER, "", lowest=0, highest=999)


@given(st.text())
def test_a_guarded_text_comes_back_as_it_was(text: str) -> None:
    assert unguard(guard(text)) == text


@given(st.text(alphabet="'=+-@\t\ra"))
def test_apostrophes_and_formula_signs_in_any_mixture_come_back_as_they_were(text: str) -> None:
    assert unguard(guard(text)) == text


@given(st.text(alphabet="'=+-@\t\ra1"))
def test_no_written_text_begins_with_a_sign_of_a_formula(text: str) -> None:
    assert not write_cell(text).startswith(("=", "+", "-", "@", "\t", "\r"))


@pytest.mark.parametrize("text, written", [
    ("=1+1", "'=1+1"), ("+01:00", "'+01:00"), ("'=kept", "''=kept"), ("'quoted'", "'quoted'"), ("a=b", "a=b"), ("", ""),
])  # fmt: skip
def test_only_what_would_be_a_formula_is_guarded(text: str, written: str) -> None:
    assert write_cell(text) == written


@pytest.mark.parametrize("value, written", [
    (12.0, "12"), (-3.5, "-3.5"), (1e-05, "0.00001"), (1e22, "10000000000000000000000"), (0.1 + 0.2,
    "0.30000000000000004"), (7, "7"), (True, "true"), (None, ""), (date(2026, 1, 8), "2026-01-08"),
    (time(6, 5), "06:05:00"), (datetime(2026, 1, 8, 6, 5, tzinfo=UTC), "2026-01-08T06:05:00Z"),
])  # fmt: skip
def test_values_are_written_plainly_and_numbers_never_with_an_exponent(value: object, written: str) -> None:
    assert write_cell(value) == written


@given(st.floats(min_value=0, max_value=14))
def test_a_number_comes_back_to_the_last_bit(value: float) -> None:
    assert read_cell(NUMBER, write_cell(value)) == value


@pytest.mark.parametrize("column, text", [
    (NUMBER, "14.1"), (NUMBER, "-1"), (NUMBER, "1,5"), (NUMBER, "1e3"), (NUMBER, "nan"), (NUMBER, "9" * 400),
    (COUNT, "1000"), (COUNT, "1.0"), (COUNT, "9" * 30), (COUNT, " 1"),
    (Column("d", Sort.DATE, ""), "2026-02-30"), (Column("d", Sort.DATE, ""), "18.1.2026"),
    (Column("t", Sort.TIME, ""), "25:00:00"), (Column("m", Sort.DATETIME, ""), "2026-01-18T00:00:00+01:00"),
    (Column("b", Sort.BOOLEAN, ""), "yes"), (Column("w", Sort.STRING, "", choices=("a", "b")), "c"),
    (Column("r", Sort.STRING, "", required=True), ""),
])  # fmt: skip
def test_what_is_none_of_the_column_is_refused_with_a_sentence(column: Column, text: str) -> None:
    with pytest.raises(ValueError, match=r"[a-z].*\.$"):
        read_cell(column, text)


def test_an_empty_cell_is_an_empty_text_where_texts_may_be_empty_and_none_elsewhere() -> None:
    assert (read_cell(TEXT, ""), read_cell(NUMBER, "")) == ("", None)
