"""Three everyday tasks in the real dialogs, counted key by key, beside the same in a spreadsheet."""

from collections.abc import Callable

import pytest

from tests.effort import spreadsheet, tasks
from tests.effort.keystroke_model import Effort
from tests.journeys.conftest import Person

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def test_the_model_times_a_click_on_a_check_box_as_the_published_table_does() -> None:
    """P + M + K = 2.73 s with K 0.28 s: printed in Card, Moran and Newell (1980), as read in a citation index."""
    done = Effort(on_mouse=True)
    done.think()
    done.button()
    assert done.seconds == pytest.approx(2.73)


def test_the_harvest_of_a_session_takes_at_most_sixty_keys_no_pointing_and_half_the_time(
    person: Callable[..., Person],
) -> None:
    done = tasks.harvest(person)
    assert done.points == 0
    assert done.keys <= 60
    assert done.seconds <= spreadsheet.harvest().seconds / 2


def test_the_morning_feed_of_three_crops_takes_at_most_half_the_time(person: Callable[..., Person]) -> None:
    assert tasks.morning_feed(person).seconds <= spreadsheet.morning_feed().seconds / 2


def test_five_photos_of_which_two_are_corrected_take_at_most_half_the_time(person: Callable[..., Person]) -> None:
    assert tasks.five_photos(person).seconds <= spreadsheet.five_photos().seconds / 2


def test_the_table_of_the_guide_is_what_was_counted(person: Callable[..., Person]) -> None:
    shown = tasks.table(person)
    assert shown in tasks.README.read_text(encoding="utf-8")
