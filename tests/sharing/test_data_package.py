"""The package as a whole: records to files and back, byte for byte, judged from outside too."""

import json
import subprocess
import sys
from dataclasses import replace
from datetime import date, time
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from growlog.records.entry import Entry, Feed, Note, Owner, OwnerKind, Pick, Treatment
from growlog.sharing.data_package import Package, package_files, read_package, write_package
from growlog.sharing.table_descriptions import tables
from tests.sharing.packages import full_package, identity

pytestmark = pytest.mark.slow


def _sorted(package: Package) -> Package:
    return replace(package, entries=tuple(sorted(package.entries, key=lambda e: e.id)))


def test_a_package_comes_back_with_the_same_records(tmp_path: Path) -> None:
    write_package(full_package(), tmp_path)
    assert _sorted(read_package(tmp_path)) == _sorted(full_package())


def test_every_table_of_the_full_package_has_a_row() -> None:
    files = package_files(full_package())
    assert [t.name for t in tables().values() if files[t.file].count(b"\r\n") < 2] == []


def test_a_package_that_was_read_is_written_with_the_same_bytes(tmp_path: Path) -> None:
    write_package(full_package(), tmp_path)
    assert package_files(read_package(tmp_path)) == package_files(full_package())


def test_rows_stand_in_the_same_order_however_the_records_came() -> None:
    package = full_package()
    assert package_files(replace(package, entries=package.entries[::-1])) == package_files(package)


def test_files_are_utf_8_without_a_byte_order_mark_and_lines_end_as_in_rfc_4180() -> None:
    files = package_files(full_package())
    assert not any(content.startswith(b"\xef\xbb\xbf") for content in files.values())
    assert files["culls.csv"].count(b"\r\n") == files["culls.csv"].count(b"\n") == 3
    assert files["rooms.csv"].decode().count("Böx røøm") == 1


def test_the_description_tells_of_types_units_ranges_words_and_references() -> None:
    descriptor = json.loads(package_files(full_package())["datapackage.json"])
    schemas = {r["name"]: r["schema"] for r in descriptor["resources"]}
    ph = next(f for f in schemas["feeds"]["fields"] if f["name"] == "ph")
    way = next(f for f in schemas["pollinations"]["fields"] if f["name"] == "way")
    assert descriptor["profile"] == "tabular-data-package"
    assert (descriptor["as_of"], descriptor["created"]) == ("2026-03-07", "2026-03-07T00:00:00Z")
    assert ph == {"name": "ph", "type": "number", "description": "pH.", "constraints": {"minimum": 0, "maximum": 14}}
    assert "male-flower" in way["constraints"]["enum"]
    assert schemas["culls"]["primaryKey"] == ["entry_id", "position"]
    assert {"fields": "mix_id", "reference": {"resource": "mixes", "fields": "id"}} in schemas["feeds"]["foreignKeys"]
    assert schemas["feeds"]["missingValues"] == [""]


WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
GRAMS = st.floats(min_value=0.1, max_value=20000)
DETAILS = st.one_of(
    st.just(Note()),
    st.builds(Feed, volume_l=st.floats(min_value=0, max_value=2000), ph=st.none() | st.floats(0, 14)),
    st.builds(Treatment, product=WORDS.filter(str.strip), target=WORDS, dose=WORDS),
    st.lists(GRAMS, min_size=1, max_size=4).map(lambda w: Pick(len(w), None, tuple(w))),
)
ENTRIES = st.builds(
    Entry,
    id=st.uuids(version=4).map(str),
    owner=st.just(Owner(OwnerKind.CROP, identity(1))),
    day=st.dates(date(2025, 11, 15), date(2026, 3, 7)),
    detail=DETAILS,
    at=st.none() | st.times().map(lambda t: time(t.hour, t.minute, t.second)),
    labour_minutes=st.none() | st.integers(0, 1440),
    note=WORDS,
    group_id=st.none() | st.uuids(version=4).map(str),
)


@settings(suppress_health_check=[HealthCheck.too_slow], deadline=None, max_examples=40)
@given(entries=st.lists(ENTRIES, max_size=6, unique_by=lambda e: e.id))
def test_any_entries_come_back_from_their_files(
    tmp_path_factory: pytest.TempPathFactory, entries: list[Entry]
) -> None:  # fmt: skip
    folder = tmp_path_factory.mktemp("package")
    # What points at the package's own entries is left out with them.
    package = replace(full_package(), entries=tuple(entries), stock_moves=(), due_answers=())
    for name, content in package_files(package).items():  # as write_package does, without waiting for the disk
        (folder / name).write_bytes(content)
    assert set(read_package(folder).entries) == set(entries)


@pytest.mark.slow
def test_an_outside_validator_finds_nothing_wrong(tmp_path: Path) -> None:
    write_package(full_package(), tmp_path)
    # In a process of its own: the validator's warnings about itself are not ours to fail by.
    done = subprocess.run(
        [sys.executable, "-m", "frictionless", "validate", "datapackage.json", "--json"],
        cwd=tmp_path, capture_output=True, text=True, timeout=100, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-2000:]
    report = json.loads(done.stdout)
    assert report["valid"]
    assert report["stats"]["tasks"] == len(tables())
