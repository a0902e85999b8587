"""Growth stages: principal stages of the BBCH scale, and spans between looks."""

import pytest

from growlog.calculations.growth_stage import PRINCIPAL_STAGES, StageSpan, principal_stage, stage_spans
from tests.reference import published

# Meier, U. (ed.) (2001) Growth stages of mono- and dicotyledonous plants; Feller, C. et al. (1995).
CODES = [row for row in published("bbch") if row["scale"] != "general principal stage"]


@pytest.mark.parametrize("row", CODES, ids=lambda row: f"{row['scale']}-{row['code_3'] or row['code_2']}")
def test_a_code_of_the_scale_belongs_to_the_principal_stage_of_its_first_digit(row: dict[str, str]) -> None:
    stages = {principal_stage(code) for code in (row["code_2"], row["code_3"]) if code}
    assert len(stages) == 1
    assert stages <= PRINCIPAL_STAGES.keys()


def test_the_ten_principal_stages_are_those_of_the_monograph() -> None:
    general = [row for row in published("bbch") if row["scale"] == "general principal stage"]
    assert sorted(int(row["code_2"]) for row in general) == sorted(PRINCIPAL_STAGES)
    # Words that the monograph's general scale and our short names share.
    for stage, word in ((1, "leaves"), (2, "side shoots"), (6, "flowering"), (7, "fruit grows"), (9, "ageing")):
        meaning = next(row["meaning_in_our_words"] for row in general if row["code_2"] == str(stage))
        assert word in meaning
        assert word in PRINCIPAL_STAGES[stage]


@pytest.mark.parametrize("code", ["", "6", "6a", "1234", "-61", " 61", "٦١", "²³"])
def test_what_is_no_code_is_refused(code: str) -> None:
    with pytest.raises(ValueError, match="BBCH"):
        principal_stage(code)


def test_a_stage_runs_until_the_look_that_no_longer_saw_it() -> None:
    spans = stage_spans([(10, ("11",)), (20, ("13",)), (30, ("61",))], 50)
    assert spans == [StageSpan(1, 10, 30, ("11", "13")), StageSpan(6, 30, 50, ("61",))]


def test_stages_run_side_by_side() -> None:
    spans = stage_spans([(40, ("61",)), (50, ("63", "71")), (60, ("73",))], 70)
    assert spans == [StageSpan(6, 40, 60, ("61", "63")), StageSpan(7, 50, 70, ("71", "73"))]


def test_a_stage_that_returns_is_a_second_span() -> None:
    spans = stage_spans([(40, ("61",)), (50, ("71",)), (60, ("61", "73"))], 70)
    assert [(s.principal, s.start_age, s.end_age) for s in spans] == [(6, 40, 50), (6, 60, 70), (7, 50, 70)]


def test_one_look_is_drawn_to_the_end_and_none_draws_nothing() -> None:
    assert stage_spans([(12, ("11",))], 30) == [StageSpan(1, 12, 30, ("11",))]
    assert stage_spans([(12, ("11",))], 5) == [StageSpan(1, 12, 12, ("11",))]
    assert stage_spans([], 30) == []


def test_two_entries_of_one_day_are_one_look() -> None:
    spans = stage_spans([(40, ("61",)), (40, ("71", "61"))], 50)
    assert spans == [StageSpan(6, 40, 50, ("61",)), StageSpan(7, 40, 50, ("71",))]


def test_the_order_in_which_looks_are_handed_in_does_not_matter() -> None:
    looks = [(10, ("11",)), (20, ("13",)), (30, ("61",))]
    assert stage_spans(reversed(looks), 50) == stage_spans(looks, 50)
