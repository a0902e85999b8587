"""A crop review for others: one page of HTML, or a PDF of a few designed pages; and pages as pictures for a printer."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.paper import Paper
from growlog.services.review.model import CropReview, ReviewOptions
from growlog.services.review.review import review_of
from growlog.services.review.shared_facts import chart_of, page_facts, picture_files
from growlog.services.review.shared_pictures import SharedPicture, SharingStopped, shared_pictures
from growlog.sharing import review_html as html
from growlog.sharing import review_pdf as pdf
from growlog.sharing.whole_file import write_whole
from growlog.words import say

HTML_ENDINGS = (".html", ".htm")
_HTML_PICTURES_BYTES = 2_400_000  # with a third more for their spelling in text, below 4 MB with font and words
_PDF_PICTURES_BYTES = 2_400_000

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


@dataclass(frozen=True)
class SharedReview:
    """What was written, for the sentence that says so. missing: photos whose original is gone or damaged."""

    path: Path
    byte_count: int
    photos: int
    missing: int


def write_review(
    log: OpenLogbook,
    crop_id: str,
    path: Path,
    options: ReviewOptions | None = None,
    paper: Paper = Paper.A4,
    as_of: date | None = None,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> SharedReview | None:
    """Writes the review by the ending of the file's name, .html or .pdf, whole or not at all; None where cancelled.

    Writes over a file that is there: ask before. LogbookProblem for another ending or a crop that is not there;
    OSError where the disk does not take it.
    """
    ending = path.suffix.casefold()
    if ending not in (*HTML_ENDINGS, ".pdf"):
        raise LogbookProblem(say("{file}: the name must end in .html or .pdf.", file=path.name))
    review = review_of(log, crop_id, as_of, options)
    most = _HTML_PICTURES_BYTES if ending in HTML_ENDINGS else _PDF_PICTURES_BYTES
    try:
        pictures = _pictures(log, review, most, on_progress, cancelled)
    except SharingStopped:
        return None
    content = review_html(review, pictures) if ending in HTML_ENDINGS else review_pdf(review, pictures, paper)
    write_whole(path, content)
    missing = sum(p.jpeg is None for p in pictures)
    return SharedReview(path, len(content), len(pictures) - missing, missing)


def review_page_pictures(
    log: OpenLogbook,
    crop_id: str,
    options: ReviewOptions | None = None,
    paper: Paper = Paper.A4,
    dots_per_inch: float = 200,
    as_of: date | None = None,
) -> list[bytes]:
    """The pages of the PDF as PNG files, for a look before printing and for the system's print dialog."""
    review = review_of(log, crop_id, as_of, options)
    pictures = _pictures(log, review, _PDF_PICTURES_BYTES, None, None)
    facts = page_facts(review, pictures)
    return pdf.review_page_pictures(facts, chart_of(review), picture_files(pictures), paper.typeset_name, dots_per_inch)


def load_tools() -> None:
    """Imports what pages are made with; to be called before they are made on a thread of a window."""
    html.load_tools()


def review_html(review: CropReview, pictures: list[SharedPicture]) -> bytes:
    """The page of a review."""
    return html.review_html(page_facts(review, pictures), chart_of(review), picture_files(pictures))


def review_pdf(review: CropReview, pictures: list[SharedPicture], paper: Paper) -> bytes:
    """The pages of a review."""
    facts = page_facts(review, pictures)
    return pdf.review_pdf(facts, chart_of(review), picture_files(pictures), paper.typeset_name)


def _pictures(
    log: OpenLogbook,
    review: CropReview,
    most_bytes: int,
    on_progress: Progress | None,
    cancelled: Cancelled | None,
) -> list[SharedPicture]:
    return shared_pictures(
        log, review.photos, most_bytes, places=review.options.places, on_progress=on_progress, cancelled=cancelled
    )
