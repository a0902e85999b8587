"""The BBCH codes that a stage entry may be chosen from, by the scale of the crop's family.

Source: Meier, U. (ed.) (2001) Growth stages of mono- and dicotyledonous plants, BBCH monograph, 2nd edition. The
meanings are our own words; codes that were written from memory say so.
"""

import csv
from dataclasses import dataclass
from enum import StrEnum
from io import StringIO

from growlog.words import mark


class StageScale(StrEnum):
    """The scales of the monograph that serve fruiting vegetables."""

    CUCURBITS = "cucurbits"
    SOLANACEOUS = "solanaceous fruit"

    @property
    def label(self) -> str:
        """The scale in words, to be translated where shown."""
        return _LABELS[self]


_LABELS = {
    StageScale.CUCURBITS: mark("cucurbits (squash, cucumber, melon)"),
    StageScale.SOLANACEOUS: mark("solanaceous fruit (tomato, pepper, aubergine)"),
}
# Common practice, no source: the family of the plants' plain names.
_SOLANACEOUS = ("tomato", "pepper", "chilli", "chili", "aubergine", "eggplant")


@dataclass(frozen=True)
class GrowthStage:
    """A code of a scale. from_memory: its meaning was not read in the monograph itself."""

    code: str
    meaning: str
    from_memory: bool


def scale_for(species: str) -> StageScale:
    """The scale of a species by its plain name; cucurbits where the name tells nothing."""
    word = species.casefold()
    return StageScale.SOLANACEOUS if any(name in word for name in _SOLANACEOUS) else StageScale.CUCURBITS


def growth_stages(table: str, scale: StageScale) -> tuple[GrowthStage, ...]:
    """The stages of a scale in the table's text (CSV: scale, code_2, code_3, meaning_in_our_words, status).

    Two digits where the scale has them, else three.
    """
    rows = (row for row in csv.DictReader(StringIO(table)) if row["scale"] == scale.value)
    return tuple(
        GrowthStage(
            row["code_2"] or row["code_3"], row["meaning_in_our_words"], row["status"].startswith("from memory")
        )
        for row in rows
    )
