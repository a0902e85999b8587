"""Small pieces of sentences that several kinds of entry share."""

from growlog.records.display import fixed
from growlog.words import say


def joined(*parts: str) -> str:
    """The parts that are not empty, with commas."""
    return ", ".join(p for p in parts if p)


def counted(template: str, n: int | None) -> str:
    """The template with its {n}, "" where nothing was counted."""
    return say(template, n=n) if n else ""


def measured(label: str, value: float | None, decimals: int, unit: str) -> str:
    """A labelled measure, "" where it was not taken."""
    return "" if value is None else say("{label} {value}", label=label, value=fixed(value, decimals, unit)).strip()
