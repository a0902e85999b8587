"""Mix and log: one change that writes feeds, draws bottles down, and goes back as one."""

from dataclasses import replace
from datetime import date, time, timedelta
from pathlib import Path

import pytest

from growlog.calculations.products import LIQUID, Product
from growlog.calculations.water import Water
from growlog.records.crop import Crop
from growlog.records.entry import Feed, Owner, OwnerKind, TankCare, TankWork
from growlog.records.problems import RecordRefused
from growlog.records.recipe import MixPart
from growlog.services.entries import correct_entry, remove_entry
from growlog.services.feed_costs import crop_feed_cost, feed_cost
from growlog.services.mixer import (
    FeedTo,
    Mixed,
    MixerDose,
    MixerState,
    file_of_state,
    keep_guests,
    mix_and_log,
    mixer_view,
    save_state,
    split_volume,
    starting_state,
    state_of_file,
    state_of_mix,
)
from growlog.services.mixes import mixes_of, save_mix
from growlog.services.open_logbook import OpenLogbook
from growlog.services.rooms import place_crop
from growlog.services.shelf import add_product, new_product, remove_product, shelf
from growlog.services.undo import undo
from tests.logbooks import SOWN, add_plant, content_of, plant_crop, write, write_for
from tests.services.mixer.bottles import Shelf

pytestmark = pytest.mark.slow

DAY = date(2026, 3, 1)


def levels(log: OpenLogbook) -> list[float | None]:
    """What is left, by name."""
    return [item.level for item in shelf(log)]


def feeds(log: OpenLogbook) -> list[tuple[str, float | None, str | None]]:
    """Owner, volume and mix of each feed."""
    with log.unit() as unit:
        entries = [(e.owner.id, e.detail) for e in unit.entries.all(kind="feed")]
    return [(owner, d.volume_l, d.mix_id) for owner, d in entries if isinstance(d, Feed)]


def whole(log: OpenLogbook) -> object:
    """All records, stock included."""
    with log.unit() as unit:
        return content_of(log), sorted((m.id, m.amount) for m in unit.stock_moves.all())


def of_crop(crop: Crop, volume_l: float | None = None) -> FeedTo:
    """A feed to a crop."""
    return FeedTo(Owner(OwnerKind.CROP, crop.id), volume_l)


def test_a_tank_is_logged_for_two_crops_and_taken_back_as_one(log: OpenLogbook, furnished: Shelf) -> None:
    other = plant_crop(log, "Shelf Ember")
    before = whole(log)
    given = [of_crop(furnished.crop, 12.0), of_crop(other, 4.0)]
    mixed = Mixed(1.82, 5.9, time(8, 30), 10, "first warm day")
    change = mix_and_log(log, replace(furnished.state, day=DAY, strength_percent=50.0), given, mixed)
    (mix,) = mixes_of(log)
    assert sorted(feeds(log)) == sorted([(furnished.crop.id, 12.0, mix.id), (other.id, 4.0, mix.id)])
    assert change.crop_ids == {furnished.crop.id, other.id}
    assert levels(log) == pytest.approx([970, 970, 998.5])  # half of 60, 60 and 3 for the whole tank
    with log.unit() as unit:
        entries = unit.entries.all(kind="feed")
    assert len({e.group_id for e in entries}) == 1
    assert [e.labour_minutes for e in entries].count(10) == 1
    assert (mix.name, [p.dose_per_l for p in mix.parts]) == ("Everyday", [3.0, 3.0, 0.15])
    again = undo(log, change)
    assert whole(log) == before
    undo(log, again)
    assert levels(log) == pytest.approx([970, 970, 998.5])


def test_removing_one_feed_puts_its_share_back_and_undo_draws_it_again(log: OpenLogbook, furnished: Shelf) -> None:
    other = plant_crop(log, "Shelf Ember")
    change = mix_and_log(log, furnished.state, [of_crop(furnished.crop, 15.0), of_crop(other, 5.0)])
    removed = remove_entry(log, change.record_ids[1])
    assert levels(log)[0] == pytest.approx(1000 - 45)
    undo(log, removed)
    assert levels(log)[0] == pytest.approx(1000 - 60)


def test_what_was_drawn_follows_its_feed_to_another_day(log: OpenLogbook, furnished: Shelf) -> None:
    change = mix_and_log(log, replace(furnished.state, day=DAY), [of_crop(furnished.crop)])
    with log.unit() as unit:
        entry = unit.entries.get(change.record_ids[0])
    correct_entry(log, replace(entry, day=date(2026, 2, 1)))
    assert shelf(log, date(2026, 2, 2))[0].level == 940


def test_the_same_mix_again_is_no_new_edition_and_a_changed_one_is(log: OpenLogbook, furnished: Shelf) -> None:
    mix_and_log(log, furnished.state, [of_crop(furnished.crop)])
    mix_and_log(log, furnished.state, [of_crop(furnished.crop)])
    assert [m.edition for m in mixes_of(log)] == [1]
    weaker = replace(furnished.state, doses=furnished.state.doses[:2])
    mix_and_log(log, weaker, [of_crop(furnished.crop)])
    assert [m.edition for m in mixes_of(log)] == [2]


def test_a_tank_gets_a_feed_and_shows_on_its_crop(log: OpenLogbook, furnished: Shelf) -> None:
    mix_and_log(log, furnished.state, [FeedTo(Owner(OwnerKind.TANK, furnished.tank.id))], Mixed(1.9))
    assert [volume for _, volume, _ in feeds(log)] == [20]
    assert mixer_view(log, furnished.state).ec.last_reading.ec_ms_per_cm == 1.9


def test_what_is_left_of_the_tank_is_shared_by_those_without_a_volume(log: OpenLogbook, furnished: Shelf) -> None:
    others = [plant_crop(log, name) for name in ("One", "Two")]
    mix_and_log(log, furnished.state, [of_crop(furnished.crop, 10.0), *(of_crop(c) for c in others)])
    assert sorted(volume for _, volume, _ in feeds(log)) == [5, 5, 10]


def test_a_volume_is_split_by_the_plants_alive(log: OpenLogbook, furnished: Shelf) -> None:
    other = plant_crop(log, "Shelf Ember")
    add_plant(log, furnished.crop)
    owners = [Owner(OwnerKind.CROP, furnished.crop.id), Owner(OwnerKind.CROP, other.id)]
    assert [f.volume_l for f in split_volume(log, owners, 12, DAY)] == [8, 4]


def test_water_alone_is_logged_without_a_mix(log: OpenLogbook, furnished: Shelf) -> None:
    mix_and_log(log, MixerState(5.0), [of_crop(furnished.crop)])
    assert feeds(log) == [(furnished.crop.id, 5.0, None)]
    assert mixes_of(log) == []


@pytest.mark.parametrize(
    ("changed", "given", "field"),
    [
        ({"tank_l": None}, 1, "tank_l"),
        ({"tank_l": 0.0}, 1, "tank_l"),
        ({}, 0, "feeds"),
        ({}, 2, "feeds"),
        ({"day": date(2026, 3, 8)}, 1, "day"),
        ({"day": date(2025, 1, 1)}, 1, "day"),
    ],
)
def test_what_cannot_be_logged_is_refused_and_nothing_is_written(
    log: OpenLogbook, furnished: Shelf, changed: dict[str, object], given: int, field: str
) -> None:
    before = whole(log)
    state = replace(furnished.state, **changed)  # type: ignore[arg-type]
    with pytest.raises(RecordRefused) as refused:
        mix_and_log(log, state, [of_crop(furnished.crop)] * given)
    assert {p.field for p in refused.value.problems} == {field}
    assert whole(log) == before


def test_more_than_the_tank_holds_is_refused(log: OpenLogbook, furnished: Shelf) -> None:
    with pytest.raises(RecordRefused, match="More is given"):
        mix_and_log(log, furnished.state, [of_crop(furnished.crop, 21.0)])


def test_a_solid_by_the_spoon_is_drawn_in_grams(log: OpenLogbook, furnished: Shelf) -> None:
    heaped = replace(furnished.epsom, id="", name="Heaped salt", density_g_per_ml=0.9)
    product = replace(heaped, id=new_product().id)
    add_product(log, product, 500)
    dose = replace(furnished.state.doses[2], product=product.name, product_id=product.id, unit="tsp/tank", amount=2.0)
    mix_and_log(log, replace(furnished.state, doses=(dose,)), [of_crop(furnished.crop)])
    left = next(i.level for i in shelf(log) if i.product.name == "Heaped salt")
    assert left == pytest.approx(500 - 2 * 4.928921594 * 0.9)


def test_a_batch_a_litre_and_a_crop_have_their_cost(log: OpenLogbook, furnished: Shelf) -> None:
    change = mix_and_log(log, furnished.state, [of_crop(furnished.crop)])
    cost = feed_cost(log, change.record_ids[0])
    assert float(cost.amount) == pytest.approx(1.107)
    assert float(cost.per_l or 0) == pytest.approx(0.05535)
    tank = mix_and_log(log, furnished.state, [FeedTo(Owner(OwnerKind.TANK, furnished.tank.id))])
    other = plant_crop(log, "Shelf Ember")
    place_crop(log, other.id, _room(log), SOWN, tank_id=furnished.tank.id)
    assert float(crop_feed_cost(log, furnished.crop.id).amount) == pytest.approx(1.107 * 1.5)
    assert float(crop_feed_cost(log, other.id).amount) == pytest.approx(1.107 / 2)
    assert crop_feed_cost(log, other.id).money.minor == 55
    assert tank.title == "Mix and log Everyday"


def test_a_feed_that_drew_no_bottle_down_costs_what_its_mix_says(log: OpenLogbook, furnished: Shelf) -> None:
    change = mix_and_log(log, furnished.state, [of_crop(furnished.crop)])
    with log.unit() as unit:
        for move in unit.stock_moves.all(entry_id=change.record_ids[0]):
            unit.remove("group", move)
        unit.commit()
    assert float(feed_cost(log, change.record_ids[0]).amount) == pytest.approx(1.107)


def test_an_amount_in_a_unit_that_nothing_knows_is_named_and_left_out_of_the_cost(
    log: OpenLogbook, furnished: Shelf
) -> None:
    part_a, part_b = furnished.part_a, furnished.part_b
    old = (MixPart(part_a.name, 3.0, "drops/L", part_a.id), MixPart(part_b.name, 3.0, "mL/L", part_b.id))
    mix, _ = save_mix(log, "Old notes", old)
    entry = write(log, furnished.crop, DAY, Feed(mix_id=mix.id, volume_l=20.0))
    cost = feed_cost(log, entry.id)
    assert cost.unpriced == (part_a.name,)
    assert cost.amount > 0


def test_a_saved_mix_keeps_its_products_though_one_goes_to_the_bin(log: OpenLogbook, furnished: Shelf) -> None:
    mix, change = save_state(log, furnished.state, "Everyday")
    assert change is not None
    assert save_state(log, furnished.state, " everyday ")[1] is None
    remove_product(log, furnished.part_a.id)
    state = state_of_mix(log, mix.id, MixerState(10.0))
    assert mixer_view(log, state).elements[0].mg_per_l == pytest.approx(147)
    assert [item.product.name for item in shelf(log)] == ["Concentrate B", "Magnesium sulfate"]


def test_the_mixer_opens_with_the_mix_of_the_last_feed(log: OpenLogbook, furnished: Shelf) -> None:
    assert starting_state(log, furnished.crop.id, day=DAY).tank_l == 20
    mix_and_log(log, replace(furnished.state, strength_percent=60.0), [of_crop(furnished.crop)])
    opened = starting_state(log, furnished.crop.id)
    assert (opened.mix_name, opened.strength_percent, opened.tank_id) == ("Everyday", 60, furnished.tank.id)
    assert opened.doses == furnished.state.doses


def test_a_tank_opens_with_the_mix_that_it_was_last_filled_with(log: OpenLogbook, furnished: Shelf) -> None:
    mix_and_log(log, furnished.state, [FeedTo(Owner(OwnerKind.TANK, furnished.tank.id))])
    other, _ = save_state(log, replace(furnished.state, doses=furnished.state.doses[:1]), "Calcium only")
    renewal = TankCare(TankWork.RENEWAL, 0.0, 20.0, mix_id=other.id)
    write_for(log, OwnerKind.TANK, furnished.tank.id, DAY + timedelta(1), renewal)
    opened = starting_state(log, None, furnished.tank.id, DAY + timedelta(1))
    assert (opened.mix_name, opened.tank_l, len(opened.doses)) == ("Calcium only", 20, 1)


def test_a_mix_goes_into_a_file_and_comes_back(log: OpenLogbook, furnished: Shelf, tmp_path: Path) -> None:
    path = tmp_path / "mix.toml"
    state = replace(furnished.state, strength_percent=80.0, ph=5.8)
    file_of_state(log, state, path)
    back = state_of_file(log, path, MixerState())
    assert mixer_view(log, back).elements == mixer_view(log, state).elements
    assert back.guests == ()
    assert (back.doses, back.mix_name, back.ph) == (state.doses, "Everyday", 5.8)
    remove_product(log, furnished.part_a.id)
    assert [p.name for p in state_of_file(log, path, MixerState()).guests] == ["Concentrate A"]


def test_what_came_with_a_file_is_kept_so_that_its_mix_is_known(log: OpenLogbook, crop: Crop) -> None:
    guest = Product("Leaf part", LIQUID, "w/v", {"n_nitrate": 3.0})
    water = Water({"Ca": 40.0, "S": 10.0}, alkalinity_mg_per_l_caco3=100.0)
    state = MixerState(10.0, doses=(MixerDose("Leaf part", 2.0),), mix_name="Given", guests=(guest,), typed_water=water)
    asked = mixer_view(log, state).problems
    assert [(p.field, p.asks) for p in asked] == [("waters", True), ("doses.0.product", True)]
    kept, change = keep_guests(log, state)
    assert change is not None
    mix, _ = save_state(log, kept, "Given")
    again = mixer_view(log, state_of_mix(log, mix.id, MixerState(10.0)))
    assert again.elements == mixer_view(log, state).elements
    assert again.problems == ()
    with pytest.raises(RecordRefused, match="of this name"):
        keep_guests(log, state)
    assert keep_guests(log, kept) == (kept, None)


def _room(log: OpenLogbook) -> str:
    with log.unit() as unit:
        return unit.rooms.all()[0].id


def test_a_mix_that_a_later_feed_uses_stays_when_its_first_is_taken_back(log: OpenLogbook, furnished: Shelf) -> None:
    first = mix_and_log(log, furnished.state, [of_crop(furnished.crop)])
    mix_and_log(log, furnished.state, [of_crop(furnished.crop)])
    undo(log, first)
    assert [m.name for m in mixes_of(log)] == ["Everyday"]
    assert levels(log)[0] == 940
