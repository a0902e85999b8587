"""What-ifs: only what changes is counted, and a yield change that is not given is not nought."""

from datetime import time
from decimal import Decimal

import pytest

from growlog.calculations.partial_budget import BudgetLine
from growlog.records.crop import Crop
from growlog.records.entry import LightChange
from growlog.records.problems import RecordRefused
from growlog.records.tariff import TariffBand
from growlog.services.crops import clear_crop
from growlog.services.open_logbook import OpenLogbook
from growlog.services.what_if import OtherCost, WhatIf, WhatIfAnswer, starting_point, what_if
from tests.logbooks import plant_crop, write
from tests.services.review.grown import day, grown, priced

pytestmark = pytest.mark.slow

# The crop: 71 days of 16 h at 100 W, 113.6 kWh at 0.25; 150 min of work at 6.00 an hour, 60 of them pollinating and 60
# picking; coir for 5.00; 20 fruit at 4.50 in a shop.
COST = Decimal("48.40")
ALL_DAY = TariffBand(time(0), time(0), "0.20")


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    made = grown(log, shop_price_minor_per_fruit=450)
    priced(log, made)
    clear_crop(log, made.id, day(70))
    return made


def ask(log: OpenLogbook, crop: Crop, **change: object) -> WhatIfAnswer:
    return what_if(log, crop.id, WhatIf(**change))  # type: ignore[arg-type]


def words(text: str) -> str:
    return " ".join(text.split())


def test_a_form_starts_from_the_crop_as_it_was_grown(log: OpenLogbook, crop: Crop) -> None:
    start = starting_point(log, crop.id)
    assert (start.lamp_w, start.photoperiod_h, start.price_per_kwh, start.plants) == (100, 16, Decimal("0.25"), 1)
    assert (start.pollination_minutes, start.currency) == (60, "EUR")


def test_another_price_of_power_changes_the_power_alone(log: OpenLogbook, crop: Crop) -> None:
    answer = ask(log, crop, price_per_kwh=Decimal("0.15"))
    assert answer.budget.reduced_costs == (BudgetLine("power", Decimal("11.36")),)
    assert answer.net == Decimal("11.36")
    assert answer.cost_per_fruit_now == COST / 20
    assert answer.cost_per_fruit_then == (COST - Decimal("11.36")) / 20
    assert words(answer.headline) == "0.57 EUR a fruit cheaper"
    assert [(c.label, words(c.now), words(c.then)) for c in answer.changes] == [
        ("Price of a kWh", "0.25 EUR", "0.15 EUR")
    ]


def test_fewer_hours_of_light_ask_for_the_yield_change_and_answer_with_the_break_even(
    log: OpenLogbook, crop: Crop
) -> None:
    answer = ask(log, crop, photoperiod_h=12.0)
    assert answer.needs_yield_change
    assert answer.net is None
    assert answer.cost_per_fruit_then is None
    # A quarter of 28.40 saved, over 90.00 of fruit less 6.00 of picking.
    assert answer.break_even_yield_percent == pytest.approx(Decimal("-100") * Decimal("7.10") / 84)
    assert words(answer.headline) == "pays with up to 8.5 % less yield"
    assert "is not given" in answer.sentences[0]


def test_nought_is_an_answer_and_not_a_blank(log: OpenLogbook, crop: Crop) -> None:
    answer = ask(log, crop, photoperiod_h=12.0, yield_change_percent=0.0)
    assert answer.net == Decimal("7.10")
    assert not answer.needs_yield_change


def test_at_the_break_even_yield_change_the_net_is_nought(log: OpenLogbook, crop: Crop) -> None:
    needed = ask(log, crop, photoperiod_h=12.0).break_even_yield_percent
    assert needed is not None
    answer = ask(log, crop, photoperiod_h=12.0, yield_change_percent=float(needed))
    assert answer.net == pytest.approx(Decimal(0), abs=Decimal("0.02"))


def test_at_the_same_cost_yield_change_a_fruit_costs_what_it_cost(log: OpenLogbook, crop: Crop) -> None:
    needed = ask(log, crop, photoperiod_h=12.0).same_cost_yield_percent
    assert needed is not None
    answer = ask(log, crop, photoperiod_h=12.0, yield_change_percent=float(needed))
    assert answer.cost_per_fruit_then == pytest.approx(COST / 20, abs=Decimal("0.001"))


def test_other_lamps_count_their_watts_and_their_price_over_their_life(log: OpenLogbook, crop: Crop) -> None:
    answer = ask(log, crop, lamp_w=50.0, lamp_price_minor=9000, lamp_life_crops=9, yield_change_percent=-10.0)
    assert dict(answer.parts)["Added costs"] == (("new lamps, this crop's part", "10.00\u2009EUR"),)
    reduced = {label: words(amount) for label, amount in dict(answer.parts)["Reduced costs"]}
    assert reduced == {"power": "14.20 EUR", "picking, as the yield": "0.60 EUR"}
    assert dict(answer.parts)["Reduced returns"] == (("less fruit", "9.00\u2009EUR"),)
    assert answer.net == Decimal("-4.20")
    # 4.80 saved for two fruit less: at any price above 2.40 the change loses.
    assert answer.break_even_price == Decimal("2.4")


def test_a_cultivar_that_needs_no_pollination_saves_its_minutes(log: OpenLogbook, crop: Crop) -> None:
    answer = ask(log, crop, sets_alone=True, cultivar="Sets Alone")
    assert answer.budget.reduced_costs == (BudgetLine("pollination by hand", Decimal("6.00")),)
    assert answer.needs_yield_change


def test_more_plants_yield_in_proportion_until_told_otherwise(log: OpenLogbook, crop: Crop) -> None:
    answer = ask(log, crop, plants=2)
    assert answer.yield_change_percent == 100
    assert "Each plant is taken to yield as before" in answer.sentences[0]
    # Coir 5.00, work 15.00 in all once more; the power stays.
    assert answer.budget.cost_change == Decimal("20.00")
    assert answer.net == Decimal("70.00")
    assert answer.cost_per_fruit_then == (COST + 20) / 40
    assert ask(log, crop, plants=2, yield_change_percent=50.0).yield_change_percent == 50


def test_a_weaker_feed_asks_too_but_the_same_strength_does_not(log: OpenLogbook, crop: Crop) -> None:
    assert ask(log, crop, feed_strength_percent=80.0).needs_yield_change
    assert not ask(log, crop, feed_strength_percent=100.0, yield_change_percent=0.0).needs_yield_change
    assert ask(log, crop, system="recirculating", other_costs=(OtherCost("pump", 300),)).needs_yield_change


def test_without_a_shop_price_fruit_has_no_worth_but_its_cost_is_told(log: OpenLogbook) -> None:
    crop = grown(log)
    priced(log, crop)
    answer = ask(log, crop, photoperiod_h=12.0)
    assert answer.break_even_yield_percent is None
    assert answer.same_cost_yield_percent is not None
    assert ask(log, crop, photoperiod_h=12.0, yield_change_percent=5.0).net is None


def test_a_crop_without_picks_and_prices_has_an_answer_that_says_what_is_missing(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    answer = ask(log, crop, photoperiod_h=12.0)
    assert (answer.cost_per_fruit_now, answer.net, answer.headline) == (None, None, "what changes has no price yet")
    assert any("No tariff is stated" in s for s in answer.sentences)


def test_every_figure_says_how_it_was_worked_out(log: OpenLogbook, crop: Crop) -> None:
    figures = {f.key: f for f in ask(log, crop, photoperiod_h=12.0, yield_change_percent=-5.0).figures}
    assert set(figures) == {"partial-budget", "break-even-yield-change", "break-even-price", "cost-per-fruit-then"}
    assert all(f.method and f.source for f in figures.values())


def test_lamps_that_burn_by_night_pay_the_price_of_the_night(log: OpenLogbook, crop: Crop) -> None:
    bands = (TariffBand(time(6), time(22), "0.30"), TariffBand(time(22), time(6), "0.10"))
    by_day = ask(log, crop, tariff_bands=bands)
    # On from 06:00 to 22:00: all of the 113.6 kWh at 0.30 for 0.25.
    assert by_day.budget.added_costs == (BudgetLine("power", Decimal("5.68")),)
    by_night = ask(log, crop, tariff_bands=bands, on_at=time(18))
    # On from 18:00: four hours by day and eight by night, and the last four by day again; the last night is cut off.
    assert by_night.budget.reduced_costs[0].amount > 5
    assert not by_night.needs_yield_change
    assert [c.label for c in by_night.changes] == ["Lamps on at", "Price of a kWh"]


@pytest.mark.parametrize("change", [{}, {"price_per_kwh": Decimal(1), "tariff_bands": (ALL_DAY,)},
                                    {"tariff_bands": (TariffBand(time(6), time(7), "1"),)},
                                    {"photoperiod_h": 25.0}, {"yield_change_percent": -101.0}, {"plants": 0},
                                    {"lamp_w": -1.0}, {"other_costs": (OtherCost(" ", 5),)}])  # fmt: skip
def test_a_change_that_cannot_be_is_refused(log: OpenLogbook, crop: Crop, change: dict[str, object]) -> None:
    with pytest.raises(RecordRefused):
        ask(log, crop, **change)


def test_lamps_of_the_same_watts_change_nothing_even_where_seedlings_stood_under_dimmed_ones(log: OpenLogbook) -> None:
    crop = grown(log, shop_price_minor_per_fruit=450)
    priced(log, crop)
    write(log, crop, day(5), LightChange(16.0, time(6), 40.0, 400.0))
    write(log, crop, day(25), LightChange(16.0, time(6), 100.0, 400.0))
    clear_crop(log, crop.id, day(70))
    assert ask(log, crop, lamp_w=100.0, yield_change_percent=0.0).net == 0
    # 51 days at 100 W and 20 at 40 W, 16 h each, half of them saved; a kWh at 0.25.
    saved = ask(log, crop, lamp_w=50.0, yield_change_percent=0.0).net
    assert saved == pytest.approx(Decimal("0.25") * (51 * 1600 + 20 * 640) / 2000, abs=Decimal("0.02"))


def test_new_lamps_without_a_price_are_said_to_have_none(log: OpenLogbook, crop: Crop) -> None:
    assert any("neither their price" in s for s in ask(log, crop, lamp_w=50.0).sentences)
    assert not any("neither their price" in s for s in ask(log, crop, lamp_w=50.0, lamp_price_minor=900).sentences)


def test_no_yield_change_below_all_of_the_yield_is_named(log: OpenLogbook, crop: Crop) -> None:
    answer = ask(log, crop, photoperiod_h=12.0, other_costs=(OtherCost("rent", -9000),))
    assert answer.break_even_yield_percent is not None
    assert answer.break_even_yield_percent < -100
    assert answer.headline == "saves more than the whole yield is worth"
    assert any("it pays at any yield" in s for s in answer.sentences)
    assert not any("%" in s for s in answer.sentences)
