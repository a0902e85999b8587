"""Folder names that every common file system takes."""

import unicodedata

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from growlog.photos.crop_folder_name import crop_folder_name

# "Naming Files, Paths, and Namespaces", Windows developer documentation (from memory).
RESERVED = {"CON", "PRN", "AUX", "NUL", *(f"{port}{n}" for port in ("COM", "LPT") for n in "0123456789¹²³")}


@pytest.mark.parametrize(
    "crop_name, folder",
    [
        ("Winter cucumber", "Winter cucumber"),
        ("Gurke für März", "Gurke für März"),
        ("ひょうたん 2", "ひょうたん 2"),
        ("Zucchini 🥒", "Zucchini 🥒"),
        ("a/b\\c:d", "a-b-c-d"),
        ('what? <"now">|*', "what- --now----"),
        ("..", "crop"),
        (".", "crop"),
        ("", "crop"),
        ("   ", "crop"),
        ("\0\x07", "crop"),
        ("../../etc", "etc"),
        (".hidden", "hidden"),
        ("-rf", "rf"),
        ("~", "crop"),
        ("trailing. . ", "trailing"),
        ("two\n lines\tand a tab", "two lines and a tab"),
        ("CON", "_CON"),
        ("con.txt", "_con.txt"),
        ("nul .x", "_nul .x"),
        ("Com¹", "_Com¹"),
        ("console", "console"),
        ("left\u202eright", "leftright"),
    ],
)
def test_a_name_becomes_a_folder(crop_name: str, folder: str) -> None:
    assert crop_folder_name(crop_name) == folder


def test_two_spellings_of_one_letter_make_one_folder() -> None:
    assert crop_folder_name("Ma\u0308rz") == crop_folder_name("M\u00e4rz")


@given(st.text(max_size=300))
@example("a" * 95 + "é.")
@example("\u0344" * 60)
@example("con" + "\u200b")
@example("C\u0327ON")
def test_any_name_becomes_one_safe_folder(crop_name: str) -> None:
    folder = crop_folder_name(crop_name)
    assert folder
    assert not set(folder) & set('<>:"/\\|?*')
    assert not any(unicodedata.category(letter) in ("Cc", "Cs") for letter in folder)
    assert folder[0] not in " .-"
    assert folder[-1] not in " ."
    assert folder.split(".")[0].strip().upper() not in RESERVED
    assert unicodedata.is_normalized("NFC", folder)
    assert len(folder.encode("utf-8")) <= 100


@given(st.text(max_size=100))
def test_a_safe_name_stays_as_it_is(crop_name: str) -> None:
    folder = crop_folder_name(crop_name)
    assert crop_folder_name(folder) == folder
