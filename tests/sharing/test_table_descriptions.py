"""Every kind and every field of the records has its place and its words in the data package."""

from dataclasses import fields

import pytest

from growlog.records.entry import KINDS, Entry
from growlog.records.limits import limit
from growlog.records.photo import CaptureTime
from growlog.sharing import column_words, table_descriptions
from growlog.sharing.cells import Sort
from growlog.sharing.table_descriptions import KIND_TABLES, LISTED, RECORDS, tables

NOT_WRITTEN = {"version", "removed_at"}


def test_every_kind_of_entry_has_a_table() -> None:
    assert set(KIND_TABLES) == set(KINDS)


@pytest.mark.parametrize("table, record", [*RECORDS.items(), *((KIND_TABLES[k], d) for k, d in KINDS.items())])
def test_every_field_of_a_record_is_a_column_or_a_table(table: str, record: type) -> None:
    names = {f.name for f in fields(record)} - NOT_WRITTEN
    listed = {item.field for item in LISTED if item.owner == table}
    columns = set(tables()[table].header) - ({"entry_id"} if table in KIND_TABLES.values() else set())
    if "captured" in names:
        names = names - {"captured"} | {f"captured_{f.name}" for f in fields(CaptureTime)}
    assert columns == names - listed


def test_every_field_of_an_entry_is_a_column() -> None:
    names = {f.name for f in fields(Entry)} - NOT_WRITTEN - {"owner", "detail"}
    assert set(tables()["entries"].header) == names | {"kind", "crop_id", "plant_id", "tank_id", "room_id"}


def test_every_number_has_a_lowest_value_and_those_of_the_limits_table_carry_its_range() -> None:
    for table in tables().values():
        for column in table.columns:
            if column.sort in (Sort.INTEGER, Sort.NUMBER):
                assert column.lowest is not None, f"{table.name}.{column.name}"
    ph = next(c for c in tables()["feeds"].columns if c.name == "ph")
    assert (ph.lowest, ph.highest) == (limit("ph").lowest, limit("ph").highest)


def test_a_unit_stands_in_the_description() -> None:
    ec = next(c for c in tables()["feeds"].columns if c.name == "ec_ms_per_cm")
    assert ec.description == "EC in mS/cm."


def test_no_words_are_kept_for_what_is_no_longer_there() -> None:
    named = {f"{t.name}.{c.name}" for t in tables().values() for c in t.columns}
    named |= {c.name for t in tables().values() for c in t.columns}
    assert set(column_words.COLUMNS) <= named
    assert set(column_words.TABLES) == set(tables())


def test_a_field_without_words_is_an_error_that_names_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(column_words.COLUMNS, "crops.trying")
    with pytest.raises(LookupError, match=r"crops\.trying"):
        tables.__wrapped__()


def test_a_kind_without_a_table_is_an_error_that_names_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(table_descriptions.KIND_TABLES, "feed")
    with pytest.raises(LookupError, match="feed"):
        tables.__wrapped__()
