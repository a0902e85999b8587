"""The photos of a review as small files for others; what is missing is said, not passed over."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from growlog.photos.shared_picture import size_of_jpeg, smaller_jpeg, with_places_of
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_uses import original_path, sharp_picture
from growlog.services.review.model import StoryPhoto
from growlog.words import say

LONG_SIDES_PX = (1000, 800, 640, 480, 360, 240)

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


class SharingStopped(Exception):
    """The caller lost interest while pictures were made."""


@dataclass(frozen=True)
class SharedPicture:
    """jpeg: None where the original is gone; gone: the sentence that says so, "" for a picture that is there."""

    jpeg: bytes | None
    width_px: int
    height_px: int
    gone: str = ""


def shared_pictures(
    log: OpenLogbook,
    photos: Sequence[StoryPhoto],
    most_bytes: int,
    *,
    places: bool = False,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> list[SharedPicture]:
    """The photos in the largest of a few sizes that keep them below most_bytes together.

    Without places they are bare pixels. A photo whose original is gone from the logbook is not shown from a preview:
    what is shared follows from the logbook alone.
    """
    sharp: list[bytes | None] = []
    for number, photo in enumerate(photos, start=1):
        if cancelled is not None and cancelled():
            raise SharingStopped
        sharp.append(_sharp(log, photo))
        if on_progress is not None:
            on_progress(number, len(photos))
    found: list[bytes | None] = []
    for long_side in LONG_SIDES_PX:
        found = [None if jpeg is None else _made(log, photo, jpeg, long_side, places=places)
                 for photo, jpeg in zip(photos, sharp, strict=True)]  # fmt: skip
        if sum(len(jpeg) for jpeg in found if jpeg is not None) <= most_bytes:
            break
    return [_shown(log, photo, jpeg) for photo, jpeg in zip(photos, found, strict=True)]


def _sharp(log: OpenLogbook, photo: StoryPhoto) -> bytes | None:
    if not original_path(log, photo.photo).is_file():
        return None
    return sharp_picture(log, photo.photo)


def _made(log: OpenLogbook, photo: StoryPhoto, jpeg: bytes, long_side_px: int, *, places: bool) -> bytes:
    small = smaller_jpeg(jpeg, long_side_px)
    return with_places_of(small, original_path(log, photo.photo)) if places else small


def _shown(log: OpenLogbook, photo: StoryPhoto, jpeg: bytes | None) -> SharedPicture:
    if jpeg is not None:
        return SharedPicture(jpeg, *size_of_jpeg(jpeg))
    path = original_path(log, photo.photo)
    sentence = say("This photo cannot be read.") if path.is_file() else say("The original of this photo is missing.")
    return SharedPicture(None, 0, 0, sentence)
