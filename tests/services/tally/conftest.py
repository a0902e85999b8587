"""Crops to tally, and tallies of one winter day."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, time

import pytest

from growlog.records.crop import Crop
from growlog.records.cultivar import FloweringHabit
from growlog.services.crops import add_crop, new_crop
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.tally import CropTally, Tally
from tests.logbooks import SOWN

DAY = date(2026, 1, 18)
MORNING = time(8, 5)


@pytest.fixture
def chilli(log: OpenLogbook) -> Crop:
    crop, cultivar = new_crop("Landing Light", "chilli", SOWN)
    assert cultivar.habit is FloweringHabit.PERFECT
    add_crop(log, crop, cultivar)
    return crop


@pytest.fixture
def tally_of_day() -> Callable[..., Tally]:
    """Makes a tally begun at 12:40 with the states of its crops."""

    def make(*crops: CropTally, **more: object) -> Tally:
        made = Tally(new_id(), datetime.combine(DAY, time(12, 40)), DAY)
        for crop in crops:
            made = made.with_crop(crop)
        return replace(made, **more)  # type: ignore[arg-type]

    return make
