"""Text as pages hold it."""

import json

from hypothesis import given
from hypothesis import strategies as st

from growlog.sharing.clean_text import clean, shareable


def test_letters_of_every_script_and_pictures_stay() -> None:
    for text in ("Grün & <gut>", "קישוא זהוב", "\U0001f331\U0001f3fd", "a\nb\tc"):
        assert clean(text) == text


def test_controls_halves_of_letters_and_noncharacters_go() -> None:
    assert clean("a\x00\x0b\x7f\x85b\ud800c\ufffe\ufdd0") == "abc"


def test_no_line_breaks_between_a_number_and_its_unit() -> None:
    assert clean("2.7\u2009kg") == "2.7\u202fkg"


@given(st.text())
def test_what_comes_out_can_be_written_and_comes_out_again_unchanged(text: str) -> None:
    once = clean(text)
    assert once.encode().decode() == once
    assert clean(once) == once


def test_lists_and_dictionaries_are_cleaned_throughout() -> None:
    assert json.dumps(shareable({"a": ["\x01b", {"c": "d\x02"}], "n": 3})) == '{"a": ["b", {"c": "d"}], "n": 3}'
