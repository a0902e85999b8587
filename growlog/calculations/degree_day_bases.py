"""Base temperatures from which degree days of a crop are counted, each with its source; nothing is taken unasked."""

from dataclasses import dataclass

from growlog.calculations.degree_days import DegreeDayMethod

_KNOTT = "Maynard, D. and Hochmuth, G. (1997) Knott's handbook for vegetable growers (from memory)"


@dataclass(frozen=True)
class DegreeDayBase:
    """base_f, ceiling_f: °F, as the sources print them. method: None where the source was not read for one."""

    plants: tuple[str, ...]
    base_f: float
    ceiling_f: float | None
    method: DegreeDayMethod | None
    source: str
    from_memory: bool = False


DEGREE_DAY_BASES: tuple[DegreeDayBase, ...] = (
    DegreeDayBase(
        ("cucumber",), 60, 90, DegreeDayMethod.MAXIMUM_MIRRORED,
        "Perry, K. and Wehner, T. (1996) HortTechnology 6(1): 27; sowing to harvest",
    ),
    DegreeDayBase(("cucumber",), 55, None, None, _KNOTT, True),
    DegreeDayBase(("tomato",), 51, None, None, _KNOTT, True),
    DegreeDayBase(("courgette", "squash", "pattypan"), 45, None, None, _KNOTT, True),
    DegreeDayBase(("melon",), 50, None, None, _KNOTT, True),
    DegreeDayBase(("strawberry",), 39, None, None, _KNOTT, True),
    DegreeDayBase(("lettuce",), 40, None, None, _KNOTT, True),
    DegreeDayBase(("pepper", "chilli", "chili"), 50, None, None, "common practice, from memory", True),
    DegreeDayBase(("aubergine", "eggplant"), 60, None, None, "common practice, from memory", True),
)  # fmt: skip


def degree_day_bases(species: str) -> tuple[DegreeDayBase, ...]:
    """All bases that are known for a species by its plain name, those read in their source first; () where none is."""
    word = species.casefold()
    return tuple(base for base in DEGREE_DAY_BASES if any(plant in word for plant in base.plants))
