"""What is wrong with a package is refused with the file, the row and the column named."""

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from growlog.sharing.data_package import PackageProblem, read_as_of, read_package, write_package
from tests.sharing.packages import AS_OF, full_package, identity

Damage = Callable[[str], str]


@pytest.fixture
def package(tmp_path: Path) -> Path:
    """A sound package on disk."""
    write_package(full_package(), tmp_path)
    return tmp_path


def _damage(package: Path, file: str, damage: Damage) -> None:
    text = (package / file).read_bytes().decode()
    damaged = damage(text)
    assert damaged != text
    (package / file).write_bytes(damaged.encode())


def _replaced(old: str, new: str) -> Damage:
    return lambda text: text.replace(old, new, 1)


def _last_line_again(text: str) -> str:
    return text + text.splitlines(keepends=True)[-1]


CASES: list[tuple[str, Damage, str]] = [
    ("crops.csv", _replaced("id,name", "id,title"), "crops.csv, row 1: The header must be: id,name,"),
    ("crops.csv", lambda text: "", "crops.csv, row 1: The header"),
    ("plants.csv", _replaced(",1,2025", ",1,x,2025"), "plants.csv, row 2: The row has 7 fields, not 6."),
    ("plants.csv", _replaced(",1,2025", ",2025"), "plants.csv, row 2: The row has 5 fields, not 6."),
    ("plants.csv", lambda text: text + "\r\n", "plants.csv, row 3: The row has 0 fields, not 6."),
    ("crops.csv", _replaced("2025-11-15", "15.11.2025"), "crops.csv, row 2, column sown_on: 15.11.2025 is not"),
    ("crops.csv", _replaced(",4,3,", ",3,4,"), "crops.csv, row 2, column seeds_emerged: More seeds"),
    ("feeds.csv", _replaced("5.9", "15.9"), "feeds.csv, row 2, column ph: 15.9 is outside"),
    ("pollinations.csv", _replaced("male-flower", "wind"), "pollinations.csv, row 2, column way: wind is none of"),
    ("crops.csv", _replaced(identity(5), identity(77)), "crops.csv, row 2, column cultivar_id: "),
    ("feeds.csv", _replaced(identity(9), identity(77)), "feeds.csv, row 2, column mix_id: "),
    ("culls.csv", _last_line_again, "culls.csv, row 4, column position: This is the same as in row 3."),
    ("logbook.csv", lambda text: text.splitlines(keepends=True)[0], "logbook.csv: There must be one row, there are 0."),
    ("entries.csv", _replaced(",feed,", ",note,"), "entries.csv, row 3, column kind: notes.csv has no row"),
    ("entries.csv", _replaced(f"feed,{identity(1)},", "feed,,"), "entries.csv, row 3, column crop_id: An entry"),
    ("photos.csv", _replaced("photos/Boxroom", "photos/../.."), "photos.csv, row 2, column path: The path leads"),
    ("photos.csv", _replaced("photos/Boxroom", "/etc/x"), "photos.csv, row 2, column path: The path leads"),
    ("treatments.csv", _replaced("soft soap", " "), "treatments.csv, row 2, column product: Say what was applied."),
    ("stage_codes.csv", _replaced(",61", ",6"), "stages.csv, row 2, column entry_id: 6 is not a BBCH code"),
    ("mixes.csv", _replaced("growth,1", "growth,0"), "mixes.csv, row 2, column edition: 0 is outside"),
    ("notes.csv", lambda text: text + identity(30) + "\r\n", "notes.csv, row 4, column entry_id: The entry is of"),
]  # fmt: skip


@pytest.mark.parametrize("file, damage, sentence", CASES)
def test_a_fault_is_named_by_file_row_and_column(package: Path, file: str, damage: Damage, sentence: str) -> None:
    _damage(package, file, damage)
    with pytest.raises(PackageProblem, match=f"^{re.escape(sentence)}"):
        read_package(package)


def test_a_missing_table_is_named(package: Path) -> None:
    (package / "tanks.csv").unlink()
    with pytest.raises(PackageProblem, match=r"^tanks\.csv: The file is missing\."):
        read_package(package)


def test_two_crops_of_one_name_are_refused_whatever_their_case(package: Path) -> None:
    text = (package / "crops.csv").read_bytes().decode()
    row = text.splitlines(keepends=True)[1].replace(identity(1), identity(70)).replace("Gold", "GOLD")
    (package / "crops.csv").write_bytes((text + row).encode())
    with pytest.raises(PackageProblem, match=r"row 3, column name: Boxroom GOLD is there twice\."):
        read_package(package)


def test_the_last_day_is_read_from_the_description(package: Path) -> None:
    assert read_as_of(package) == AS_OF


@pytest.mark.parametrize("change, sentence", [
    ({"format_version": 2}, "newer version"), ({"format_version": None}, "not a logbook's data package"),
    ({"as_of": "soon"}, "as_of must be a day"), ({"as_of": None}, "as_of must be a day"),
])  # fmt: skip
def test_a_description_that_is_not_ours_is_refused(package: Path, change: dict[str, object], sentence: str) -> None:
    path = package / "datapackage.json"
    path.write_text(json.dumps(json.loads(path.read_text(encoding="utf-8")) | change), encoding="utf-8")
    with pytest.raises(PackageProblem, match=f"^datapackage.json: .*{sentence}"):
        read_package(package)


@pytest.mark.parametrize("content", ["", "[]", "{", "[" * 100_000])
def test_a_description_that_is_no_json_object_is_refused(package: Path, content: str) -> None:
    (package / "datapackage.json").write_text(content, encoding="utf-8")
    with pytest.raises(PackageProblem, match=r"^datapackage\.json: "):
        read_package(package)


def test_a_folder_without_a_description_is_refused(tmp_path: Path) -> None:
    with pytest.raises(PackageProblem, match=r"datapackage\.json: The file is missing in"):
        read_package(tmp_path)
