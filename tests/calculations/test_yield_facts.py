"""Yield facts against a small invented trial worked out by hand, as variety trials report it."""

import pytest

from growlog.calculations.yield_facts import (
    Inputs,
    PickSession,
    explain_facts,
    explain_ratios,
    fruit_weight_trend,
    yield_facts,
    yield_ratios,
)

# Two invented cultivars, two plants each on 0.8 m². By hand, for A: marketable 3 + 4 + 5 + 6 = 18 fruit,
# 270 + 400 + 550 + 720 = 1940 g, 1940 / 18 = 107.8 g a fruit, culls 1 + 2 = 3 of 21, 18 / 21 = 85.7 % marketable.
# Early: days 40 to 53, that is 3 + 4 fruit, 670 g. Per plant 9 fruit, 970 g; per m² 2425 g. Sessions on 40, 47, 54, 61:
# 7 days between; after the first 15 fruit and 1670 g in three weeks: 5 fruit, 556.7 g a week.
A = [
    PickSession(40, 3, 270.0),
    PickSession(47, 4, 400.0, {"misshapen": 1}),
    PickSession(54, 5, 550.0),
    PickSession(61, 6, 720.0, {"cracked": 1, "misshapen": 1}),
]
# For B: 8 + 6 + 2 = 16 fruit, 960 + 660 = 1620 g weighed of 14, 115.7 g each; the 2 unweighed count with 231.4 g.
B = [PickSession(36, 8, 960.0), PickSession(44, 6, 660.0), PickSession(50, 2, None)]


def test_a_variety_trial_table_is_as_worked_out_by_hand() -> None:
    a, b = yield_facts(A), yield_facts(B)
    assert (a.fruit_count, a.weight_g, a.culled_count, a.culls) == (18, 1940, 3, {"misshapen": 2, "cracked": 1})
    assert a.marketable_percent == pytest.approx(100 * 18 / 21)
    assert a.mean_fruit_g == pytest.approx(1940 / 18)
    assert (a.early_count, a.early_g, a.early_is_over) == (7, 670, True)
    assert (a.sessions, a.fruit_per_session, a.days_between_sessions, a.longest_gap_days) == (4, 4.5, 7, 7)
    assert (a.fruit_per_week, a.g_per_week) == (5, pytest.approx(1670 / 3))
    assert b.weight_g == pytest.approx(1620 * 16 / 14)
    assert b.estimated_g == pytest.approx(2 * 1620 / 14)
    assert (b.early_count, b.early_g) == (14, 1620)
    assert b.fruit_per_week == 4
    assert b.g_per_week == pytest.approx((660 + 2 * 1620 / 14) / 2)


def test_yield_is_set_against_plants_floor_electricity_feed_and_labour() -> None:
    ratios = yield_ratios(yield_facts(A), Inputs(2, 0.8, 97.0, 40.0, 120.0))
    assert (ratios.fruit_per_plant, ratios.g_per_plant, ratios.g_per_m2) == (9, 970, pytest.approx(2425))
    assert (ratios.kwh_per_kg, ratios.g_per_litre_feed, ratios.g_per_labour_hour) == (50, 48.5, 970)


def test_what_is_not_known_or_nought_gives_no_ratio() -> None:
    for ratios in (yield_ratios(yield_facts(A), Inputs(0, 0.0)), yield_ratios(yield_facts([]), Inputs(2, 1, 5, 5, 5))):
        assert ratios.g_per_plant is None
        assert ratios.kwh_per_kg is None
    assert yield_ratios(yield_facts([]), Inputs(2)).fruit_per_plant == 0


def test_the_trend_of_fruit_weight_counts_each_session_by_its_fruit() -> None:
    trend = fruit_weight_trend(A)  # means 90, 100, 110, 120 g, a week apart
    assert trend is not None
    assert trend.g_per_week == pytest.approx(10)
    assert trend.standard_error == pytest.approx(0, abs=1e-6)
    assert fruit_weight_trend(A[:2]) is None
    heavy_end = [PickSession(0, 1, 10.0), PickSession(7, 1, 10.0), PickSession(14, 100, 2000.0)]
    falling_out = fruit_weight_trend(heavy_end)
    assert falling_out is not None
    assert falling_out.g_per_week == pytest.approx(29.41 / 4.91, abs=0.01)  # by hand
    unclear = fruit_weight_trend([PickSession(0, 1, 10.0), PickSession(7, 1, 30.0), PickSession(14, 1, 12.0)])
    assert unclear is not None
    assert not unclear.is_clear


def test_early_yield_is_not_over_before_two_weeks_of_picking() -> None:
    assert not yield_facts(A, up_to_age=52).early_is_over
    assert yield_facts(A, up_to_age=53).early_is_over
    assert not yield_facts([], up_to_age=90).early_is_over


def test_entries_of_a_day_are_one_session_and_a_weight_without_a_count_is_kept() -> None:
    facts = yield_facts([PickSession(40, 2, 100.0), PickSession(40, 1, None), PickSession(42, 0, 80.0)])
    assert (facts.sessions, facts.fruit_count, facts.weight_g) == (2, 3, 230)
    assert any("no count" in note for note in facts.notes)
    assert any("mean weight" in note for note in facts.notes)


def test_counts_without_any_weight_leave_the_weight_open() -> None:
    facts = yield_facts([PickSession(40, 2, None), PickSession(47, 3, None)])
    assert (facts.mean_fruit_g, facts.g_per_week, facts.trend) == (None, None, None)
    assert facts.fruit_per_week == 3
    assert "No fruit was weighed" in facts.notes[0]


@pytest.mark.parametrize("sessions", [[], A[:1], [PickSession(40, 0, None, {"cracked": 2})]])
def test_nothing_one_pick_or_culls_alone_break_nothing(sessions: list[PickSession]) -> None:
    facts = yield_facts(sessions)
    assert facts.fruit_per_week is None
    assert facts.days_between_sessions is None
    assert len(explain_facts(facts)) == 4


def test_every_figure_says_how_it_is_worked_out() -> None:
    facts = yield_facts(A)
    figures = (*explain_facts(facts), *explain_ratios(facts, Inputs(2, 0.8)))
    assert {f.key for f in figures} >= {"early-yield", "fruit-weight-trend", "kwh-per-kg", "fruit-per-plant"}
    assert all(f.method and f.source for f in figures)
