"""What an EXIF block tells: the way up and the dates. Whatever is wrong in it reads as "nothing told"."""

from typing import Any, BinaryIO

from PIL import ExifTags, Image, PngImagePlugin

from growlog.photos.capture_time import ExifStamp, ExifTimes
from growlog.photos.decoder_faults import DECODER_FAULTS

_LONGEST_TEXT = 64  # the longest stamp has 25 characters; a hostile one may have millions
_Base = ExifTags.Base


def exif_facts(image: Image.Image, file: BinaryIO) -> tuple[int, ExifTimes]:
    """Orientation 1 to 8 (anything else counts as 1) and the dates; the file's position is kept."""
    position = file.tell()
    try:
        exif = _exif_of(image, file)
        return _orientation(exif.get(_Base.Orientation)), _times(exif)
    except DECODER_FAULTS:
        return 1, ExifTimes()
    finally:
        file.seek(position)


def _exif_of(image: Image.Image, file: BinaryIO) -> Image.Exif:
    if not isinstance(image, PngImagePlugin.PngImageFile):
        return image.getexif()
    # PNG may carry EXIF behind the pixels; Pillow would decode the whole picture to get there.
    if block := _png_exif_block(file):
        exif = Image.Exif()
        exif.load(block)
        return exif
    return Image.Image.getexif(image)


def _png_exif_block(file: BinaryIO) -> bytes:
    file.seek(8)
    while len(header := file.read(8)) == 8:
        length, kind = int.from_bytes(header[:4], "big"), header[4:]
        if kind == b"eXIf":
            return file.read(length)
        if kind == b"IEND":
            break
        file.seek(length + 4, 1)
    return b""


def _times(exif: Image.Exif) -> ExifTimes:
    inner = _inner(exif)
    return ExifTimes(
        original=_stamp(inner, _Base.DateTimeOriginal, _Base.SubsecTimeOriginal, _Base.OffsetTimeOriginal),
        digitized=_stamp(inner, _Base.DateTimeDigitized, _Base.SubsecTimeDigitized, _Base.OffsetTimeDigitized),
        plain=_stamp({**inner, **dict(exif)}, _Base.DateTime, _Base.SubsecTime, _Base.OffsetTime),
    )


def _inner(exif: Image.Exif) -> dict[int, Any]:
    try:
        return exif.get_ifd(ExifTags.IFD.Exif)
    except DECODER_FAULTS:
        return {}  # the outer block may still know the way up


def _stamp(tags: dict[int, Any], moment: int, subsecond: int, offset: int) -> ExifStamp:
    return ExifStamp(_text(tags.get(moment)), _text(tags.get(subsecond)), _text(tags.get(offset)))


def _text(value: object) -> str:
    if isinstance(value, bytes):
        value = value[:_LONGEST_TEXT].decode("latin-1")
    return value[:_LONGEST_TEXT].strip(" \0") if isinstance(value, str) else ""


def _orientation(value: object) -> int:
    return value if isinstance(value, int) and 1 <= value <= 8 else 1
