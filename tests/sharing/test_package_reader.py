"""What is wrong with a package is refused with the file, the row and the column named."""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from growlog.records.entry import Feed, Pollination
from growlog.records.room import EnergySharing
from growlog.sharing.csv_text import csv_text, read_csv
from growlog.sharing.data_package import PackageProblem, read_as_of, read_package, write_package
from growlog.sharing.table_descriptions import LATER_COLUMNS, LATER_TABLES
from tests.sharing.packages import AS_OF, full_package, identity

pytestmark = pytest.mark.slow

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
    ("entries.csv", _replaced(",feed,", ",note,"), "entries.csv, row 4, column kind: notes.csv has no row"),
    ("entries.csv", _replaced(f"feed,{identity(1)},", "feed,,"), "entries.csv, row 4, column crop_id: An entry"),
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


def _as_the_first_format_was(package: Path) -> None:
    """Takes away the tables and columns that came later."""
    for name in LATER_TABLES:
        (package / f"{name}.csv").unlink()
    for name, later in LATER_COLUMNS.items():
        rows = read_csv(package / f"{name}.csv")
        places = [n for n, column in enumerate(rows[0]) if column not in later]
        text = csv_text([row[n] for n in places] for row in rows)
        (package / f"{name}.csv").write_bytes(text.encode())


def test_a_package_of_the_first_format_reads_with_later_fields_at_their_defaults(package: Path) -> None:
    kinds = ("tank-care", "meter")
    text = (package / "entries.csv").read_text(encoding="utf-8")
    kept = [line for line in text.splitlines() if not any(f",{kind}," in line for kind in kinds)]
    (package / "entries.csv").write_bytes(("\r\n".join(kept) + "\r\n").encode())
    _as_the_first_format_was(package)
    read, full = read_package(package), full_package()
    assert read.rooms == (replace(full.rooms[0], energy_sharing=EnergySharing.BY_FLOOR),)
    assert read.logbook == replace(full.logbook, labour_rate_minor_per_h=None, water_price_minor_per_m3=None)
    crop = full.crops[0]
    bare = replace(
        crop, taste="", fruit_shape="", keeping="", shop_price_minor_per_kg=None, shop_price_minor_per_fruit=None
    )
    assert read.crops == (bare,)
    assert read.mixes == (replace(full.mixes[0], waters=(), parts=tuple(replace(p, product_id=None)
                                                                        for p in full.mixes[0].parts)),)  # fmt: skip
    details = {e.id: e.detail for e in read.entries}
    assert {e.id for e in full.entries if e.kind not in kinds} == set(details)
    assert all(d.strength_percent is None for d in details.values() if isinstance(d, Feed))
    assert all(d.tags == () for d in details.values() if isinstance(d, Pollination))
    assert read.products == read.routines == read.logger_files == ()
    assert read.climate_samples == {}


def test_a_later_column_under_another_name_is_refused(package: Path) -> None:
    _damage(package, "rooms.csv", _replaced("energy_sharing", "energy"))
    with pytest.raises(PackageProblem, match=r"rooms\.csv, row 1: The header must be"):
        read_package(package)


def test_a_sample_of_no_file_is_refused(package: Path) -> None:
    _damage(package, "climate_samples.csv", _replaced(identity(24), identity(77)))
    with pytest.raises(PackageProblem, match=r"climate_samples\.csv, row 2, column file_id: "):
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
    ({"format_version": 3}, "newer version"), ({"format_version": None}, "not a logbook's data package"),
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
