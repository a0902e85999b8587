"""Whether a picture file that failed to decode breaks off early: asked only after a failure."""

import os
from typing import BinaryIO

from growlog.photos.picture_kind import MediaType

_TAIL_BYTES = 65536  # some phones append their own data after the end of the picture


def ends_early(file: BinaryIO, media_type: MediaType) -> bool:
    """Whether the file's own structure says that bytes are missing at its end."""
    byte_count = file.seek(0, os.SEEK_END)
    file.seek(0)
    head = file.read(16)
    if media_type is MediaType.JPEG:
        return b"\xff\xd9" not in _tail(file, byte_count)
    if media_type is MediaType.PNG:
        return b"IEND" not in _tail(file, byte_count)
    if media_type is MediaType.WEBP:
        return int.from_bytes(head[4:8], "little") + 8 > byte_count
    if media_type is MediaType.TIFF:
        return _tiff_directory_at(head) >= byte_count
    return _boxes_run_over(file, byte_count)


def _tail(file: BinaryIO, byte_count: int) -> bytes:
    file.seek(max(0, byte_count - _TAIL_BYTES))
    return file.read()


def _tiff_directory_at(head: bytes) -> int:
    is_big_tiff = b"+" in head[2:4]
    where = head[8:16] if is_big_tiff else head[4:8]
    return int.from_bytes(where, "little" if head.startswith(b"II") else "big")


def _boxes_run_over(file: BinaryIO, byte_count: int) -> bool:
    at = 0
    while at < byte_count:
        file.seek(at)
        header = file.read(16)
        length = int.from_bytes(header[:4], "big")
        if length == 1:  # the long form
            length = int.from_bytes(header[8:16], "big")
        if length == 0:  # "to the end of the file"
            return False
        if length < 8:
            return True
        at += length
    return at > byte_count
