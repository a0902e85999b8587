"""Single cells of old notes: numbers with units, days in any order, weights fruit by fruit."""

from contextlib import suppress
from datetime import date, datetime, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.services.old_notes.dates import clock_behind, clock_in, day_in, order_of, readings, year_slips
from growlog.services.old_notes.not_read import NotRead
from growlog.services.old_notes.numbers import decimal_of, measure_in
from growlog.services.old_notes.pick_cells import PickedCell, picked_in, says_more
from growlog.services.old_notes.unit_words import in_kept_unit, unit_in

FIRST, LAST = date(2025, 11, 15), date(2026, 3, 7)


@pytest.mark.parametrize(
    "text, decimal, unit, kept, value",
    [
        ("65 g", ".", "", "g", 65),
        ("0,5kg", ",", "", "g", 500),
        ("1 234,5", ",", "", "g", 1234.5),
        ("1,234.5", ".", "", "g", 1234.5),
        ("1.234", ",", "", "g", 1234),
        # NIST Special Publication 811 (2008), appendix B.8: 1 lb = 453.59237 g, 1 oz = 28.349523 g, 1 gal = 3.785412 L
        ("2 lb 3 oz", ".", "", "g", 2 * 453.59237 + 3 * 28.349523),
        ("1", ".", "gal", "L", 3.785412),
        ("75°F", ".", "", "°C", 23.888889),
        ("1800 µS/cm", ".", "", "mS/cm", 1.8),
        ("18", ".", "cf", "mS/cm", 1.8),
        ("55 %", ".", "", "%", 55),
        ("0.55", ".", "share", "%", 55),
        ("-5", ".", "", "°C", -5),
        ("−5", ".", "", "°C", -5),
        ("3 fruit", ".", "", "", 3),
    ],
)
def test_a_number_is_read_with_its_unit(text: str, decimal: str, unit: str, kept: str, value: float) -> None:
    assert measure_in(text, decimal, unit, kept) == pytest.approx(value, abs=1e-4)


@pytest.mark.parametrize("text", ["abc", "", "~65", "65 g?", "5 6", "1.2.3", "65,5", "12 kg 5", "900 ppm", "65 °C"])
def test_what_is_not_surely_a_number_is_refused(text: str) -> None:
    with pytest.raises(NotRead):
        measure_in(text, ".", "", "g" if "ppm" not in text else "mS/cm")


@pytest.mark.parametrize(
    "texts, sign",
    [
        (["1,5", "2"], ","),
        (["1.234,5"], ","),
        (["1,234.5"], "."),
        (["0,125"], ","),
        (["1,234"], "?"),
        (["1,234", "1.5"], "."),
        (["1,234", "0,5"], ","),
        (["1.234"], ""),
        (["65"], ""),
    ],
)
def test_a_column_tells_its_decimal_sign_or_that_it_must_be_asked(texts: list[str], sign: str) -> None:
    assert decimal_of(texts) == sign


@pytest.mark.parametrize(
    "text",
    ["2026-01-18", "2026/1/18", "18.01.2026", "18.1.26", "18/1/2026", "1/18/2026", "18 Jan 2026", "Jan 18, 2026",
     "18. January 2026", "18-Jan-26", "Sun 18/01/2026", "Sunday, 18 January 2026", "20260118", "January 18th 2026",
     "2026-01-18T18:41:02", "2026-01-18 18:41", "1/18/2026 6:41 PM", "26-01-18"],
)  # fmt: skip
def test_a_day_is_read_in_any_usual_form(text: str) -> None:
    assert date(2026, 1, 18) in readings(text).values()


@pytest.mark.parametrize("text", ["18/1", "46040", "31/02/2026", "soon", "", "2026", "2026-13-01", "1/2/3/2026"])
def test_what_is_no_whole_day_is_refused(text: str) -> None:
    with pytest.raises(NotRead, match="not a date"):
        day_in(text, "dmy")


def test_a_column_with_a_day_beyond_twelve_tells_its_order() -> None:
    assert order_of(["05/01/2026", "13/01/2026"], FIRST, LAST).order == "dmy"
    assert order_of(["01/05/2026", "01/13/2026"], FIRST, LAST).order == "mdy"


def test_a_column_that_does_not_tell_is_asked_about_the_likelier_order_first() -> None:
    found = order_of(["05/01/2026", "06/01/2026"], FIRST, LAST)
    assert found.asks
    assert found.possible == ("dmy", "mdy")  # the other one would have been in May and June


def test_an_order_that_changes_nothing_is_not_asked_for() -> None:
    assert not order_of(["01/01/2026", "02/02/2026"], FIRST, LAST).asks
    assert not order_of(["2026-01-05", "5 January 2026", "05.01.2026"], FIRST, LAST).asks


def test_two_orders_in_one_column_are_asked_about() -> None:
    assert order_of(["13/01/2026", "01/14/2026"], FIRST, LAST).asks


def test_times_are_read_alone_or_behind_the_day() -> None:
    assert clock_in("6:41 pm") == time(18, 41)
    assert clock_in("18:41:02") == time(18, 41, 2)
    assert clock_behind("2026-01-18 18:41") == time(18, 41)
    assert clock_behind(datetime.combine(date(2026, 1, 18), time(18, 41))) == time(18, 41)
    assert clock_behind("2026-01-18") is None
    with pytest.raises(NotRead):
        clock_in("25:10")


def test_a_day_a_year_off_its_neighbours_is_found_in_either_direction() -> None:
    days = [date(2026, 1, 1), date(2025, 1, 2), date(2026, 1, 3), date(2027, 1, 4), None, date(2026, 1, 6)]
    assert year_slips(days) == {1: date(2026, 1, 2), 3: date(2026, 1, 4)}


def test_a_season_over_new_year_has_no_day_a_year_off() -> None:
    assert year_slips([date(2025, 12, d) for d in (28, 30)] + [date(2026, 1, d) for d in (1, 3, 5)]) == {}


@pytest.mark.parametrize(
    "text, cell",
    [
        ("2 @ 65g", PickedCell(2, None, (65, 65))),
        ("3x70 g", PickedCell(3, None, (70, 70, 70))),
        ("86+93+78", PickedCell(3, None, (86, 93, 78))),
        ("0.1+0.2 kg", PickedCell(2, None, (100, 200))),
        ("2@65g + 1@80g", PickedCell(3, None, (65, 65, 80))),
        ("3 (210 g)", PickedCell(3, 210)),
        ("3 fruit @ 65 g each", PickedCell(3, None, (65, 65, 65))),
    ],
)
def test_count_and_weight_in_one_cell_are_both_read(text: str, cell: PickedCell) -> None:
    assert says_more(text)
    assert picked_in(text, ".", "") == cell


def test_two_at_65_g_are_130_g() -> None:
    assert sum(picked_in("2 @ 65g", ".", "").weights_g) == 130


@pytest.mark.parametrize("text", ["2 @ g", "0 @ 65g", "2 @ 65 °C", "9999 @ 1g", "86++93"])
def test_a_cell_that_says_neither_is_refused(text: str) -> None:
    with pytest.raises(NotRead):
        picked_in(text, ".", "")


def test_a_unit_is_found_in_a_heading() -> None:
    assert [unit_in(h, "g") for h in ("weight (g)", "Weight [kg]", "picked lbs", "weight")] == ["g", "kg", "lbs", ""]
    assert unit_in("temp F", "°C") == "f"
    assert in_kept_unit(2, "lbs", "g") == pytest.approx(907.18474)  # NIST SP 811, appendix B.8


@given(st.text(max_size=60))
def test_no_text_stumbles(text: str) -> None:
    readings(text)
    decimal_of([text])
    for read in (lambda: measure_in(text, ",", "", "g"), lambda: picked_in(text, ".", ""), lambda: clock_in(text)):
        with suppress(NotRead):  # any other error would end the reading of a whole file
            read()


@given(st.floats(-1e6, 1e6).map(lambda v: round(v, 3)))
def test_a_number_written_with_a_comma_comes_back(value: float) -> None:
    text = f"{value:.3f}".replace(".", ",")
    assert measure_in(text, ",", "", "°C") == pytest.approx(value, abs=1e-6)
