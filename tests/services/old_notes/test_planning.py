"""What the rows of a file would become, and why some stay out."""

from datetime import date, time
from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed, Note, Pick, Pollination, Reading
from growlog.services.crops import clear_crop
from growlog.services.old_notes.import_plan import Answers, RowOutcome
from growlog.services.old_notes.told_columns import Told
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import plant_crop
from tests.services.old_notes.carried import details, planned, reasons
from tests.sharing.old_notes.written_tables import write_ods, write_text, write_xlsx


def test_one_row_becomes_entries_of_several_kinds(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "Date;EC;pH;picked g;fruit;note\n05.01.2026;1,8;6,1;210,5;3;first picks\n")
    plan = planned(log, path, crop.id)
    assert details(plan) == [Feed(ec_ms_per_cm=1.8, ph=6.1), Pick(3, 210.5)]
    assert [e.note for e in plan.entries] == ["first picks", ""]
    assert {e.day for e in plan.entries} == {date(2026, 1, 5)}


def test_a_sum_so_far_becomes_what_each_day_added(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,total fruit\n2026-01-05,3\n2026-01-06,5\n2026-01-07,5\n2026-01-08,9\n")
    plan = planned(log, path, crop.id)
    assert details(plan) == [Pick(3), Pick(2), Pick(4)]
    assert [row.outcome for row in plan.rows].count(RowOutcome.SAYS_NOTHING) == 1


def test_a_declared_sum_is_read_in_the_order_of_days(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit\n2026-01-08,9\n2026-01-06,5\n2026-01-05,3\n")
    plan = planned(log, path, crop.id, told=Told(cumulative=["fruit_count"]))
    assert {e.day.day: e.detail.fruit_count for e in plan.entries} == {5: 3, 6: 2, 8: 4}  # type: ignore[attr-defined]


def test_a_sum_that_falls_is_refused_and_the_others_stand(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit\n2026-01-05,3\n2026-01-06,5\n2026-01-07,4\n2026-01-08,9\n")
    plan = planned(log, path, crop.id, told=Told(cumulative=["fruit"]))
    assert details(plan) == [Pick(3), Pick(2), Pick(4)]
    assert "falls from 5 to 4" in reasons(plan)[4]


def test_a_weight_so_far_that_did_not_grow_is_no_weight(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    rows = "date,total fruit,total g\n2026-01-05,3,210\n2026-01-06,5,210\n2026-01-07,6,280\n"
    plan = planned(log, write_text(tmp_path / "n.csv", rows), crop.id)
    assert details(plan) == [Pick(3, 210.0), Pick(2), Pick(1, 70.0)]


def test_fruit_by_fruit_weights_are_single_weights(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,picked\n2026-01-05,2 @ 65g\n2026-01-06,86+93+78\n2026-01-07,4\n")
    assert details(planned(log, path, crop.id)) == [
        Pick(2, None, (65.0, 65.0)), Pick(3, None, (86.0, 93.0, 78.0)), Pick(4),
    ]  # fmt: skip


def test_rows_with_more_or_fewer_fields_are_refused_not_shifted(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(
        tmp_path / "n.csv", "date,fruit,note\n2026-01-05,3,a\n2026-01-06,3\n2026-01-07,3,a,b\n2026-01-08,1,\n"
    )
    plan = planned(log, path, crop.id)
    assert len(plan.entries) == 2
    assert "only 2 fields" in reasons(plan)[3]
    assert "4 fields, the heading only 3" in reasons(plan)[4]


def test_a_spreadsheet_cell_beyond_the_heading_is_a_refused_row(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    rows = [["date", "fruit"], [date(2026, 1, 5), 3], [date(2026, 1, 6), 2, "stray"]]
    plan = planned(log, write_xlsx(tmp_path / "n.xlsx", Notes=rows), crop.id)
    assert (len(plan.entries), list(reasons(plan))) == (1, [3])


@pytest.mark.parametrize("made_by", ["xlsx", "ods"])
def test_spreadsheets_are_read_like_text(log: OpenLogbook, crop: Crop, tmp_path: Path, made_by: str) -> None:
    rows = [["date", "temp F", "RH", "fruit"], [date(2026, 1, 5), 75, 55, 3], ["2026-01-06", 77, 60, "2 @ 65g"]]
    path = tmp_path / f"n.{made_by}"
    written = write_xlsx(path, Notes=rows) if made_by == "xlsx" else write_ods(path, rows)
    found = details(planned(log, written, crop.id))
    assert found[1] == Pick(3)
    assert found[3] == Pick(2, None, (65.0, 65.0))
    assert isinstance(found[0], Reading)
    assert found[0].air_temperature_c == pytest.approx((75 - 32) * 5 / 9, abs=1e-5)


def test_a_formula_without_a_result_is_a_refused_row(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    rows = [["date", "fruit"], [date(2026, 1, 5), 3], [date(2026, 1, 6), "=B2+1"]]
    assert "B3" in reasons(planned(log, write_xlsx(tmp_path / "n.xlsx", Notes=rows), crop.id))[3]


def test_day_and_month_that_cannot_be_told_apart_are_asked_about(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit\n01/02/2026,3\n02/03/2026,2\n")
    plan = planned(log, path, crop.id)
    assert [q.key for q in plan.questions] == ["date_order"]
    assert not plan.entries
    assert not plan.is_ready
    assert {e.day for e in planned(log, path, crop.id, Answers(date_order="dmy")).entries} == {
        date(2026, 2, 1), date(2026, 3, 2),
    }  # fmt: skip
    assert date(2026, 1, 2) in {e.day for e in planned(log, path, crop.id, Answers(date_order="mdy")).entries}


def test_a_comma_that_may_group_thousands_is_asked_about(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date;fruit;weight g\n2026-01-05;9;1,250\n")
    assert [q.key for q in planned(log, path, crop.id).questions] == ["decimal"]
    assert details(planned(log, path, crop.id, Answers(decimal=","))) == [Pick(9, 1.25)]
    assert details(planned(log, path, crop.id, Answers(decimal="."))) == [Pick(9, 1250.0)]


def test_a_day_a_year_off_stays_out_until_it_is_answered(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit\n2026-01-05,3\n2025-01-06,2\n2026-01-07,4\n2026-01-08,1\n")
    plan = planned(log, path, crop.id)
    assert "6 January 2026 would fit" in reasons(plan)[3]
    assert len(plan.entries) == 3
    mended = planned(log, path, crop.id, Answers(year_slips="mend"))
    assert date(2026, 1, 6) in {e.day for e in mended.entries}
    assert "before day 0" in reasons(planned(log, path, crop.id, Answers(year_slips="keep")))[3]


def test_days_when_the_crop_did_not_stand_are_refused_one_by_one(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    clear_crop(log, crop.id, date(2026, 2, 20))
    path = write_text(tmp_path / "n.csv", "date,fruit\n2025-11-01,3\n2026-02-19,2\n2026-02-25,4\n2026-03-20,1\n")
    plan = planned(log, path, crop.id)
    assert len(plan.entries) == 1
    assert "before day 0" in reasons(plan)[2]
    assert "was cleared" in reasons(plan)[4]
    assert "not come yet" in reasons(plan)[5]


def test_values_outside_the_limits_are_refused_and_unusual_ones_are_marked(
    log: OpenLogbook, crop: Crop, tmp_path: Path
) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", "date,pH\n2026-01-05,61\n2026-01-06,8.2\n"), crop.id)
    assert "outside" in reasons(plan)[2]
    assert [row.line for row in plan.unusual()] == [3]


def test_weights_without_a_number_of_fruit_are_asked_about(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,weight (oz)\n2026-01-05,2.5\n")
    assert [q.key for q in planned(log, path, crop.id).questions] == ["weight"]
    one_each = planned(log, path, crop.id, told=Told([("weight (oz)", "pick.weight_g")]))
    # NIST Special Publication 811 (2008), appendix B.8: an ounce is 28.34952 g
    assert details(one_each)[0].weights_g == pytest.approx((2.5 * 28.34952,), abs=1e-3)  # type: ignore[attr-defined]


def test_culls_without_a_cause_are_asked_about(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit,culls\n2026-01-05,3,1\n")
    assert [q.key for q in planned(log, path, crop.id).questions] == ["cull_cause"]
    told = Told([("culls", "pick.culled_cracked")])
    assert details(planned(log, path, crop.id, told=told))[0].culled_count == 1  # type: ignore[attr-defined]


def test_a_file_that_says_neither_day_nor_crop_nor_anything_is_asked_about(
    log: OpenLogbook, crop: Crop, tmp_path: Path
) -> None:
    plan = planned(log, write_text(tmp_path / "n.csv", "colour,shape\nred,round\n"), None)
    assert [q.key for q in plan.questions] == ["day", "crop", "columns"]


def test_a_column_may_name_the_crop_of_each_row(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    other = plant_crop(log, "Porch Violet", species="aubergine")
    rows = ["date,crop,total fruit so far", "2026-01-05,boxroom gold,3", "2026-01-05,Porch Violet,1"]
    rows += ["2026-01-06,Boxroom Gold,5", "2026-01-06,Nobody,5"]
    path = write_text(tmp_path / "n.csv", "\n".join(rows))
    plan = planned(log, path, None)
    assert [(e.owner.id, e.detail.fruit_count) for e in plan.entries] == [  # type: ignore[attr-defined]
        (crop.id, 3), (other.id, 1), (crop.id, 2),
    ]  # fmt: skip
    assert "no crop Nobody" in reasons(plan)[5]


def test_plant_age_stands_for_the_day(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "plant age,pollinated\n50,4\n51,0\n99999999999,1\n")
    plan = planned(log, path, crop.id)
    assert "No plant is" in reasons(plan)[4]
    assert [e.day for e in plan.entries] == [date(2026, 1, 4), date(2026, 1, 5)]
    assert details(plan)[0] == Pollination(females_pollinated=4)


def test_time_notes_and_labour_go_along(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(
        tmp_path / "n.csv", "date,time,labour min,remarks\n2026-01-05,18:41,12,looked round\n2026-01-06,,,\n"
    )
    plan = planned(log, path, crop.id)
    entry = plan.entries[0]
    assert (entry.detail, entry.at, entry.labour_minutes, entry.note) == (Note(), time(18, 41), 12, "looked round")
    assert len(plan.entries) == 1


def test_windows_1252_degrees_are_read(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date;temp °C\n05.01.2026;23,5 °C\n", "cp1252")
    assert details(planned(log, path, crop.id)) == [Reading(air_temperature_c=23.5)]


def test_two_hundred_broken_rows_are_each_named(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    lines = [f"2026-01-0{n % 9 + 1},{'x' if n % 2 else n % 5 + 1}" for n in range(400)]
    plan = planned(log, write_text(tmp_path / "n.csv", "date,fruit\n" + "\n".join(lines)), crop.id)
    assert len(plan.refused) == 200
    assert all(row.reason == "fruit: “x” is not a number." for row in plan.refused)
    assert len(plan.entries) == 200


def test_two_columns_that_contradict_each_other_are_refused(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "date,fruit,weights\n2026-01-05,3,65+70\n2026-01-06,2,65+70\n")
    plan = planned(log, path, crop.id)
    assert "3 and 2" in reasons(plan)[2]
    assert details(plan) == [Pick(2, None, (65.0, 70.0))]
