"""What was not understood is shown and never dropped; what can be taken in two ways is asked about."""

import string
from time import process_time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from growlog.services.quick_line import LineContext, LineReading, SpanRole, read_line
from growlog.services.quick_line.vocabulary import PHRASES
from tests.services.quick_line.lines import CONTEXT, detail_of, read

pytestmark = pytest.mark.slow


def sentences(reading: LineReading) -> str:
    return " ".join(p.sentence for p in reading.problems)


@pytest.mark.parametrize(
    ("line", "unread", "hint"),
    [
        ("86 93 78", ("86 93 78",), "before single weights say picked"),
        ("250 g", ("250 g",), "Say picked, culled or container before a weight."),
        ("1.2 L", ("1.2 L",), "Say feed, water or drain before a volume."),
        ("EC 1.9", ("EC 1.9",), "Say feed, water or drain before EC and pH."),
        ("feed 1 L EC", ("EC",), "The number for EC is missing."),
        ("feed 1 L EC 1.9 EC 2.0", ("EC 2.0",), "EC is there already."),
        ("feed 1 L 2 L", ("2 L",), "Volume is there already."),
        ("feed 1 L 20 °C", ("20 °C",), "Say air or solution before a temperature."),
        ("feed 1 L, 900 ppm", ("900 ppm",), "write the EC"),
        ("feed 1.2 kg", ("1.2 kg",), "before a weight"),
        ("pH 5.9 g feed", ("pH 5.9 g",), ""),
        ("container 3.2", ("container 3.2",), "Write the unit behind the number for container."),
        ("height 45 L", ("height 45 L",), "L is no unit for height."),
        ("12,5.3 fruit", ("12,5.3",), "12,5.3 is not a number."),
        ("1.2.3 L feed", ("1.2.3 L",), "is not a number"),
        ("feed 1,200 mL", ("1,200 mL",), "two ways"),
        ("one hundred fruit", ("one hundred",), ""),
        ("3 fruit today", ("today",), "the day that is shown"),
        ("3 fruit 86 g each", ("each",), "the weight of all together"),
        ("picked 3 at 8", ("8",), "Write the time of day as 8:00."),
        ("feed 1 L at 25:10", ("25:10",), ""),
        ("feed 1 L at 13 pm", ("13 pm",), ""),
        ("not 3 fruit", ("not",), ""),
        ("🍅 3 fruit 🎉", ("🍅", "🎉"), ""),
        ("3 fruit <b>", ("<b>",), ""),
        ("picked 3-4", ("-",), ""),
        ("flowers", ("flowers",), ""),
        ("3 fruit 250 g, 2", ("2",), "Say what the number counts"),
        ("12 leaves", ("12 leaves",), "Say removed behind leaves."),
        ("pollinated 5 on 3 trusses", ("3 trusses",), ""),
        ("5 females pollinated on 2 plants", ("2 plants",), ""),
    ],
)
def test_what_was_not_understood_is_named_and_keeps_the_line_from_being_written(
    line: str, unread: tuple[str, ...], hint: str
):
    reading = read(line)
    assert not reading.can_be_written
    assert reading.unread == unread
    assert hint in sentences(reading)


@pytest.mark.parametrize(
    ("line", "refusal"),
    [
        ("pick", "Nothing was picked or culled"),
        ("picked 250 g", "Say how many fruit weigh"),
        ("-3 fruit", "outside 0 to 9999"),
        ("999999 females", "outside 0 to 999"),
        ("2.5 females", "whole number"),
        ("2.5 fruit 250 g", "whole numbers"),
        ("2 fruit 86 93 78 g", "more single weights than fruit"),
        ("2 fruit -86 93 g", "outside"),
        ("feed -1 L", "outside"),
        ("feed 1 L EC 1900", "outside"),
        ("feed", "Say how much was given"),
        ("stage 5", "not a BBCH code"),
        ("training", "Nothing is stated yet"),
        ("feed 1 L 2000 min", "outside"),
        ("8:20", "Say what happened"),
        ("and of the", "Say what happened"),
    ],
)
def test_what_cannot_be_true_is_refused_with_the_records_own_sentence(line: str, refusal: str):
    reading = read(line)
    assert not reading.can_be_written
    assert refusal in sentences(reading)


@pytest.mark.parametrize(
    ("line", "question"),
    [
        ("humidity 0.6", "Humidity is in per cent"),
        ("feed 1 L pH 8.2", "pH 8.2 is unusual"),
        ("feed 1 L, drain 1.4 L", "More drained than was given"),
        ("picked 86 93 g", "two single weights"),
        ("picked 86, 93 g", "two single weights"),
        ("picked 2, 1 lb", "the count"),
        ("picked 3, 250", "the count"),
        ("12 fruit 250", "all the fruit together"),
        ("picked 12 86 93 g", "12 is read as the weight of one fruit"),
    ],
)
def test_what_is_unusual_or_can_be_taken_in_two_ways_is_asked_about(line: str, question: str):
    reading = read(line)
    assert reading.can_be_written
    assert question in " ".join(p.sentence for p in reading.questions)


def test_each_hint_stands_with_what_it_is_about():
    assert read("12 leaves, feed 1 L 900 ppm blue, EC").unread_with_hints == (
        ("12 leaves", "Say removed behind leaves."),
        ("900 ppm blue", "ppm depends on the meter's scale: write the EC."),
        ("EC", "The number for EC is missing."),
    )


def test_an_unlabelled_gallon_is_said_to_be_the_us_one():
    assert "US gallon" in read("water 2 gal").remarks[0]
    assert read("water 2 imp gal").remarks == ()
    assert read_line("water 2 gal", LineContext(units="us")).remarks == ()


def test_bare_numbers_follow_the_units_of_the_window():
    shown_us = LineContext(units="us")
    reading = read_line("feed 2, height 18, air 76", shown_us)
    feed, other = (draft.detail for draft in reading.drafts)
    assert feed.volume_l == pytest.approx(2 * 3.785411784)  # type: ignore[attr-defined]
    assert other.plant_height_cm == pytest.approx(45.72)  # type: ignore[attr-defined]
    assert other.air_temperature_c == pytest.approx(24.4444, abs=1e-3)  # type: ignore[attr-defined]


def test_a_point_before_three_figures_is_asked_about_where_it_parts_thousands():
    assert read_line("feed 1.200 L", LineContext(comma_is_decimal=True)).unread == ("1.200 L",)
    assert read_line("feed 1,200 L", LineContext(comma_is_decimal=True)).can_be_written
    assert detail_of("feed 0,250 L").volume_l == 0.25  # type: ignore[attr-defined]


def accounted(line: str, reading: LineReading) -> None:
    """Spans stand in order, do not overlap, and leave out nothing but blanks."""
    covered = [False] * len(line)
    end = 0
    for span in reading.spans:
        assert end <= span.start < span.end <= len(line)
        covered[span.start : span.end] = [True] * (span.end - span.start)
        end = span.end
        if span.role is SpanRole.READ and span.draft is not None:
            assert 0 <= span.draft < len(reading.drafts)
    assert [c for c, is_covered in zip(line, covered, strict=True) if not is_covered and not c.isspace()] == []
    if any(span.role is SpanRole.UNREAD for span in reading.spans):
        assert not reading.can_be_written


PIECES = st.sampled_from([*PHRASES, "Basic bloom", ",", ";", ":", "…", "…g", "3", "86", "1,2", "1.9", "12,5.3", "-4",
                          "250 g", "1.2 L", "24 °C", "58 %", "45 cm", "8:20", "6 pm", "99:99", "1 h", "5 min", "🍅",
                          "blue", "µS/cm", "2 gal", "61/71", "(", ")", "/", "x"])  # fmt: skip


@settings(max_examples=250, deadline=None)
@given(st.lists(PIECES, max_size=14).map(" ".join))
def test_no_character_of_a_line_of_words_is_unaccounted_for(line: str):
    accounted(line, read_line(line, CONTEXT))


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=60))
def test_no_character_of_any_text_is_unaccounted_for(line: str):
    accounted(line, read_line(line, CONTEXT))


@settings(max_examples=100, deadline=None)
@given(st.text(alphabet=string.ascii_letters + string.digits + " .,;:-+%/°µ", max_size=80))
def test_no_character_of_keys_pressed_at_random_is_unaccounted_for(line: str):
    accounted(line, read_line(line, CONTEXT))


@pytest.mark.parametrize("piece", ["9", "x", "x ", "9 ", "1,", "1 fruit; ", "🍅", "old "])
def test_ten_thousand_characters_are_read_without_harm(piece: str):
    line = (piece * 10_000)[:10_000]
    started = process_time()
    accounted(line, read(line))
    assert process_time() - started < 20  # it would be minutes if the time grew with the square
    assert read(line + "more than can be read").unread != ()
