"""All facts of crops in one table, the best of each marked where one way is better."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from growlog.calculations.explained_figure import Figure, Value
from growlog.services.facts.facts import fact_keys
from growlog.services.side_by_side.beside import CropBeside
from growlog.services.side_by_side.better import BETTER, Better
from growlog.sharing.csv_text import csv_text
from growlog.words import say


@dataclass(frozen=True)
class FactRow:
    """A fact of each crop, in their order. best: positions of the best ones, () where none is better or all alike."""

    key: str
    family: str
    words: str
    unit: str
    figures: tuple[Figure, ...]
    better: Better | None
    best: tuple[int, ...]

    @property
    def values(self) -> tuple[Value | None, ...]:
        """The values, None where there is none yet."""
        return tuple(f.value for f in self.figures)


def facts_table(crops: Sequence[CropBeside]) -> list[FactRow]:
    """One row for each fact that at least one crop has, in the order of the families."""
    by_crop = [{f.key: f for f in c.figures} for c in crops]
    rows = []
    for family, key in fact_keys():
        figures = tuple(found[key.key] for found in by_crop)
        if any(f.value is not None for f in figures):
            unit = next((f.unit for f in figures if f.unit), "")
            better = BETTER.get(key.key)
            best = _best(figures, better)
            rows.append(FactRow(key.key, say(family.name), say(key.meaning), unit, figures, better, best))
    return rows


def facts_csv(crops: Sequence[CropBeside], rows: Sequence[FactRow]) -> str:
    """The table as CSV: a column for each crop, numbers with a point, the best named."""
    names = [c.crop.name for c in crops]
    lines = [["key", "family", "fact", "unit", "better", *names, "best"]]
    for row in rows:
        better = "" if row.better is None else row.better.value
        cells = ["" if v is None else str(v) for v in row.values]
        best = "; ".join(names[i] for i in row.best)
        lines.append([row.key, row.family, row.words, row.unit, better, *cells, best])
    return csv_text(lines)


def _best(figures: Sequence[Figure], better: Better | None) -> tuple[int, ...]:
    numbers = [(i, n) for i, f in enumerate(figures) if (n := number_of(f.value)) is not None]
    values = {n for _, n in numbers}
    if better is None or len(values) < 2:
        return ()
    top = max(values) if better is Better.MORE else min(values)
    return tuple(i for i, n in numbers if n == top)


def number_of(value: Value | None) -> float | None:
    """A value as a number, None where it is none."""
    return float(value) if isinstance(value, (int, float, Decimal)) else None
