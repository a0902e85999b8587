"""What a heading of a logger's column means: time, temperature or humidity, and in which unit."""

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum


class LoggerColumn(StrEnum):
    """What a column holds."""

    STAMP = "stamp"  # day and time
    DAY = "day"
    TIME = "time"
    TEMPERATURE = "temperature"
    HUMIDITY = "humidity"


@dataclass(frozen=True)
class Heading:
    """What a heading was understood as. unit: "C", "F", "K", "percent", "fraction", "" where it names none.

    offset_s: of a stamp, how far ahead of UTC the heading says it is; None where it says nothing.
    """

    column: LoggerColumn
    unit: str = ""
    offset_s: int | None = None


# Plain words of several languages without their accents; a heading is matched as a whole or by its first words.
_STAMPS = (
    "timestamp", "time stamp", "datetime", "date time", "date and time", "local time", "time local", "utc", "utc time",
    "logged at", "recorded at", "recorded", "moment", "zeitstempel", "datum zeit", "datum uhrzeit", "datum und uhrzeit",
    "zeitpunkt", "messzeit", "horodatage", "date heure", "date et heure", "fecha hora", "fecha y hora", "data ora",
    "data e ora", "data hora", "data e hora", "tijdstip", "datum tijd", "datum en tijd",
)  # fmt: skip
_DAYS = ("date", "day", "datum", "tag", "jour", "fecha", "dia", "data", "giorno", "dag", "dato")
_TIMES = ("time", "clock", "hour", "zeit", "uhrzeit", "heure", "hora", "ora", "orario", "tijd", "tid")
_TEMPERATURES = (
    "temperature", "temp", "air temperature", "air temp", "ambient temperature", "room temperature", "t", "ta", "t air",
    "tair", "temperatur", "lufttemperatur", "raumtemperatur", "temperature de l air", "temperature air", "temperatura",
    "temperatura del aire", "temperatura aria", "temperatura ar", "temperatuur", "luchttemperatuur", "temperatur luft",
)  # fmt: skip
_HUMIDITIES = (
    "humidity", "relative humidity", "rel humidity", "air humidity", "hum", "rh", "r h", "humid", "feuchte",
    "luftfeuchte", "luftfeuchtigkeit", "feuchtigkeit", "relative feuchte", "relative luftfeuchte", "rel feuchte",
    "relative luftfeuchtigkeit", "rf", "humidite", "humidite relative", "hr", "humedad", "humedad relativa", "umidita",
    "umidita relativa", "ur", "umidade", "umidade relativa", "vochtigheid", "luchtvochtigheid",
    "relatieve vochtigheid", "rv", "luftfuktighet",
)  # fmt: skip
# Of longer headings, such as a sensor's name beside the quantity, one word decides.
_TEMPERATURE_STARTS, _TEMPERATURE_ENDS = ("temperat", "temp"), ("temperatur", "temperatuur")
_HUMIDITY_STARTS, _HUMIDITY_ENDS = ("humid", "umid"), ("feuchte", "feuchtigkeit", "vochtigheid")
_OTHER_THINGS = (
    "dew", "taupunkt", "rosee", "rocio", "rugiada", "dauwpunt", "wet bulb", "absolut", "soil", "water", "leaf", "boden",
    "wasser", "blatt", "solution", "root", "battery", "vpd", "min", "max", "setpoint",
)  # fmt: skip
_UNITS = {
    "c": "C", "degc": "C", "deg c": "C", "celsius": "C", "degrees c": "C", "grad c": "C", "grad celsius": "C",
    "f": "F", "degf": "F", "deg f": "F", "fahrenheit": "F", "degrees f": "F", "k": "K", "kelvin": "K",
    "percent": "percent", "per cent": "percent", "pct": "percent", "prozent": "percent", "rh": "percent",
    "percent rh": "percent", "percent rel": "percent", "percent r h": "percent", "rh percent": "percent",
    "percent rf": "percent", "percent hr": "percent", "pourcent": "percent",
    "fraction": "fraction", "ratio": "fraction", "0 1": "fraction", "part of one": "fraction", "decimal": "fraction",
}  # fmt: skip
_BRACKETED = re.compile(r"[\(\[\{]([^\)\]\}]*)[\)\]\}]")
_NOT_A_WORD = re.compile(r"[^a-z0-9]+")
_OFFSET = re.compile(r"\b(?:utc|gmt)\s*(?:([+-])\s*(\d{1,2})(?::?(\d{2}))?)?", re.IGNORECASE)
_NUMBERED = re.compile(r" (?:sensor|probe|channel|ch|kanal)?\s?\d{1,2}$")


def heading_of(cell: str) -> Heading | None:
    """What a heading cell means, None where it is none that is known here or measures something else."""
    cell = cell.replace("_", " ")
    offset = _OFFSET.search(cell)
    name, unit = _name_and_unit(_OFFSET.sub(" ", cell) if offset else cell)
    if offset and not name:
        name = "utc"
    if any(f" {word}" in f" {name}" for word in _OTHER_THINGS):
        return None
    for column, words in (
        (LoggerColumn.STAMP, _STAMPS), (LoggerColumn.DAY, _DAYS), (LoggerColumn.TIME, _TIMES),
        (LoggerColumn.TEMPERATURE, _TEMPERATURES), (LoggerColumn.HUMIDITY, _HUMIDITIES),
    ):  # fmt: skip
        if name in words:
            of_time = column in (LoggerColumn.STAMP, LoggerColumn.DAY, LoggerColumn.TIME)
            return Heading(column, _fitting(column, unit), _seconds_ahead(offset) if of_time and offset else None)
    if any(word.startswith(_TEMPERATURE_STARTS) or word.endswith(_TEMPERATURE_ENDS) for word in name.split()):
        return Heading(LoggerColumn.TEMPERATURE, _fitting(LoggerColumn.TEMPERATURE, unit))
    if any(word.startswith(_HUMIDITY_STARTS) or word.endswith(_HUMIDITY_ENDS) for word in name.split()):
        return Heading(LoggerColumn.HUMIDITY, _fitting(LoggerColumn.HUMIDITY, unit))
    return None


def unit_of(text: str) -> str:
    """The unit that a word stands for, as Heading names it; "" for none that is known."""
    return _UNITS.get(_plain(text), "")


def _name_and_unit(cell: str) -> tuple[str, str]:
    bracket = _BRACKETED.search(cell)
    unit = unit_of(bracket[1]) if bracket else ""
    rest = _plain(cell[: bracket.start()] + " " + cell[bracket.end() :] if bracket else cell)
    name, found = _without_unit(rest)
    return _NUMBERED.sub("", name), unit or found


def _without_unit(words: str) -> tuple[str, str]:
    """The words without a unit at their end or their start, and that unit: "temp c", "percent rh"."""
    listed = words.split(" ")
    for count in (2, 1):
        if len(listed) > count and (unit := _UNITS.get(" ".join(listed[-count:]))):
            return " ".join(listed[:-count]), unit
    if len(listed) > 1 and listed[0] == "percent":
        return " ".join(listed[1:]), "percent"
    return words, ""


def _seconds_ahead(offset: re.Match[str]) -> int:
    seconds = int(offset[2] or 0) * 3600 + int(offset[3] or 0) * 60
    return -seconds if offset[1] == "-" else seconds


def _fitting(column: LoggerColumn, unit: str) -> str:
    temperature = unit in ("C", "F", "K")
    if column is LoggerColumn.TEMPERATURE:
        return unit if temperature else ""
    return unit if column is LoggerColumn.HUMIDITY and not temperature else ""


def _plain(text: str) -> str:
    """Small letters without accents, one space between words; ° and % as words."""
    spelt = text.replace("%", " percent ").replace("℃", " c ").replace("℉", " f ").replace("°", " ").replace("º", " ")
    bare = "".join(c for c in unicodedata.normalize("NFKD", spelt.casefold()) if not unicodedata.combining(c))
    return _NOT_A_WORD.sub(" ", bare).strip()
