"""The logbook that the program builds of the sample season: what it shows agrees with the files."""

import csv
from collections import Counter
from datetime import timedelta
from pathlib import Path

import pytest

from growlog.calculations.plant_age import age_on
from growlog.services.board import board_of
from growlog.services.crops import crop_named, crops_of
from growlog.services.day_sheet import crop_days_of
from growlog.services.exchange import export_logbook
from growlog.services.money.labour import labour_of_crop
from growlog.services.open_logbook import OpenLogbook

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("sample_season")]

SAMPLE = Path(__file__).resolve().parents[2] / "sample_season"


def rows(name: str) -> list[dict[str, str]]:
    with (SAMPLE / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def picked_of(crop_id: str) -> tuple[int, float, int]:
    """Marketable fruit, their weight in g and culls of a crop, added up from the files alone."""
    picks = {row["id"] for row in rows("entries") if row["crop_id"] == crop_id and row["kind"] == "pick"}
    fruit = [float(row["weight_g"]) for row in rows("picked_fruit") if row["entry_id"] in picks]
    culled = sum(int(row["cull_count"]) for row in rows("culls") if row["entry_id"] in picks)
    return len(fruit), sum(fruit), culled


def test_the_totals_of_the_list_are_those_of_the_files(log: OpenLogbook) -> None:
    photos = Counter(row["crop_id"] for row in rows("photo_uses"))
    entries = Counter(row["crop_id"] for row in rows("entries"))
    shown = crops_of(log)
    assert len(shown) == 4
    for summary in shown:
        count, weight_g, culled = picked_of(summary.crop.id)
        assert (summary.total.fruit_count, summary.total.culled_count) == (count, culled)
        assert summary.total.weight_g == pytest.approx(weight_g)
        assert summary.total.estimated_g == summary.total.unknown_count == 0
        assert summary.photo_count == photos[summary.crop.id]
        assert summary.entry_count == entries[summary.crop.id]


def test_the_totals_of_each_board_are_those_of_the_files(log: OpenLogbook) -> None:
    pollinated = {row["entry_id"]: int(row["females_pollinated"]) for row in rows("pollinations")}
    for summary in crops_of(log):
        board, own = board_of(log, summary.crop.id), [r for r in rows("entries") if r["crop_id"] == summary.crop.id]
        count, weight_g, culled = picked_of(summary.crop.id)
        assert (sum(t.count for t in board.picks), sum(t.culled for t in board.picks)) == (count, culled)
        assert (board.total.fruit_count, board.total.culled_count) == (count, culled)
        assert board.total.weight_g == pytest.approx(weight_g)
        if count:
            assert board.curve.points[-1].fruit_count == count
            assert board.curve.points[-1].weight_g == pytest.approx(weight_g)
        assert board.females_pollinated == sum(pollinated.get(r["id"], 0) for r in own)
        assert board.labour_minutes == round(labour_of_crop(log, summary.crop.id).minutes)
        assert board.labour_minutes > sum(int(r["labour_minutes"] or 0) for r in own)  # with its part of the room's
        assert len(board.feeds) == sum(r["kind"] == "feed" for r in own)
        assert sum(day.photo_count for day in board.photo_days) == summary.photo_count


def test_the_board_of_boxroom_gold_has_its_gap_its_first_days_and_its_end(log: OpenLogbook) -> None:
    gold = crop_named(log, "Boxroom Gold")
    assert gold is not None
    board = board_of(log, gold.id)
    assert board.missing_photo_ages == (77, 78)
    assert board.last_age == 112
    assert board.packet_maturity_age == 58
    assert board.first_flower_age is not None
    assert board.first_pick_age is not None
    assert board.first_flower_age + 4 <= board.first_pick_age
    assert {span.principal for span in board.stages} >= {0, 1, 5, 6, 7}


def test_no_growth_stage_stops_and_comes_back(log: OpenLogbook) -> None:
    for summary in crops_of(log):
        principals = [span.principal for span in board_of(log, summary.crop.id).stages]
        assert len(set(principals)) == len(principals), summary.crop.name


def test_entries_of_the_room_show_on_the_crops_that_stood_there(log: OpenLogbook) -> None:
    room = [row for row in rows("entries") if row["room_id"]]
    for summary in crops_of(log):
        crop, last = summary.crop, summary.crop.cleared_on or log.today()
        days = {(crop.day_zero + timedelta(days=age)).isoformat() for age in range(age_on(crop.day_zero, last) + 1)}
        board = board_of(log, crop.id)
        shown = {mark.entry_id for mark in board.readings + board.events}
        expected = {row["id"] for row in room if row["day"] in days and row["kind"] != "light"}
        others = {row["id"] for row in room} - expected
        assert expected <= shown
        assert not others & shown
        assert board.light[0].start_age == 0


def test_a_day_shows_its_photo_and_the_rooms_air(log: OpenLogbook) -> None:
    gold = crop_named(log, "Boxroom Gold")
    assert gold is not None
    sheet = crop_days_of(log, gold.id).sheet(gold.day_zero + timedelta(days=60))
    assert len(sheet.photos) == 1
    assert "Box room" in {entry.belongs for entry in sheet.entries}
    assert "" in {entry.belongs for entry in sheet.entries}


def test_no_entry_of_a_day_carries_a_warning(log: OpenLogbook) -> None:
    for summary in crops_of(log):
        days = crop_days_of(log, summary.crop.id)
        for age in range(summary.age_days + 1):
            sheet = days.sheet(summary.crop.day_zero + timedelta(days=age))
            assert [entry.title for entry in sheet.entries if entry.warning] == []


def test_read_and_written_again_the_season_has_the_same_bytes(log: OpenLogbook, tmp_path: Path) -> None:
    export_logbook(log, tmp_path / "again")
    written = [f for f in (tmp_path / "again").rglob("*") if f.is_file()]
    assert (tmp_path / "again" / "datapackage.json") in written
    for file in written:
        name = file.relative_to(tmp_path / "again")
        assert file.read_bytes() == (SAMPLE / name).read_bytes(), name
    left_out = {f.relative_to(SAMPLE) for f in SAMPLE.rglob("*") if f.is_file()} - {
        f.relative_to(tmp_path / "again") for f in written
    }
    assert {path.parts[0] for path in left_out} == {"masks", "README.txt"}
