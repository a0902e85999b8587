"""A TIFF's tags (Adobe, TIFF revision 6.0): those that tell leave their table, and what they held is blanked."""

import struct

from growlog.photos.places.exif_block import TELLING_TAGS

_EXIF_TABLE, _GPS_TABLE, _SUB_TABLES = 34665, 34853, 330
_SIZES = {1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8, 13: 4}
_MOST_TABLES = 64


def tiff_without_places(content: bytes) -> bytes:
    """The file, as long as it was, without them. ValueError for the large form of TIFF."""
    order = "<" if content[:2] == b"II" else ">"
    if struct.unpack_from(f"{order}H", content, 2)[0] != 42:
        raise ValueError("a TIFF of the large form")
    found = bytearray(content)
    _Tables(found, order).clean(struct.unpack_from(f"{order}I", content, 4)[0])
    return bytes(found)


class _Tables:
    """The tables of tags of one file."""

    def __init__(self, found: bytearray, order: str) -> None:
        self._found, self._order = found, order
        self._seen: set[int] = set()

    def clean(self, at: int) -> None:
        """Cleans a table, those that it points to, and those that follow it."""
        while at and at not in self._seen and len(self._seen) < _MOST_TABLES:
            self._seen.add(at)
            entries, following = self._entries(at)
            kept = []
            for entry in entries:
                if entry[0] in TELLING_TAGS:
                    self._blank(entry)
                else:
                    kept.append(entry)
                    self._follow(entry)
            if len(kept) < len(entries):
                self._write(at, kept, len(entries), following)
            at = following

    def _entries(self, at: int) -> tuple[list[tuple[int, int, int, bytes]], int]:
        count = struct.unpack_from(f"{self._order}H", self._found, at)[0]
        entries = [struct.unpack_from(f"{self._order}HHI4s", self._found, at + 2 + 12 * i) for i in range(count)]
        return entries, struct.unpack_from(f"{self._order}I", self._found, at + 2 + 12 * count)[0]

    def _write(self, at: int, kept: list[tuple[int, int, int, bytes]], count_before: int, following: int) -> None:
        table = struct.pack(f"{self._order}H", len(kept))
        table += b"".join(struct.pack(f"{self._order}HHI4s", *entry) for entry in kept)
        table += struct.pack(f"{self._order}I", following)
        self._found[at : at + 6 + 12 * count_before] = table.ljust(6 + 12 * count_before, b"\0")

    def _follow(self, entry: tuple[int, int, int, bytes]) -> None:
        tag, kind, count, value = entry
        if tag == _EXIF_TABLE:
            self.clean(self._number(value))
        elif tag == _SUB_TABLES and kind in (4, 13):
            where = [self._number(value)] if count == 1 else self._numbers(self._number(value), count)
            for at in where:
                self.clean(at)

    def _blank(self, entry: tuple[int, int, int, bytes]) -> None:
        tag, kind, count, value = entry
        if tag == _GPS_TABLE:
            at = self._number(value)
            entries, _ = self._entries(at)
            for inner in entries:
                self._blank((0, *inner[1:]))
            self._zero(at, 6 + 12 * len(entries))
        elif (size := _SIZES.get(kind, 1) * count) > 4:
            self._zero(self._number(value), size)

    def _zero(self, at: int, size: int) -> None:
        if at + size > len(self._found):
            raise ValueError("a tag points past the end")
        self._found[at : at + size] = bytes(size)

    def _number(self, value: bytes) -> int:
        return int(struct.unpack(f"{self._order}I", value)[0])

    def _numbers(self, at: int, count: int) -> list[int]:
        return list(struct.unpack_from(f"{self._order}{min(count, _MOST_TABLES)}I", self._found, at))
