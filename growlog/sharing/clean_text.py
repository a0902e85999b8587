"""Text as pages hold it: without controls, halves of letters and code points of no letter."""

import re
import unicodedata
from typing import Any

_THIN, _THIN_UNBROKEN = "\u2009", "\u202f"
_MAY_BREAK = "\u200b"
_LONG_WORD = re.compile(r"\S{20}(?=\S{4})")


def shareable(value: Any) -> Any:
    """Plain values (text, lists, dictionaries) with all text in them cleaned."""
    if isinstance(value, str):
        return clean(value)
    if isinstance(value, dict):
        return {key: shareable(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [shareable(item) for item in value]
    return value


def breakable(value: Any) -> Any:
    """Plain values with places at which a very long word may go on in the next line of paper."""
    if isinstance(value, str):
        return _LONG_WORD.sub(lambda found: f"{found[0]}{_MAY_BREAK}", value)
    if isinstance(value, dict):
        return {key: breakable(item) for key, item in value.items()}
    return [breakable(item) for item in value] if isinstance(value, list) else value


def clean(text: str) -> str:
    """The text without them; line ends and tabs stay, and no line breaks between a number and its unit."""
    if text.isascii() and text.isprintable():
        return text
    kept = "".join(letter for letter in text if letter in "\n\t" or not _is_no_letter(letter))
    return kept.replace(_THIN, _THIN_UNBROKEN)


def _is_no_letter(letter: str) -> bool:
    code = ord(letter)
    return unicodedata.category(letter) in ("Cc", "Cs") or 0xFDD0 <= code <= 0xFDEF or code & 0xFFFE == 0xFFFE
