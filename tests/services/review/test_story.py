"""The photos that tell a crop's story."""

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.records.crop import Crop
from growlog.records.photo import PhotoUse
from growlog.records.problems import RecordRefused
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.photo_uses import remove_photo
from growlog.services.review.model import ReviewOptions
from growlog.services.review.review import review_of
from growlog.services.review.story import choose_photos, forget_choice, story_ages, story_choices, usual_count
from growlog.services.undo import undo
from tests.logbooks import SOWN, plant_crop
from tests.services.photo_rows import photo_on
from tests.services.review.grown import day, grown

pytestmark = pytest.mark.slow


def ages(log: OpenLogbook, crop: Crop, **options: object) -> list[int]:
    return [p.age for p in review_of(log, crop.id, options=ReviewOptions(**options)).photos]  # type: ignore[arg-type]


@pytest.mark.parametrize(("days", "count"), [(0, 9), (120, 9), (121, 10), (160, 10), (161, 11), (1000, 15)])
def test_nine_to_fifteen_photos_tell_it_by_its_age(days: int, count: int) -> None:
    assert usual_count(days) == count


@given(st.sets(st.integers(0, 400), min_size=1), st.lists(st.integers(0, 400), max_size=8), st.integers(9, 15))
def test_the_story_has_so_many_photos_each_once_from_the_first_to_the_last(
    have: set[int], wanted: list[int], count: int
) -> None:
    chosen = story_ages(sorted(have), wanted, count)
    assert len(chosen) == min(count, len(have))
    assert chosen == sorted(set(chosen))
    assert set(chosen) <= have
    assert (chosen[0], chosen[-1]) == (min(have), max(have))


def test_the_first_pick_is_in_the_story_and_the_rest_is_spread() -> None:
    chosen = story_ages(range(113), [44], 9)
    assert 44 in chosen
    gaps = [b - a for a, b in pairwise(chosen)]
    assert max(gaps) <= 24


def test_a_photo_from_before_a_milestone_does_not_stand_for_it() -> None:
    assert 43 not in story_ages([*range(0, 44), *range(50, 113)], [44], 9)


def test_milestones_are_said_below_the_photo_that_shows_them(log: OpenLogbook) -> None:
    crop = grown(log)
    for age in range(0, 100, 2):
        photo_on(log, crop, day(age), leads=True)
    captions = {p.age: p.caption for p in review_of(log, crop.id).photos}
    assert captions[44] == "first pick"
    assert len([c for c in captions.values() if c == "first pick"]) == 1


def test_of_a_day_the_leading_photo_tells(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    photo_on(log, crop, day(3))
    leader = photo_on(log, crop, day(3), leads=True)
    assert [p.use_id for p in review_of(log, crop.id).photos] == [leader.id]


def test_photos_chosen_by_hand_stand_in_the_order_of_their_age_until_that_is_forgotten(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    uses = [photo_on(log, crop, day(age), leads=True) for age in range(30)]
    change = choose_photos(log, crop.id, [uses[20].id, uses[4].id])
    review = review_of(log, crop.id)
    assert [p.age for p in review.photos] == [4, 20]
    assert review.photo_note == "2 photos, chosen by hand"
    assert [c.age for c in story_choices(log, crop.id) if c.chosen] == [4, 20]
    choose_photos(log, crop.id, [uses[20].id, uses[25].id])
    assert ages(log, crop) == [20, 25]
    assert forget_choice(log, crop.id) is not None
    assert len(ages(log, crop)) == 9
    assert forget_choice(log, crop.id) is None
    assert change.crop_ids == frozenset({crop.id})


def test_a_choice_is_undone(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    use = photo_on(log, crop, day(1), leads=True)
    photo_on(log, crop, day(2), leads=True)
    undo(log, choose_photos(log, crop.id, [use.id]))
    assert ages(log, crop) == [1, 2]


def test_a_chosen_photo_that_was_taken_off_its_day_is_left_out(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    uses = [photo_on(log, crop, day(age), leads=True) for age in (1, 2)]
    choose_photos(log, crop.id, [u.id for u in uses])
    remove_photo(log, uses[0].id)
    assert ages(log, crop) == [2]


def test_a_choice_of_none_of_too_many_or_of_anothers_is_refused(log: OpenLogbook) -> None:
    crop, other = plant_crop(log), plant_crop(log, "Boxroom Red")
    use = photo_on(log, other, day(1), leads=True)
    for wanted in ([], [str(i) for i in range(16)], [use.id]):
        with pytest.raises(RecordRefused):
            choose_photos(log, crop.id, wanted)


def test_a_crop_with_four_thousand_photos_is_told_in_fifteen(log: OpenLogbook) -> None:
    crop = plant_crop(log, sown=date(2025, 1, 1))
    photo = photo_on(log, crop, date(2025, 1, 1), leads=True)
    with log.unit() as unit:
        one = unit.photos.get(photo.photo_id)
        photos = [replace(one, id=new_id(), sha256=f"{n:064x}", path=f"photos/crop/{n:064x}.jpg") for n in range(4000)]
        uses = [
            PhotoUse(new_id(), p.id, crop.id, date(2025, 1, 1) + timedelta(days=n % 400), leads=n < 400)
            for n, p in enumerate(photos)
        ]
        unit.add("g", *photos)
        unit.add("g", *uses)
        unit.commit()
    assert len(review_of(log, crop.id).photos) == 15


def test_as_many_photos_as_asked_for(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    for age in range(40):
        photo_on(log, crop, SOWN + timedelta(days=age), leads=True)
    assert len(ages(log, crop, photo_count=12)) == 12


def test_every_photo_of_a_day_can_be_chosen_the_leading_one_first(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    other = photo_on(log, crop, day(3))
    leader = photo_on(log, crop, day(3), leads=True)
    assert [p.use_id for p in story_choices(log, crop.id)] == [leader.id, other.id]
    choose_photos(log, crop.id, [other.id])
    assert [p.use_id for p in review_of(log, crop.id).photos] == [other.id]
