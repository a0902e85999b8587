"""Electricity of rooms and crops by day: programme, devices, tariffs and shares."""

from dataclasses import replace
from datetime import date, time, timedelta
from decimal import Decimal

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import LightChange, OwnerKind
from growlog.records.light_plan import LightStep
from growlog.records.problems import RecordRefused
from growlog.records.room import Device, DeviceSort, EnergySharing, Lamp, Room
from growlog.records.tariff import Tariff, TariffBand
from growlog.services.crops import clear_crop
from growlog.services.energy.of_crop import energy_of_crop
from growlog.services.energy.of_room import energy_of_room
from growlog.services.energy.shares import save_shares
from growlog.services.energy.tariffs import check_tariff, new_tariff, remove_tariff, save_tariff, tariffs_of
from growlog.services.light.steps import save_step
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import place_crop, placements_of, remove_thing, rooms_of, save_thing
from growlog.services.undo import undo
from tests.logbooks import SOWN, furnish, plant_crop, write_for


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


@pytest.fixture
def room(log: OpenLogbook, crop: Crop) -> Room:
    return furnish(log, crop)[0]


def lit(log: OpenLogbook, room: Room, hours: float = 18, on_at: time | None = time(20), **lamp: object) -> None:
    """Lamps of 200 W at the wall, unless told otherwise, and their hours."""
    shape = {"wall_w": 100.0, "lamp_count": 2} | lamp
    save_thing(log, Lamp(new_id(), room.id, "Lamp", **shape))  # type: ignore[arg-type]
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(hours, on_at))


def banded(day: date, *bands: tuple[time, time, str], charge: int | None = None) -> Tariff:
    return Tariff(new_id(), "Tariff", day, tuple(TariffBand(*b) for b in bands), charge)


@pytest.mark.parametrize(
    ("lamp", "kwh"),
    # Common practice, no source: 0.8 kW, 18 h a day for six weeks, then 12 h to day 120; 15 % more with a ballast.
    [({"wall_w": 400.0}, 1353.6), ({"wall_w": None, "rated_w": 400.0, "ballast_loss_percent": 15.0}, 1353.6 * 1.15)],
    ids=["at the wall", "with ballast"],
)
def test_a_season_of_lamps_takes_what_the_trade_reckons(
    log: OpenLogbook, crop: Crop, room: Room, lamp: dict[str, float | None], kwh: float
) -> None:
    lit(log, room, 18, time(6), **lamp)
    save_step(log, LightStep(new_id(), room.id, None, crop.id, 42, 12.0))
    assert energy_of_room(log, room.id, at(0), at(119)).kwh == pytest.approx(kwh)


def test_lamps_past_midnight_count_by_the_clock_on_the_day_they_burn(log: OpenLogbook, room: Room) -> None:
    lit(log, room, 18, time(20))
    days = energy_of_room(log, room.id, at(0), at(2)).days
    assert [d.lamps_kwh for d in days] == pytest.approx([0.8, 3.6, 3.6])
    assert [d.lit_h for d in days] == pytest.approx([4, 18, 18])


def test_devices_run_around_the_clock_by_their_hours_or_with_the_lamps(log: OpenLogbook, room: Room) -> None:
    lit(log, room, 12, time(6))
    save_thing(log, Device(new_id(), room.id, "Fan", DeviceSort.FAN, 10))
    save_thing(log, Device(new_id(), room.id, "Pump", DeviceSort.PUMP, 100, hours_per_day=2, duty_percent=50))
    save_thing(log, Device(new_id(), room.id, "Heater", DeviceSort.HEATER, 50, with_lamps=True, from_day=at(5)))
    days = energy_of_room(log, room.id, at(0), at(5)).days
    assert days[0].devices_kwh == pytest.approx(0.24 + 0.1)
    assert days[5].devices_kwh == pytest.approx(0.24 + 0.1 + 0.6)
    (view,) = rooms_of(log)
    assert [d.name for d in view.devices] == ["Fan", "Pump", "Heater"] or len(view.devices) == 3
    fan = next(d for d in view.devices if d.name == "Fan")
    change = remove_thing(log, fan)
    assert len(rooms_of(log)[0].devices) == 2
    undo(log, change)
    assert len(rooms_of(log)[0].devices) == 3


def test_dimmed_lamps_draw_in_proportion(log: OpenLogbook, room: Room) -> None:
    lit(log, room, 10, time(6))
    write_for(log, OwnerKind.ROOM, room.id, at(1), LightChange(10, None, 40))
    assert [d.lamps_kwh for d in energy_of_room(log, room.id, at(0), at(1)).days] == pytest.approx([2.0, 0.8])


def test_bands_split_a_night_by_the_clock(log: OpenLogbook, room: Room) -> None:
    lit(log, room, 18, time(20))
    save_tariff(log, banded(at(0), (time(7), time(22), "0.30"), (time(22), time(7), "0.10"), charge=50))
    second = energy_of_room(log, room.id, at(0), at(1)).days[1]
    # By hand: lamps of 200 W from midnight to 14:00 and from 20:00: 9 h in the dear band, 9 h in the cheap one.
    assert second.cost == Decimal("0.2") * 9 * Decimal("0.30") + Decimal("0.2") * 9 * Decimal("0.10") + Decimal("0.50")


def test_a_tariff_holds_until_the_next_begins(log: OpenLogbook, room: Room) -> None:
    lit(log, room, 10, time(6))
    save_tariff(log, new_tariff(at(1), "0.20"))
    save_tariff(log, new_tariff(at(3), "0.40"))
    found = energy_of_room(log, room.id, at(0), at(4))
    assert [d.cost for d in found.days] == [None, *[Decimal("0.4")] * 2, *[Decimal("0.8")] * 2]
    assert "Some days lie before the first tariff and have no cost." in found.notes


def test_tariffs_that_begin_on_one_day_overlap_and_are_refused(log: OpenLogbook) -> None:
    first = new_tariff(at(0), "0.20")
    save_tariff(log, first)
    with pytest.raises(RecordRefused, match="two tariffs cannot hold at once"):
        save_tariff(log, new_tariff(at(0), "0.30"))
    assert [p.field for p in check_tariff(log, new_tariff(at(0), "0.30"))] == ["from_day"]
    undo(log, remove_tariff(log, first))
    assert [t.from_day for t in tariffs_of(log)] == [at(0)]


@pytest.mark.parametrize(
    ("bands", "sentence"),
    [
        (((time(7), time(22), "0.3"), (time(21), time(7), "0.1")), "bands overlap"),
        (((time(7), time(22), "0.3"),), "leave a gap"),
        (((time(0), time(0), "cheap"),), "cheap is not a price"),
    ],
)
def test_bands_that_overlap_or_leave_a_gap_are_refused(
    log: OpenLogbook, bands: tuple[tuple[time, time, str], ...], sentence: str
) -> None:
    with pytest.raises(RecordRefused, match=sentence):
        save_tariff(log, banded(at(0), *bands))


def test_energy_is_shared_by_floor_equally_or_by_hand(log: OpenLogbook, crop: Crop, room: Room) -> None:
    other = plant_crop(log, "Shelf Ember", at(10))
    place_crop(log, other.id, room.id, at(10), floor_share=0.25)
    lit(log, room, 10, time(6))

    def shares() -> list[float]:
        return [round(energy_of_crop(log, c.id, at(20)).days[-1].share, 3) for c in (crop, other)]

    assert shares() == [0.5, 0.25]
    save_thing(log, replace(rooms_of(log)[0].room, energy_sharing=EnergySharing.EQUALLY))
    assert shares() == [0.5, 0.5]
    save_thing(log, replace(rooms_of(log)[0].room, energy_sharing=EnergySharing.BY_HAND))
    assert shares() == [0, 0]
    own, others = placements_of(log, crop.id)[0], placements_of(log, other.id)[0]
    change = save_shares(log, [replace(own, energy_share=0.7), replace(others, energy_share=0.3)])
    assert shares() == [0.7, 0.3]
    undo(log, change)
    assert shares() == [0, 0]


def test_shares_over_the_whole_are_refused(log: OpenLogbook, crop: Crop, room: Room) -> None:
    other = plant_crop(log, "Shelf Ember", at(10))
    place_crop(log, other.id, room.id, at(10), floor_share=0.25)
    own, others = placements_of(log, crop.id)[0], placements_of(log, other.id)[0]
    with pytest.raises(RecordRefused, match="25 % of the floor already"):
        save_shares(log, [replace(own, floor_share=0.8)])
    with pytest.raises(RecordRefused, match="% of the energy already"):
        save_shares(log, [replace(own, energy_share=0.8), replace(others, energy_share=0.3)])
    save_shares(log, [replace(own, floor_share=0.8), replace(others, floor_share=0.2)])
    assert placements_of(log, other.id)[0].floor_share == 0.2


def test_a_crop_bears_its_share_while_it_stands(log: OpenLogbook, crop: Crop, room: Room) -> None:
    lit(log, room, 10, time(6))
    save_tariff(log, new_tariff(at(0), "0.20"))
    clear_crop(log, crop.id, at(9))
    energy = energy_of_crop(log, crop.id)
    assert (len(energy.days), energy.kwh, energy.cost) == (10, pytest.approx(10.0), Decimal("2.0"))
    assert energy_of_crop(log, crop.id, at(4)).kwh == pytest.approx(5.0)


def test_what_is_missing_is_said(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_thing(log, Lamp(new_id(), room.id, "Lamp"))
    assert [n.split()[0] for n in energy_of_crop(log, crop.id).notes] == ["No", "No", "No"]
    assert "No watts are stated for Lamp" in energy_of_crop(log, crop.id).notes[0]
