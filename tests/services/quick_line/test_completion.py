"""How a begun word goes on."""

from datetime import date

import pytest

from growlog.records.entry import Cull, CullCause, Entry, Note, Owner, OwnerKind, Pick
from growlog.services.quick_line import LineWords, completions, line_words, read_line
from growlog.services.quick_line.completion import _OFFERED
from growlog.services.quick_line.vocabulary import PHRASES, key_of

OWNER = Owner(OwnerKind.CROP, "crop-1")


def entry(day: int, detail: object, note: str = "") -> Entry:
    return Entry(f"entry-{day}", OWNER, date(2026, 1, day), detail, note=note)  # type: ignore[arg-type]


WORDS = line_words(
    ["Basic bloom", "A + B 3.0 mL/L"],
    [
        entry(3, Note(), "leaves curl at the top"),
        entry(9, Note(), "leaves are flat again"),
        entry(10, Note(), "two\nlines"),
        entry(11, Pick(0, culls=(Cull(1, CullCause.OVERSIZE),))),
    ],
)


def goes_on(typed: str, words: LineWords = WORDS) -> list[str]:
    return [typed[: c.start] + c.text for c in completions(typed, len(typed), words)]


def test_a_begun_mix_goes_on_with_its_name_in_its_own_letters():
    assert goes_on("feed 2 L bas") == ["feed 2 L Basic bloom"]
    assert goes_on("feed A +")[0] == "feed A + B 3.0 mL/L"


def test_a_begun_word_of_the_trade_goes_on_from_its_first_word():
    assert goes_on("2 old")[0] == "2 old leaves removed"
    assert goes_on("3 side sh")[0] == "3 side shoots removed"
    assert goes_on("1 fruit,2 misshap")[0] == "1 fruit,2 misshapen"


def test_a_note_goes_on_with_an_earlier_one_the_latest_first():
    assert goes_on("note lea") == ["note leaves are flat again", "note leaves curl at the top"]
    assert goes_on("5 females; note: leaves c") == ["5 females; note: leaves curl at the top"]
    assert goes_on("note fem") == []


def test_a_cause_that_the_crop_had_before_comes_first():
    assert WORDS.words[0] == "oversize"


@pytest.mark.parametrize("typed", ["", "   ", "f", "12 fruit", "12 fruit ", "1.2 L", "zzz"])
def test_nothing_is_offered_where_nothing_was_begun(typed: str):
    assert goes_on(typed) == []


def test_nothing_is_offered_inside_a_word():
    assert completions("feed pollinated", 8, WORDS) == ()


def test_each_word_that_is_offered_is_one_that_the_line_understands():
    assert {key_of(word.split()) for word in _OFFERED} <= set(PHRASES)
    assert read_line("2 old leaves removed").can_be_written
