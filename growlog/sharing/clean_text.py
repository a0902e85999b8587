"""Typed text without the characters that no page can hold: controls, halves of letters, code points of no letter."""

import unicodedata
from typing import Any


def shareable(value: Any) -> Any:
    """Plain values (text, lists, dictionaries) with all text in them cleaned."""
    if isinstance(value, str):
        return clean(value)
    if isinstance(value, dict):
        return {key: shareable(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [shareable(item) for item in value]
    return value


def clean(text: str) -> str:
    """The text without them; line ends and tabs stay."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(letter for letter in text if letter in "\n\t" or not _is_no_letter(letter))


def _is_no_letter(letter: str) -> bool:
    code = ord(letter)
    return unicodedata.category(letter) in ("Cc", "Cs") or 0xFDD0 <= code <= 0xFDEF or code & 0xFFFE == 0xFFFE
