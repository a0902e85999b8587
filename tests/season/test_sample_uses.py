"""What the sample season shows of shelf, plans, power, air, tags and decision holds together once it is a logbook."""

from datetime import date
from statistics import median

import pytest

from growlog.calculations.stock import stock_level
from growlog.records.display import THIN
from growlog.records.entry import Feed, OwnerKind, Reading
from growlog.services.climate.of_crop import climate_of_room
from growlog.services.crops import crop_named, crops_of
from growlog.services.due.due_list import due_items
from growlog.services.energy.meter import meter_checks
from growlog.services.facts.facts import fact_of
from growlog.services.feed_plan import planned_feed
from growlog.services.flower_tags import TagFate, tag_book
from growlog.services.mixer.starting import starting_state
from growlog.services.mixer.view import mixer_view
from growlog.services.money.costs import costs_of_crop
from growlog.services.money.lines import CostKind
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf.stock import calc_moves, moves_of, shelf
from growlog.sharing.data_package import Package, read_package
from tests.season.conftest import SAMPLE

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("sample_season")]

LAST_DAY = date(2026, 3, 7)


@pytest.fixture(scope="session")
def season() -> Package:
    return read_package(SAMPLE)


def id_of(log: OpenLogbook, name: str) -> str:
    crop = crop_named(log, name)
    assert crop is not None
    return crop.id


@pytest.mark.parametrize(("day", "mix"), [(date(2025, 12, 1), "A + B 2.0 mL/L"), (date(2026, 1, 18), "A + B 3.0 mL/L")])
def test_the_mixer_reckons_an_ec_near_what_the_feeds_measured(
    log: OpenLogbook, season: Package, day: date, mix: str
) -> None:
    mix_id = next(m.id for m in season.mixes if m.name == mix)
    read = [e.detail.ec_ms_per_cm for e in season.entries if isinstance(e.detail, Feed) and e.detail.mix_id == mix_id]
    view = mixer_view(log, starting_state(log, id_of(log, "Boxroom Gold"), day=day))
    assert view.ec is not None
    assert view.ec.estimate == pytest.approx(median(ec for ec in read if ec is not None), abs=0.06)
    assert view.charges is not None
    assert abs(view.charges.difference_percent) < 5  # a label of salts leaves no charge out


def test_each_feed_was_what_the_plan_had_for_its_day(log: OpenLogbook, season: Package) -> None:
    fed = [e for e in season.entries if isinstance(e.detail, Feed) and not e.detail.water_only]
    for entry in fed:
        planned = planned_feed(log, entry.owner.id, entry.day)
        assert planned is not None
        assert isinstance(entry.detail, Feed)
        assert planned.mix.id == entry.detail.mix_id


def test_no_bottle_was_ever_overdrawn_and_each_in_use_lasts_some_days(log: OpenLogbook) -> None:
    for item in shelf(log):
        moves = calc_moves(moves_of(log, item.product.id)[::-1])
        assert all((stock_level(moves, day).amount or 0.0) > 0 for day in {m.day for m in moves}), item.product.name
    left = {i.product.name: i.days_left for i in shelf(log)}
    assert left.pop("Magnesium sulfate") is None
    assert all(days is not None and days > 7 for days in left.values()), left


def test_the_meter_counted_a_little_more_than_lamps_and_devices_are_reckoned_to_take(
    log: OpenLogbook, season: Package
) -> None:
    checks = meter_checks(log, season.rooms[0].id)
    assert len(checks) == 3
    assert all(check.problem == "" and -6 < (check.difference_percent or 0.0) < 0 for check in checks)


def test_three_to_five_things_are_due_on_the_last_day_and_none_is_late(log: OpenLogbook) -> None:
    due = due_items(log, LAST_DAY, LAST_DAY)
    assert 3 <= len(due) <= 5
    assert not [item for item in due if item.late_days]


def test_the_loggers_hours_cover_all_days_and_agree_with_the_evening_readings(
    log: OpenLogbook, season: Package
) -> None:
    assert (SAMPLE / "climate_samples.csv").stat().st_size < 1_000_000
    days = {d.day: d for d in climate_of_room(log, season.rooms[0].id)}
    assert len(days) == (LAST_DAY - min(days)).days + 1
    assert sum(d.sample_count < 20 for d in days.values()) == 1  # the day of the empty battery
    for entry in season.entries:
        if entry.owner.kind is OwnerKind.ROOM and isinstance(entry.detail, Reading):
            assert entry.detail.air_temperature_c == pytest.approx(days[entry.day].temperature_max_c, abs=1.5)


def test_every_tagged_flower_came_to_an_end_that_was_seen(log: OpenLogbook) -> None:
    book = tag_book(log, id_of(log, "Boxroom Gold"))
    assert book.loose == book.hanging == ()
    fates = [story.fate for story in book.stories]
    assert len(fates) == 18
    assert 0.4 < fates.count(TagFate.PICKED) / len(fates) < 0.7
    assert all(5 <= s.days_to_pick <= 9 for s in book.stories if s.days_to_pick is not None)


def test_the_figures_quoted_in_the_decision_are_those_of_its_day(log: OpenLogbook, season: Package) -> None:
    (decision,) = season.decisions
    assert decision.crop_id == id_of(log, "Skylight Round")
    for quoted in decision.figures:
        figure = fact_of(log, decision.crop_id, quoted.figure_key, decision.decided_on)
        number, _, unit = quoted.value_text.partition(THIN)
        assert float(number) == pytest.approx(float(figure.value or 0), rel=2e-4), quoted
        assert unit == figure.unit


def test_a_crop_costs_something_of_every_kind_that_it_used(log: OpenLogbook) -> None:
    for summary in crops_of(log):
        costs = costs_of_crop(log, summary.crop.id)
        assert costs.notes == (), summary.crop.name
        kinds = {CostKind.ENERGY, CostKind.NUTRIENTS, CostKind.WATER, CostKind.MEDIUM, CostKind.GEAR, CostKind.LABOUR}
        assert set(costs.by_kind) >= kinds, summary.crop.name
