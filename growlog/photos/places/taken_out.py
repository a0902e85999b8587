"""A picture file without what tells where or by whom it was taken; its pixels stay bit for bit."""

import struct

from growlog.photos.picture_kind import MediaType, media_type_of
from growlog.photos.picture_problem import PictureProblem
from growlog.photos.places.exif_block import ExifUnreadable
from growlog.photos.places.heif_items import heif_without_places
from growlog.photos.places.jpeg_segments import jpeg_without_places
from growlog.photos.places.png_chunks import png_without_places
from growlog.photos.places.tiff_tags import tiff_without_places
from growlog.photos.places.webp_chunks import webp_without_places

_BY_KIND = {
    MediaType.JPEG: jpeg_without_places,
    MediaType.PNG: png_without_places,
    MediaType.WEBP: webp_without_places,
    MediaType.TIFF: tiff_without_places,
    MediaType.HEIC: heif_without_places,
    MediaType.HEIF: heif_without_places,
}


class PlacesStay(Exception):
    """The file is built in a way that is not understood, so what it tells cannot be taken out of it."""


def without_places(content: bytes) -> bytes:
    """The file's content, the same where it tells no place; else without GPS, XMP, IPTC, comments, camera notes and
    whatever lies behind its end, with the way up and the dates kept. The same content gives the same, and what comes
    out goes through unchanged. PlacesStay where the file is not understood.
    """
    try:
        return _BY_KIND[media_type_of(content[:512])](content)
    except (PictureProblem, ExifUnreadable, ValueError, IndexError, struct.error) as error:
        raise PlacesStay(str(error)) from error
