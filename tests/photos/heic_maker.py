"""Writes small, valid HEIC files for the tests: no encoder is installed, so the pixels go in uncoded (PCM).

The syntax follows ITU-T H.265 (clauses 7.3 and 9.3) and ISO/IEC 14496-12, 14496-15 and 23008-12,
from memory; that a decoder written by others reads the result back is the check.
"""

import struct

CODING_BLOCK_PX = 16
# H.265 table 9-46, last column, states 0 to 15: enough for the one context of sixteen blocks.
_RANGE_OF_LESS_PROBABLE = (240, 227, 216, 205, 195, 185, 175, 166, 158, 150, 142, 135, 128, 122, 116, 110)


class _Bits:
    def __init__(self) -> None:
        self.bits: list[int] = []

    def put(self, value: int, count: int) -> None:
        self.bits.extend(value >> at & 1 for at in reversed(range(count)))

    def put_all(self, *values_and_counts: tuple[int, int]) -> None:
        for value, count in values_and_counts:
            self.put(value, count)

    def golomb(self, *values: int) -> None:
        """ue(v), clause 9.2."""
        for value in values:
            length = (value + 1).bit_length()
            self.put(value + 1, 2 * length - 1)

    def flags(self, text: str) -> None:
        self.bits.extend(int(flag) for flag in text if flag != " ")

    def align(self) -> None:
        self.bits.extend([0] * (-len(self.bits) % 8))

    def close(self) -> bytes:
        """rbsp_trailing_bits, clause 7.3.2.11."""
        self.put(1, 1)
        return self.to_bytes()

    def to_bytes(self) -> bytes:
        self.align()
        text = "".join(map(str, self.bits))
        return int(text, 2).to_bytes(len(text) // 8, "big")


class _Arithmetic:
    """The encoder of clause 9.3.5, as far as one context that always meets its likely value needs it."""

    def __init__(self, out: _Bits) -> None:
        self._out = out
        self._state = 0
        self.restart()

    def restart(self) -> None:
        self._low, self._range, self._first, self._outstanding = 0, 510, True, 0

    def likely(self) -> None:
        assert self._range >> 6 & 3 == 3
        self._range -= _RANGE_OF_LESS_PROBABLE[self._state]
        self._state += 1
        self._renormalise()

    def terminate(self, last: bool) -> None:
        self._range -= 2
        if not last:
            self._renormalise()
            return
        self._low += self._range
        self._range = 2
        self._renormalise()
        self._put(self._low >> 9 & 1)
        self._out.put(self._low >> 7 & 3 | 1, 2)

    def _renormalise(self) -> None:
        while self._range < 256:
            if self._low < 256:
                self._put(0)
            elif self._low >= 512:
                self._low -= 512
                self._put(1)
            else:
                self._low -= 256
                self._outstanding += 1
            self._range <<= 1
            self._low <<= 1

    def _put(self, bit: int) -> None:
        if self._first:
            self._first = False
        else:
            self._out.put(bit, 1)
        self._out.bits.extend([1 - bit] * self._outstanding)
        self._outstanding = 0


def _profile(out: _Bits) -> None:
    out.put_all((0, 3), (3, 5), (0b0111 << 28, 32))  # Main Still Picture
    out.flags("1011")
    out.put_all((0, 44), (93, 8))


def _video_parameters() -> bytes:
    out = _Bits()
    out.put_all((0, 4), (3, 2), (0, 6), (0, 3), (1, 1), (0xFFFF, 16))
    _profile(out)
    out.flags("1")
    out.golomb(0, 0, 0)
    out.put(0, 6)
    out.golomb(0)
    out.flags("00")
    return _unit(32, out.close())


def _sequence_parameters(width_px: int, height_px: int) -> bytes:
    out = _Bits()
    out.put_all((0, 4), (0, 3), (1, 1))
    _profile(out)
    out.golomb(0, 1, width_px, height_px)
    out.flags("0")  # no conformance window
    out.golomb(0, 0, 0)
    out.flags("1")
    out.golomb(0, 0, 0)
    out.golomb(1, 0, 0, 2, 0, 0)  # coding blocks of 16, transform blocks of 4 to 16
    out.flags("000 1")  # no scaling lists, no AMP, no SAO; PCM
    out.put_all((7, 4), (7, 4))
    out.golomb(1, 0)
    out.flags("1")
    out.golomb(0)
    out.flags("00000")
    return _unit(33, out.close())


def _picture_parameters() -> bytes:
    out = _Bits()
    out.golomb(0, 0)
    out.flags("00 000 00")
    out.golomb(0, 0, 0)
    out.flags("000")
    out.golomb(0, 0)
    out.flags("0000 000")
    out.flags("1 0 1")  # deblocking off
    out.flags("00")
    out.golomb(0)
    out.flags("00")
    return _unit(34, out.close())


def _slice(rows: list[list[int]]) -> bytes:
    out = _Bits()
    out.flags("10")
    out.golomb(0, 2, 0)
    out.put(1, 1)
    out.align()
    coder = _Arithmetic(out)
    blocks = _blocks(rows)
    for number, block in enumerate(blocks, 1):
        coder.likely()  # part_mode 2Nx2N
        coder.terminate(last=True)  # pcm_flag
        out.align()
        for sample in block:
            out.put(sample, 8)
        coder.restart()
        coder.terminate(last=number == len(blocks))
    return _unit(19, out.to_bytes())


def _blocks(rows: list[list[int]]) -> list[list[int]]:
    grey = [128] * (2 * (CODING_BLOCK_PX // 2) ** 2)
    starts = range(0, len(rows), CODING_BLOCK_PX)
    lefts = range(0, len(rows[0]), CODING_BLOCK_PX)
    cut = [
        [row[left : left + CODING_BLOCK_PX] for row in rows[top : top + CODING_BLOCK_PX]]
        for top in starts
        for left in lefts
    ]
    return [[sample for row in block for sample in row] + grey for block in cut]


def _unit(kind: int, payload: bytes) -> bytes:
    """A NAL unit with emulation prevention, clause 7.3.1."""
    guarded = bytearray()
    for byte in payload:
        if byte <= 3 and guarded[-2:] == b"\0\0":
            guarded.append(3)
        guarded.append(byte)
    return bytes([kind << 1, 1]) + bytes(guarded)


def _box(kind: bytes, *parts: bytes) -> bytes:
    content = b"".join(parts)
    return struct.pack(">I4s", len(content) + 8, kind) + content


def _full_box(kind: bytes, *parts: bytes, version: int = 0) -> bytes:
    return _box(kind, struct.pack(">I", version << 24), *parts)


def _decoder_configuration(units: list[bytes]) -> bytes:
    head = struct.pack(
        ">BBI6sBHBBBBHB", 1, 3, 0b0111 << 28, b"\xb0" + b"\0" * 5, 93, 0xF000, 0xFC, 0xFD, 0xF8, 0xF8, 0, 0x0F
    )
    arrays = [struct.pack(">BHH", 0x80 | unit[0] >> 1, 1, len(unit)) + unit for unit in units]
    return _box(b"hvcC", head, bytes([len(arrays)]), *arrays)


def _item(number: int, kind: bytes) -> bytes:
    return _full_box(b"infe", struct.pack(">HH4s", number, 0, kind), b"\0", version=2)


def heic(rows: list[list[int]], exif: bytes = b"", quarter_turns: int = 0) -> bytes:
    """A HEIC of these rows of brightness (sides divisible by 16, sixteen blocks at most).

    exif: a block as Pillow writes it. quarter_turns: anticlockwise, by the container's own property.
    """
    height_px, width_px = len(rows), len(rows[0])
    coded = _slice(rows)
    picture = struct.pack(">I", len(coded)) + coded
    note = struct.pack(">I", 6) + exif if exif else b""
    properties = [
        _decoder_configuration([_video_parameters(), _sequence_parameters(width_px, height_px), _picture_parameters()]),
        _full_box(b"ispe", struct.pack(">II", width_px, height_px)),
        _box(b"irot", bytes([quarter_turns])),
    ]
    start = _box(b"ftyp", b"heic", b"\0\0\0\0", b"mif1", b"heic")
    unplaced = _meta(properties, [(0, len(picture)), (0, len(note))], bool(exif))
    at = len(start) + len(unplaced) + 8
    meta = _meta(properties, [(at, len(picture)), (at + len(picture), len(note))], bool(exif))
    return start + meta + _box(b"mdat", picture, note)


def _meta(properties: list[bytes], places: list[tuple[int, int]], has_exif: bool) -> bytes:
    items = [_item(1, b"hvc1")] + [_item(2, b"Exif")] * has_exif
    located = [
        struct.pack(">HHHII", number, 0, 1, at, length) for number, (at, length) in enumerate(places[: len(items)], 1)
    ]
    about = _full_box(b"iref", _box(b"cdsc", struct.pack(">HHH", 2, 1, 1))) if has_exif else b""
    return _full_box(
        b"meta",
        _full_box(b"hdlr", b"\0\0\0\0pict", b"\0" * 13),
        _full_box(b"pitm", struct.pack(">H", 1)),
        _full_box(b"iloc", bytes([0x44, 0]), struct.pack(">H", len(items)), *located),
        _full_box(b"iinf", struct.pack(">H", len(items)), *items),
        about,
        _box(
            b"iprp",
            _box(b"ipco", *properties),
            _full_box(b"ipma", struct.pack(">IHB3B", 1, 1, 3, 0x81, 0x02, 0x83)),
        ),
    )
