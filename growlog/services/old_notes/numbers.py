"""Numbers as written in cells: decimal points or commas, grouped thousands, a unit behind them."""

import re
from collections.abc import Iterable
from functools import lru_cache

from growlog.services.old_notes.not_read import NotRead
from growlog.services.old_notes.unit_words import in_kept_unit
from growlog.words import say

_SPACES = " \u00a0\u2009\u202f"
_DIGITS = rf"\d(?:[\d.,'’]|[{_SPACES}](?=\d{{3}}(?!\d)))*"
_MEASURE = re.compile(rf"\s*([+\-−]?(?:{_DIGITS}|[.,]\d+))\s*([^\d\s+\-−]\D*?)?\s*(?=[+\-−]?\d|$)")
_FIGURE = re.compile(_DIGITS)
_GROUPED = {
    ".": re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d*)?"),
    ",": re.compile(r"\d{1,3}(?:\.\d{3})+(?:,\d*)?"),
}
_PLAIN = {".": re.compile(r"\d*\.?\d*"), ",": re.compile(r"\d*,?\d*")}
LONGEST = 40


def decimal_of(texts: Iterable[str]) -> str:
    """The decimal sign that a column of texts proves: "." or ",". "" if nothing tells, "?" if it must be asked:
    every sign could be one of thousands too. Where both are proven the more frequent one counts.
    """
    seen = {".": 0, ",": 0, "?": 0}
    for text in texts:
        for figure in _FIGURE.findall(text[:LONGEST]):
            sign = _sign_of(figure.strip(".,"))
            if sign:
                seen[sign] += 1
    if seen["."] or seen[","]:
        return "." if seen["."] >= seen[","] else ","
    return "?" if seen["?"] else ""


def _sign_of(figure: str) -> str:
    """Which sign the figure proves to be the decimal one; "?" for a comma that may group thousands or not."""
    last = max(figure.rfind("."), figure.rfind(","))
    if last < 0:
        return ""
    sign = figure[last]
    other = "," if sign == "." else "."
    if other in figure:
        return sign
    if figure.count(sign) > 1:
        return other
    if len(figure) - last - 1 != 3 or figure.startswith("0") or last > 3:
        return sign
    return "?" if sign == "," else ""  # 1.250 is a decimal point unless other cells say otherwise


@lru_cache(8192)
def number_in(text: str, decimal: str) -> float:
    """The number, by this decimal sign; NotRead with the reason."""
    figure = re.sub(rf"[{_SPACES}'’]", "", text).replace("−", "-")
    bare = figure.lstrip("+-")
    if not any(letter.isdigit() for letter in bare) or len(text) > LONGEST:
        raise NotRead(say("“{typed}” is not a number.", typed=text[:LONGEST]))
    thousands = "," if decimal == "." else "."
    if _GROUPED[decimal].fullmatch(bare):
        figure = figure.replace(thousands, "")
    elif not _PLAIN[decimal].fullmatch(bare):
        raise NotRead(say("“{typed}” does not fit the decimal sign of its column, “{sign}”.", typed=text, sign=decimal))
    return float(figure.replace(decimal, "."))


def measure_in(text: str, decimal: str, unit: str, kept: str) -> float:
    """A number with or without a unit behind it, in the unit that is kept; several parts, as in 2 lb 3 oz, add up.

    unit: the column's own, for numbers without one. NotRead with the reason.
    """
    at, total, sign = 0, 0.0, 1.0
    for part, found in enumerate(_parts(text)):
        value, own = number_in(found[1], decimal), (found[2] or "").strip()
        if part and not own:
            raise NotRead(say("“{typed}” is more than one number.", typed=text[:LONGEST]))
        converted = in_kept_unit(value, own or unit, kept)
        if converted is None:
            raise NotRead(_unknown_unit(text, own or unit, kept))
        sign = -1.0 if part == 0 and value < 0 else sign
        total += converted if part == 0 else sign * converted
        at = found.end()
    if not at or at < len(text):
        raise NotRead(say("“{typed}” is not a number.", typed=text[:LONGEST]))
    return total


def _parts(text: str) -> Iterable[re.Match[str]]:
    at = 0
    while at < len(text) and (found := _MEASURE.match(text, at)):
        yield found
        at = found.end()


def _unknown_unit(text: str, unit: str, kept: str) -> str:
    if kept == "mS/cm" and unit.casefold().startswith(("ppm", "tds")):
        return say("“{typed}”: ppm of a meter depend on its scale. Write the EC in mS/cm.", typed=text[:LONGEST])
    if not kept:
        return say("“{typed}”: a count has no unit {unit}.", typed=text[:LONGEST], unit=unit)
    return say(
        "“{typed}”: {unit} is not a unit that can be turned into {kept}.", typed=text[:LONGEST], unit=unit, kept=kept
    )
