"""The colours of the program, each with one meaning, in a light and a dark set.

The marks derive from a colour-blind-safe set: M. Okabe and K. Ito, Color Universal Design (2008).
"""

from dataclasses import dataclass, fields


@dataclass(frozen=True)
class Palette:
    """Every colour as '#RRGGBB'. Text is ink, mute or accent; `problem` may also be text."""

    name: str
    paper: str  # board ground
    card: str  # sheets, dialogs, fields
    soft: str  # rails and quiet grounds
    rule: str  # hairlines between things
    edge: str  # the outline of what can be filled in: fields, boxes to tick
    ink: str
    mute: str
    accent: str  # the one action colour
    on_accent: str  # text on the accent
    feed: str
    light: str
    training: str
    pollination: str
    pick: str
    reading: str
    problem: str
    stage: str  # the mark of a growth stage
    stage_first: str  # ground of the earliest stage band
    stage_last: str  # ground of the latest stage band

    @property
    def is_dark(self) -> bool:
        """Whether the ground is dark."""
        return self.name == "dark"

    def mark(self, kind: str) -> str:
        """The colour of an entry kind's mark."""
        return str(getattr(self, MARK_TOKENS[kind]))

    def colour(self, token: str) -> str:
        """The colour of a token by its name."""
        if token not in COLOUR_TOKENS:
            raise KeyError(f"{token} is not a colour token; there are {', '.join(COLOUR_TOKENS)}")
        return str(getattr(self, token))

    def stage_band(self, share: float) -> str:
        """The ground of a stage band: 0 for the earliest stage, 1 for the latest."""
        return blend(self.stage_first, self.stage_last, share)


COLOUR_TOKENS = tuple(field.name for field in fields(Palette) if field.name != "name")

# One token may serve several kinds: the shape and the name tell them apart.
MARK_TOKENS = {
    "feed": "feed",
    "light": "light",
    "training": "training",
    "pollination": "pollination",
    "fruit-check": "pollination",
    "pick": "pick",
    "reading": "reading",
    "calibration": "reading",
    "problem": "problem",
    "treatment": "problem",
    "stage": "stage",
    "potting-on": "training",
    "tank-care": "feed",
    "meter": "light",
    "note": "mute",
    "photo": "mute",
}

LIGHT = Palette(
    name="light",
    paper="#FAF7F0",
    card="#FFFFFF",
    soft="#F1ECE0",
    rule="#DDD7C9",
    edge="#918B7B",
    ink="#23302B",
    mute="#5F6963",
    accent="#4B2E5A",
    on_accent="#FFFFFF",
    feed="#0072B2",
    light="#B36B00",
    training="#5B4A3F",
    pollination="#B04A85",
    pick="#C04A00",
    reading="#1F78A8",
    problem="#B00020",
    stage="#2F8A67",  # darker than the last band, which has only 2.85:1 on paper
    stage_first="#CFE8DC",
    stage_last="#3FA57E",
)

DARK = Palette(
    name="dark",
    paper="#16181D",
    card="#1E2128",
    soft="#23272F",
    rule="#343943",
    edge="#6F7786",
    ink="#ECE7DC",
    mute="#A3A89F",
    accent="#C9A6DA",
    on_accent="#16181D",
    feed="#56B4E9",
    light="#E69F00",
    training="#BFA98F",
    pollination="#E3A3C8",
    pick="#F0803C",
    reading="#8CCBF0",
    problem="#FF7B7B",
    stage="#3FA57E",
    stage_first="#1F4034",
    stage_last="#2A6E55",  # ink on the light set's last band would have only 2.5:1 here
)


def blend(first: str, last: str, share: float) -> str:
    """The colour between two: 0 gives the first, 1 the last."""
    if not 0 <= share <= 1:
        raise ValueError(f"share is {share}, allowed is 0 to 1")
    mixed = [round(a + (b - a) * share) for a, b in zip(_channels(first), _channels(last), strict=True)]
    return "#{:02X}{:02X}{:02X}".format(*mixed)


def _channels(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)
