"""Feeding rounds, and what is offered again."""

from datetime import date, time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.records.entry import Feed, Owner, OwnerKind, Pick, Training
from growlog.records.problems import RecordRefused
from growlog.records.recipe import MixPart
from growlog.services.crops import clear_crop
from growlog.services.feed_plan import new_step, save_step
from growlog.services.feeding_round import Sharing, mix_for_round, round_entries, round_rows, share_out, write_round
from growlog.services.mixes import save_mix
from growlog.services.repeats import last_like, mixes_by_use
from growlog.services.undo import undo
from tests.logbooks import add_plant, content_of, entry_on, furnish, logbook, plant_crop, write, write_for

DAY = date(2026, 3, 6)


@given(
    st.floats(0, 2000), st.sampled_from([Sharing.EQUALLY, Sharing.BY_PLANTS]), st.lists(st.integers(0, 50), min_size=1)
)
def test_what_is_shared_out_is_all_there_was(volume_l: float, sharing: Sharing, plants: list[int]) -> None:
    assert sum(share_out(volume_l, sharing, plants)) == pytest.approx(volume_l)


def test_a_volume_is_repeated_or_shared_as_chosen() -> None:
    assert share_out(3, Sharing.EACH, [1, 2]) == [3, 3]
    assert share_out(3, Sharing.EQUALLY, [1, 2]) == [1.5, 1.5]
    assert share_out(3, Sharing.BY_PLANTS, [1, 2]) == [1, 2]
    assert share_out(3, Sharing.BY_PLANTS, [0, 0]) == [1.5, 1.5]
    with pytest.raises(ValueError, match="volume_l -1"):
        share_out(-1, Sharing.EACH, [1])


def test_each_crop_that_stood_and_each_tank_has_a_row_with_its_last_feed(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        gold, gone = plant_crop(log), plant_crop(log, "Skylight Round")
        add_plant(log, gold)
        _, tank = furnish(log, gold)
        write(log, gold, date(2026, 3, 4), Feed(volume_l=1))
        write(log, gold, date(2026, 3, 5), Feed(volume_l=1.2, ec_ms_per_cm=1.9))
        write_for(log, OwnerKind.TANK, tank.id, date(2026, 3, 1), Feed(volume_l=18))
        clear_crop(log, gone.id, date(2026, 3, 5))
        rows = round_rows(log, DAY)
    assert [r.name for r in rows] == ["Boxroom Gold", "Blue tank"]
    assert rows[0].last == Feed(volume_l=1.2, ec_ms_per_cm=1.9)
    assert (rows[0].last_day, rows[0].plant_count) == (date(2026, 3, 5), 2)
    assert rows[1].last == Feed(volume_l=18)


def test_a_row_tells_whether_it_was_fed_that_day_already(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        gold = plant_crop(log)
        write(log, gold, date(2026, 3, 5), Feed(volume_l=1.2))
        write(log, gold, DAY, Feed(volume_l=0.8))
        assert [(r.fed_before, r.last) for r in round_rows(log, DAY)] == [(1, Feed(volume_l=1.2))]
        assert [(r.fed_before, r.last) for r in round_rows(log, date(2026, 3, 7))] == [(0, Feed(volume_l=0.8))]


def test_a_round_is_one_change_and_one_undo(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crops = [plant_crop(log, name) for name in ("Boxroom Gold", "Skylight Round", "Landing Light")]
        before = content_of(log)
        feeds = [(Owner(OwnerKind.CROP, c.id), Feed(volume_l=1, ec_ms_per_cm=1.8, ph=5.9)) for c in crops]
        change = write_round(log, round_entries(DAY, time(8, 5), feeds))
        with log.unit() as unit:
            written = unit.entries.all(kind="feed")
        assert len({e.group_id for e in written}) == 1
        assert {e.owner.id for e in written} == {c.id for c in crops}
        undo(log, change)
        assert content_of(log) == before


def test_a_round_with_one_wrong_feed_writes_none(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        owner = Owner(OwnerKind.CROP, crop.id)
        with pytest.raises(RecordRefused):
            write_round(log, round_entries(DAY, None, [(owner, Feed(volume_l=1)), (owner, Feed(volume_l=1, ph=99))]))
        with log.unit() as unit:
            assert unit.entries.all(kind="feed") == []


def test_an_empty_round_is_refused_with_a_way_on(tmp_path: Path) -> None:
    with logbook(tmp_path) as log, pytest.raises(RecordRefused, match="fill in at least one row"):
        write_round(log, [])


def test_the_last_entry_of_the_same_kind_is_offered_again_but_never_a_pick(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, date(2026, 3, 4), Training(old_leaves_removed=2))
        kept = write(log, crop, date(2026, 3, 5), Training(old_leaves_removed=3))
        write(log, crop, date(2026, 3, 5), Pick(2))
        assert last_like(log, entry_on(crop, DAY, Training())) == kept
        assert last_like(log, entry_on(crop, date(2026, 3, 4), Training())) is None
        assert last_like(log, entry_on(crop, DAY, Pick(1))) is None


def test_the_mix_that_was_given_last_comes_first(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        for name in ("Bloom", "Grow", "Ash"):
            save_mix(log, name, (MixPart("Concentrate A", 3),))
        grow = next(m for m in mixes_by_use(log, Owner(OwnerKind.CROP, crop.id), DAY) if m.name == "Grow")
        write(log, crop, date(2026, 3, 5), Feed(mix_id=grow.id, volume_l=1))
        save_mix(log, "Grow", (MixPart("Concentrate A", 4),))
        offered = mixes_by_use(log, Owner(OwnerKind.CROP, crop.id), DAY)
    assert [m.name for m in offered] == ["Grow", "Ash", "Bloom"]
    assert offered[0].edition == 2


def test_a_round_begins_with_the_mix_that_the_plans_agree_on(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        gold, light = plant_crop(log), plant_crop(log, "Landing Light")
        leaf, bloom = (save_mix(log, name, (MixPart("Concentrate A", 3),))[0] for name in ("Leaf", "Bloom"))
        write(log, gold, date(2026, 3, 5), Feed(mix_id=leaf.id, volume_l=1))
        assert mix_for_round(log, round_rows(log, DAY)) == leaf.id
        save_step(log, new_step(gold.id, 40, bloom.id))
        rows = round_rows(log, DAY)
        assert mix_for_round(log, rows) == bloom.id
        assert {row.name: row.planned is not None for row in rows} == {"Boxroom Gold": True, "Landing Light": False}
        save_step(log, new_step(light.id, 40, leaf.id))
        assert mix_for_round(log, round_rows(log, DAY)) == leaf.id  # they differ: the mix given last
