"""What a crop review holds. Plain frozen values in the user's words; nothing here is worked out."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.yield_curve import CurvePoint
from growlog.records.decision import QuotedFigure, Verdict
from growlog.records.photo import Photo


@dataclass(frozen=True)
class ReviewOptions:
    """What is left out, and how many photos tell the story.

    money, notes: whether they are shown. places: whether places and cameras stay in shared pictures. photo_count: 9 to
    15, None: by the crop's age; does not touch photos that the grower chose.
    """

    money: bool = True
    notes: bool = True
    places: bool = False
    photo_count: int | None = None


@dataclass(frozen=True)
class StoryPhoto:
    """A photo of the story. caption: the milestone next to it, "" where none is. chosen: by the grower."""

    use_id: str
    photo: Photo
    age: int
    day: date
    caption: str
    chosen: bool


@dataclass(frozen=True)
class ReviewLine:
    """A figure of the crop in words. value: "" where there is no data, said in grey, never made up.

    beside: the same of each earlier crop, "" where there is none. packet: what the packet says of it, "" for nothing.
    note: the number of the note that says how it is worked out, None where nothing is.
    """

    key: str
    label: str
    value: str
    beside: tuple[str, ...] = ()
    packet: str = ""
    note: int | None = None

    @property
    def known(self) -> bool:
        """Whether there is data."""
        return bool(self.value)


@dataclass(frozen=True)
class ReviewSection:
    """Lines that belong together. sentences: what to say below them."""

    key: str
    title: str
    lines: tuple[ReviewLine, ...]
    sentences: tuple[str, ...] = ()

    @property
    def known(self) -> bool:
        """Whether any line has data."""
        return any(line.known for line in self.lines)


@dataclass(frozen=True)
class ReviewCurve:
    """A cumulative yield by plant age, up to last_age."""

    name: str
    points: tuple[CurvePoint, ...]
    last_age: int


@dataclass(frozen=True)
class EarlierCrop:
    """An earlier crop of the same species. about: how old it was when its figures hold."""

    crop_id: str
    name: str
    about: str
    curve: ReviewCurve


@dataclass(frozen=True)
class Happening:
    """Something that happened at a plant age. kind: of its entry, or "photos" for days without any."""

    age: int
    day: date
    kind: str
    text: str


@dataclass(frozen=True)
class ReviewNote:
    """How a figure is worked out. title: the line that it explains. sure: in words."""

    number: int
    title: str
    method: str
    inputs: str
    source: str
    sure: str


@dataclass(frozen=True)
class DecisionMade:
    """A decision with the figures as they stood that day."""

    id: str
    day: date
    verdict: Verdict
    title: str
    reasons: str
    changes: str
    figures: tuple[QuotedFigure, ...]


@dataclass(frozen=True)
class CropReview:
    """A crop from day 0 to a day. lead: sentences, the first of them the heading of the story.

    by_weight: whether the curve is drawn by weight, else by count. remarks: the notes of entries. photo_note: what to
    say of the photos, "" for nothing. as_of: the last day that counts.
    """

    crop_id: str
    name: str
    about: str
    as_of: date
    day_zero: date
    last_age: int
    growing: bool
    lead: tuple[str, ...]
    photos: tuple[StoryPhoto, ...]
    photo_note: str
    curve: ReviewCurve
    by_weight: bool
    packet_age: int | None
    earlier: tuple[EarlierCrop, ...]
    sections: tuple[ReviewSection, ...]
    happened: tuple[Happening, ...]
    remarks: tuple[Happening, ...]
    trying: str
    decisions: tuple[DecisionMade, ...]
    notes: tuple[ReviewNote, ...]
    options: ReviewOptions

    def section(self, key: str) -> ReviewSection:
        """One section; KeyError where it is not shown."""
        found = next((s for s in self.sections if s.key == key), None)
        if found is None:
            raise KeyError(key)
        return found
