"""The film of a crop: which days, how long, and what happens where a picture or the disk is missing."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import av
import pytest

from growlog.calculations.plant_age import day_at
from growlog.records.crop import Crop
from growlog.records.entry import Pick
from growlog.records.problems import RecordRefused
from growlog.services.crops import clear_crop
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.photo_uses import original_path
from growlog.services.time_lapse import TimeLapseChoice, held_words, time_lapse_plan, write_time_lapse
from tests.logbooks import plant_crop, write
from tests.services.photo_rows import photo_on
from tests.services.review.grown import with_photos

pytestmark = pytest.mark.slow

SOWN = date(2019, 10, 1)
SMALL = TimeLapseChoice(size_px=(96, 97), days_per_second=12.0)


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    """A crop with real photos of three days."""
    made = plant_crop(log, sown=SOWN)
    with_photos(log, made, 3)
    return made


def ages(log: OpenLogbook, crop: Crop) -> list[int]:
    with log.unit() as unit:
        return sorted((u.day - crop.day_zero).days for u in unit.photo_uses.all(crop_id=crop.id))


def test_the_film_is_as_planned_when_read_again(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    seen = ages(log, crop)
    plan = write_time_lapse(log, crop.id, tmp_path / "film.mp4", SMALL)
    assert plan == time_lapse_plan(log, crop.id, SMALL)
    assert plan is not None
    assert plan.days == seen[-1] - seen[0] + 1
    assert plan.frames == plan.days * 2 + 24
    with av.open(str(tmp_path / "film.mp4")) as film:
        stream = film.streams.video[0]
        assert (stream.width, stream.height, stream.codec_context.name) == (96, 96, "h264")
        assert float(stream.duration * stream.time_base) == pytest.approx(plan.seconds)
        assert sum(1 for _ in film.decode(stream)) == plan.frames


def test_days_without_a_photo_are_held_and_counted(log: OpenLogbook, crop: Crop) -> None:
    last = ages(log, crop)[-1]
    plan = time_lapse_plan(log, crop.id, replace(SMALL, last_age=last + 4))
    assert plan.days_held == plan.days - 3
    assert held_words(plan).endswith("without a photo are held")


def test_chosen_days_make_a_shorter_film(log: OpenLogbook, crop: Crop) -> None:
    first = ages(log, crop)[0]
    plan = time_lapse_plan(log, crop.id, replace(SMALL, first_age=first, last_age=first + 6, every_days=3))
    assert plan.days == 3


def test_the_speed_sets_the_length(log: OpenLogbook, crop: Crop) -> None:
    slow, fast = (time_lapse_plan(log, crop.id, replace(SMALL, days_per_second=s)) for s in (2.0, 24.0))
    assert (slow.frames - 24, fast.frames - 24) == (slow.days * 12, slow.days)


def test_a_missing_original_is_held_and_said(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    with log.unit() as unit:
        original_path(log, unit.photos.all()[1]).unlink()
    plan = write_time_lapse(log, crop.id, tmp_path / "film.mp4", SMALL)
    assert plan is not None
    assert plan.missing == 1
    assert "1 original is missing, its day is held" in held_words(plan)
    assert held_words(replace(plan, days_held=1)) == "1 original is missing, its day is held"


def test_the_curve_and_labels_may_be_left_out(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    write(log, crop, crop.day_zero + timedelta(days=ages(log, crop)[1]), Pick(3, 300.0))
    bare = replace(SMALL, labels=False, curve=False)
    write_time_lapse(log, crop.id, tmp_path / "bare.mp4", bare)
    write_time_lapse(log, crop.id, tmp_path / "full.mp4", SMALL)
    assert (tmp_path / "bare.mp4").read_bytes() != (tmp_path / "full.mp4").read_bytes()


def test_progress_counts_frames_and_a_cancelled_film_leaves_nothing(
    log: OpenLogbook, crop: Crop, tmp_path: Path
) -> None:
    seen: list[tuple[int, int]] = []
    stopped = write_time_lapse(
        log, crop.id, tmp_path / "film.mp4", SMALL, lambda done, total: seen.append((done, total)),
        lambda: len(seen) >= 5,
    )  # fmt: skip
    assert stopped is None
    assert [done for done, _ in seen] == [1, 2, 3, 4, 5]
    assert not list(tmp_path.glob("*film*")) + list(tmp_path.glob(".*film*"))


def test_a_full_disk_half_way_leaves_no_half_film_and_the_one_before(
    log: OpenLogbook, crop: Crop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "film.mp4"
    path.write_bytes(b"the one before")

    def full(*_: object) -> None:
        raise av.error.FFmpegError(28, "No space left on device")

    monkeypatch.setattr("growlog.photos.time_lapse._coded", full)
    with pytest.raises(OSError, match="No space left") as problem:
        write_time_lapse(log, crop.id, path, SMALL)
    assert problem.value.filename == str(path)
    assert path.read_bytes() == b"the one before"
    assert not list(tmp_path.glob(".*unfinished*"))


def test_a_crop_without_photos_has_no_film(log: OpenLogbook, tmp_path: Path) -> None:
    crop = plant_crop(log)
    with pytest.raises(LogbookProblem, match="has no photos"):
        write_time_lapse(log, crop.id, tmp_path / "film.mp4")
    photo_on(log, crop, date(2026, 1, 1), leads=True)  # a row whose file is gone
    with pytest.raises(LogbookProblem, match="has no photos"):
        time_lapse_plan(log, crop.id)


def test_one_photo_is_a_film_of_one_day(log: OpenLogbook, tmp_path: Path) -> None:
    crop = plant_crop(log, sown=SOWN)
    with_photos(log, crop, 1)
    plan = write_time_lapse(log, crop.id, tmp_path / "film.mp4", SMALL)
    assert plan is not None
    assert (plan.days, plan.days_held) == (1, 0)


@pytest.mark.parametrize("wrong", [{"size_px": (8, 8)}, {"days_per_second": 0.0}, {"fade": 1.0}, {"every_days": 0},
                                   {"first_age": 9, "last_age": 3}])  # fmt: skip
def test_a_choice_that_cannot_be_is_refused(log: OpenLogbook, crop: Crop, wrong: dict[str, object]) -> None:
    with pytest.raises(RecordRefused):
        time_lapse_plan(log, crop.id, replace(SMALL, **wrong))  # type: ignore[arg-type]


def test_another_ending_is_refused(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    with pytest.raises(LogbookProblem, match=r"must end in \.mp4"):
        write_time_lapse(log, crop.id, tmp_path / "film.avi")


def test_the_film_ends_with_the_crop_and_begins_with_day_0(log: OpenLogbook, crop: Crop) -> None:
    seen = ages(log, crop)
    clear_crop(log, crop.id, day_at(SOWN, seen[-1] + 2))
    plan = time_lapse_plan(log, crop.id, replace(SMALL, first_age=-9, last_age=100_000))
    assert plan.days == seen[-1] + 3
