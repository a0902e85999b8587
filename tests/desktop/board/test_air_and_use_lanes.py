"""Lanes of the air and of what a crop takes: there only with data, told in words, calm beside single dear days."""

from datetime import date, timedelta
from typing import Any

import pytest

from growlog.calculations.crop_light import usual_light
from growlog.calculations.light import LightSpan
from growlog.desktop.board.lanes import CostLane, DryAirLane, EnergyLane, LightLane, TemperatureLane
from growlog.desktop.board.lanes.light_lane import against_usual
from growlog.desktop.board.lanes.use_lanes import highest_shown
from growlog.records.climate_day import ClimateDay
from growlog.services.board_use import BoardUse, EnergyUse
from growlog.services.climate.of_crop import CropClimateDay
from growlog.services.money.costs import CostDay
from growlog.services.money.lines import CostKind
from growlog.words import show_units
from tests.desktop.board.boards import SOWN, full_board, shown_board

pytestmark = pytest.mark.usefixtures("qapp")


def air(age: int, samples: int = 144, **values: float) -> CropClimateDay:
    usual = {"temperature_min_c": 18.0, "temperature_mean_c": 21.0, "temperature_max_c": 24.0, "vpd_mean_kpa": 0.9}
    day = ClimateDay(SOWN + timedelta(days=age), samples, **{**usual, **values})  # type: ignore[arg-type]
    return CropClimateDay(age, day)


CLIMATE = (
    air(0), air(1, humidity_mean_percent=60.0), air(2, night_humidity_mean_percent=86.0),
    air(5, dew_point_max_c=18.5), air(6, 0, temperature_min_c=21.0, temperature_max_c=21.0),
)  # fmt: skip
USE = BoardUse(
    "crop",
    (
        CostDay(date(2025, 11, 15), 0, {CostKind.SEED: 1900, CostKind.ENERGY: 100}),
        CostDay(date(2025, 11, 16), 1, {CostKind.ENERGY: 100}),
        CostDay(date(2025, 11, 17), 2, {CostKind.ENERGY: 100}),
    ),
    (EnergyUse(0, 1.25), EnergyUse(1, 1.25), EnergyUse(2, 0.8)),
    "EUR",
)


def plain(lines: list[str]) -> list[str]:
    return [line.replace("\u2009", " ") for line in lines]


def shown_keys(board: Any) -> list[str]:
    return [placed.lane.key for placed in board.surface.lanes.placed()]


def test_the_new_lanes_take_room_only_with_something_to_show(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.set_hidden_lanes([])
    new = {"temperature", "vpd", "cost", "energy"}
    assert new.isdisjoint(shown_keys(board))
    board.show_board(full_board(climate=CLIMATE, use=USE), 5)
    assert new <= set(shown_keys(board))
    board.grab()


def test_temperature_tells_its_span_and_where_it_is_known_from() -> None:
    lane = TemperatureLane()
    lane.show_board(full_board(climate=CLIMATE))
    assert plain(lane.tell(1)) == ["18.0 °C to 24.0 °C, mean 21.0 °C, 60 % RH"]
    assert plain(lane.tell(6)) == ["21.0 °C, from readings"]
    assert plain([lane.second_line()]) == ["18 to 24 °C"]
    show_units("us")
    assert plain([lane.second_line()]) == ["64 to 75 °F"]


def test_humid_nights_and_dew_are_told_and_marked_apart() -> None:
    lane = DryAirLane()
    lane.show_board(full_board(climate=CLIMATE))
    assert plain(lane.tell(0)) == ["0.90 kPa"]
    assert plain(lane.tell(2)) == ["0.90 kPa; 86 % in the dark"]
    assert plain(lane.tell(5)) == ["0.90 kPa; dew point up to 18.5 °C, so the coolest surfaces turned wet"]
    assert "80" in lane.summary()


def test_a_day_s_cost_is_told_by_kind() -> None:
    lane = CostLane()
    lane.show_board(full_board(use=USE))
    assert plain(lane.tell(0)) == ["20.00 EUR: seed 19.00 EUR, electricity 1.00 EUR"]
    assert plain(lane.tell(1)) == ["electricity 1.00 EUR"]
    assert lane.second_line() == "EUR a day"
    assert "3.00" in lane.summary()


@pytest.mark.parametrize("totals, top", [([100, 100, 2000], 300), ([100, 150, 200], 200), ([0, 0], 1), ([], 1)])
def test_a_single_dear_day_does_not_flatten_all_others(totals: list[int], top: float) -> None:
    assert highest_shown(totals) == top


def test_electricity_is_told_in_kwh() -> None:
    lane = EnergyLane()
    lane.show_board(full_board(use=USE))
    assert plain(lane.tell(2)) == ["0.80 kWh"]
    assert plain([lane.second_line()]) == ["up to 1.2 kWh a day"]


def test_light_is_held_against_the_usual_range_of_the_crop_with_its_source() -> None:
    usual = usual_light("pattypan")[0]
    lane = LightLane()
    spans = (LightSpan(0, 9, 16, 40, 200, 11.5), LightSpan(10, 112, 14, 100, 500, 25.2))
    lane.show_board(full_board(usual_light=usual, light=spans))
    assert lane.tell(5)[0].endswith("below the usual 20 mol/m²")
    assert "usual" not in lane.tell(50)[0]
    assert "20 to 30 mol/m² a day (common practice, from memory)" in lane.summary()


@pytest.mark.parametrize("dli, words", [
    (19.9, "below the usual 20 mol/m²"), (20, ""), (30.1, "above the usual 30 mol/m²"),
])  # fmt: skip
def test_a_day_against_the_usual_range(dli: float, words: str) -> None:
    assert against_usual(dli, usual_light("pattypan")[0]) == words


def test_the_humidity_watched_decides_which_nights_are_marked(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.show_board(full_board(climate=CLIMATE), 5)
    lane = board.surface.lanes.lane("vpd")
    assert "dark" in lane.tell(2)[0]
    board.surface.lanes.watch_humidity(90)
    assert "dark" not in lane.tell(2)[0]
    assert "90" in lane.summary()
