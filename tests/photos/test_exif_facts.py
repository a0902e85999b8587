"""EXIF: the way up and the dates, and that nothing hostile in it keeps a picture out."""

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import TiffImagePlugin

from growlog.photos.capture_time import ExifStamp, ExifTimes
from growlog.photos.picture_file import read_facts
from growlog.photos.previews import make_previews
from tests.photos.conftest import EXIF_BLOCK, encoded, exif_with, quartered


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_all_three_dates_are_read_with_fractions_and_offsets(make_picture: Callable[..., Path], kind: str) -> None:
    exif = exif_with(
        original="2026:01:18 18:41:02",
        original_subsecond="123",
        original_offset="+01:00",
        digitized="2026:01:19 08:00:00",
        digitized_subsecond="4",
        digitized_offset="-03:30",
        plain="2026:01:20 09:00:00",
        plain_subsecond="56",
        plain_offset="+00:00",
    )
    assert read_facts(make_picture(kind=kind, exif=exif)).exif_times == ExifTimes(
        ExifStamp("2026:01:18 18:41:02", "123", "+01:00"),
        ExifStamp("2026:01:19 08:00:00", "4", "-03:30"),
        ExifStamp("2026:01:20 09:00:00", "56", "+00:00"),
    )


def test_the_dates_of_a_tiff_are_read(make_picture: Callable[..., Path]) -> None:
    tags = TiffImagePlugin.ImageFileDirectory_v2()
    tags[306] = "2026:01:20 09:00:00"
    tags[EXIF_BLOCK] = {36867: "2026:01:18 18:41:02"}
    times = read_facts(make_picture(kind="TIFF", tiffinfo=tags)).exif_times
    assert (times.original.text, times.plain.text) == ("2026:01:18 18:41:02", "2026:01:20 09:00:00")


@pytest.mark.parametrize("value", [0, 9, 65535])
def test_an_orientation_outside_the_standard_counts_as_upright(make_picture: Callable[..., Path], value: int) -> None:
    facts = read_facts(make_picture(exif=exif_with(value)))
    assert (facts.orientation, facts.width_px) == (1, 64)


def test_an_orientation_that_is_text_counts_as_upright(make_picture: Callable[..., Path]) -> None:
    block = b"Exif\0\0MM\0*\0\0\0\x08\0\x01\x01\x12\0\x02\0\0\0\x04six\0\0\0\0\0"
    assert read_facts(make_picture(exif=block)).orientation == 1


def test_dates_of_a_wrong_type_are_passed_over(make_picture: Callable[..., Path]) -> None:
    exif = exif_with(3)
    exif.get_ifd(EXIF_BLOCK)[36867] = 20260118
    exif.get_ifd(EXIF_BLOCK)[36868] = b"2026:01:18 18:41:02\0"
    facts = read_facts(make_picture(exif=exif))
    assert facts.orientation == 3
    assert facts.exif_times.original.text == ""


def test_a_date_of_a_million_letters_is_cut(make_picture: Callable[..., Path]) -> None:
    exif = exif_with(original="2" * 60_000)
    assert len(read_facts(make_picture(exif=exif)).exif_times.original.text) <= 64


@pytest.mark.parametrize(
    "block",
    [
        b"Exif\0\0",
        b"Exif\0\0nonsense",
        b"Exif\0\0II*\0\xff\xff\xff\xff",
        b"Exif\0\0II*\0\x08\0\0\0\xff\xff",
        b"Exif\0\0MM\0*\0\0\0\x08\0\x01\x87\x69\0\x04\0\0\0\x01\0\0\0\x08\0\0\0\0",
    ],
    ids=["bare", "nonsense", "far offset", "too many tags", "points at itself"],
)
@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_damaged_block_tells_nothing_and_the_picture_goes_in(
    make_picture: Callable[..., Path], block: bytes, kind: str
) -> None:
    facts = make_previews(make_picture(kind=kind, exif=block)).facts
    assert (facts.orientation, facts.exif_times) == (1, ExifTimes())


@given(block=st.binary(max_size=300))
def test_no_block_whatever_keeps_a_picture_out(tmp_path_factory: pytest.TempPathFactory, block: bytes) -> None:
    path = tmp_path_factory.getbasetemp() / "any-exif.jpg"
    path.write_bytes(encoded(quartered(16, 8), "JPEG", exif=b"Exif\0\0II*\0\x08\0\0\0" + block))
    facts = read_facts(path)
    assert 1 <= facts.orientation <= 8
    assert sorted((facts.width_px, facts.height_px)) == [8, 16]
