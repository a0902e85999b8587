"""Drain share and drain-minus-feed EC by plant age."""

from datetime import date

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed
from growlog.services.drain_series import drain_series
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import write


def test_each_feed_whose_drain_was_measured_is_a_point(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, date(2026, 2, 1), Feed(volume_l=4.0, ec_ms_per_cm=2.0, drain_l=0.8, drain_ec_ms_per_cm=2.6))
    write(log, crop, date(2026, 2, 2), Feed(volume_l=4.0, ec_ms_per_cm=2.0))
    write(log, crop, date(2026, 2, 3), Feed(volume_l=4.0, drain_l=1.0))
    write(log, crop, date(2026, 2, 4), Feed(ec_ms_per_cm=2.0, drain_ec_ms_per_cm=1.8))
    points = drain_series(log, crop.id)
    assert [(p.age, p.drain_share_percent) for p in points] == [(78, pytest.approx(20)), (80, 25), (81, None)]
    assert points[0].ec_difference_ms_per_cm == pytest.approx(0.6)
    # By hand: 4 L at 2.0 less 0.8 L at 2.6 leave 5.92 in 3.2 L.
    assert points[0].uptake_ec_ms_per_cm == pytest.approx(1.85)
    assert points[0].text == "drain 20 %, EC +0.60 mS/cm to the feed"
    assert points[2].text == "EC −0.20 mS/cm to the feed"
