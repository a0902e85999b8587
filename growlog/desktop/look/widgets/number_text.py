"""Numbers as people type them, and as a field shows them."""

from PySide6.QtCore import QLocale

_BLANKS = str.maketrans("", "", " \u00a0\u2009\u202f'\u2019")
_SIGNS = str.maketrans({"\u2212": "-", "\u2013": "-"})


class NotANumber(ValueError):
    """A text that is no number."""


def parse_number(text: str) -> float | None:
    """The number in a text, with a decimal comma or point; None for an empty one.

    Of a comma and a point in one number the last is the decimal sign. Raises NotANumber.
    """
    plain = text.translate(_BLANKS).translate(_SIGNS)
    if not plain:
        return None
    comma, point = plain.rfind(","), plain.rfind(".")
    if comma > point:
        plain = plain.replace(".", "").replace(",", ".", 1)
    elif comma >= 0:
        plain = plain.replace(",", "")
    digits = plain.removeprefix("-").removeprefix("+")
    if not digits.replace(".", "", 1).isascii() or not digits.replace(".", "", 1).isdigit():
        raise NotANumber(text)
    return float(plain)


def typed_decimals(text: str) -> int:
    """How many figures follow the decimal sign as it was typed."""
    plain = text.translate(_BLANKS)
    sign = max(plain.rfind(","), plain.rfind("."))
    return 0 if sign < 0 else len(plain) - sign - 1


def number_text(value: float | None, decimals: int) -> str:
    """A value for a field: the locale's decimal sign, no thousands sign, no needless zeros beyond the first."""
    if value is None:
        return ""
    text = f"{value:.{decimals}f}"
    if "." in text:
        whole, fraction = text.split(".")
        text = f"{whole}.{fraction.rstrip('0') or '0'}"
    return text.replace(".", QLocale().decimalPoint()).replace("-", "\u2212")
