"""Usual daily light of crops against published targets."""

import pytest

from growlog.calculations.crop_light import USUAL_LIGHT, usual_light
from tests.reference import published

# Runkle, E., Lighting greenhouse vegetables; Gomez, C., as reported; a Cornell thesis (2021); the rest from memory.
TARGETS = {row["id"]: row for row in published("crop_light_targets")}


@pytest.mark.parametrize(
    ("row_id", "species"),
    [("CL01", "lettuce"), ("CL02", "tomato"), ("CL02", "cucumber"), ("CL04", "aubergine"), ("CL08", "strawberry"),
     ("CL12", "seedlings"), ("CL13", "sweet pepper"), ("CL15", "courgette")],
)  # fmt: skip
def test_a_crop_has_its_published_range(row_id: str, species: str) -> None:
    row = TARGETS[row_id]
    high = float(row["dli_max"]) if row["dli_max"] else None
    found = usual_light(species)[0]
    assert (found.dli_low, found.dli_high) == (float(row["dli_min"]), high)
    assert found.from_memory == (row["status"] == "from memory")


def test_ranges_from_memory_say_so_and_the_others_name_a_source() -> None:
    assert all(("from memory" in usual.source) == usual.from_memory for usual in USUAL_LIGHT)


def test_a_crop_with_several_ranges_has_them_all_and_a_stranger_none() -> None:
    assert [u.dli_low for u in usual_light("Chilli")] == [20, 20]
    assert usual_light("basil") == ()
