"""Old notes carried in from the command line, each row accounted for."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.command_line.commands import Terminal
from tests.sharing.old_notes.written_tables import write_text, write_xlsx

AS_OF = ("--as-of", "2019-12-20", "add-entries")
TABLE = "date,fruit,weight g,note\n5/11/2019,3,210,first\n13/11/2019,2,130,\nlater,1,,\n14/11/2019,1,60,a,b\n"


@pytest.fixture
def notes(tmp_path: Path) -> Path:
    """Two rows that go in, two that do not."""
    return write_text(tmp_path / "notes.csv", TABLE)


def told(terminal: Terminal) -> dict[str, Any]:
    """The JSON that was printed."""
    found: dict[str, Any] = json.loads(terminal.out)
    return found


def entry_count(terminal: Terminal, room: Path) -> int:
    """Entries of the first crop."""
    terminal("list", room, "--json")
    return int(json.loads(terminal.out)["crops"][0]["entries"])


def test_what_can_be_read_goes_in_and_the_rest_is_told_with_line_and_reason(
    terminal: Terminal, room: Path, notes: Path
) -> None:
    assert terminal(*AS_OF, room, "--crop", "boxroom gold", "--kind", "pick", notes, "--json") == 1
    found = told(terminal)
    assert (found["entries"], found["written"], found["entries_by_kind"]) == (2, True, {"pick": 2})
    assert [(r["line"], r["reason"]) for r in found["refused"]] == [
        (4, "date: “later” is not a date with day, month and year."),
        (5, "The row has 5 fields, the heading only 4."),
    ]
    assert entry_count(terminal, room) == 2


def test_a_rehearsal_writes_nothing(terminal: Terminal, room: Path, notes: Path) -> None:
    before = (room / "logbook.sqlite3").read_bytes()
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes, "--dry-run", "--json") == 1
    assert (told(terminal)["entries"], told(terminal)["written"]) == (2, False)
    assert (room / "logbook.sqlite3").read_bytes() == before


def test_a_whole_file_is_code_0_and_one_line_for_people(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    notes = write_text(tmp_path / "n.csv", "date,fruit\n2019-11-05,3\n2019-11-06,4\n")
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes) == 0
    assert terminal.out.splitlines() == ["date: day", "fruit: pick.fruit_count", "2 entries carried in"]
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes) == 0
    assert terminal.out.splitlines()[-1] == "0 entries carried in, 2 were there already"


def test_columns_are_told_by_hand(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    notes = write_text(tmp_path / "n.tsv", "When\tA\tB\n2019-11-05\t3\t0,2\n2019-11-06\t5\t0,1\n2019-11-07\t5\t\n")
    maps = ("--map", "A=fruit_count", "--map", "B=pick.total_weight_g:kg", "--cumulative", "fruit_count")
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", "--kind", "pick", notes, *maps, "--json") == 0
    assert told(terminal)["columns"][1:] == [
        {"column": "A", "field": "pick.fruit_count", "unit": "", "cumulative": True},
        {"column": "B", "field": "pick.total_weight_g", "unit": "kg", "cumulative": False},
    ]
    assert (told(terminal)["entries"], told(terminal)["rows_without_content"]) == (2, 1)
    terminal("list", room, "--json")
    crop = json.loads(terminal.out)["crops"][0]
    assert (crop["fruit"], crop["weight_g"]) == (5, 300)


def test_day_and_month_that_cannot_be_told_apart_are_asked_about(
    terminal: Terminal, room: Path, tmp_path: Path
) -> None:
    notes = write_text(tmp_path / "n.csv", "date,fruit\n05/11/2019,3\n06/11/2019,4\n")
    asking = (*AS_OF, room, "--crop", "Boxroom Gold", notes, "--json")
    assert terminal(*asking) == 1
    assert [q["key"] for q in told(terminal)["questions"]] == ["date_order"]
    assert [a["value"] for a in told(terminal)["questions"][0]["answers"]] == ["dmy", "mdy"]
    assert not told(terminal)["written"]
    assert terminal(*asking, "--date-order", "dmy") == 0
    assert terminal(*asking) == 0  # remembered
    assert told(terminal)["already_known"] == 2


def test_an_open_question_is_told_to_people_with_the_option_that_answers_it(
    terminal: Terminal, room: Path, tmp_path: Path
) -> None:
    notes = write_text(tmp_path / "n.csv", "date,fruit\n05/11/2019,3\n")
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes) == 1
    assert "--date-order dmy" in terminal.out
    assert terminal.out.splitlines()[-1] == "Nothing was carried in."


def test_rows_that_stay_out_are_saved(terminal: Terminal, room: Path, notes: Path, tmp_path: Path) -> None:
    left_out = tmp_path / "left out.csv"
    saving = (*AS_OF, room, "--crop", "Boxroom Gold", notes, "--refused", left_out)
    assert terminal(*saving) == 1
    assert len(left_out.read_text(encoding="utf-8-sig").splitlines()) == 3
    assert terminal(*saving) == 1
    assert "is there already" in terminal.err


def test_a_sheet_of_a_spreadsheet_is_chosen(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    rows = [["date", "fruit"], ["2019-11-05", 3]]
    notes = write_xlsx(tmp_path / "n.xlsx", Cover=[["My notes"], ["kept well"]], Picks=rows)
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes, "--sheet", "Picks", "--json") == 0
    assert (told(terminal)["sheet"], told(terminal)["entries"]) == ("Picks", 1)
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes, "--sheet", "Others") == 1
    assert "Cover, Picks" in terminal.err


@pytest.mark.parametrize(
    "wrong, words",
    [
        (("--map", "colour=fruit_count"), "no column colour"),
        (("--map", "fruit=nonsense"), "no field nonsense"),
        (("--map", "fruit"), "column=field"),
        (("--cumulative", "ph"), "No column"),
        (("--crop", "Boxroom Red"), "no crop Boxroom Red"),
        (("--kind", "nonsense"), "nonsense"),
    ],
)
def test_wrong_use_is_code_2_and_writes_nothing(
    terminal: Terminal, room: Path, notes: Path, wrong: tuple[str, str], words: str
) -> None:
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes, *wrong) == 2
    assert words in terminal.err
    assert entry_count(terminal, room) == 0


def test_a_file_that_is_no_table_is_refused(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    for name, content in (("n.xlsx", b"no workbook"), ("n.csv", b"\x00" * 90), ("gone.csv", None)):
        if content is not None:
            (tmp_path / name).write_bytes(content)
        assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", tmp_path / name, "--json") == 1
        assert name in terminal.err
        assert terminal.out == ""


def test_a_rehearsal_of_nothing_does_not_speak_of_carrying_in(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    notes = write_text(tmp_path / "n.csv", "date,fruit,weight g\n2019-11-05,-1,80\n2019-11-06,1,-80\n")
    assert terminal(*AS_OF, room, "--crop", "Boxroom Gold", notes, "--dry-run") == 1
    assert terminal.out.splitlines()[-1] == "0 entries would go in, 2 rows left out"
    assert "tags" not in terminal.out
    assert "single weights" not in terminal.out
