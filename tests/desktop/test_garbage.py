"""Garbage is collected on the window's thread, and Python's own collector rests meanwhile."""

import gc
from collections.abc import Iterator

import pytest

from growlog.desktop.garbage import GarbageOnWindowThread


@pytest.fixture
def collector_on() -> Iterator[None]:
    was_on = gc.isenabled()
    gc.enable()
    yield
    if not was_on:
        gc.disable()


class Knot:
    """Something that only the collector can free."""

    freed = 0

    def __init__(self) -> None:
        self.itself = self

    def __del__(self) -> None:
        Knot.freed += 1


def test_the_collector_rests_until_it_is_given_back(qapp: object, collector_on: None) -> None:
    here = GarbageOnWindowThread()
    assert not gc.isenabled()
    here.stop()
    here.stop()
    assert gc.isenabled()


def test_what_is_over_its_threshold_is_collected(qapp: object, collector_on: None) -> None:
    here = GarbageOnWindowThread()
    Knot.freed = 0
    kept = [Knot() for _ in range(gc.get_threshold()[0] + 100)]
    kept.clear()
    here.collect()
    here.stop()
    assert Knot.freed > 0
