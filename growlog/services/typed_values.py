"""Numbers, temperatures, prices and times as people type them, read into the units that calculations take."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from functools import cache
from typing import TYPE_CHECKING, Any

from growlog.words import say

if TYPE_CHECKING:
    from pint import UnitRegistry

_NUMBER = re.compile(r"\s*([+-]?(?:\d{1,15}(?:\.\d{0,15})?|\.\d{1,15})(?:[eE][+-]?\d{1,2})?)\s*(.*?)\s*", re.DOTALL)
_UNIT = re.compile(r"[A-Za-zµμ°%Ω][\w µμ°²³⁻¹/·*^()-]{0,30}")
_CLOCK = re.compile(r"([01]?\d|2[0-4]):([0-5]\d)")
_AS_WRITTEN = {
    "c": "degC", "°c": "degC", "degc": "degC", "celsius": "degC",
    "f": "degF", "°f": "degF", "degf": "degF", "fahrenheit": "degF",
}  # fmt: skip
LARGEST = 1e15  # beyond it nothing in a growing room is measured
_CENTS = ("c", "ct", "cent", "cents", "¢")


class NotUnderstood(Exception):
    """What was typed cannot be used; its text is a plain sentence with a way on."""


@dataclass(frozen=True)
class Unit:
    """The unit that a calculation takes, the one to show, and the key endings that stand for another one."""

    pint: str
    shown: str
    endings: dict[str, str] = field(default_factory=dict)


CELSIUS = Unit("degC", "°C", {"c": "degC", "f": "degF"})
HOURS = Unit("hour", "h", {"h": "hour", "min": "minute"})
MINUTES = Unit("minute", "min", {"min": "minute", "h": "hour"})
DAYS = Unit("day", "d", {"d": "day", "weeks": "week"})
WATTS = Unit("watt", "W", {"w": "watt", "kw": "kilowatt"})
KWH = Unit("kilowatt_hour", "kWh", {"kwh": "kilowatt_hour"})
AREA = Unit("meter**2", "m²", {"m2": "meter**2", "ft2": "foot**2"})
LUX = Unit("lux", "lux", {"lx": "lux"})
FOOT_CANDLES = Unit("foot_candle", "foot-candles", {"fc": "foot_candle"})
PPFD = Unit("micromole/meter**2/second", "µmol/m²/s", {"umol": "micromole/meter**2/second"})
DLI = Unit("mole/meter**2/day", "mol/m²/d", {"mol": "mole/meter**2/day"})
EFFICACY = Unit("micromole/joule", "µmol/J", {"umol_per_j": "micromole/joule"})
PERCENT = Unit("percent", "%", {"percent": "percent"})
PLAIN = Unit("", "")

Reader = Callable[[str, str, str], Any]  # (key as typed, text, unit that the key's ending names or "")


@cache
def registry() -> "UnitRegistry[Any]":
    """The units that are known; made once, when a unit is first typed, since it takes a while."""
    from pint import UnitRegistry

    units: UnitRegistry[Any] = UnitRegistry()
    units.define("foot_candle = lumen / foot ** 2 = fc = footcandle = footcandles = foot_candles")
    return units


def number_and_unit(key: str, text: str) -> tuple[str, str]:
    """The number as typed and the unit behind it, "" where there is none. NotUnderstood for anything else."""
    found = _NUMBER.fullmatch(text)
    if found is None or found[2].startswith((",", ".")):  # 1,5 could be one and a half, or the first of two values
        raise NotUnderstood(say("{key}={typed} is not a number. Write it as 25 or 25.5.", key=key, typed=text))
    if found[2] and not _UNIT.fullmatch(found[2]):
        raise NotUnderstood(
            say("{key}={typed}: {unit} is no unit that is known here.", key=key, typed=text, unit=found[2])
        )
    return found[1], found[2]


def unit_as_known(unit: str) -> str:
    """A unit as typed (m2, °F, h/d) in the form that the registry reads."""
    if unit.casefold() in _AS_WRITTEN:
        return _AS_WRITTEN[unit.casefold()]
    unit = unit.replace("foot-candle", "foot_candle").replace("·", "*").replace("%", "percent")
    return re.sub(r"([A-Za-z])([23])\b", r"\1**\2", unit)


def convert(key: str, number: float, unit: str, wanted: str) -> float:
    """A number in another unit; NotUnderstood where a unit is unknown or the two do not measure the same thing."""
    from pint.errors import PintError

    try:
        source, target = unit_as_known(unit), unit_as_known(wanted)
        # Twelve digits are more than was typed, and hide what binary fractions add to 77 °F.
        found = float(f"{registry().Quantity(number, source).to(target).magnitude:.12g}")
    except PintError as error:
        raise NotUnderstood(
            say("{key}: {unit} cannot be turned into {wanted}.", key=key, unit=unit, wanted=wanted)
        ) from error
    except Exception as error:  # the unit parser raises errors of its tokenizer for nonsense
        raise NotUnderstood(say("{key}: {unit} is no unit that is known here.", key=key, unit=unit)) from error
    if not abs(found) <= LARGEST:
        raise NotUnderstood(say("{key}: this number is too large.", key=key))
    return found


def quantity(unit: Unit) -> Reader:
    """A reader of floats in a unit."""

    def read(key: str, text: str, ending: str) -> float:
        return float(_in_unit(key, text, ending, unit))

    return read


def exact(unit: Unit) -> Reader:
    """A reader of decimals in a unit; as typed where the unit is the same."""

    def read(key: str, text: str, ending: str) -> Decimal:
        return Decimal(_in_unit(key, text, ending, unit))

    return read


def whole(key: str, text: str, _ending: str) -> int:
    """A count, 0 or more."""
    if not (text.isascii() and text.isdigit() and len(text) < 10):
        raise NotUnderstood(say("{key}={typed} is not a whole number.", key=key, typed=text))
    return int(text)


def humidity(key: str, text: str, _ending: str) -> float:
    """Relative humidity in per cent. A part of one without a per cent sign is asked about, never guessed."""
    number, unit = number_and_unit(key, text)
    if unit not in ("", "%"):
        raise NotUnderstood(say("{key}={typed}: humidity is in per cent.", key=key, typed=text))
    percent = float(number)
    if not unit and 0 < percent <= 1:
        raise NotUnderstood(
            say(
                "{key}={typed}: is that {hundred} %, or {number} %? Humidity is in per cent; write {hundred} or "
                "{number}%.",
                key=key,
                typed=text,
                number=number,
                hundred=f"{percent * 100:g}",
            )
        )
    return percent


def price(key: str, text: str, _ending: str) -> Decimal:
    """A price in the currency's main unit: 0.17, 17c or 17 ct/kWh."""
    bare = re.sub(r"\s*(/|per)\s*(kWh|h|hour)\s*$", "", text.strip(), flags=re.IGNORECASE)
    found = _NUMBER.fullmatch(bare)
    if found is None or (found[2] and found[2].casefold() not in _CENTS):
        raise NotUnderstood(
            say(
                "{key}={typed} is not a price. Write it as 0.17 or 17c, and currency=EUR beside it.",
                key=key,
                typed=text,
            )
        )
    return Decimal(found[1]).scaleb(-2) if found[2] else Decimal(found[1])


def clock_time(key: str, text: str, _ending: str) -> int:
    """Minutes after midnight of 00:00 to 24:00."""
    found = _CLOCK.fullmatch(text.strip())
    minute = int(found[1]) * 60 + int(found[2]) if found else -1
    if not 0 <= minute <= 24 * 60:
        raise NotUnderstood(say("{key}={typed} is not a time of day. Write it as 20:00.", key=key, typed=text))
    return minute


def civil_day(key: str, text: str, _ending: str) -> date:
    """A civil date as ISO 8601 writes it."""
    try:
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            raise ValueError
        return date.fromisoformat(text)
    except ValueError as error:
        raise NotUnderstood(say("{value} is not a date. Write it as 2026-01-18.", value=text)) from error


def words(_key: str, text: str, _ending: str) -> str:
    """Text as typed."""
    return text.strip()


def with_its_unit(key: str, text: str, ending: str) -> tuple[float, str]:
    """A number and its unit as the registry knows it, "" where none was typed."""
    number, unit = number_and_unit(key, text)
    return float(number), unit_as_known(unit) if unit else ending


def _in_unit(key: str, text: str, ending: str, wanted: Unit) -> str:
    number, unit = number_and_unit(key, text)
    unit = unit or ending
    if not unit or unit in (wanted.pint, wanted.shown):
        return number
    if not wanted.pint:
        raise NotUnderstood(say("{key}={typed}: this number has no unit.", key=key, typed=text))
    return f"{convert(key, float(number), unit, wanted.pint):.12g}"
