"""Decisions on crops, with the figures of their day."""

from dataclasses import replace

import pytest

from growlog.records.decision import Verdict
from growlog.records.entry import Pick
from growlog.records.problems import RecordRefused
from growlog.services.decisions import (
    check_decision,
    correct_decision,
    decide,
    decisions_for_cultivar,
    decisions_of,
    remove_decision,
)
from growlog.services.open_logbook import OpenLogbook
from growlog.services.review.model import ReviewOptions
from growlog.services.review.review import review_of
from growlog.services.undo import undo
from tests.logbooks import TODAY, plant_crop, write
from tests.services.review.grown import day, grown, priced

pytestmark = pytest.mark.slow

REASON, CHANGE = "Set fell after day 80.", "Ventilate by night."


def quoted(log: OpenLogbook, crop_id: str) -> dict[str, str]:
    return {f.figure_key: " ".join(f.value_text.split()) for f in decisions_of(log, crop_id)[0].figures}


def test_a_decision_quotes_the_figures_as_they_stood_that_day(log: OpenLogbook) -> None:
    crop = grown(log)
    priced(log, crop)
    decide(log, crop.id, Verdict.REGROW_WITH_CHANGES, REASON, CHANGE)
    before = quoted(log, crop.id)
    assert (before["fruit-count"], before["yield-weight"], before["first-pick-age"]) == ("20", "2.00 kg", "day 44")
    assert before["cost"].endswith("EUR")
    write(log, crop, TODAY, Pick(5, 500.0))
    assert quoted(log, crop.id) == before
    assert decisions_of(log, crop.id)[0].decided_on == TODAY


def test_figures_without_data_are_not_quoted(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    decide(log, crop.id, Verdict.DO_NOT_REGROW, REASON)
    assert quoted(log, crop.id) == {"plant-age": "112 days", "fruit-count": "0"}


def test_a_decision_needs_a_reason_and_a_change_where_it_says_so(log: OpenLogbook) -> None:
    crop = plant_crop(log)
    for verdict, reasons, changes, field in (
        (Verdict.REGROW, " ", "", "reasons"),
        (Verdict.REGROW_WITH_CHANGES, REASON, " ", "changes"),
    ):
        assert [p.field for p in check_decision(log, crop.id, verdict, reasons, changes)] == [field]
        with pytest.raises(RecordRefused):
            decide(log, crop.id, verdict, reasons, changes)
    assert decisions_of(log, crop.id) == []


def test_words_are_corrected_while_figures_and_day_stay(log: OpenLogbook) -> None:
    crop = grown(log)
    decide(log, crop.id, Verdict.REGROW, REASON)
    made = decisions_of(log, crop.id)[0]
    correct_decision(log, replace(made, reasons="Good to eat.", figures=(), decided_on=day(1)))
    after = decisions_of(log, crop.id)[0]
    assert after.reasons == "Good to eat."
    assert (after.figures, after.decided_on) == (made.figures, made.decided_on)


def test_a_decision_is_removed_and_comes_back_by_undo(log: OpenLogbook) -> None:
    crop = grown(log)
    decide(log, crop.id, Verdict.REGROW, REASON)
    removed = remove_decision(log, decisions_of(log, crop.id)[0].id)
    assert decisions_of(log, crop.id) == []
    undo(log, removed)
    assert len(decisions_of(log, crop.id)) == 1


def test_whoever_sows_the_cultivar_again_is_told_what_was_decided(log: OpenLogbook) -> None:
    crop, other = grown(log), plant_crop(log, "Boxroom Red")
    decide(log, crop.id, Verdict.REGROW_WITH_CHANGES, REASON, CHANGE)
    decide(log, other.id, Verdict.DO_NOT_REGROW, "Bitter.")
    past = decisions_for_cultivar(log, "Pattypan ", "boxroom  gold")
    assert [p.crop_name for p in past] == ["Boxroom Gold"]
    assert past[0].sentence == (
        "Boxroom Gold, decided on 7 March 2026: regrow with changes. Set fell after day 80. Ventilate by night."
    )
    assert decisions_for_cultivar(log, "pattypan", "another") == []


def test_the_review_shows_decisions_with_their_figures(log: OpenLogbook) -> None:
    crop = grown(log)
    priced(log, crop)
    decide(log, crop.id, Verdict.REGROW_WITH_CHANGES, REASON, CHANGE)
    shown = review_of(log, crop.id).decisions[0]
    assert (shown.title, shown.reasons, shown.changes) == ("Regrow with changes", REASON, CHANGE)
    bare = review_of(log, crop.id, options=ReviewOptions(money=False, notes=False)).decisions[0]
    assert (bare.reasons, bare.changes) == ("", "")
    assert not [f.figure_key for f in bare.figures if "cost" in f.figure_key]
    assert review_of(log, crop.id, day(100)).decisions == ()
