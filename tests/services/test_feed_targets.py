"""The grower's own targets, kept by name and offered in the mixer."""

from pathlib import Path

import pytest

from growlog.records.feed_target import TargetRange
from growlog.records.problems import RecordRefused
from growlog.services.feed_targets import remove_target, save_target, targets_of
from growlog.services.mixer import MixerState, OwnTarget, target_offers
from growlog.services.undo import undo
from tests.logbooks import logbook

RANGES = (TargetRange("N", 140, 180), TargetRange("Ca", 150))


def test_a_kept_target_is_offered_first_with_its_ranges(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        save_target(log, "Squash in fruit", RANGES)
        offer = target_offers(log, MixerState())[0]
    assert (offer.label, offer.note) == ("Squash in fruit", "grower's own")
    assert isinstance(offer.target, OwnTarget)
    assert (offer.target.ranges["N"].low, offer.target.ranges["Ca"].high) == (140, None)


def test_the_same_name_is_kept_once_and_the_change_is_taken_back(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        save_target(log, "Squash in fruit", RANGES)
        change = save_target(log, " squash in fruit", (TargetRange("N", 150, 170),))
        assert [t.ranges for t in targets_of(log)] == [(TargetRange("N", 150, 170),)]
        undo(log, change)
        assert [t.ranges for t in targets_of(log)] == [RANGES]


def test_a_removed_target_is_offered_no_more_and_comes_back(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        save_target(log, "Squash in fruit", RANGES)
        change = remove_target(log, targets_of(log)[0].id)
        assert targets_of(log) == []
        undo(log, change)
        assert len(targets_of(log)) == 1


def test_a_target_without_a_range_is_refused(tmp_path: Path) -> None:
    with logbook(tmp_path) as log, pytest.raises(RecordRefused, match="at least one element"):
        save_target(log, "Nothing", ())
