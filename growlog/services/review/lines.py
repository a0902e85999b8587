"""Lines of the review from how each is shown, put beside the same of earlier crops, with numbered notes."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.model import ReviewLine, ReviewNote, ReviewSection
from growlog.words import mark, say, show_day, show_number

Shown = Callable[[CropFigures], str]

_SURE = {
    Sure.COMMON_PRACTICE: mark("by the habit of the trade"),
    Sure.ESTIMATE: mark("an estimate"),
}


@dataclass(frozen=True)
class LineOf:
    """A line to be. show: the words of a crop, "" where there is no data. explain: key of the figure behind it, or how
    to come by one. packet: what the packet says of it. is_money: left out where money is."""

    key: str
    label: str
    show: Shown
    explain: str | Callable[[CropFigures], Figure | None] = ""
    packet: Shown | None = None
    beside: Shown | None = None
    is_money: bool = False


@dataclass
class NoteBook:
    """The notes so far; a figure that two lines show has one note."""

    found: list[ReviewNote] = field(default_factory=list)
    numbers: dict[str, int] = field(default_factory=dict)

    def number_of(self, label: str, figure: Figure) -> int:
        """The number of the note on a figure."""
        if figure.key not in self.numbers:
            self.numbers[figure.key] = len(self.found) + 1
            self.found.append(note_of(len(self.found) + 1, label, figure))
        return self.numbers[figure.key]


def section(
    key: str,
    title: str,
    wanted: Sequence[LineOf],
    own: CropFigures,
    earlier: Sequence[CropFigures],
    notes: NoteBook,
    sentences: Sequence[str] = (),
) -> ReviewSection:
    """The lines of a section."""
    return ReviewSection(key, title, tuple(_line(w, own, earlier, notes) for w in wanted), tuple(sentences))


def note_of(number: int, label: str, figure: Figure) -> ReviewNote:
    """How a figure is worked out, as the review prints it."""
    inputs = "; ".join(_input(i) for i in figure.inputs[:8])
    sure = "" if figure.sure is Sure.PUBLISHED else say(_SURE[figure.sure])
    return ReviewNote(number, label, figure.method, inputs, say(figure.source), sure)


def _line(wanted: LineOf, own: CropFigures, earlier: Sequence[CropFigures], notes: NoteBook) -> ReviewLine:
    value = wanted.show(own)
    beside = tuple((wanted.beside or wanted.show)(crop) for crop in earlier)
    packet = "" if wanted.packet is None else wanted.packet(own)
    number = _note(wanted, own, notes) if value else None
    return ReviewLine(wanted.key, wanted.label, value, beside, packet, number)


def _note(wanted: LineOf, own: CropFigures, notes: NoteBook) -> int | None:
    figure = own.figure(wanted.explain) if isinstance(wanted.explain, str) else wanted.explain(own)
    return None if figure is None else notes.number_of(wanted.label, figure)


def _input(given: Input) -> str:
    value = given.value
    shown = value if isinstance(value, str) else show_number(float(value), _decimals(float(value)))
    if given.date is not None and value == given.date.isoformat():
        shown = show_day(given.date)
    return f"{given.name} {shown} {given.unit}".strip()


def _decimals(value: float) -> int:
    return next((d for d in range(3) if abs(value - round(value, d)) < 1e-9), 2)
