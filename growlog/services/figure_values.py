"""A figure with its explanation as plain values, for JSON and for files that others read."""

from dataclasses import fields
from datetime import date
from decimal import Decimal
from typing import Any

from growlog.calculations.explained_figure import Figure, Input
from growlog.words import say


def figure_values(figure: Figure) -> dict[str, Any]:
    """The figure under the names of its fields: days as ISO 8601 text, decimals as numbers."""
    return {f.name: _plain(getattr(figure, f.name)) for f in fields(figure)}


_FACT_FIELDS = ("key", "value", "unit", "low", "high", "inputs", "method", "source", "as_of")


def fact_values(figure: Figure) -> dict[str, Any]:
    """A figure of a crop under the nine names of the command that prints them."""
    values = figure_values(figure)
    return {name: values[name] for name in _FACT_FIELDS} | {"source": say(figure.source)}


def _plain(value: Any) -> Any:
    if isinstance(value, Decimal):
        # Only the written form becomes a float: its shortest digits are the decimal's own.
        return int(value) if value == value.to_integral_value() else float(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, tuple):
        return [_plain(v) for v in value]
    if isinstance(value, Input):
        return {f.name: _plain(getattr(value, f.name)) for f in fields(value)}
    return value if value is None or isinstance(value, (int, float)) else str(value)
