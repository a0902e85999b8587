"""Pictures for others: small, upright, bare pixels; with the camera's place and date only where that is asked for."""

import io
from pathlib import Path

from PIL import ExifTags, Image

from growlog.photos.decoder_faults import DECODER_FAULTS

_TAGS_KEPT = (ExifTags.Base.Make, ExifTags.Base.Model, ExifTags.Base.DateTime)


def smaller_jpeg(jpeg: bytes, long_side_px: int, quality: int = 82) -> bytes:
    """A JPEG of the program's own previews, at most so long, without any metadata. Never larger than it was."""
    with Image.open(io.BytesIO(jpeg)) as picture:
        picture.draft("RGB", (long_side_px, long_side_px))
        picture.load()
        scale = min(1.0, long_side_px / max(picture.size))
        size = max(1, round(picture.width * scale)), max(1, round(picture.height * scale))
        small = picture.convert("RGB").resize(size, Image.Resampling.LANCZOS)
    out = io.BytesIO()
    small.save(out, format="JPEG", quality=quality, optimize=True, progressive=True)
    return out.getvalue()


def with_places_of(jpeg: bytes, original: Path) -> bytes:
    """The JPEG with camera, date and place as the original has them; as it is where the original tells none.

    The way up is not taken over: the pixels stand upright already.
    """
    told = _exif_of(original)
    if told is None:
        return jpeg
    with Image.open(io.BytesIO(jpeg)) as picture:
        picture.load()
        out = io.BytesIO()
        picture.save(out, format="JPEG", quality="keep", exif=told)
    return out.getvalue()


def size_of_jpeg(jpeg: bytes) -> tuple[int, int]:
    """Width and height in pixels."""
    with Image.open(io.BytesIO(jpeg)) as picture:
        return picture.size


def _exif_of(original: Path) -> bytes | None:
    try:
        with Image.open(original) as picture:
            found = picture.getexif()
            place = found.get_ifd(ExifTags.IFD.GPSInfo)
            taken = found.get_ifd(ExifTags.IFD.Exif).get(ExifTags.Base.DateTimeOriginal)
    except (*DECODER_FAULTS, OSError):
        return None
    kept = Image.Exif()
    for tag in _TAGS_KEPT:
        if tag in found:
            kept[tag] = found[tag]
    if place:
        kept[ExifTags.IFD.GPSInfo] = place
    if taken is not None:
        kept[ExifTags.IFD.Exif] = {ExifTags.Base.DateTimeOriginal: taken}
    return kept.tobytes() if len(kept) else None
