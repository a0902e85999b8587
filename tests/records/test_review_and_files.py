"""What decisions, column maps and logger files refuse."""

from datetime import UTC, date, datetime, timedelta

import pytest

from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.records.decision import Decision, Verdict
from growlog.records.logger_file import LoggerFile

DAY = date(2026, 1, 18)
MOMENT = datetime(2026, 1, 18, 6, tzinfo=UTC)


def test_a_verdict_has_its_reasons() -> None:
    assert Decision("1", "crop", DAY, Verdict.REGROW, "Tasty.").problems() == []
    assert [p.field for p in Decision("1", "crop", DAY, Verdict.REGROW, " ").problems()] == ["reasons"]


def test_growing_again_with_changes_says_what_is_to_change() -> None:
    decision = Decision("1", "crop", DAY, Verdict.REGROW_WITH_CHANGES, "Tasty.")
    assert [p.field for p in decision.problems()] == ["changes"]


@pytest.mark.parametrize(("order", "decimal", "fields"), [
    ("", ".", []), ("dmy", ",", []), ("dym", ".", ["date_order"]), ("ymd", ";", ["decimal"]),
])  # fmt: skip
def test_a_column_map_knows_only_orders_and_decimal_signs_in_use(order: str, decimal: str, fields: list[str]) -> None:
    found = ColumnMap("1", "date", (MappedColumn("Date", "day"),), order, decimal).problems()
    assert [p.field for p in found] == fields


def test_a_logger_file_does_not_end_before_it_begins() -> None:
    file = LoggerFile("1", "room", "air.csv", "ab" * 32, 2, MOMENT, MOMENT - timedelta(minutes=1), MOMENT)
    assert [p.field for p in file.problems()] == ["last_at"]
