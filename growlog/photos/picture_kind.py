"""What kind of picture a file is, judged by its first bytes and never by its name."""

import stat
from enum import StrEnum
from pathlib import Path

from growlog.photos.picture_problem import PictureProblem, Reason, problem_from_os_error

HEAD_BYTES = 512  # enough for every signature below, an ISO box's list of brands included


class MediaType(StrEnum):
    """The kinds of picture that are read."""

    JPEG = "image/jpeg"
    PNG = "image/png"
    WEBP = "image/webp"
    TIFF = "image/tiff"
    HEIC = "image/heic"
    HEIF = "image/heif"


ENDINGS = {
    MediaType.JPEG: ".jpg",
    MediaType.PNG: ".png",
    MediaType.WEBP: ".webp",
    MediaType.TIFF: ".tif",
    MediaType.HEIC: ".heic",
    MediaType.HEIF: ".heif",
}

_TIFF_STARTS = (b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")
_HEIC_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"hevm", b"hevs"}
_HEIF_BRANDS = {b"mif1", b"mif2", b"msf1"}
_AVIF_BRANDS = {b"avif", b"avis"}
_OTHER_PICTURES = (  # recognised so that the sentence can say "save it as ..." and not "not a picture"
    b"GIF87a",
    b"GIF89a",
    b"\0\0\0\x0cjP  ",  # JPEG 2000
    b"\xffO\xffQ",  # JPEG 2000 code stream
    b"\0\0\0\x0cJXL ",
    b"\xff\x0a",  # JPEG XL code stream
    b"8BPS",
    b"\0\0\x01\0",  # icon
    b"FUJIFILMCCD-RAW",
    b"IIRO",
    b"IIU\0",
    b"<svg",
)


def media_type_of(head: bytes) -> MediaType:
    """The kind of picture that starts with these bytes; a PictureProblem where it is none that is read."""
    if not head:
        raise PictureProblem(Reason.EMPTY)
    if head.startswith(b"\xff\xd8\xff"):
        return MediaType.JPEG
    if head.startswith(b"\x89PNG\r\n\x1a\n"):
        return MediaType.PNG
    if head.startswith(b"RIFF") and head[8:12] == b"WEBP":
        return MediaType.WEBP
    if head.startswith(_TIFF_STARTS):
        return _tiff_kind(head)
    if head[4:8] == b"ftyp":
        return _iso_kind(head)
    raise PictureProblem(Reason.UNSUPPORTED if _other_picture(head) else Reason.NOT_A_PICTURE)


def media_type_of_file(path: Path) -> MediaType:
    """The kind of picture in this file. Raises PictureProblem, also for what is no regular file."""
    try:
        if not stat.S_ISREG(path.stat().st_mode):  # opening a pipe could wait for ever
            raise PictureProblem(Reason.NOT_A_PICTURE, "no regular file")
        with path.open("rb") as file:
            return media_type_of(file.read(HEAD_BYTES))
    except OSError as error:
        raise problem_from_os_error(error) from error
    except ValueError as error:  # a NUL in the name
        raise PictureProblem(Reason.MISSING, str(error)) from error


def _tiff_kind(head: bytes) -> MediaType:
    if head[8:10] == b"CR":  # a camera's raw file in TIFF's clothes: its first page is a mere thumbnail
        raise PictureProblem(Reason.UNSUPPORTED)
    return MediaType.TIFF


def _iso_kind(head: bytes) -> MediaType:
    box_length = min(int.from_bytes(head[:4], "big"), len(head))
    brands = {head[8:12]} | {head[at : at + 4] for at in range(16, box_length - 3, 4)}
    if brands & _HEIC_BRANDS:
        return MediaType.HEIC
    if brands & _AVIF_BRANDS:
        raise PictureProblem(Reason.UNSUPPORTED)
    if brands & _HEIF_BRANDS:
        return MediaType.HEIF
    raise PictureProblem(Reason.UNSUPPORTED if head[8:11] == b"crx" else Reason.NOT_A_PICTURE)


def _other_picture(head: bytes) -> bool:
    is_bitmap = head.startswith(b"BM") and head[6:10] == b"\0\0\0\0"
    return is_bitmap or head.startswith(_OTHER_PICTURES)
