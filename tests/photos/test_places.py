"""Places taken out of picture files, judged by the decoders that others wrote; the pixels stay bit for bit."""

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import ExifTags, Image

from growlog.photos.picture_file import read_facts
from growlog.photos.places import PlacesStay, without_places
from tests.photos.conftest import encoded, exif_with, opened, quartered
from tests.photos.telling import SECRET, telling_heic, telling_jpeg, telling_png, telling_tiff, telling_webp

TELLING = {"jpeg": telling_jpeg, "png": telling_png, "webp": telling_webp, "tiff": telling_tiff, "heic": telling_heic}


def picture(content: bytes) -> Image.Image:
    if b"ftyp" in content[:12]:
        from pi_heif import HeifImageFile

        return HeifImageFile(io.BytesIO(content))
    return opened(content)


@pytest.mark.parametrize("kind", TELLING)
def test_nothing_of_the_place_is_left_and_every_pixel_is_as_it_was(kind: str) -> None:
    before = TELLING[kind]()
    after = without_places(before)
    assert SECRET in before
    assert SECRET not in after
    assert not picture(after).getexif().get_ifd(ExifTags.IFD.GPSInfo)
    assert picture(after).tobytes() == picture(before).tobytes()


@pytest.mark.parametrize("kind", TELLING)
def test_the_way_up_and_the_date_stay(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "leaf"
    path.write_bytes(TELLING[kind]())
    before = read_facts(path)
    path.write_bytes(without_places(path.read_bytes()))
    after = read_facts(path)
    assert (after.width_px, after.height_px, after.orientation) == (
        before.width_px, before.height_px, before.orientation)  # fmt: skip
    assert after.exif_times.original == before.exif_times.original
    assert kind == "tiff" or after.exif_times.original.text == "2026:01:18 18:41:02"  # this writer keeps none in TIFF


@pytest.mark.parametrize("kind", TELLING)
def test_what_came_out_goes_through_unchanged(kind: str) -> None:
    once = without_places(TELLING[kind]())
    assert without_places(once) == once


def test_real_pictures_that_tell_no_place_stay_byte_for_byte(
    rosettes: list[Path], turned_portraits: list[Path]
) -> None:
    for path in [*rosettes[:3], *turned_portraits]:
        assert without_places(path.read_bytes()) == path.read_bytes(), path.name


def test_dates_and_camera_alone_are_no_reason_to_touch_a_file() -> None:
    exif = exif_with(3, original="2026:01:18 18:41:02")
    exif[ExifTags.Base.Make] = "Pocket"
    content = encoded(quartered(), "JPEG", exif=exif.tobytes())
    assert without_places(content) == content


def test_what_a_phone_hides_behind_the_end_of_the_picture_goes() -> None:
    plain = encoded(quartered(), "JPEG")
    assert without_places(plain + telling_jpeg()) == plain


def test_a_colour_profile_stays() -> None:
    from PIL import ImageCms

    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    after = without_places(telling_jpeg(icc_profile=profile))
    assert opened(after).info["icc_profile"] == profile


def test_a_picture_of_several_scans_keeps_all_of_them() -> None:
    before = telling_jpeg(progressive=True)
    assert opened(without_places(before)).tobytes() == opened(before).tobytes()


@pytest.mark.parametrize("cut", [3, 20, 200, -2])
def test_a_file_that_breaks_off_is_said_to_be_not_understood(cut: int) -> None:
    with pytest.raises(PlacesStay):
        without_places(telling_jpeg()[:cut])


@pytest.mark.parametrize("content", [b"", b"GIF89a", b"no picture at all", b"II+\0" + bytes(40)])
def test_other_files_are_not_understood(content: bytes) -> None:
    with pytest.raises(PlacesStay):
        without_places(content)


def test_an_exif_block_that_cannot_be_read_goes_as_a_whole(make_picture: Callable[..., Path]) -> None:
    content = make_picture(exif=b"Exif\0\0" + SECRET).read_bytes()
    assert SECRET in content
    assert SECRET not in without_places(content)
