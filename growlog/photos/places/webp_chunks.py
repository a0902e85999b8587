"""A WebP's chunks (RFC 9649): those that pictures need, and EXIF as others may see it."""

from growlog.photos.places.exif_block import ExifUnreadable, exif_for_others

_KEPT = frozenset((b"VP8 ", b"VP8L", b"VP8X", b"ALPH", b"ANIM", b"ANMF", b"ICCP"))
_HAS_EXIF, _HAS_XMP = 0x08, 0x04


def webp_without_places(content: bytes) -> bytes:
    """The picture up to its end, without XMP and unknown chunks."""
    end = min(8 + int.from_bytes(content[4:8], "little"), len(content))
    kept: list[tuple[bytes, bytes]] = []
    at = 12
    while at + 8 <= end:
        kind, length = content[at : at + 4], int.from_bytes(content[at + 4 : at + 8], "little")
        body = content[at + 8 : at + 8 + length]
        if len(body) < length:
            raise ValueError("a chunk runs past the end")
        if kind in _KEPT:
            kept.append((kind, body))
        elif kind == b"EXIF" and (shared := _exif(body)):
            kept.append((kind, shared))
        at += 8 + length + length % 2
    if not kept:
        raise ValueError("no picture in it")
    return _file(kept)


def _exif(block: bytes) -> bytes:
    try:
        return exif_for_others(block)
    except ExifUnreadable:
        return b""


def _file(chunks: list[tuple[bytes, bytes]]) -> bytes:
    kinds = {kind for kind, _ in chunks}
    written = b"WEBP"
    for kind, body in chunks:
        shown = _flags(body, kinds) if kind == b"VP8X" else body
        written += kind + len(shown).to_bytes(4, "little") + shown + b"\0" * (len(shown) % 2)
    return b"RIFF" + len(written).to_bytes(4, "little") + written


def _flags(body: bytes, kinds: set[bytes]) -> bytes:
    flags = body[0] & ~_HAS_XMP
    if b"EXIF" not in kinds:
        flags &= ~_HAS_EXIF
    return bytes([flags]) + body[1:]
