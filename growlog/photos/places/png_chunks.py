"""A PNG's chunks (W3C, Portable Network Graphics, third edition): those that pictures need, and EXIF for others."""

import zlib

from growlog.photos.places.exif_block import ExifUnreadable, exif_for_others

_MARK = 8
_KEPT = frozenset(
    (b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS", b"cHRM", b"gAMA", b"iCCP", b"sBIT", b"sRGB", b"cICP", b"mDCV",
     b"cLLI", b"bKGD", b"hIST", b"pHYs", b"sPLT", b"acTL", b"fcTL", b"fdAT")
)  # fmt: skip


def png_without_places(content: bytes) -> bytes:
    """The picture up to its end, without texts and unknown chunks."""
    kept = [content[:_MARK]]
    at = _MARK
    while True:
        length, kind = int.from_bytes(content[at : at + 4], "big"), content[at + 4 : at + 8]
        chunk = content[at : at + 12 + length]
        if len(chunk) < 12 + length:
            raise ValueError("a chunk runs past the end")
        at += len(chunk)
        if kind in _KEPT:
            kept.append(chunk)
        elif kind == b"eXIf":
            kept.append(_exif_chunk(chunk))
        if kind == b"IEND":
            return b"".join(kept)


def _exif_chunk(chunk: bytes) -> bytes:
    block = chunk[8:-4]
    try:
        shared = exif_for_others(block)
    except ExifUnreadable:
        return b""
    if shared == block:
        return chunk
    body = b"eXIf" + shared
    return len(shared).to_bytes(4, "big") + body + zlib.crc32(body).to_bytes(4, "big") if shared else b""
