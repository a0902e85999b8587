"""Small pieces of sentences that several kinds of entry share."""

from growlog.records.problems import with_unit
from growlog.words import say, show_number


def fixed(value: float, decimals: int, unit: str) -> str:
    """A number with as many decimals as it is measured with, and its unit."""
    number = show_number(value, decimals)
    return f"{number}\u2009{unit}" if unit else number


def joined(*parts: str) -> str:
    """The parts that are not empty, with commas."""
    return ", ".join(p for p in parts if p)


def counted(template: str, n: int | None) -> str:
    """The template with its {n}, "" where nothing was counted."""
    return say(template, n=n) if n else ""


def measured(label: str, value: float | None, decimals: int, unit: str) -> str:
    """A labelled measure, "" where it was not taken."""
    return "" if value is None else say("{label} {value}", label=label, value=fixed(value, decimals, unit)).strip()


def weight(grams: float) -> str:
    """A weight in g below 1 kg, in kg from there."""
    return with_unit(round(grams, 1), "g") if grams < 1000 else fixed(grams / 1000, 2, "kg")
