"""A HEIF file's metadata items (ISO/IEC 14496-12 and 23008-12, from memory), written over where they lie.

Nothing moves: an item keeps its length, so that all other items stay where the file says they are.
"""

from dataclasses import dataclass

from growlog.photos.places.exif_block import EXIF_START, ExifUnreadable, exif_for_others

_IN_FILE, _IN_IDAT = 0, 1
_TEXTS = (b"mime", b"uri ")


@dataclass(frozen=True)
class _Box:
    kind: bytes
    start: int  # of its content
    end: int


def heif_without_places(content: bytes) -> bytes:
    """The file with its EXIF as others may see it and its XMP blanked, every other byte as it was."""
    found = bytearray(content)
    meta = _named(content, 0, len(content), b"meta")
    if meta is None:
        raise ValueError("no meta box")
    kinds = _item_kinds(content, meta)
    for item_id, places in _item_places(content, meta).items():
        if kinds.get(item_id) == b"Exif":
            _write(found, places, _exif_item(_read(content, places)))
        elif kinds.get(item_id) in _TEXTS:
            _write(found, places, b"")
    return bytes(found)


def _exif_item(payload: bytes) -> bytes:
    """The item: where the block begins behind the first four bytes, then the block, with or without its mark."""
    if not payload.strip(b"\0"):
        return payload
    begins = 4 + int.from_bytes(payload[:4], "big")
    block = payload[begins:].rstrip(b"\0")
    try:
        shared = exif_for_others(payload[begins:])
    except ExifUnreadable:
        return b""
    if shared == payload[begins:]:
        return payload
    bare = shared.removeprefix(EXIF_START)
    written = len(EXIF_START).to_bytes(4, "big") + EXIF_START + bare if bare else b""
    return written if len(written) <= len(payload) and block else b""


def _read(content: bytes, places: list[tuple[int, int]]) -> bytes:
    return b"".join(content[start : start + length] for start, length in places)


def _write(found: bytearray, places: list[tuple[int, int]], payload: bytes) -> None:
    whole = sum(length for _, length in places)
    padded, at = payload.ljust(whole, b"\0"), 0
    for start, length in places:
        if start + length > len(found):
            raise ValueError("an item runs past the end")
        found[start : start + length] = padded[at : at + length]
        at += length


def _boxes(content: bytes, start: int, end: int) -> list[_Box]:
    found, at = [], start
    while at + 8 <= end:
        size, kind, head = int.from_bytes(content[at : at + 4], "big"), content[at + 4 : at + 8], 8
        if size == 1:
            size, head = int.from_bytes(content[at + 8 : at + 16], "big"), 16
        size = end - at if size == 0 else size
        if size < head or at + size > end:
            raise ValueError("a box runs past the end")
        found.append(_Box(kind, at + head, at + size))
        at += size
    return found


def _named(content: bytes, start: int, end: int, kind: bytes) -> _Box | None:
    return next((box for box in _boxes(content, start, end) if box.kind == kind), None)


def _inside(content: bytes, meta: _Box, kind: bytes) -> _Box | None:
    return _named(content, meta.start + 4, meta.end, kind)  # behind version and flags


def _item_kinds(content: bytes, meta: _Box) -> dict[int, bytes]:
    table = _inside(content, meta, b"iinf")
    if table is None:
        return {}
    head = 4 + (2 if content[table.start] == 0 else 4)
    found = {}
    for box in _boxes(content, table.start + head, table.end):
        version, at = content[box.start], box.start + 4
        wide = 2 if version <= 2 else 4
        item_id = int.from_bytes(content[at : at + wide], "big")
        if box.kind == b"infe" and version >= 2:
            found[item_id] = content[at + wide + 2 : at + wide + 6]
    return found


def _item_places(content: bytes, meta: _Box) -> dict[int, list[tuple[int, int]]]:
    """Where the bytes of each item lie in the file."""
    table = _inside(content, meta, b"iloc")
    if table is None:
        return {}
    version, reader = content[table.start], _Reader(content, table.start + 4)
    sizes, more = reader.take(1), reader.take(1)
    offset_size, length_size, base_size, index_size = sizes >> 4, sizes & 15, more >> 4, more & 15
    idat = _inside(content, meta, b"idat")
    found: dict[int, list[tuple[int, int]]] = {}
    for _ in range(reader.take(2 if version < 2 else 4)):
        item_id = reader.take(2 if version < 2 else 4)
        method = reader.take(2) & 15 if version in (1, 2) else _IN_FILE
        reader.take(2)
        base = reader.take(base_size)
        if method == _IN_IDAT and idat is not None:
            base += idat.start
        places = []
        for _ in range(reader.take(2)):
            reader.take(index_size if version in (1, 2) else 0)
            offset, length = reader.take(offset_size), reader.take(length_size)
            places.append((base + offset, length))
        if method in (_IN_FILE, _IN_IDAT):
            found[item_id] = places
    return found


class _Reader:
    """Whole numbers one after the other."""

    def __init__(self, content: bytes, at: int) -> None:
        self._content, self._at = content, at

    def take(self, size: int) -> int:
        """The next number of so many bytes."""
        piece = self._content[self._at : self._at + size]
        if len(piece) < size:
            raise ValueError("a table breaks off")
        self._at += size
        return int.from_bytes(piece, "big")
