"""Words that several parts of the review share."""

from collections.abc import Sequence
from datetime import date

from growlog.records.decision import QuotedFigure
from growlog.records.display import THIN
from growlog.services.review.model import CropReview, EarlierCrop
from growlog.words import say, show_day


def age_text(age: int) -> str:
    """A plant age in short, such as 43 d."""
    return f"{age}{THIN}d"


def age_and_day(age: int, day: date) -> str:
    """A plant age with its day."""
    return say("day {age}, {day}", age=age, day=show_day(day))


def earlier_title(crop: EarlierCrop) -> str:
    """An earlier crop and how old it was where its figures hold."""
    return say("{name}, {about}", name=crop.name, about=crop.about)


def beside_line(review: CropReview) -> str:
    """What the curve is drawn beside."""
    if not review.earlier:
        parts = [say("no earlier crop of this kind")]
    else:
        drawn = [earlier_title(crop) for crop in review.earlier if crop.curve.points]
        parts = [say("beside {what}", what="; ".join(drawn))] if drawn else []
    shown_to = max(review.last_age, *(crop.curve.last_age for crop in review.earlier), 0)
    if review.packet_age is not None and review.packet_age <= shown_to:
        parts.append(say("dashed: the packet"))
    return "; ".join(parts)


def quoted_line(figures: Sequence[QuotedFigure]) -> str:
    """Figures as they stood, in one line."""
    return "; ".join(f"{f.label} {f.value_text}" for f in figures)


def file_stem(name: str) -> str:
    """A crop's name as the suggested beginning of a file's name."""
    plain = "".join("-" if letter in '<>:"/\\|?*' or not letter.isprintable() else letter for letter in name)
    return plain.strip(" .-")[:60] or say("crop")
