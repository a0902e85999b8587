"""The usual cautions where work with lamps, mains beside water, heat, CO2 and mould comes up.

Each in one or two sentences, with its source; local codes, labels and licensed electricians go first.
"""

from dataclasses import dataclass
from enum import StrEnum

from growlog.words import mark, say

_FDA = "US Food and Drug Administration, 21 CFR 1040.30, and its advice on mercury vapor and metal halide lamps"
_EPA = "US Environmental Protection Agency, Cleaning up a broken CFL, as quoted"
_MEMORY = mark("common practice, from memory")


class CautionTopic(StrEnum):
    """What a screen is about when it shows a caution."""

    LAMPS = "lamps"
    MAINS = "mains"
    HEAT = "heat"
    CO2 = "co2"
    MOULD = "mould"


@dataclass(frozen=True)
class Caution:
    """A caution in one or two sentences. from_memory: what it says was not read in a source."""

    topic: CautionTopic
    text: str
    source: str
    from_memory: bool = False

    @property
    def sentence(self) -> str:
        """The caution in the user's language."""
        return say(self.text)


_LOCAL_FIRST = mark("Local codes, the label and a licensed electrician go before anything that is said here.")

CAUTIONS: tuple[Caution, ...] = (
    Caution(
        CautionTopic.LAMPS,
        mark(
            "A metal halide lamp whose outer glass is broken gives short-wave UV that burns skin and eyes: switch it "
            "off and change it."
        ),
        _FDA,
    ),
    Caution(
        CautionTopic.LAMPS,
        mark(
            "Discharge and fluorescent lamps hold mercury. If one breaks, leave the room, air it, use no vacuum "
            "cleaner, and take the remains to a collection point."
        ),
        _EPA,
    ),
    Caution(
        CautionTopic.LAMPS,
        mark("Bright lamps and UV harm eyes: look into none, and switch off or wear fitting glasses for close work."),
        _MEMORY,
        True,
    ),
    Caution(
        CautionTopic.MAINS,
        mark(
            "Mains and water: use a residual-current device, let each cable hang in a loop below its socket, and keep "
            "plugs and ballasts off the floor."
        ),
        _MEMORY,
        True,
    ),
    Caution(
        CautionTopic.MAINS,
        mark("Load a circuit with no more than about four fifths of its rating for hours on end."),
        _MEMORY,
        True,
    ),
    Caution(
        CautionTopic.HEAT,
        mark(
            "Lamps and ballasts get hot enough to set paper and foil on fire: keep the clearance that the label "
            "states, and have a smoke alarm."
        ),
        _MEMORY,
        True,
    ),
    Caution(
        CautionTopic.CO2,
        mark(
            "CO2 suffocates without a warning. Workplace limits are 5000 ppm over a shift and 30 000 ppm for a short "
            "time: use a meter with an alarm, and burn no fuel indoors."
        ),
        _MEMORY,
        True,
    ),
    Caution(
        CautionTopic.MOULD,
        mark(
            "Damp air breeds mould on walls and in lungs: lead the moist air outdoors, and keep the rooms beside below "
            "about 60 % humidity."
        ),
        _MEMORY,
        True,
    ),
)  # fmt: skip


def cautions_for(*topics: CautionTopic | str) -> list[Caution]:
    """The cautions on some topics, in the order of the table; ValueError for a topic that is none."""
    wanted = {CautionTopic(topic) for topic in topics}
    return [caution for caution in CAUTIONS if caution.topic in wanted]


def local_first() -> str:
    """The sentence that stands below every caution."""
    return say(_LOCAL_FIRST)
