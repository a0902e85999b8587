"""Doses for a target with the bottles of the shelf, and the strength for an EC."""

from dataclasses import replace
from functools import partial

import pytest

from growlog.records.problems import RecordRefused
from growlog.services.mixer import (
    DoseWishes,
    MixerDose,
    MixerState,
    MixTarget,
    OwnTarget,
    PublishedTarget,
    Range,
    doses_for,
    mixer_view,
    save_state,
    strength_for_ec,
)
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf import add_product, change_product, remove_product
from tests.services.mixer.bottles import Shelf, bottle

EXACT = DoseWishes(smallest_ml=None, smallest_g=None)


def test_the_doses_of_a_mix_are_found_again_from_its_elements(log: OpenLogbook, furnished: Shelf) -> None:
    mix, _ = save_state(log, furnished.state, "Everyday")
    found = doses_for(log, replace(furnished.state, target=MixTarget(mix.id)), EXACT)
    assert [d.amount for d in found.state.doses] == pytest.approx([3.0, 3.0, 0.15], rel=1e-2)
    assert found.unmet == ()
    assert [f.unit for f in found.figures] == ["mL/L", "mL/L", "g/L"]


def test_doses_are_whole_steps_of_syringe_and_scale_in_the_unit_of_their_line(
    log: OpenLogbook, furnished: Shelf
) -> None:
    a, b, salt = furnished.state.doses
    state = replace(
        furnished.state, doses=(replace(a, unit="mL/tank"), b, salt), target=OwnTarget({"Ca": Range(99, 99)})
    )
    found = doses_for(log, state, DoseWishes(smallest_ml=5.0, smallest_g=0.5))
    assert found.state.doses[0].unit == "mL/tank"
    assert found.state.doses[0].amount == pytest.approx(40)  # 42.1 mL asked for, in steps of 5
    assert "Rounding" in found.unmet[0].reason


def test_locked_excluded_and_limited_products_are_kept_to(log: OpenLogbook, furnished: Shelf) -> None:
    state = replace(
        furnished.state, target=OwnTarget({"N": Range(200, 200), "K": Range(300, 300), "Mg": Range(60, 60)})
    )
    wishes = replace(
        EXACT,
        locked=frozenset({"Concentrate A"}),
        excluded=frozenset({"Magnesium sulfate"}),
        highest_per_l={"Concentrate B": 3.5},
    )
    found = doses_for(log, state, wishes)
    assert [d.amount for d in found.state.doses] == pytest.approx([3.0, 3.5, 0.0])
    reasons = {miss.element: miss.reason for miss in found.unmet}
    assert "highest or fixed dose" in reasons["N"]


def test_what_cannot_be_met_is_said_and_why(log: OpenLogbook, furnished: Shelf) -> None:
    state = replace(furnished.state, target=OwnTarget({"Ca": Range(200, 200), "N": Range(80, 80), "Fe": Range(2, 2)}))
    found = doses_for(log, state, EXACT)
    reasons = {miss.element: miss.reason for miss in found.unmet}
    assert reasons["Ca"] == "Every product with Ca here also brings N."
    assert reasons["Fe"] == "No product here brings Fe."
    assert all(dose.amount >= 0 for dose in found.state.doses)


def test_an_element_off_the_middle_of_its_range_but_in_it_is_met(log: OpenLogbook, furnished: Shelf) -> None:
    ranges = {"Ca": Range(190, 210), "N": Range(80, 80), "Mg": Range(1, 60)}
    found = doses_for(log, replace(furnished.state, target=OwnTarget(ranges)), EXACT)
    assert {"Ca", "N"} == {miss.element for miss in found.unmet}
    wide = OwnTarget({**ranges, "Ca": Range(50, 300)})
    assert {"N"} == {m.element for m in doses_for(log, replace(furnished.state, target=wide), EXACT).unmet}


def test_what_left_the_shelf_is_still_dosed_and_what_is_unknown_keeps_its_dose(
    log: OpenLogbook, furnished: Shelf
) -> None:
    add_product(log, bottle("Tonic"))
    remove_product(log, furnished.part_a.id)
    doses = (*furnished.state.doses, MixerDose("Tonic", 2.0, "mL/L"))
    state = replace(furnished.state, doses=doses, target=OwnTarget({"Ca": Range(150, 150)}))
    names = tuple(d.product for d in doses)
    found = doses_for(log, state, replace(EXACT, candidates=names)).state.doses
    # By hand: 150 mg/L of calcium, 47 mg in each mL of the concentrate.
    assert found[0].amount == pytest.approx(150 / 47, rel=1e-3)
    assert found[0].product_id == furnished.part_a.id
    assert found[-1] == doses[-1]
    without = doses_for(log, state, replace(EXACT, candidates=names[:-1])).state.doses
    assert "Tonic" not in [d.product for d in without]


def test_the_whole_shelf_is_looked_through_where_nothing_is_dosed(log: OpenLogbook, furnished: Shelf) -> None:
    state = MixerState(20.0, target=PublishedTarget("cucumber", "rockwool, standard 1994"))
    found = doses_for(log, state)
    assert {d.product for d in found.state.doses} <= {"Concentrate A", "Concentrate B", "Magnesium sulfate"}
    assert all(d.product_id for d in found.state.doses)
    named = doses_for(log, state, DoseWishes(candidates=("Potassium nitrate",)))
    assert [(d.product, d.unit) for d in named.state.doses] == [("Potassium nitrate", "g/L")]


def test_the_label_s_maximum_is_never_passed(log: OpenLogbook, furnished: Shelf) -> None:
    change_product(log, replace(furnished.part_a, label_max_per_l=2.0))
    found = doses_for(log, replace(furnished.state, target=OwnTarget({"Ca": Range(150, 150)})), EXACT)
    assert found.state.doses[0].amount == pytest.approx(2.0)


def test_without_a_target_or_without_elements_in_it_there_are_no_doses(log: OpenLogbook, furnished: Shelf) -> None:
    for target in (None, PublishedTarget("zucchini", "general")):
        with pytest.raises(RecordRefused) as refused:
            doses_for(log, replace(furnished.state, target=target))
        assert [p.field for p in refused.value.problems] == ["target"]
    unknown = replace(furnished.state, doses=(MixerDose("Tonic", 1.0),), target=OwnTarget({"N": Range(9, 9)}))
    with pytest.raises(RecordRefused, match="analysis"):
        doses_for(log, unknown)


def test_a_state_that_cannot_be_is_refused_beside_its_field(log: OpenLogbook, furnished: Shelf) -> None:
    wrong = replace(furnished.state, tank_l=0.0, target=OwnTarget({"N": Range(9, 9)}))
    for ask in (doses_for, partial(strength_for_ec, ec_ms_per_cm=1.2)):
        with pytest.raises(RecordRefused) as refused:
            ask(log, wrong)
        assert [p.field for p in refused.value.problems] == ["tank_l"]


def test_a_strength_is_found_for_an_ec_and_refused_beyond_it(log: OpenLogbook, furnished: Shelf) -> None:
    strength = strength_for_ec(log, furnished.state, 1.2)
    reached = mixer_view(log, replace(furnished.state, strength_percent=strength))
    assert reached.ec is not None
    assert reached.ec.estimate == pytest.approx(1.2, rel=1e-4)
    with pytest.raises(RecordRefused, match="the water alone"):
        strength_for_ec(log, furnished.state, 19.0)
