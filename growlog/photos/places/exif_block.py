"""An EXIF block as others may see it: the way up and the dates, where it tells more than they should know."""

from PIL import ExifTags, Image

from growlog.photos.decoder_faults import DECODER_FAULTS

EXIF_START = b"Exif\0\0"
_B, _IFD = ExifTags.Base, ExifTags.IFD

# Tags that tell the place, the owner or the single camera, or are free text that may.
TELLING_TAGS = frozenset(
    (_IFD.GPSInfo, _IFD.MakerNote, _B.UserComment, _B.ImageDescription, _B.Artist, _B.Copyright, _B.CameraOwnerName,
     _B.BodySerialNumber, _B.LensSerialNumber, _B.ImageUniqueID, _B.XPTitle, _B.XPComment, _B.XPAuthor, _B.XPKeywords,
     _B.XPSubject, _B.HostComputer, _B.DocumentName, _B.PageName, 700, 33723, 34377)
)  # fmt: skip
_OUTER_KEPT = (_B.Orientation, _B.DateTime)
_INNER_KEPT = (
    _B.DateTimeOriginal, _B.DateTimeDigitized, _B.OffsetTime, _B.OffsetTimeOriginal, _B.OffsetTimeDigitized,
    _B.SubsecTime, _B.SubsecTimeOriginal, _B.SubsecTimeDigitized,
)  # fmt: skip
_LONGEST_TEXT = 64


class ExifUnreadable(Exception):
    """A block that cannot be read, so nobody knows what it tells."""


def exif_for_others(block: bytes) -> bytes:
    """A block with or without its Exif mark: the same where it tells nothing, else a new one of what is kept.

    b"" where nothing is left to keep. The mark stands before a new one as it did before the old.
    """
    bare = block.removeprefix(EXIF_START)
    outer, inner, more_pages = _tags(bare)
    if not (outer.keys() | inner.keys()) & TELLING_TAGS and not more_pages:
        return block
    kept = Image.Exif()
    for tag in _OUTER_KEPT:
        if _is_kept(outer.get(tag)):
            kept[tag] = outer[tag]
    dates = {int(tag): inner[tag] for tag in _INNER_KEPT if _is_kept(inner.get(tag))}
    if dates:
        kept[_IFD.Exif] = dates
    if not len(kept):
        return b""
    mark = EXIF_START if block.startswith(EXIF_START) else b""
    return mark + kept.tobytes().removeprefix(EXIF_START)


def _tags(bare: bytes) -> tuple[dict[int, object], dict[int, object], bool]:
    """Outer tags, inner tags, and whether a second page (a small picture with tags of its own) follows."""
    exif = Image.Exif()
    try:
        exif.load(bare)
        outer = dict(exif)
        inner = dict(exif.get_ifd(_IFD.Exif))
        more = bool(exif.get_ifd(_IFD.IFD1))
    except DECODER_FAULTS as error:
        raise ExifUnreadable(str(error)) from error
    return outer, inner, more


def _is_kept(value: object) -> bool:
    return isinstance(value, int) or (isinstance(value, str) and 0 < len(value) <= _LONGEST_TEXT)
