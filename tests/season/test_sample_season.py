"""The sample season as it is given out: its folder read by itself, and the season maker's records beside it."""

import csv
import json
import subprocess
import sys
from collections import Counter, defaultdict
from collections.abc import Iterable
from datetime import date, timedelta
from pathlib import Path

import pytest
from PIL import Image

from growlog.calculations.light import highest_mean_ppfd
from growlog.calculations.plant_age import age_on
from growlog.photos.capture_time import capture_time
from growlog.photos.photo_folder import sha256_of
from growlog.photos.picture_file import read_facts
from growlog.records.crop import Crop
from growlog.records.entry import Detail, Entry, LightChange, OwnerKind, Pick, Pollination, StageSeen, Treatment
from growlog.records.problems import Problem
from growlog.records.room import Lamp, Room
from growlog.services.growth_stages import growth_stages, scale_for
from growlog.sharing.data_package import Package, package_files, read_package
from growlog.sharing.rows import rows_of
from resources.season_maker import events
from resources.season_maker.season import make_season
from resources.season_maker.write_season import package_of_season

pytestmark = pytest.mark.xdist_group("sample_season")

SAMPLE = Path(__file__).resolve().parents[2] / "sample_season"
TABLES = SAMPLE.parent / "resources" / "tables"
LARGEST_BYTES = 14_000_000
# Days from flower to a fruit that may be picked. Pattypan: 4 to 7, small fruit of summer squash. Chilli: 35 and more to
# ripe colour. Aubergine: 15 and more. Common practice, no source.
LEAST_DAYS_TO_FRUIT = {"pattypan": 4, "chilli": 35, "aubergine": 15}


@pytest.fixture(scope="session")
def season() -> Package:
    return read_package(SAMPLE)


def crop_of(season: Package, name: str) -> Crop:
    return next(crop for crop in season.crops if crop.name == name)


def own(season: Package, crop: Crop, kind: str) -> list[Entry]:
    return [e for e in season.entries if e.owner.id == crop.id and e.kind == kind]


def species_of(season: Package, crop: Crop) -> str:
    return next(c.species for c in season.cultivars if c.id == crop.cultivar_id)


def days_with(entries: Iterable[Entry], detail: type[Detail]) -> list[date]:
    return sorted(e.day for e in entries if isinstance(e.detail, detail))


def test_the_folder_is_what_the_season_maker_writes_today(season: Package) -> None:
    made = package_of_season(make_season(), season.photos, season.photo_uses)
    for name, content in package_files(made).items():
        assert (SAMPLE / name).read_bytes() == content, f"{name} is not up to date: make the sample season again"


def test_no_record_has_anything_wrong_or_unusual(season: Package) -> None:
    found: list[Problem] = season.logbook.problems()
    for group in (season.rooms, season.lamps, season.cultivars, season.crops, season.plants, season.placements,
                  season.mixes, season.entries, season.products, season.waters, season.feed_targets, season.stock_moves,
                  season.routines, season.due_answers, season.feed_steps, season.light_steps, season.devices,
                  season.tariffs, season.purchases, season.decisions, season.logger_files):  # fmt: skip
        for record in group:
            found += record.problems()
    assert found == []


def test_every_entry_lies_within_the_days_of_its_crop_or_of_the_season(season: Package) -> None:
    crops = {c.id: c for c in season.crops}
    for entry in season.entries:
        crop = crops.get(entry.owner.id)
        first = crop.day_zero if crop else min(c.day_zero for c in season.crops)
        last = (crop.cleared_on if crop else None) or season.as_of
        assert first <= entry.day <= last, entry


def test_no_fruit_is_picked_before_a_flower_was_old_enough_for_it(season: Package) -> None:
    for crop in season.crops:
        days = LEAST_DAYS_TO_FRUIT[species_of(season, crop)]
        flowering = [e.day for e in own(season, crop, "stage") if _codes(e) & {"61", "62", "63", "65", "69"}]
        picked = 0
        for entry in own(season, crop, "pick"):
            assert entry.day >= min(flowering) + timedelta(days=days), (crop.name, entry.day)
            picked += 1
        assert picked or crop.name == "Porch Violet"


def test_each_single_fruit_comes_from_a_flower_old_enough_for_it() -> None:
    for crop in make_season().crops:
        picks = [event for event in crop.events if isinstance(event, events.Pick)]
        ages = [(pick.day - fruit.flower_day).days for pick in picks for fruit in pick.fruit]
        assert all(age >= LEAST_DAYS_TO_FRUIT[crop.plan.species.value] for age in ages), (crop.plan.name, min(ages))


def _codes(entry: Entry) -> set[str]:
    return set(entry.detail.codes) if isinstance(entry.detail, StageSeen) else set()


def test_no_more_fruit_of_boxroom_gold_is_picked_than_was_pollinated_four_days_before(season: Package) -> None:
    gold = crop_of(season, "Boxroom Gold")
    pollinated = [(e.day, e.detail.females_pollinated or 0) for e in own(season, gold, "pollination")
                  if isinstance(e.detail, Pollination)]  # fmt: skip
    picked = 0
    for entry in own(season, gold, "pick"):
        assert isinstance(entry.detail, Pick)
        picked += entry.detail.fruit_count + entry.detail.culled_count
        latest = entry.day - timedelta(days=LEAST_DAYS_TO_FRUIT["pattypan"])
        assert picked <= sum(count for day, count in pollinated if day <= latest), entry.day
    assert picked > 0


def test_only_the_pattypan_with_separate_flowers_is_pollinated_and_in_the_morning(season: Package) -> None:
    pollinations = [e for e in season.entries if isinstance(e.detail, Pollination)]
    assert {e.owner.id for e in pollinations} == {crop_of(season, "Boxroom Gold").id}
    assert all(e.at is not None and 6 <= e.at.hour < 10 for e in pollinations)


def most_ppfd(room: Room, lamp: Lamp, light: LightChange) -> float:
    assert room.floor_m2 is not None
    assert lamp.wall_w is not None
    assert lamp.efficacy_umol_per_j is not None
    assert light.dimming_percent is not None
    wall_w = lamp.wall_w * lamp.lamp_count
    return highest_mean_ppfd(wall_w, lamp.efficacy_umol_per_j, light.dimming_percent, room.floor_m2)


def test_watts_floor_and_light_agree_at_each_light_change(season: Package) -> None:
    (room,), (lamp,) = season.rooms, season.lamps
    changes = [e.detail for e in season.entries if isinstance(e.detail, LightChange)]
    assert changes
    for light in changes:
        assert light.canopy_ppfd_umol is not None
        most = most_ppfd(room, lamp, light)
        # All photons of the lamps; walls and floor swallow some of them.
        assert 0.6 * most <= light.canopy_ppfd_umol <= most


def test_the_floor_is_never_given_away_twice(season: Package) -> None:
    day = min(p.from_day for p in season.placements)
    while day <= season.as_of:
        shares = [p.floor_share or 0.0 for p in season.placements if p.covers(day)]
        assert sum(shares) <= 1 + 1e-9, day
        day += timedelta(days=1)


def test_each_crop_stands_in_the_room_from_sowing_to_its_end_without_a_gap(season: Package) -> None:
    for crop in season.crops:
        places = [p for p in season.placements if p.crop_id == crop.id]
        last = crop.cleared_on or season.as_of
        for age in range(age_on(crop.day_zero, last) + 1):
            assert sum(p.covers(crop.day_zero + timedelta(days=age)) for p in places) == 1


def test_nothing_is_picked_inside_a_harvest_interval(season: Package) -> None:
    treatments = [e for e in season.entries if isinstance(e.detail, Treatment)]
    assert treatments
    for treatment in treatments:
        assert isinstance(treatment.detail, Treatment)
        free = treatment.day + timedelta(days=treatment.detail.harvest_interval_days or 0)
        picks = days_with((e for e in season.entries if e.owner == treatment.owner), Pick)
        assert not [day for day in picks if treatment.day <= day <= free]


def test_the_chilli_gives_its_first_fruit_after_day_100(season: Package) -> None:
    chilli = crop_of(season, "Landing Light")
    assert age_on(chilli.day_zero, days_with(own(season, chilli, "pick"), Pick)[0]) >= 100


def test_boxroom_gold_lacks_two_photo_days_and_was_cleared_at_112_days(season: Package) -> None:
    gold = crop_of(season, "Boxroom Gold")
    assert gold.cleared_on is not None
    assert age_on(gold.day_zero, gold.cleared_on) == 112
    ages = {age_on(gold.day_zero, u.day) for u in season.photo_uses if u.crop_id == gold.id}
    assert set(range(min(ages), max(ages))) - ages == {77, 78}
    assert (min(ages), max(ages)) == (0, 111)


def test_each_stage_code_is_of_a_principal_stage_of_its_published_scale(season: Package) -> None:
    table = (TABLES / "bbch.csv").read_text(encoding="utf-8")
    for crop in season.crops:
        known = {s.code[0] for s in growth_stages(table, scale_for(species_of(season, crop)))}
        codes = {code for e in own(season, crop, "stage") for code in _codes(e)}
        assert codes
        assert {code[0] for code in codes} <= known


def test_about_two_hundred_photos_take_less_than_14_megabytes_with_all_the_rest(season: Package) -> None:
    assert 200 <= len(season.photos) == len(season.photo_uses) <= 230
    assert sum(f.stat().st_size for f in SAMPLE.rglob("*") if f.is_file()) <= LARGEST_BYTES


def test_nothing_lies_in_the_folder_that_nothing_tells_of(season: Package) -> None:
    listed = {photo.path for photo in season.photos} | set(package_files(season)) | {"README.txt"}
    masks = {p.path.replace("photos/", "masks/", 1).replace(".jpg", ".png") for p in season.photos}
    found = {f.relative_to(SAMPLE).as_posix() for f in SAMPLE.rglob("*") if f.is_file()}
    assert found == listed | masks


def test_each_photo_leads_its_day_and_is_listed_under_the_day_in_its_name(season: Package) -> None:
    photos = {photo.id: photo for photo in season.photos}
    assert all(use.leads for use in season.photo_uses)
    assert len({(use.crop_id, use.day) for use in season.photo_uses}) == len(season.photo_uses)
    for use in season.photo_uses:
        photo = photos[use.photo_id]
        assert use.day == photo.captured.day
        assert Path(photo.path).name.startswith(f"{use.day.isoformat()}_")
    names = [p.original_name for p in sorted(season.photos, key=lambda p: (p.captured.day, p.captured.at))]
    assert names == sorted(set(names))


@pytest.mark.slow
def test_intake_would_read_each_photo_as_it_is_listed(season: Package) -> None:
    for photo in season.photos:
        path = SAMPLE / photo.path
        facts = read_facts(path)
        assert capture_time(facts.exif_times, photo.original_name, None) == photo.captured
        assert (facts.width_px, facts.height_px, facts.media_type) == (
            photo.width_px,
            photo.height_px,
            photo.media_type,
        )
        assert (sha256_of(path), path.stat().st_size) == (photo.sha256, photo.byte_count)


@pytest.mark.slow
def test_the_day_in_the_exif_block_is_the_day_of_the_row(season: Package) -> None:
    days = {u.photo_id: u.day for u in season.photo_uses}
    for photo in season.photos:
        with Image.open(SAMPLE / photo.path) as image:
            taken = image.getexif().get_ifd(0x8769)[0x9003]  # DateTimeOriginal
        assert taken.startswith(f"{days[photo.id]:%Y:%m:%d} ")


def test_the_rows_of_the_tables_are_as_many_as_the_records(season: Package) -> None:
    for name, rows in rows_of(season).items():
        with (SAMPLE / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            assert len(list(csv.DictReader(file))) == len(rows), name
    kinds = Counter(e.kind for e in season.entries)
    assert min(kinds.values()) >= 1
    assert set(kinds) >= {"feed", "reading", "training", "pollination", "fruit-check", "pick", "stage", "problem",
                          "treatment", "light", "potting-on", "calibration", "note"}  # fmt: skip


def test_lamps_air_and_meters_are_the_rooms_and_all_else_is_a_crops(season: Package) -> None:
    kinds: dict[OwnerKind, set[str]] = defaultdict(set)
    for entry in season.entries:
        kinds[entry.owner.kind].add(entry.kind)
    assert kinds[OwnerKind.ROOM] == {"light", "reading", "calibration", "meter"}
    assert set(kinds) == {OwnerKind.ROOM, OwnerKind.CROP}


@pytest.mark.slow
def test_an_outside_validator_finds_nothing_wrong() -> None:
    # In a process of its own: the validator's warnings about itself are not ours to fail by.
    done = subprocess.run(
        [sys.executable, "-m", "frictionless", "validate", "datapackage.json", "--json"],
        cwd=SAMPLE, capture_output=True, text=True, timeout=100, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-2000:]
    assert json.loads(done.stdout)["valid"]
