"""A review without data, for the picture of its empty state."""

from dataclasses import replace

from growlog.services.review.model import CropReview
from growlog.words import say


def without_data(review: CropReview) -> CropReview:
    """The same crop as if nothing but its sowing had been written."""
    sections = tuple(
        replace(s, sentences=(), lines=tuple(replace(li, value="", packet="", note=None) for li in s.lines))
        for s in review.sections
    )
    return replace(
        review, lead=(), photos=(), photo_note=say("There are no photos of this crop."), sections=sections, happened=(),
        curve=replace(review.curve, points=()), earlier=(), remarks=(), trying="", decisions=(), notes=(),
    )  # fmt: skip
