"""Care of a tank: proposals, records, uptake, and the pH learned."""

from dataclasses import replace
from datetime import date

import pytest

from growlog.records.entry import Entry, Feed, Owner, OwnerKind, TankCare, TankDose, TankWork
from growlog.records.problems import RecordRefused
from growlog.services.entries import correct_entry, remove_entry
from growlog.services.mixer import MixerState, mix_and_log, mixer_view, save_state
from growlog.services.mixer.bench import read_bench
from growlog.services.mixer.mix_and_log import FeedTo
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import save_thing
from growlog.services.shelf import add_product, shelf
from growlog.services.tank_care import (
    Tank,
    TopUpAsked,
    care_of,
    latest_uptake,
    log_tank_care,
    ph_learned,
    tank_readings,
    top_up_proposal,
    uptake_between,
    uptake_of,
)
from growlog.services.undo import undo
from tests.services.mixer.bottles import Shelf, bottle

DAY = date(2026, 3, 1)
ASKED = TopUpAsked(12, 1.8, 20, 1.6, water_ec_ms_per_cm=0.2)


def care(furnished: Shelf, detail: TankCare, day: int = 1) -> Entry:
    """An entry of the tank."""
    return Entry(new_id(), Owner(OwnerKind.TANK, furnished.tank.id), date(2026, 3, day), detail)


def acid_added(furnished: Shelf, amount: float, before: float, after: float) -> TankCare:
    """A pH brought down by an acid."""
    return TankCare(TankWork.PH, 20.0, ph_before=before, ph_after=after, doses=(TankDose("acid", amount),))


def test_a_top_up_says_water_and_the_dose_of_each_bottle(log: OpenLogbook, furnished: Shelf) -> None:
    found = top_up_proposal(log, furnished.state, ASKED)
    ec = mixer_view(log, furnished.state).ec.estimate
    # L times mS/cm: 32 wanted, 21.6 there, 1.6 with the water: 8.8 missing.
    assert (found.drain_l, found.water_l) == (0, 8)
    assert found.full_strength_l == pytest.approx(8.8 / ec)
    assert [p.amount for p in found.doses] == pytest.approx([3 * 8.8 / ec, 3 * 8.8 / ec, 0.15 * 8.8 / ec])
    assert found.strength_percent == pytest.approx(100 * 8.8 / ec / 8)
    assert found.steps[0] == "Fill in 8.0\u2009L of water."
    assert "Concentrate A" in found.steps[1]
    assert len(found.figures) == 3


def test_a_tank_that_is_too_strong_is_drained_first(log: OpenLogbook, furnished: Shelf) -> None:
    found = top_up_proposal(log, furnished.state, TopUpAsked(20, 3.0, 20, 2.0, 0.5))
    assert (found.drain_l, found.water_l, found.doses) == (pytest.approx(8), pytest.approx(8), ())
    assert found.steps[0] == "Let out 8.0\u2009L."


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        (replace(ASKED, volume_wanted_l=0), "volume_wanted_l"),
        (replace(ASKED, volume_now_l=-1), "volume_now_l"),
        (replace(ASKED, ec_now_ms_per_cm=99), "ec_now_ms_per_cm"),
        (TopUpAsked(20, 3.0, 20, 0.4, 0.5), "ec_wanted_ms_per_cm"),
    ],
)
def test_what_cannot_be_is_refused_beside_its_field(
    log: OpenLogbook, furnished: Shelf, asked: TopUpAsked, field: str
) -> None:
    with pytest.raises(RecordRefused) as refused:
        top_up_proposal(log, furnished.state, asked)
    assert [p.field for p in refused.value.problems] == [field]


def test_without_a_mix_or_with_an_unknown_one_there_is_no_proposal(log: OpenLogbook, furnished: Shelf) -> None:
    tonic = replace(bottle("Tonic"), analysis=())
    add_product(log, tonic)
    unknown = replace(furnished.state.doses[0], product="Tonic", product_id=tonic.id)
    for state in (MixerState(20.0), replace(furnished.state, doses=(unknown,))):
        with pytest.raises(RecordRefused) as refused:
            top_up_proposal(log, state, ASKED)
        assert [p.field for p in refused.value.problems] == ["doses"]


def test_care_of_a_tank_draws_bottles_down_and_goes_back_with_its_entry(log: OpenLogbook, furnished: Shelf) -> None:
    doses = (TankDose("Concentrate A", 15.0, "mL", furnished.part_a.id), TankDose("rainwater thing", 3.0))
    entry = care(furnished, TankCare(TankWork.CORRECTION, 12.0, 8.0, doses=doses))
    change = log_tank_care(log, entry)
    assert shelf(log)[0].level == 985
    undo(log, undo(log, change))
    assert shelf(log)[0].level == 985
    with log.unit() as unit:
        written = unit.entries.get(entry.id)
    more = replace(entry.detail, doses=(TankDose("Concentrate A", 25.0, "mL", furnished.part_a.id),))
    corrected = correct_entry(log, replace(written, detail=more))
    assert shelf(log)[0].level == 975
    undo(log, corrected)
    assert shelf(log)[0].level == 985
    remove_entry(log, entry.id)
    assert shelf(log)[0].level == 1000


def test_the_strength_taken_up_is_told_in_ec_and_by_element(log: OpenLogbook, furnished: Shelf) -> None:
    mix, _ = save_state(log, furnished.state, "Everyday")
    found = uptake_of(log, Tank(20, 2.0), Tank(20, 1.9), Tank(10, 0.2), mix_id=mix.id)
    assert found is not None
    assert found.ec_ms_per_cm == pytest.approx(0.4)
    view = mixer_view(log, furnished.state)
    assert found.elements_mg_per_l["N"] == pytest.approx(147 * 0.4 / view.ec.estimate)
    assert found.words == "The plants took up 0.40 mS/cm, weaker than the tank."
    assert uptake_of(log, Tank(20, 2.0), Tank(20, 2.0), Tank(0, 0)) is None
    # 20 at first and 22 at the end: no plant gives salts back.
    saltier = uptake_of(log, Tank(10, 2.0), Tank(8, 2.75), Tank(0, 0), mix_id=mix.id)
    assert saltier is not None
    assert saltier.words.startswith("More salts are left than were there")
    assert set(saltier.elements_mg_per_l.values()) <= {0.0}


def test_uptake_between_two_entries_counts_what_was_added_between(log: OpenLogbook, furnished: Shelf) -> None:
    tank = [FeedTo(Owner(OwnerKind.TANK, furnished.tank.id))]
    filled = mix_and_log(log, replace(furnished.state, day=DAY), tank).record_ids[0]
    with log.unit() as unit:
        entry = unit.entries.get(filled)
        assert isinstance(entry.detail, Feed)
        unit.change(new_id(), replace(entry, detail=replace(entry.detail, ec_ms_per_cm=2.0)))
        unit.commit()
    log_tank_care(log, care(furnished, TankCare(TankWork.TOP_UP, 14.0, 6.0, None, 2.2, 1.6), 3))
    last = care(furnished, TankCare(TankWork.TOP_UP, 15.0, 5.0, None, 1.7, 1.7), 5)
    log_tank_care(log, last)
    found = uptake_between(log, filled, last.id)
    with log.unit() as unit:
        readings = tank_readings(read_bench(unit, log.today()), furnished.tank.id)
    assert [(r.as_found, r.as_left) for r in readings] == [
        (None, Tank(20, 2.0)), (Tank(14, 2.2), Tank(20, 1.6)), (Tank(15, 1.7), Tank(20, 1.7))
    ]  # fmt: skip
    # By hand: 40 at first; the top-up brought 6 L and 32 - 30.8 = 1.2; 15 L at 1.7 are left, so 11 L took 15.7.
    assert found is not None
    assert (found.water_l, found.ec_ms_per_cm) == (11, pytest.approx(15.7 / 11))
    unread = care(furnished, TankCare(TankWork.TOP_UP, None, 5.0), 6)
    log_tank_care(log, unread)
    assert uptake_between(log, filled, unread.id) is None


def test_the_latest_uptake_is_of_recirculating_tanks_whose_readings_are_whole(
    log: OpenLogbook, furnished: Shelf
) -> None:
    log_tank_care(log, care(furnished, TankCare(TankWork.TOP_UP, 14.0, 6.0, None, 2.2, 1.6), 1))
    log_tank_care(log, care(furnished, TankCare(TankWork.TOP_UP, 15.0, 5.0, None, 1.5, 1.7), 5))
    assert latest_uptake(log, furnished.tank.id) is None
    save_thing(log, replace(furnished.tank, recirculates=True))
    found = latest_uptake(log, furnished.tank.id)
    # By hand: 20 L at 1.6 less 15 L at 1.5 are 9.5 in 5 L.
    assert found is not None
    assert (found.water_l, found.ec_ms_per_cm) == (5, pytest.approx(1.9))
    log_tank_care(log, care(furnished, TankCare(TankWork.TOP_UP, water_added_l=3.0), 6))
    log_tank_care(log, care(furnished, TankCare(TankWork.TOP_UP, 18.0, None, None, 1.5), 7))
    assert latest_uptake(log, furnished.tank.id) is None  # nobody knows what the third top-up did


def test_a_proposal_is_recorded_as_it_was_carried_out(log: OpenLogbook, furnished: Shelf) -> None:
    proposal = top_up_proposal(log, furnished.state, ASKED)
    detail = care_of(ASKED, proposal)
    assert (detail.work, detail.volume_before_l, detail.water_added_l, detail.drained_l) == ("top-up", 12, 8, None)
    assert [d.product_id for d in detail.doses] == [p.id for p in (furnished.part_a, furnished.part_b, furnished.epsom)]
    log_tank_care(log, care(furnished, detail))
    assert shelf(log)[0].level == pytest.approx(1000 - 3 * proposal.full_strength_l, abs=1e-3)
    strong = TopUpAsked(20, 3.0, 20, 2.0, 0.5)
    assert care_of(strong, top_up_proposal(log, furnished.state, strong)).drained_l == 8


def test_the_ph_is_learned_after_three_corrections_and_never_guessed(log: OpenLogbook, furnished: Shelf) -> None:
    owner = Owner(OwnerKind.TANK, furnished.tank.id)
    assert ph_learned(log, owner) == []
    log_tank_care(log, care(furnished, acid_added(furnished, 2.0, 6.5, 6.0), 1))
    log_tank_care(log, care(furnished, acid_added(furnished, 4.0, 6.6, 5.8), 2))
    (early,) = ph_learned(log, owner)
    assert (early.steps, early.words) == (None, "acid: not yet, 1 correction is missing")
    log_tank_care(log, care(furnished, replace(acid_added(furnished, 6.0, 6.4, 5.9), volume_before_l=None), 3))
    (learned,) = ph_learned(log, owner)
    assert learned.steps is not None
    assert learned.steps.per_l == pytest.approx(0.025)
    assert learned.words == "acid: 0.25 mL in 10 L for a step of 0.1 pH down (0.20 to 0.60, 3 times)"
    assert (learned.down, learned.count) == (True, 3)
