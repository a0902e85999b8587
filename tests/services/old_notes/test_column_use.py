"""What the columns are guessed to hold, and how a person says otherwise."""

from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.services.old_notes.column_use import guessed_map, proposed_map
from growlog.services.old_notes.old_table import read_old_notes
from growlog.services.old_notes.told_columns import NotToldRight, Told, field_told, told_map
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from tests.sharing.old_notes.written_tables import write_text


def uses(tmp_path: Path, text: str, kinds: tuple[str, ...] = ()) -> list[tuple[str, str, bool]]:
    """Field, unit and sum-so-far of each column as guessed."""
    table = read_old_notes(write_text(tmp_path / "notes.csv", text))
    return [(c.field, c.unit, c.cumulative) for c in guessed_map(table, kinds).columns]


@pytest.mark.parametrize(
    "heading, sample, field, unit",
    [
        ("EC in", "1.8", "feed.ec_ms_per_cm", ""),
        ("EC (µS/cm)", "1800", "feed.ec_ms_per_cm", "µs/cm"),
        ("drain EC", "2.1", "feed.drain_ec_ms_per_cm", ""),
        ("pH", "6.1", "feed.ph", ""),
        ("weight (g)", "210", "pick.total_weight_g", "g"),
        ("lbs", "2.5", "pick.total_weight_g", "lbs"),
        ("picked g", "210", "pick.total_weight_g", "g"),
        ("# fruit", "3", "pick.fruit_count", ""),
        ("picks", "2 @ 65g", "pick.fruit_count", ""),
        ("Number of fruits", "3", "pick.fruit_count", ""),
        ("pollinated", "4", "pollination.females_pollinated", ""),
        ("temp F", "75", "reading.air_temperature_c", "f"),
        ("temp", "75", "reading.air_temperature_c", "°f"),
        ("RH", "55", "reading.relative_humidity_percent", ""),
        ("RH", "0.55", "reading.relative_humidity_percent", "share"),
        ("water temp °C", "21", "reading.solution_temperature_c", "°c"),
        ("Height [in]", "21", "reading.plant_height_cm", "in"),
        ("water (mL)", "900", "feed.volume_l", "ml"),
        ("side shoots", "2", "training.side_shoots_removed", ""),
        ("fruit set", "2", "fruit-check.fruit_set", ""),
        ("avg weight", "70", "", ""),
        ("favourite colour", "blue", "", ""),
    ],
)
def test_headings_in_several_spellings_are_known(
    tmp_path: Path, heading: str, sample: str, field: str, unit: str
) -> None:
    assert uses(tmp_path, f"date,{heading}\n2026-01-05,{sample}\n2026-01-06,{sample}\n")[1][:2] == (field, unit)


def test_a_column_of_days_is_the_date_whatever_it_is_called(tmp_path: Path) -> None:
    assert uses(tmp_path, "Tag der Ernte,fruit\n2026-01-05,3\n2026-01-06,4\n")[0][0] == "day"


def test_a_rising_column_that_is_called_a_total_is_taken_for_a_sum(tmp_path: Path) -> None:
    assert uses(tmp_path, "date,total fruit\n2026-01-05,3\n2026-01-06,5\n2026-01-07,9\n")[1][2]
    assert not uses(tmp_path, "date,total fruit\n2026-01-05,3\n2026-01-06,1\n2026-01-07,9\n")[1][2]


def test_a_sum_beside_what_each_day_gave_is_left_out(tmp_path: Path) -> None:
    found = uses(tmp_path, "date,fruit so far,fruit\n2026-01-05,3,3\n2026-01-06,5,2\n2026-01-07,9,4\n")
    assert [field for field, _, _ in found] == ["day", "", "pick.fruit_count"]


def test_kinds_that_are_not_wanted_are_left_out(tmp_path: Path) -> None:
    found = uses(tmp_path, "date,EC,picked g,fruit,note\n2026-01-05,1.8,210,3,ok\n", ("pick",))
    assert [field for field, _, _ in found] == ["day", "", "pick.total_weight_g", "pick.fruit_count", "note"]


def test_lines_above_the_heading_are_passed_over(tmp_path: Path) -> None:
    table = read_old_notes(write_text(tmp_path / "n.csv", "My harvest\n\ndate,fruit\n2026-01-05,3\n"))
    assert (table.heading_line, table.headings, table.rows[0].line) == (3, ("date", "fruit"), 4)


def test_lines_about_the_file_are_not_taken_for_the_heading(tmp_path: Path) -> None:
    text = "Season,2026,,\nCrop,Boxroom Gold,,\nPrinted,2026-03-07,,\n\ndate,fruit,weight g,note\n2026-01-05,3,210,\n"
    table = read_old_notes(write_text(tmp_path / "n.csv", text))
    assert (table.heading_line, table.headings) == (5, ("date", "fruit", "weight g", "note"))


def test_a_column_of_plant_ages_may_be_called_day(tmp_path: Path) -> None:
    assert [u[0] for u in uses(tmp_path, "Day,pollinated\n45,4\n46,2\n")] == ["age", "pollination.females_pollinated"]


def test_a_file_without_a_heading_keeps_its_first_row(tmp_path: Path) -> None:
    table = read_old_notes(write_text(tmp_path / "n.csv", "2026-01-05,3\n2026-01-06,4\n"))
    assert (table.heading_line, len(table.rows), table.headings) == (0, 2, ("Column 1", "Column 2"))


def test_the_heading_can_be_told(tmp_path: Path) -> None:
    path = write_text(tmp_path / "n.csv", "a,b\ndate,fruit\n2026-01-05,3\n")
    assert read_old_notes(path, heading_line=2).headings == ("date", "fruit")
    assert len(read_old_notes(path, heading_line=0).rows) == 3
    with pytest.raises(LogbookProblem, match="no line 9"):
        read_old_notes(path, heading_line=9)


def test_a_file_with_nothing_below_its_heading_is_refused(tmp_path: Path) -> None:
    with pytest.raises(LogbookProblem, match="no row below"):
        read_old_notes(write_text(tmp_path / "n.csv", "date,fruit\n,\n"))
    with pytest.raises(LogbookProblem, match="no row below"):
        read_old_notes(write_text(tmp_path / "n.csv", ""))


def test_a_file_that_is_not_there_is_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(LogbookProblem, match="nowhere"):
        read_old_notes(tmp_path / "nowhere.csv")


def test_what_is_told_goes_before_what_was_guessed(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    table = read_old_notes(write_text(tmp_path / "n.csv", "date,weight,kilos\n2026-01-05,210,0.2\n"))
    guess, _ = proposed_map(log, table)
    told = told_map(guess, Told([("Kilos", "total_weight_g:kg")], ["kilos"]), ("pick",))
    assert [(c.field, c.unit, c.cumulative) for c in told.columns] == [
        ("day", "", False), ("", "", False), ("pick.total_weight_g", "kg", True),
    ]  # fmt: skip


@pytest.mark.parametrize(
    "words, field",
    [("date", "day"), ("pick.total_weight_g", "pick.total_weight_g"), ("fruit_count", "pick.fruit_count"),
     ("", ""), ("Females pollinated", "pollination.females_pollinated"), ("runoff ec", "feed.drain_ec_ms_per_cm")],
)  # fmt: skip
def test_a_field_is_told_by_key_name_or_words(words: str, field: str) -> None:
    assert field_told(words)[0] == field


@pytest.mark.parametrize("words", ["no such thing", "pick.total_weight_g:mS/cm", "canopy_ppfd_umol"])
def test_a_field_that_is_none_or_several_is_refused_with_the_names_there_are(words: str) -> None:
    with pytest.raises(NotToldRight, match=r"\w"):
        field_told(words)


def test_a_reading_at_one_moment_does_not_add_up(log: OpenLogbook, tmp_path: Path) -> None:
    table = read_old_notes(write_text(tmp_path / "n.csv", "date,temp\n2026-01-05,21\n"))
    with pytest.raises(NotToldRight, match="add up"):
        told_map(guessed_map(table), Told(cumulative=["temp"]))


def test_headings_are_believed_where_hardly_a_cell_can_be_read(tmp_path: Path) -> None:
    broken = "".join(f"bad{n},x,y\n" for n in range(200))
    fields = [field for field, _, _ in uses(tmp_path, f"date,fruit,weight g\n2026-01-05,3,210\n{broken}")]
    assert fields == ["day", "pick.fruit_count", "pick.total_weight_g"]


def test_a_heading_alone_does_not_refuse_rows_that_say_something_else(tmp_path: Path) -> None:
    fields = [field for field, _, _ in uses(tmp_path, "date,water,note\n2026-01-05,yes,hot\n2026-01-06,no,dry\n")]
    assert fields == ["day", "", "note"]
