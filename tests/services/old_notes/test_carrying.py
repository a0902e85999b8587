"""Carrying in: one transaction, one undo, nothing twice, nothing half written; the mapping is remembered."""

from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from growlog.records.crop import Crop
from growlog.records.entry import Feed, Pick
from growlog.records.problems import RecordRefused
from growlog.services.crops import clear_crop
from growlog.services.old_notes.carrying import carry_in, save_refused
from growlog.services.old_notes.column_use import proposed_map
from growlog.services.old_notes.import_plan import Answers
from growlog.services.old_notes.old_table import Stopped, read_old_notes
from growlog.services.old_notes.planning import plan_entries
from growlog.services.old_notes.told_columns import Told
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.undo import undo
from tests.logbooks import SOWN, content_of, write
from tests.services.old_notes.carried import details, entries_of, planned
from tests.sharing.old_notes.written_tables import write_text

pytestmark = pytest.mark.slow

ROWS = st.tuples(st.integers(0, 100), st.integers(0, 9), st.sampled_from(["", "210", "x"]))
TABLE = "date,fruit,weight g,EC,note\n2026-01-05,3,210,1.8,first\n2026-01-06,2,,1.9,\nnever,1,,,\n"


def test_what_was_carried_in_is_what_was_shown(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", TABLE), crop.id)
    change = carry_in(log, plan)
    assert {e.id for e in entries_of(log)} == {e.id for e in plan.entries} == set(change.record_ids)
    assert len({e.group_id for e in entries_of(log)}) == 1
    assert change.crop_ids == {crop.id}


def test_planning_writes_nothing(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    before = content_of(log)
    planned(log, write_text(tmp_path / "n.csv", TABLE), crop.id)
    assert content_of(log) == before


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    rows=st.lists(st.tuples(st.integers(0, 100), st.integers(0, 9), st.sampled_from(["", "210", "x"])), max_size=150)
)
def test_one_undo_takes_it_all_out(
    log: OpenLogbook, crop: Crop, tmp_path: Path, rows: list[tuple[int, int, str]]
) -> None:
    lines = [f"{SOWN + timedelta(day)},{count},{weight}" for day, count, weight in [(5, 1, ""), *rows]]
    plan = planned(log, write_text(tmp_path / "n.csv", "date,fruit,weight g\n" + "\n".join(lines)), crop.id)
    before = entries_of(log)
    undone = undo(log, carry_in(log, plan))
    assert entries_of(log) == before
    undo(log, undone)  # and doing it again brings all of it back
    assert {e.id for e in entries_of(log)} == {e.id for e in (*before, *plan.entries)}
    with log.unit() as unit:
        for entry in entries_of(log):
            unit.remove("clean", entry)
        unit.commit()


def test_the_same_file_twice_is_pointed_out_and_left_out(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", TABLE)
    carry_in(log, planned(log, path, crop.id))
    again = planned(log, path, crop.id)
    assert (again.entries, again.known_count) == ((), 4)
    assert len(planned(log, path, crop.id, Answers(with_known=True)).entries) == 4
    with pytest.raises(LogbookProblem, match="nothing"):
        carry_in(log, again)


def test_equal_fruit_of_one_day_are_no_duplicates_of_each_other(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    write(log, crop, date(2026, 1, 5), Pick(1, None, (65.0,)))
    path = write_text(tmp_path / "n.csv", "date,g\n2026-01-05,65\n2026-01-05,65\n2026-01-05,65\n")
    plan = planned(log, path, crop.id, told=Told([("g", "pick.weight_g")]))
    assert (len(plan.entries), plan.known_count) == (2, 1)


def test_the_mapping_is_remembered_for_files_of_the_same_shape(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    told = Told([("a", "fruit_count"), ("b", "pick.total_weight_g:kg")], ["a"])
    first = write_text(tmp_path / "one.csv", "Date,A,B\n01/02/2026,3,0.2\n02/02/2026,5,0.1\n")
    undo(log, carry_in(log, planned(log, first, crop.id, Answers(date_order="dmy"), told, ("pick",))))
    table = read_old_notes(write_text(tmp_path / "two.csv", "date,a,B\n03/02/2026,7,0.3\n"))
    known, is_remembered = proposed_map(log, table)
    assert is_remembered
    assert [(c.field, c.unit, c.cumulative) for c in known.columns] == [
        ("day", "", False), ("pick.fruit_count", "", True), ("pick.total_weight_g", "kg", False),
    ]  # fmt: skip
    plan = plan_entries(log, table, known, crop.id, Answers(known.date_order, known.decimal))
    assert plan.entries[0].day == date(2026, 2, 3)


def test_what_was_left_out_for_one_kind_is_there_for_the_next(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit,EC\n2026-01-05,3,1.8\n")
    carry_in(log, planned(log, path, crop.id, kinds=("pick",)))
    assert details(planned(log, path, crop.id, kinds=("feed",))) == [Feed(ec_ms_per_cm=1.8)]


def test_a_changed_mapping_takes_the_place_of_the_remembered_one(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit,x\n2026-01-05,3,4\n")
    carry_in(log, planned(log, path, crop.id))
    told = Told([("x", "pollination.females_pollinated")])
    carry_in(log, planned(log, path, crop.id, told=told))
    known, _ = proposed_map(log, read_old_notes(path))
    assert known.columns[2].field == "pollination.females_pollinated"


def test_stopping_writes_nothing(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    lines = "\n".join(f"{SOWN + timedelta(n % 100)},{n % 9 + 1}" for n in range(1200))
    plan = planned(log, write_text(tmp_path / "n.csv", f"date,fruit\n{lines}"), crop.id)
    told: list[tuple[int, int]] = []

    def stop_half_way(done: int, total: int) -> None:
        told.append((done, total))
        if done >= 1000:
            raise Stopped

    before = content_of(log)
    with pytest.raises(Stopped):
        carry_in(log, plan, stop_half_way)
    assert content_of(log) == before
    assert told == [(0, 1200), (500, 1200), (1000, 1200)]
    assert len(carry_in(log, plan).record_ids) == 1200


def test_a_plan_that_the_logbook_no_longer_takes_is_refused_whole(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", TABLE), crop.id)
    clear_crop(log, crop.id, date(2026, 1, 5))
    with pytest.raises(RecordRefused, match="was cleared"):
        carry_in(log, plan)
    assert entries_of(log) == []


def test_an_open_question_keeps_everything_out(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", "date,fruit\n01/02/2026,3\n"), crop.id)
    with pytest.raises(LogbookProblem, match="cannot be told apart"):
        carry_in(log, plan)
    assert entries_of(log) == []


def test_rows_that_stay_out_are_saved_with_their_reasons_and_go_in_once_mended(
    log: OpenLogbook, crop: Crop, tmp_path: Path
) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", TABLE), crop.id)
    carry_in(log, plan)
    left_out = tmp_path / "left out.csv"
    assert save_refused(plan, left_out) == 1
    text = left_out.read_text(encoding="utf-8-sig")
    assert "not a date" in text
    left_out.write_text(text.replace("never,1", "2026-01-07,1"), encoding="utf-8-sig")
    mended = planned(log, left_out, crop.id)
    assert details(mended) == [Pick(1)]
    assert proposed_map(log, read_old_notes(left_out))[1]  # its shape is that of the file it came from


def test_a_file_that_cannot_be_written_is_a_plain_sentence(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", TABLE), crop.id)
    with pytest.raises(LogbookProblem, match="could not be written"):
        save_refused(plan, tmp_path / "no such folder" / "x.csv")


@pytest.mark.slow
def test_a_hundred_thousand_rows_go_in_and_out(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    moments = ((SOWN + timedelta(n % 100), f"{n // 100 % 24:02}:{n // 2400:02}", n) for n in range(100_000))
    lines = "\n".join(f"{day},{at},{20 + n % 10},{50 + n % 20}" for day, at, n in moments)
    told: list[int] = []
    plan = planned(log, write_text(tmp_path / "n.csv", f"date,time,temp C,RH\n{lines}"), crop.id)
    assert len(plan.entries) == 100_000
    change = carry_in(log, plan, lambda done, total: told.append(done))
    assert len(told) > 100
    undo(log, change)
    assert entries_of(log) == []
