"""Photo intake: every file lands on its day once, doubts are asked, what is no picture is named, nothing is lost."""

import errno
import shutil
from dataclasses import replace
from datetime import date, time, timedelta
from pathlib import Path

import pytest

from growlog.photos import photo_folder
from growlog.photos.photo_folder import sha256_of
from growlog.records.crop import Crop
from growlog.records.photo import DateSource
from growlog.services.board import board_of
from growlog.services.crops import clear_crop, crop_and_cultivar, remove_crop
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.photo_intake import (
    IntakeItem,
    Outcome,
    judge,
    look_at,
    shifted,
    take_in,
    with_crop,
    with_day,
)
from growlog.services.photo_uses import original_path, photos_of_crop
from growlog.services.undo import undo
from growlog.words import show_day
from tests.logbooks import SharedReaders, content_of, logbook, plant_crop
from tests.services.photo_rows import leaders

pytestmark = pytest.mark.slow

SOWN_2019 = date(2019, 10, 20)
FIRST_DAY = date(2019, 10, 22)


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    return plant_crop(log, "Chamber A", SOWN_2019)


def tray(log: OpenLogbook, paths: list[Path], crop: Crop | None) -> list[IntakeItem]:
    return judge(log, list(look_at(log, paths, None if crop is None else crop.id)))


def originals(log: OpenLogbook) -> list[Path]:
    return sorted(p for p in (log.folder / "photos").rglob("*") if p.is_file())


def plant(rosettes: list[Path], letter: str) -> list[Path]:
    return [p for p in rosettes if p.name.startswith(f"plant-{letter}")]


def test_two_real_daily_series_land_each_photo_on_its_day(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    other = plant_crop(log, "Chamber B", SOWN_2019)
    items = tray(log, plant(rosettes, "a"), crop) + tray(log, plant(rosettes, "b"), other)
    assert {i.outcome for i in items} == {Outcome.NEW}
    assert {i.source for i in items} == {DateSource.FILE_NAME}
    done, change = take_in(log, items)
    assert change is not None
    assert change.crop_ids == {crop.id, other.id}
    with log.unit() as unit:
        for shown in photos_of_crop(unit, crop.id) + photos_of_crop(unit, other.id):
            assert shown.photo.original_name.split("_")[1].startswith(shown.use.day.isoformat())
            assert (shown.use.at, shown.use.leads) == (time(11, 5), True)
            assert sha256_of(original_path(log, shown.photo)) == shown.photo.sha256
    assert {sha256_of(p) for p in originals(log)} == {sha256_of(p) for p in rosettes}
    days = [{p.age for p in board_of(log, c.id).photo_days} for c in (crop, other)]
    assert days == [set(range(2, 13)), set(range(2, 14))]  # plant a has no photo of 2019-11-02
    assert [i.outcome for i in done] == [Outcome.NEW] * 23


def test_a_missed_day_is_a_gap_on_the_board(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    without = [p for p in plant(rosettes, "a") if "10-25" not in p.name and "10-26" not in p.name]
    take_in(log, tray(log, without, crop))
    assert board_of(log, crop.id).missing_photo_ages == (5, 6)


def test_the_same_picture_twice_in_the_tray_goes_in_once(
    log: OpenLogbook, crop: Crop, rosettes: list[Path], tmp_path: Path
) -> None:
    again = shutil.copy(rosettes[0], tmp_path / "again_2019-10-23.jpg")
    items = tray(log, [rosettes[0], Path(again)], crop)
    assert [i.outcome for i in items] == [Outcome.NEW, Outcome.DUPLICATE]
    assert "in the tray already" in items[1].reason
    take_in(log, items)
    assert len(originals(log)) == 1


def test_a_photo_that_is_in_the_logbook_is_a_duplicate_with_its_day(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    take_in(log, tray(log, rosettes[:2], crop))
    items = tray(log, rosettes[:3], crop)
    assert [i.outcome for i in items] == [Outcome.DUPLICATE, Outcome.DUPLICATE, Outcome.NEW]
    assert show_day(FIRST_DAY) in items[0].reason
    _, change = take_in(log, items[:2])
    assert change is None


def test_a_tray_confirmed_twice_writes_its_photos_once(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    items = tray(log, rosettes[:2], crop)
    take_in(log, items)
    before = content_of(log)
    done, change = take_in(log, items)
    assert change is None
    assert [i.outcome for i in done] == [Outcome.DUPLICATE] * 2
    assert content_of(log) == before


def test_one_photo_serves_two_crops_with_one_file(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    other = plant_crop(log, "Chamber B", SOWN_2019)
    (item,) = tray(log, rosettes[:1], crop)
    take_in(log, judge(log, [item, with_crop(item, other.id)]))
    assert len(originals(log)) == 1
    assert len(content_of(log)["Photo"]) == 1
    assert set(leaders(log)) == {(crop.id, FIRST_DAY), (other.id, FIRST_DAY)}


def test_taking_back_one_crops_intake_leaves_the_other_crops_photo(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    other = plant_crop(log, "Chamber B", SOWN_2019)
    _, first = take_in(log, tray(log, rosettes[:1], crop))
    take_in(log, tray(log, rosettes[:1], other))
    before = content_of(log)
    assert first is not None
    redo = undo(log, first)
    assert set(leaders(log)) == {(other.id, FIRST_DAY)}
    assert tray(log, rosettes[:1], other)[0].outcome is Outcome.DUPLICATE
    undo(log, redo)
    assert content_of(log) == before


def test_an_intake_is_taken_back_and_done_again_and_the_originals_stay(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    empty = content_of(log)
    _, change = take_in(log, tray(log, rosettes[:3], crop))
    assert change is not None
    full, files = content_of(log), originals(log)
    redo = undo(log, change)
    assert (content_of(log), originals(log)) == (empty, files)
    undo(log, redo)
    assert content_of(log) == full


def test_a_photo_whose_intake_was_taken_back_can_come_in_anew(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    _, change = take_in(log, tray(log, rosettes[:1], crop))
    assert change is not None
    undo(log, change)
    items = tray(log, rosettes[:1], crop)
    assert items[0].outcome is Outcome.NEW
    take_in(log, items)
    assert len(originals(log)) == len(content_of(log)["Photo"]) == len(content_of(log)["PhotoUse"]) == 1


def test_taking_back_the_leaders_intake_lets_the_next_photo_lead(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    (first,) = tray(log, rosettes[:1], crop)
    (second,) = tray(log, rosettes[1:2], crop)
    _, change = take_in(log, [first])
    _, later = take_in(log, [with_day(second, FIRST_DAY)])
    assert change is not None
    assert later is not None
    undo(log, change)
    assert leaders(log) == {(crop.id, FIRST_DAY): list(later.record_ids)}


def test_of_a_days_photos_the_earliest_leads_and_keeps_the_lead(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    items = tray(log, rosettes[:3], crop)
    at = [replace(with_day(i, FIRST_DAY), at=time(hour)) for i, hour in zip(items, (12, 8, 6), strict=True)]
    take_in(log, judge(log, at[:2]))
    take_in(log, judge(log, at[2:]))
    with log.unit() as unit:
        assert [(p.use.at, p.use.leads) for p in photos_of_crop(unit, crop.id)] == [
            (time(8), True), (time(6), False), (time(12), False),
        ]  # fmt: skip


def test_doubtful_days_are_asked_about_and_go_in_when_confirmed(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    clear_crop(log, crop.id, date(2019, 10, 30))
    (item,) = tray(log, rosettes[:1], crop)
    days = (SOWN_2019 - timedelta(days=1), log.today() + timedelta(days=1), date(2019, 10, 31))
    asked = [judge(log, [with_day(item, day)])[0] for day in days]
    assert {i.outcome for i in asked} == {Outcome.QUESTIONED}
    words = ("before day 0 of Chamber A", "not come yet", "was cleared before")
    assert all(word in i.reason for word, i in zip(words, asked, strict=True))
    assert all(i.goes_in for i in asked)
    _, change = take_in(log, [asked[0]])
    assert change is not None
    assert leaders(log).keys() == {(crop.id, days[0])}


def test_a_day_from_the_files_own_time_is_asked_about(
    log: OpenLogbook, crop: Crop, rosettes: list[Path], tmp_path: Path
) -> None:
    unnamed = Path(shutil.copyfile(rosettes[0], tmp_path / "leaf.jpg"))
    (item,) = tray(log, [unnamed], crop)
    assert item.source is DateSource.FILE_TIME
    assert item.outcome is Outcome.QUESTIONED
    (typed,) = judge(log, [with_day(item, FIRST_DAY)])
    assert typed.outcome is Outcome.NEW


def test_a_photo_without_a_crop_or_a_day_waits(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    (item,) = tray(log, rosettes[:1], None)
    assert (item.outcome, item.reason) == (Outcome.WAITING, "Choose the crop it shows.")
    (undated,) = judge(log, [replace(with_crop(item, crop.id), day=None)])
    assert undated.outcome is Outcome.WAITING
    assert take_in(log, [item, undated])[1] is None
    assert originals(log) == []


def test_a_photo_of_a_crop_that_was_removed_meanwhile_waits_again(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    items = tray(log, rosettes[:1], crop)
    remove_crop(log, crop.id)
    done, change = take_in(log, items)
    assert ([i.outcome for i in done], change) == ([Outcome.WAITING], None)


def test_what_is_no_picture_is_refused_with_its_name_and_the_others_go_in(
    log: OpenLogbook, crop: Crop, rosettes: list[Path], tmp_path: Path
) -> None:
    folder = tmp_path / "card"
    folder.mkdir()
    (folder / "text.jpg").write_text("not a picture")
    (folder / "nothing.jpg").write_bytes(b"")
    whole = rosettes[1].read_bytes()
    (folder / "cut.jpg").write_bytes(whole[: len(whole) // 2])
    shutil.copy(rosettes[0], folder)
    done, change = take_in(log, tray(log, [folder], crop))
    refused = {i.path.name: i.reason for i in done if i.outcome is Outcome.REFUSED}
    assert refused.keys() == {"text.jpg", "nothing.jpg", "cut.jpg"}
    for name, reason in refused.items():
        assert reason.startswith(name)
        assert reason.endswith(".")
    assert change is not None
    assert len(change.record_ids) == len(originals(log)) == 1


def test_a_wrong_camera_clock_is_put_right_over_midnight(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    (item,) = tray(log, rosettes[:1], crop)
    (moved,) = judge(log, [shifted(item, timedelta(hours=13))])
    assert (moved.day, moved.at, moved.source) == (date(2019, 10, 23), time(0, 5), DateSource.TYPED)
    take_in(log, [moved])
    (photo,) = content_of(log)["Photo"]
    assert "2019-10-23_000500" in str(photo["path"])


def test_what_has_no_time_is_shifted_by_days_and_what_has_no_day_not_at_all(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    (item,) = tray(log, rosettes[:1], crop)
    untimed = shifted(replace(item, at=None), timedelta(days=365))
    assert (untimed.day, untimed.at) == (date(2020, 10, 21), None)
    undated = replace(item, day=None)
    assert shifted(undated, timedelta(days=1)) == undated


def test_what_was_copied_before_a_cancel_is_in_and_the_rest_is_not(
    log: OpenLogbook, crop: Crop, rosettes: list[Path]
) -> None:
    seen: list[tuple[int, int]] = []
    done, change = take_in(
        log, tray(log, rosettes[:5], crop), lambda n, of: seen.append((n, of)), lambda: len(seen) >= 2
    )
    assert seen == [(1, 5), (2, 5)]
    assert change is not None
    assert len(change.record_ids) == len(originals(log)) == len(content_of(log)["PhotoUse"]) == 2
    assert [i.outcome for i in judge(log, done)] == [Outcome.DUPLICATE] * 2 + [Outcome.NEW] * 3


def test_looking_ends_when_cancelled_and_writes_nothing(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> None:
    assert list(look_at(log, rosettes, crop.id, cancelled=lambda: True)) == []
    assert originals(log) == []


def test_a_full_disk_refuses_that_file_with_a_sentence_and_leaves_nothing_half_written(
    log: OpenLogbook, crop: Crop, rosettes: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    items = tray(log, rosettes[:3], crop)
    copy = photo_folder._copy_hashing

    def full(source: Path, temporary: Path) -> str:
        if source == rosettes[1]:
            temporary.write_bytes(b"half")
            raise OSError(errno.ENOSPC, "No space left on device")
        return copy(source, temporary)

    monkeypatch.setattr(photo_folder, "_copy_hashing", full)
    seen: list[int] = []
    done, _ = take_in(log, items, lambda n, _of: seen.append(n))
    assert [i.outcome for i in done] == [Outcome.NEW, Outcome.REFUSED, Outcome.NEW]
    assert rosettes[1].name in done[1].reason
    assert "disk is full" in done[1].reason
    assert seen == [1, 2, 3]
    assert len(originals(log)) == len(content_of(log)["PhotoUse"]) == 2
    monkeypatch.undo()
    assert take_in(log, tray(log, rosettes[:3], crop))[1] is not None
    assert len(originals(log)) == 3


def test_a_file_that_went_away_after_the_look_is_refused(
    log: OpenLogbook, crop: Crop, rosettes: list[Path], tmp_path: Path
) -> None:
    card = Path(shutil.copy(rosettes[0], tmp_path))
    items = tray(log, [card], crop)
    card.unlink()
    (item,), change = take_in(log, items)
    assert (item.outcome, change) == (Outcome.REFUSED, None)
    assert card.name in item.reason
    assert crop_and_cultivar(log, crop.id)[0] == crop


def test_nothing_is_copied_into_a_logbook_that_is_open_for_reading_only(
    log: OpenLogbook, crop: Crop, rosettes: list[Path], readers: SharedReaders, tmp_path: Path
) -> None:
    from growlog.services.logbooks import open_log

    items = tray(log, rosettes[:1], crop)
    reader = open_log(log.folder, log.clock, tmp_path / "cache", read_only=True)
    with pytest.raises(LogbookProblem, match="reading only"):
        take_in(reader, items)
    reader.close()
    assert originals(log) == []


def test_the_photos_are_there_when_the_logbook_is_opened_again(
    tmp_path: Path, readers: SharedReaders, rosettes: list[Path]
) -> None:
    with logbook(tmp_path, readers=readers) as log:
        crop = plant_crop(log, "Chamber A", SOWN_2019)
        take_in(log, tray(log, rosettes[:2], crop))
        before = content_of(log)
    with logbook(tmp_path, make=False, readers=readers) as log:
        assert content_of(log) == before
        assert [p.age for p in board_of(log, crop.id).photo_days] == [2, 3]
