"""The daily light that kinds of crops usually get or need, each range with its source."""

from dataclasses import dataclass

from growlog.words import mark


@dataclass(frozen=True)
class UsualLight:
    """dli_low, dli_high: mol/m² a day; high None where only a least is given. meaning: what the source calls it.

    plants: plain names of kinds of plants, in small letters. from_memory: the range was not read in a source.
    """

    plants: tuple[str, ...]
    dli_low: float
    dli_high: float | None
    meaning: str
    source: str
    from_memory: bool = False


_RUNKLE = "Runkle, E., Lighting greenhouse vegetables, Michigan State University"
_FRUITING = ("tomato", "cucumber", "pepper", "chilli", "chili", "aubergine", "eggplant", "courgette", "squash",
             "pattypan", "melon")  # fmt: skip

# The more particular come first: the first one that names the plant is taken.
USUAL_LIGHT: tuple[UsualLight, ...] = (
    UsualLight(("pepper", "chilli", "chili"), 20, 30, mark("common range"), "common practice, from memory", True),
    UsualLight(
        ("courgette", "summer squash", "pattypan"), 20, 30, mark("common range"), "common practice, from memory", True
    ),
    UsualLight(("strawberry",), 20, 20, mark("target used in a trial"), "a Cornell thesis on strawberry, 2021"),
    UsualLight(("lettuce",), 12, 14, mark("recommended least"), _RUNKLE),
    UsualLight(("tomato", "cucumber", "pepper"), 15, None, mark("recommended least"), _RUNKLE),
    UsualLight(
        _FRUITING, 20, 25, mark("general need of fruiting vegetables"),
        "Gomez, C., University of Florida, as reported in a trade page",
    ),
    UsualLight(("seedling",), 6, 12, mark("common range"), "common practice, from memory", True),
)  # fmt: skip


def usual_light(species: str) -> tuple[UsualLight, ...]:
    """All ranges that are known for a species by its plain name, the most particular first; () where none is."""
    word = species.casefold()
    return tuple(usual for usual in USUAL_LIGHT if any(plant in word for plant in usual.plants))
