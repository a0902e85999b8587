"""What the mixer shows: figures, marks, EC, order, cost and problems beside their fields."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from growlog.calculations.products import LIQUID, Product
from growlog.records.entry import Feed
from growlog.records.product import LabelShare
from growlog.records.recipe import WaterShare
from growlog.services.crops import change_crop, crop_and_cultivar
from growlog.services.mixer import (
    ElementLine,
    MixerDose,
    MixerState,
    MixerView,
    MixTarget,
    OwnTarget,
    PublishedTarget,
    Range,
    Standing,
    line_for,
    mixer_view,
    save_state,
    stock_tank_warnings,
    target_offers,
)
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf import add_product, change_product, counted
from growlog.services.waters import new_water, save_water
from tests.logbooks import write
from tests.services.mixer.bottles import Shelf, bottle

pytestmark = pytest.mark.slow

DAY = date(2026, 3, 1)


def element(view: MixerView, key: str) -> ElementLine:
    """The line of an element."""
    return next(line for line in view.elements if line.key == key)


def test_the_elements_are_doses_times_labels(log: OpenLogbook, furnished: Shelf) -> None:
    view = mixer_view(log, furnished.state)
    # By hand: 3 mL/L of 4.9 % w/v N are 147 mg/L; K 9.2 % K2O times 0.83015; Mg 3 x 9 and 0.15 x 98.
    assert element(view, "N").mg_per_l == pytest.approx(147)
    assert element(view, "NH4-N").mg_per_l == pytest.approx(9)
    assert element(view, "K").mg_per_l == pytest.approx(3 * 92 * 0.83015, rel=1e-4)
    assert element(view, "Mg").mg_per_l == pytest.approx(27 + 14.7)
    assert element(view, "K").mmol_per_l == pytest.approx(element(view, "K").meq_per_l)
    assert view.ratios.ammonium_percent == pytest.approx(100 * 9 / 147)
    assert view.ratios.k_ca_mg_words.startswith("K : Ca : Mg 5.5 : 3.4 : 1")
    assert view.ready


def test_a_line_shows_its_amount_for_the_tank_and_what_the_bottle_holds(log: OpenLogbook, furnished: Shelf) -> None:
    line = mixer_view(log, replace(furnished.state, strength_percent=50.0)).lines[0]
    assert (line.tank_amount, line.measure, line.left, line.enough) == (30, "mL", 1000, True)
    assert line.cost == pytest.approx(Decimal("0.27"))


def test_the_tank_and_a_litre_cost_what_their_bottles_did(log: OpenLogbook, furnished: Shelf) -> None:
    cost = mixer_view(log, furnished.state).cost
    # 9.00 for 1000 mL or g; 6.15 of them a litre, 123 a tank.
    assert cost.per_l == pytest.approx(Decimal("0.05535"))
    assert cost.per_tank == pytest.approx(Decimal("1.107"))
    assert cost.money is not None
    assert cost.money.minor == 111
    assert cost.unpriced == ()


def test_water_counts_and_is_not_scaled(log: OpenLogbook, furnished: Shelf) -> None:
    tap = replace(new_water("tap"), ca_mg_per_l=80.0, so4_mg_per_l=30.0, alkalinity_mg_per_l_caco3=150.0)
    rain = new_water("rain")
    save_water(log, tap)
    save_water(log, rain)
    halves = (WaterShare(tap.id, 0.5), WaterShare(rain.id, 0.5))
    view = mixer_view(log, replace(furnished.state, waters=halves, strength_percent=50.0))
    assert element(view, "Ca").from_water_mg_per_l == pytest.approx(40)
    assert element(view, "Ca").mg_per_l == pytest.approx(40 + 3 * 47 / 2)
    assert view.ec.of_water == pytest.approx(0.19, abs=0.02)
    uneven = replace(furnished.state, waters=(WaterShare(tap.id, 0.5),))
    assert [p.field for p in mixer_view(log, uneven).problems] == ["waters"]


def test_ec_is_shown_with_its_band_and_the_scales_of_meters(log: OpenLogbook, furnished: Shelf) -> None:
    ec = mixer_view(log, furnished.state).ec
    assert ec is not None
    assert ec.low < ec.estimate < ec.high
    assert ec.us_per_cm == pytest.approx(1000 * ec.estimate)
    assert list(ec.meter_scales) == [500, 640, 700]
    assert (ec.offset, ec.your_meter, ec.last_reading) == (None, None, None)
    assert "not yet" in ec.offset_words


def test_the_meter_s_offset_is_learned_from_readings_after_mixing(log: OpenLogbook, furnished: Shelf) -> None:
    mix, _ = save_state(log, furnished.state, "Everyday")
    estimate = mixer_view(log, furnished.state).ec.estimate
    for day in (1, 2, 3):
        detail = Feed(mix.id, 100.0, 2.0, round(estimate * 1.05, 4))
        write(log, furnished.crop, date(2026, 3, day), detail)
    ec = mixer_view(log, furnished.state).ec
    assert ec.offset.ratio == pytest.approx(1.05, rel=1e-3)
    assert ec.your_meter == pytest.approx(estimate * 1.05, rel=1e-3)
    assert (ec.last_reading.day, ec.last_reading.age) == (date(2026, 3, 3), 108)
    assert "3 readings of this crop" in ec.offset_words


def test_each_element_stands_within_below_or_above_its_range(log: OpenLogbook, furnished: Shelf) -> None:
    own = OwnTarget({"N": Range(140, 180), "Ca": Range(151, 190), "Mg": Range(None, 40), "Fe": Range(1.5, 3)})
    view = mixer_view(log, replace(furnished.state, target=own))
    shown = {line.key: (line.standing, line.words) for line in view.elements if line.range}
    assert shown["N"] == (Standing.WITHIN, "within")
    assert shown["Ca"] == (Standing.BELOW, "10 below")
    assert shown["Mg"] == (Standing.ABOVE, "1.7 above")
    assert shown["Fe"] == (Standing.BELOW, "1.5 below")


def test_published_targets_carry_source_and_certainty_and_suit_the_species(log: OpenLogbook, furnished: Shelf) -> None:
    offers = target_offers(log, furnished.state)
    assert offers[0].target == PublishedTarget("zucchini", "general")  # pattypan is a squash
    assert offers[0].suits
    assert "Certainty: medium" in offers[0].note
    view = mixer_view(log, replace(furnished.state, target=PublishedTarget("tomato", "3rd to 5th cluster")))
    # A single printed figure stands for a range of 10 % about it: N 120.
    assert (view.target.ranges["N"].low, view.target.ranges["N"].high) == pytest.approx((108, 132))
    assert element(view, "N").words == "15 above"
    assert view.target.ranges["Fe"].aim == pytest.approx(2.8)
    assert view.target.ranges["N"].source


def test_a_target_that_states_elements_is_offered_before_one_of_ec_and_ph_only(
    log: OpenLogbook, furnished: Shelf
) -> None:
    crop, cultivar = crop_and_cultivar(log, furnished.crop.id)
    change_crop(log, crop, replace(cultivar, species="tomato"))
    labels = [o.label for o in target_offers(log, furnished.state) if o.suits and isinstance(o.target, PublishedTarget)]
    assert "EC and pH" not in labels[0]
    assert "tomato, general, EC and pH" in labels
    assert [label.endswith("EC and pH") for label in labels] == sorted(label.endswith("EC and pH") for label in labels)


def test_another_mix_is_a_target(log: OpenLogbook, furnished: Shelf) -> None:
    mix, _ = save_state(log, furnished.state, "Everyday")
    half = replace(furnished.state, strength_percent=50.0, target=MixTarget(mix.id))
    view = mixer_view(log, half)
    assert element(view, "N").range.low == pytest.approx(0.9 * 147)
    assert element(view, "N").standing is Standing.BELOW
    assert any("EC is outside" in w for w in view.warnings)


def test_the_order_names_the_amounts_for_this_tank(log: OpenLogbook, furnished: Shelf) -> None:
    order = mixer_view(log, furnished.state).order
    assert order[0] == "Fill 18\u2009L of water."
    assert order[1] == "Concentrate A 60\u2009mL. Stir until even."
    assert order[2].startswith("Concentrate B 60\u2009mL, Magnesium sulfate 3.0\u2009g, one after the other")
    assert order[-1].startswith("pH last")


def test_concentrates_that_must_not_meet_and_care_are_said(log: OpenLogbook, furnished: Shelf) -> None:
    view = mixer_view(log, furnished.state)
    assert any("Never join undiluted" in w for w in view.warnings)
    assert any("gloves" in c for c in view.cautions)
    crop, cultivar = crop_and_cultivar(log, furnished.crop.id)
    change_crop(log, replace(crop, medium="fresh coir"), cultivar)
    assert any("coir" in c for c in mixer_view(log, furnished.state).cautions)


def test_a_stock_tank_with_all_of_it_is_warned_of(log: OpenLogbook, furnished: Shelf) -> None:
    assert any("gypsum" in w for w in stock_tank_warnings(log, furnished.state, 100))
    assert stock_tank_warnings(log, furnished.state, 1) == ()


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"tank_l": 0.0}, "tank_l"),
        ({"strength_percent": -1.0}, "strength_percent"),
        ({"strength_percent": 500.0}, "strength_percent"),
        ({"ph": 15.0}, "ph"),
        ({"doses": (MixerDose("Concentrate A", -1.0),)}, "doses.0.amount"),
        ({"doses": (MixerDose("Concentrate A", 1.0, "pinch"),)}, "doses.0.unit"),
        ({"doses": (MixerDose("Magnesium sulfate", 1.0, "tsp/gal_us"),)}, "doses.0.density_g_per_ml"),
        ({"tank_l": None, "doses": (MixerDose("Concentrate A", 1.0, "mL/tank"),)}, "doses.0.tank_l"),
        ({"guests": (Product("x", LIQUID, "w/w", {"k2o": 5}),), "doses": (MixerDose("x", 1.0),)},
         "doses.0.density_g_per_ml"),
        ({"guests": (Product("x", LIQUID, "w/v", {"k2o": 105}),), "doses": (MixerDose("x", 1.0),)}, "doses.0.k2o"),
        ({"target": OwnTarget({"N": Range(-1, 5)})}, "target"),
        ({"target": OwnTarget({"N": Range(9, 5)})}, "target"),
        ({"target": MixTarget("gone")}, "target"),
    ],
)  # fmt: skip
def test_bad_input_is_said_beside_its_field_and_hides_the_figures(
    log: OpenLogbook, furnished: Shelf, changed: dict[str, object], field: str
) -> None:
    view = mixer_view(log, replace(furnished.state, **changed))  # type: ignore[arg-type]
    assert [p.field for p in view.problems if not p.asks] == [field]
    assert (view.elements, view.ec, view.ready) == ((), None, False)
    assert view.lines


def test_more_than_the_label_s_maximum_is_warned_of_and_allowed(log: OpenLogbook, furnished: Shelf) -> None:
    change_product(log, replace(furnished.part_a, label_max_per_l=2.0))
    view = mixer_view(log, furnished.state)
    assert [(p.field, p.asks) for p in view.problems] == [("doses.0.amount", True)]
    assert "above the maximum" in view.problems[0].sentence
    assert view.elements


def test_a_bottle_that_does_not_hold_enough_is_said(log: OpenLogbook, furnished: Shelf) -> None:
    counted(log, furnished.part_b.id, DAY, 40)
    view = mixer_view(log, furnished.state)
    assert [p.field for p in view.problems] == ["doses.1.amount"]
    assert view.lines[1].enough is False


def test_two_kinds_of_gallon_are_asked_about_beside_the_unit(log: OpenLogbook, furnished: Shelf) -> None:
    doses = (MixerDose("Concentrate A", 1.0, "mL/gal_us"), MixerDose("Concentrate B", 1.0, "mL/gal_imp"))
    view = mixer_view(log, replace(furnished.state, doses=doses))
    assert [(p.field, p.asks) for p in view.problems] == [("doses.1.unit", True)]
    assert view.elements


def test_a_product_without_analysis_is_unknown_in_the_sums_and_counts_in_the_cost(
    log: OpenLogbook, furnished: Shelf
) -> None:
    tonic = replace(bottle("Tonic"), analysis=(), pack_amount=500.0, pack_price_minor=1000)
    add_product(log, tonic, 400)
    state = replace(furnished.state, doses=(*furnished.state.doses, MixerDose("Tonic", 1.0, "mL/L", tonic.id)))
    view = mixer_view(log, state)
    assert view.unknown_products == ("Tonic",)
    assert view.lines[3].known is False
    assert view.lines[3].cost == pytest.approx(Decimal("0.4"))
    assert ("doses.3.product", True) in [(p.field, p.asks) for p in view.problems]
    assert element(view, "N").mg_per_l == pytest.approx(147)


def test_a_ready_salt_is_known_by_its_name_alone(log: OpenLogbook, furnished: Shelf) -> None:
    state = MixerState(10.0, doses=(MixerDose("potassium nitrate", 0.5, "g/L"),))
    assert element(mixer_view(log, state), "K").mg_per_l == pytest.approx(193.4, rel=1e-3)


def test_a_new_line_has_the_dose_of_its_label() -> None:
    stated = replace(bottle("Leaf"), maker_dose=10.0, maker_dose_unit="mL/gal_us")
    assert line_for(stated) == MixerDose("Leaf", 10.0, "mL/gal_us", stated.id)
    assert line_for(replace(stated, maker_dose=None)) == MixerDose("Leaf", 0.0, "mL/L", stated.id)


def test_an_empty_mixer_shows_its_water(log: OpenLogbook) -> None:
    view = mixer_view(log, MixerState(10.0))
    assert (view.elements, view.order, view.lines, view.ready) == ((), (), (), True)
    assert view.ec.estimate == 0


def test_two_products_of_one_name_are_kept_apart(log: OpenLogbook, furnished: Shelf) -> None:
    other = Product("Concentrate A", LIQUID, "w/v", {"k2o": 1})
    doses = (furnished.state.doses[0], MixerDose("Concentrate A", 1.0))
    view = mixer_view(log, replace(furnished.state, doses=doses, guests=(other,)))
    assert [line.product for line in view.lines] == ["Concentrate A", "Concentrate A (2)"]
    assert element(view, "K").mg_per_l == pytest.approx(8.3015, rel=1e-4)


def test_a_label_may_be_changed_and_the_figures_follow(log: OpenLogbook, furnished: Shelf) -> None:
    change_product(log, replace(furnished.epsom, analysis=(LabelShare("mgo", 16.0),)))
    assert element(mixer_view(log, furnished.state), "Mg").mg_per_l == pytest.approx(
        27 + 0.15 * 160 * 0.60304, rel=1e-4
    )
