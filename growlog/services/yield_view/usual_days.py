"""Usual days of a species from flower to pick and to maturity, from the table of published figures."""

from functools import cache

from growlog.calculations.explained_figure import COMMON_PRACTICE
from growlog.calculations.flower_records import UsualLag
from growlog.calculations.milestones import UsualRange, usual_for
from growlog.sharing.tables import table_rows

FLOWER_TO_HARVEST, TO_MATURITY = "flower to harvest", "days to maturity"
# What the table calls plants that growers name differently; common practice, no source.
_OTHER_NAMES = {
    "pattypan": "summer squash", "squash": "summer squash", "courgette": "summer squash", "zucchini": "summer squash",
    "marrow": "summer squash", "aubergine": "eggplant", "chilli": "pepper", "chili": "pepper", "capsicum": "pepper",
    "paprika": "pepper", "gherkin": "cucumber",
}  # fmt: skip
# Where the table has none: common practice, no source. The last is for plants that are not known here at all.
_LAGS = {"pepper": (35.0, 70.0), "melon": (35.0, 50.0), "bean": (10.0, 20.0)}
_UNKNOWN_LAG = (10.0, 60.0)


@cache
def usual_rows() -> tuple[UsualRange, ...]:
    """All rows of the table, the source with how it was obtained where that is not by reading it."""
    return tuple(
        UsualRange(
            row["crop"], row["kind"], float(row["days_min"]), float(row["days_max"]), row["counted_from"],
            row["source"] if row["status"] == "read" else f"{row['source']}, {row['status']}",
        )
        for row in table_rows("days_to_harvest")
    )  # fmt: skip


def table_name(species: str) -> str:
    """What the table calls a plant of that plain name; the name itself where it knows none."""
    word = species.casefold().strip()
    names = sorted({row.crop.casefold().split(",")[0].split("(")[0].strip() for row in usual_rows()})
    named = next((name for name in names if name in word), "")
    return named or next((other for alias, other in _OTHER_NAMES.items() if alias in word), word)


def usual_ranges(species: str, kind: str) -> list[UsualRange]:
    """The published ranges of a species, [] where there are none."""
    return usual_for(table_name(species), kind, usual_rows())


def usual_lag(species: str) -> UsualLag:
    """Days from flower to pick that a species usually takes: all published ranges together, else common practice."""
    rows = usual_ranges(species, FLOWER_TO_HARVEST)
    if rows:
        sources = "; ".join(dict.fromkeys(row.source for row in rows))
        return UsualLag(min(r.low_days for r in rows), max(r.high_days for r in rows), sources)
    name = table_name(species)
    low, high = next((days for plant, days in _LAGS.items() if plant in name), _UNKNOWN_LAG)
    return UsualLag(low, high, COMMON_PRACTICE)
