"""What comes of a crop by itself: the packet's maturity, the planned clearing, the ends of a treatment's intervals."""

from dataclasses import replace
from datetime import time

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Treatment
from growlog.services.crops import change_crop, crop_and_cultivar
from growlog.services.due import DueHow, due_items, put_off, tick
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import TODAY, plant_crop, write
from tests.services.due.routines import day, titles, today_of


def test_packet_maturity_is_told_a_week_ahead_and_on_its_day(log: OpenLogbook) -> None:
    plant_crop(log, sown=day(-51))  # the packet says 58 days
    assert titles(log) == ["Packet maturity in 7 days"]
    assert titles(log, day(7)) == ["Packet maturity"]


def test_a_notice_stands_for_three_days_or_until_it_is_ticked_and_is_never_late(log: OpenLogbook) -> None:
    plant_crop(log, sown=day(-60))
    item = today_of(log)[0]
    assert (item.title, item.since, item.late_days, item.how) == ("Packet maturity", day(-2), 0, DueHow.TICK)
    tick(log, item)
    assert titles(log) == []
    plant_crop(log, "Earlier", sown=day(-61))
    assert titles(log) == []


def test_the_planned_clearing_waits_until_the_crop_is_cleared(log: OpenLogbook, crop: Crop) -> None:
    read, cultivar = crop_and_cultivar(log, crop.id)
    change_crop(log, replace(read, planned_clearing_on=day(-2)), cultivar)
    item = today_of(log)[0]
    assert (item.title, item.late_days, item.how) == ("Planned clearing", 2, DueHow.CLEARING)
    put_off(log, item, day(5))
    assert [(i.title, i.due_day, i.late_days) for i in due_items(log, TODAY, day(9))] == [
        ("Planned clearing", day(5), 0)
    ]


@pytest.mark.parametrize(
    "hours, at, ends",
    [(4, time(10), 0), (20, time(10), 1), (24, time(8), 1), (4, None, 1), (24, None, 2), (25, None, 2)],
)
def test_a_re_entry_interval_without_a_time_is_counted_from_the_end_of_the_day(
    log: OpenLogbook, crop: Crop, hours: float, at: time | None, ends: int
) -> None:
    write(log, crop, TODAY, Treatment("soap", re_entry_h=hours), at=at)
    found = due_items(log, TODAY, day(9))
    assert [(i.title, i.since) for i in found] == [("Re-entry interval of soap ends", day(ends))]
    assert "The label rules" in found[0].why


def test_the_harvest_interval_ends_on_the_first_day_on_which_a_pick_is_free(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, day(-1), Treatment("soap", harvest_interval_days=3))
    found = due_items(log, TODAY, day(2))
    assert [(i.title, i.due_day) for i in found] == [("Harvest interval of soap is over", day(2))]
