"""The drawn photos: dates, size, turning, masks, and the days they show."""

import io
from datetime import datetime

import pytest
from PIL import Image, ImageChops, ImageOps, ImageStat

from resources.season_maker.photo_files import MASK_SIZE, PhotoFile, make_photo, photo_jobs
from resources.season_maker.photo_plan import PhotoPlan
from resources.season_maker.plant_state import PlantState
from resources.season_maker.season import Season, make_season

Job = tuple[PhotoPlan, PlantState]
EXIF_IFD, DATE_TIME_ORIGINAL, SUBSEC_TIME_ORIGINAL, ORIENTATION, GPS = 0x8769, 0x9003, 0x9291, 0x0112, 0x8825


@pytest.fixture(scope="module")
def season() -> Season:
    return make_season()


@pytest.fixture(scope="module")
def jobs(season: Season) -> list[Job]:
    return photo_jobs(season)


def job_of(jobs: list[Job], crop: str, age: int) -> Job:
    return next(job for job in jobs if job[0].crop == crop and job[0].age == age)


def opened(photo: PhotoFile) -> Image.Image:
    return Image.open(io.BytesIO(photo.jpeg))


def test_boxroom_gold_has_a_photo_of_every_day_but_two(season: Season) -> None:
    gold = season.crops[0]
    ages = [photo.age for photo in gold.photos]
    assert sorted(set(range(gold.plan.last_age)) - set(ages)) == [77, 78]
    assert len(ages) == len(set(ages)) == 110


def test_the_other_crops_are_photographed_about_twice_a_week(season: Season) -> None:
    for crop in season.crops[1:]:
        weeks = crop.plan.last_age / 7
        assert 1.8 <= len(crop.photos) / weeks <= 2.4


def test_no_photo_is_taken_outside_the_hours_of_the_lamps(season: Season) -> None:
    for crop in season.crops:
        assert all(6 <= photo.taken_at.hour < 20 for photo in crop.photos)


def test_some_photos_are_stored_turned_and_some_lack_an_offset(season: Season) -> None:
    photos = [photo for crop in season.crops for photo in crop.photos]
    assert {photo.orientation for photo in photos} == {1, 6, 8}
    assert {photo.utc_offset for photo in photos} == {"", "+00:00"}


@pytest.mark.slow
def test_a_photo_drawn_twice_has_the_same_bytes(jobs: list[Job]) -> None:
    job = job_of(jobs, "Boxroom Gold", 41)
    assert make_photo(job).jpeg == make_photo(job).jpeg


@pytest.mark.slow
def test_a_photo_carries_its_time_and_no_place_and_is_named_by_both(jobs: list[Job]) -> None:
    plan, state = job_of(jobs, "Landing Light", 0)
    photo = make_photo((plan, state))
    exif = opened(photo).getexif()
    taken = datetime.strptime(exif.get_ifd(EXIF_IFD)[DATE_TIME_ORIGINAL], "%Y:%m:%d %H:%M:%S")  # noqa: DTZ007
    assert taken == plan.taken_at
    assert exif.get_ifd(EXIF_IFD)[SUBSEC_TIME_ORIGINAL] == plan.subsecond
    assert GPS not in exif
    assert photo.path == f"photos/Landing Light/{taken:%Y-%m-%d_%H%M%S}_{photo.sha256[:8]}.jpg"


@pytest.mark.slow
@pytest.mark.parametrize("orientation", [6, 8])
def test_a_turned_photo_is_upright_once_its_orientation_is_applied(jobs: list[Job], orientation: int) -> None:
    plan, state = next(job for job in jobs if job[0].orientation == orientation)
    stored = opened(make_photo((plan, state)))
    assert stored.size == (1200, 900)
    assert stored.getexif()[ORIENTATION] == orientation
    upright = ImageOps.exif_transpose(stored).convert("L")
    lamp, table = upright.crop((300, 0, 600, 200)), upright.crop((0, 1000, 900, 1200))
    assert ImageStat.Stat(lamp).mean[0] > ImageStat.Stat(table).mean[0] + 40


@pytest.mark.slow
def test_the_mask_is_empty_over_bare_medium_and_covers_green_later(jobs: list[Job]) -> None:
    shares = []
    for age in (0, 31, 58):
        photo = make_photo(job_of(jobs, "Boxroom Gold", age))
        mask = Image.open(io.BytesIO(photo.mask_png))
        assert mask.size == MASK_SIZE
        assert mask.mode == "1"
        shares.append(ImageStat.Stat(mask.convert("L")).mean[0] / 255)
    assert shares[0] == 0
    assert 0.03 < shares[1] < shares[2] < 0.6


@pytest.mark.slow
def test_consecutive_photos_show_the_same_plant(jobs: list[Job]) -> None:
    first, second, much_later = (
        Image.open(io.BytesIO(make_photo(job_of(jobs, "Boxroom Gold", age)).mask_png)) for age in (60, 61, 90)
    )

    def differing(a: Image.Image, b: Image.Image) -> float:
        return ImageStat.Stat(ImageChops.logical_xor(a, b).convert("L")).mean[0] / 255

    assert differing(first, second) < 0.04
    assert differing(first, much_later) > differing(first, second)


@pytest.mark.slow
def test_the_whole_season_stays_under_fourteen_megabytes(jobs: list[Job]) -> None:
    sample = jobs[::22]
    mean_bytes = sum(len(make_photo(job).jpeg) for job in sample) / len(sample)
    assert mean_bytes * len(jobs) < 14_000_000
