"""Photos on their days: one leads each day, whatever is done; pictures come back from the originals."""

import shutil
from datetime import date, time, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.photo import Photo
from growlog.records.problems import RecordRefused
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.photo_intake import judge, look_at, take_in
from growlog.services.photo_uses import (
    let_lead,
    move_photo,
    original_path,
    photos_of_crop,
    remove_photo,
    sharp_picture,
    small_picture,
    small_picture_of,
)
from growlog.services.undo import undo
from tests.logbooks import SOWN, TODAY, content_of, logbook, plant_crop
from tests.services.photo_rows import leaders, photo_on

pytestmark = pytest.mark.slow

DAY = date(2026, 1, 18)


def test_the_leading_photo_of_a_day_comes_first_then_the_order_of_time(log: OpenLogbook, crop: Crop) -> None:
    late = photo_on(log, crop, DAY, at=time(18), leads=True)
    early = photo_on(log, crop, DAY, at=time(8))
    before = photo_on(log, crop, DAY - timedelta(days=1), leads=True)
    with log.unit() as unit:
        assert [p.use.id for p in photos_of_crop(unit, crop.id)] == [before.id, late.id, early.id]


def test_letting_a_photo_lead_puts_the_other_behind_it(log: OpenLogbook, crop: Crop) -> None:
    photo_on(log, crop, DAY, leads=True)
    second = photo_on(log, crop, DAY)
    let_lead(log, second.id)
    assert leaders(log) == {(crop.id, DAY): [second.id]}


def test_all_photos_of_a_day_move_together_and_the_earliest_leads(log: OpenLogbook, crop: Crop) -> None:
    uses = [photo_on(log, crop, DAY, at=time(hour), leads=hour == 9) for hour in (9, 8, 10)]
    change = move_photo(log, [u.id for u in uses], day=DAY + timedelta(days=1))
    assert leaders(log) == {(crop.id, DAY + timedelta(days=1)): [uses[1].id]}
    assert change.crop_ids == {crop.id}


def test_a_photo_moved_to_where_it_is_stays_the_leader(log: OpenLogbook, crop: Crop) -> None:
    early, late = photo_on(log, crop, DAY, at=time(8)), photo_on(log, crop, DAY, at=time(18), leads=True)
    move_photo(log, [late.id, early.id], crop_id=crop.id, day=DAY)
    assert leaders(log) == {(crop.id, DAY): [late.id]}


def test_a_moved_photo_does_not_displace_the_leader_of_its_new_day(log: OpenLogbook, crop: Crop) -> None:
    stays = photo_on(log, crop, DAY, at=time(18), leads=True)
    comes = photo_on(log, crop, DAY - timedelta(days=1), at=time(8), leads=True)
    move_photo(log, [comes.id], day=DAY)
    assert leaders(log) == {(crop.id, DAY): [stays.id]}


@pytest.mark.parametrize("day", [SOWN - timedelta(days=1), TODAY + timedelta(days=1)])
def test_a_photo_is_not_moved_to_an_impossible_day(log: OpenLogbook, crop: Crop, day: date) -> None:
    use = photo_on(log, crop, DAY, leads=True)
    before = content_of(log)
    with pytest.raises(RecordRefused):
        move_photo(log, [use.id], day=day)
    assert content_of(log) == before


def test_a_photo_that_was_removed_meanwhile_can_neither_lead_nor_move(log: OpenLogbook, crop: Crop) -> None:
    use, other = photo_on(log, crop, DAY, leads=True), photo_on(log, crop, DAY)
    remove_photo(log, use.id)
    for attempt in (lambda: let_lead(log, use.id), lambda: move_photo(log, [use.id], day=TODAY)):
        with pytest.raises(LogbookProblem, match="taken off"):
            attempt()
    assert leaders(log) == {(crop.id, DAY): [other.id]}


STEPS = st.lists(
    st.one_of(
        st.tuples(st.just("lead"), st.integers(0, 9), st.just(0)),
        st.tuples(st.just("remove"), st.integers(0, 9), st.just(0)),
        st.tuples(st.just("day"), st.integers(0, 9), st.integers(0, 2)),
        st.tuples(st.just("crop"), st.integers(0, 9), st.integers(0, 1)),
        st.tuples(st.just("undo"), st.integers(0, 9), st.just(0)),
    ),
    min_size=1,
    max_size=8,
)


def do_step(log: OpenLogbook, crops: list[Crop], step: tuple[str, int, int], done: list[Change]) -> None:
    what, which, where = step
    with log.unit() as unit:
        uses = sorted(unit.photo_uses.all(), key=lambda u: u.id)
    if what == "undo":
        if done:
            done.append(undo(log, done.pop()))
    elif uses:
        use = uses[which % len(uses)]
        if what == "lead":
            done.append(let_lead(log, use.id))
        elif what == "remove":
            done.append(remove_photo(log, use.id))
        elif what == "day":
            several = [use.id, uses[(which + 1) % len(uses)].id]
            done.append(move_photo(log, dict.fromkeys(several), day=DAY + timedelta(days=where)))
        else:
            done.append(move_photo(log, [use.id], crop_id=crops[where].id))


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=STEPS)
def test_whatever_is_done_each_day_with_photos_has_exactly_one_leader(
    tmp_path_factory: pytest.TempPathFactory, steps: list[tuple[str, int, int]]
) -> None:
    with logbook(tmp_path_factory.mktemp("steps")) as log:
        crops = [plant_crop(log), plant_crop(log, "Shelf Ember")]
        for n in range(5):
            photo_on(log, crops[n % 2], DAY + timedelta(days=n // 4), at=time(8 + n), leads=n in (0, 1, 4))
        done: list[Change] = []
        for step in steps:
            do_step(log, crops, step, done)
            assert all(len(leading) == 1 for leading in leaders(log).values())


@pytest.fixture
def taken(log: OpenLogbook, crop: Crop, rosettes: list[Path]) -> Photo:
    """A real photo in the logbook."""
    done, _ = take_in(log, judge(log, list(look_at(log, rosettes[:1], crop.id))))
    with log.unit() as unit:
        return unit.photos.all(sha256=done[0].sha256)[0]


def empty_cache(log: OpenLogbook) -> None:
    shutil.rmtree(log.previews.folder)
    log.previews.folder.mkdir()


def test_pictures_come_back_when_the_cache_was_emptied(log: OpenLogbook, taken: Photo) -> None:
    before = small_picture(log, taken.sha256), sharp_picture(log, taken)
    empty_cache(log)
    assert small_picture(log, taken.sha256) is None
    assert (small_picture_of(log, taken), sharp_picture(log, taken)) == before
    assert all(picture is not None for picture in before)


def test_a_lost_original_gives_no_picture_and_no_error(log: OpenLogbook, taken: Photo) -> None:
    original_path(log, taken).unlink()
    assert sharp_picture(log, taken) is not None  # the cache still has it
    empty_cache(log)
    assert sharp_picture(log, taken) is None
    assert small_picture_of(log, taken) is None


def test_a_removed_photo_keeps_its_original_and_comes_back(log: OpenLogbook, crop: Crop, taken: Photo) -> None:
    with log.unit() as unit:
        (shown,) = photos_of_crop(unit, crop.id)
    change = remove_photo(log, shown.use.id)
    assert original_path(log, taken).is_file()
    with log.unit() as unit:
        assert photos_of_crop(unit, crop.id) == []
    undo(log, change)
    with log.unit() as unit:
        assert [p.photo.sha256 for p in photos_of_crop(unit, crop.id)] == [taken.sha256]
