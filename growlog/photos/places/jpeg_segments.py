"""A JPEG's segments (ITU-T T.81, annex B): those that pictures need, and EXIF as others may see it."""

from growlog.photos.places.exif_block import EXIF_START, ExifUnreadable, exif_for_others

_SOI, _EOI, _SOS = 0xD8, 0xD9, 0xDA
_APP0, _APP1, _APP2, _APP14, _APP15, _COM = 0xE0, 0xE1, 0xE2, 0xEE, 0xEF, 0xFE
_STANDS_ALONE = {0x01, *range(0xD0, 0xD8)}


def jpeg_without_places(content: bytes) -> bytes:
    """The picture up to its end. Of the application segments JFIF, colour profile and Adobe's colour mark stay."""
    kept = [content[:2]]
    at = 2
    while True:
        start, code, at = _marker(content, at)
        if code == _EOI:
            return b"".join([*kept, content[start:at]])
        if code in _STANDS_ALONE:
            kept.append(content[start:at])
            continue
        length = int.from_bytes(content[at : at + 2], "big")
        if length < 2 or at + length > len(content):
            raise ValueError("a segment runs past the end")
        at += length
        kept.append(_for_others(code, content[start:at]))
        if code == _SOS:
            end = _end_of_scan(content, at)
            kept.append(content[at:end])
            at = end


def _marker(content: bytes, at: int) -> tuple[int, int, int]:
    """Where the next marker starts, its code, and where it ends; fill bytes belong to it."""
    start = at
    if content[at] != 0xFF:
        raise ValueError("no marker where one belongs")
    while content[at] == 0xFF:
        at += 1
    return start, content[at], at + 1


def _end_of_scan(content: bytes, at: int) -> int:
    """Where the coded pixels of a scan end: at a marker that is neither a stuffed byte nor a restart."""
    while True:
        at = content.find(b"\xff", at)
        if at < 0 or at + 1 >= len(content):
            raise ValueError("the picture has no end")
        if content[at + 1] != 0 and content[at + 1] != 0xFF and not 0xD0 <= content[at + 1] <= 0xD7:
            return at
        at += 1 if content[at + 1] == 0xFF else 2


def _for_others(code: int, segment: bytes) -> bytes:
    body = segment[segment.index(code, 1) + 3 :]
    if code == _APP1 and body.startswith(EXIF_START):
        return _exif_segment(segment, body)
    is_profile = code == _APP2 and body.startswith(b"ICC_PROFILE\0")
    is_needed = code in (_APP0, _APP14) or is_profile or not (_APP0 <= code <= _APP15 or code == _COM)
    return segment if is_needed else b""


def _exif_segment(segment: bytes, body: bytes) -> bytes:
    try:
        shared = exif_for_others(body)
    except ExifUnreadable:
        return b""
    if shared == body:
        return segment
    return b"\xff\xe1" + (len(shared) + 2).to_bytes(2, "big") + shared if shared else b""
