"""Previews: upright, scaled once, in sRGB, with nothing of the file but its pixels."""

import hashlib
import io
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageCms, JpegImagePlugin, PngImagePlugin

from growlog.photos.previews import make_previews
from tests.photos.conftest import corners, encoded, exif_with, opened, quartered

pytestmark = pytest.mark.slow

UPRIGHT = ["red", "green", "blue", "white"]
# EXIF 2.32, Orientation (from memory): how the stored picture lies, undone.
STORED = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


def differs_by(one: Image.Image, other: Image.Image) -> float:
    """The mean difference of two pictures of one size, in steps of 255."""
    grey = ImageChops.difference(one, other).convert("L")
    return sum(value * count for value, count in enumerate(grey.histogram())) / (grey.width * grey.height)


def test_all_nine_real_portraits_come_out_alike(turned_portraits: list[Path]) -> None:
    previews = [make_previews(path) for path in turned_portraits]
    assert len(previews) == 9
    for size in ("small", "large"):
        upright, *others = [opened(getattr(preview, size)) for preview in previews]
        assert upright.size == {"small": (213, 320), "large": (1067, 1600)}[size]
        small = [image.resize((60, 90)) for image in (upright, *others)]
        assert max(differs_by(small[0], image) for image in small[1:]) < 3  # each was stored in its own JPEG


def test_one_of_the_portraits_left_unturned_would_be_noticed(turned_portraits: list[Path]) -> None:
    small = opened(make_previews(turned_portraits[0]).small).resize((60, 90))
    assert differs_by(small, small.transpose(Image.Transpose.FLIP_LEFT_RIGHT)) > 10


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_orientation_of_every_kind_comes_out_upright(
    make_picture: Callable[..., Path], orientation: int, kind: str
) -> None:
    turn = STORED[orientation]
    stored = quartered() if turn is None else quartered().transpose(turn)
    more = {"tiffinfo": {274: orientation}} if kind == "TIFF" else {"exif": exif_with(orientation)}
    previews = make_previews(make_picture("turned", stored, kind, **more))
    assert corners(opened(previews.large)) == corners(opened(previews.small)) == UPRIGHT
    assert (previews.facts.width_px, previews.facts.height_px) == opened(previews.large).size == (64, 48)


@pytest.mark.parametrize(
    "size_px, small_px, large_px",
    [
        ((4000, 3000), (320, 240), (1600, 1200)),
        ((1000, 2000), (160, 320), (800, 1600)),
        ((1600, 100), (320, 20), (1600, 100)),
        ((321, 321), (320, 320), (321, 321)),
        ((100, 50), (100, 50), (100, 50)),
        ((1, 1), (1, 1), (1, 1)),
        ((5000, 1), (320, 1), (1600, 1)),
    ],
)
@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_the_long_side_is_brought_down_and_never_up(
    make_picture: Callable[..., Path],
    kind: str,
    size_px: tuple[int, int],
    small_px: tuple[int, int],
    large_px: tuple[int, int],
) -> None:
    previews = make_previews(make_picture("sized", Image.new("RGB", size_px, "green"), kind))
    assert (opened(previews.small).size, opened(previews.large).size) == (small_px, large_px)
    assert (previews.facts.width_px, previews.facts.height_px) == size_px


def test_a_large_jpeg_is_decoded_once_and_at_a_part_of_its_size(
    make_picture: Callable[..., Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = make_picture("large.jpg", Image.new("RGB", (6400, 3200), "green"))
    decoded: list[tuple[int, int]] = []
    prepare = JpegImagePlugin.JpegImageFile.load_prepare

    def noting(self: JpegImagePlugin.JpegImageFile) -> None:
        decoded.append(self.size)
        prepare(self)

    monkeypatch.setattr(JpegImagePlugin.JpegImageFile, "load_prepare", noting)
    make_previews(path)
    assert decoded == [(1600, 800)]


def test_the_original_is_not_touched(turned_portraits: list[Path]) -> None:
    before = hashlib.sha256(turned_portraits[6].read_bytes()).hexdigest()
    make_previews(turned_portraits[6])
    assert hashlib.sha256(turned_portraits[6].read_bytes()).hexdigest() == before


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_nothing_but_pixels_is_carried_over(make_picture: Callable[..., Path], kind: str) -> None:
    exif = exif_with(6, original="2026:01:18 18:41:02")
    exif.get_ifd(0x8825)[2] = (51.0, 30.0, 0.0)  # a place
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    notes = PngImagePlugin.PngInfo()
    notes.add_text("Comment", "behind the shed")
    more = {"pnginfo": notes} if kind == "PNG" else {"comment": b"behind the shed"} if kind == "JPEG" else {}
    path = make_picture("told", kind=kind, exif=exif, icc_profile=profile, **more)
    previews = make_previews(path)
    for content in (previews.small, previews.large):
        image = opened(content)
        assert dict(image.getexif()) == {}
        assert set(image.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}
        assert b"behind the shed" not in content


def test_the_same_file_gives_the_same_previews(rosettes: list[Path]) -> None:
    assert make_previews(rosettes[0]) == make_previews(rosettes[0])


def test_colours_are_converted_from_the_pictures_own_profile(make_picture: Callable[..., Path]) -> None:
    colour = (120, 200, 40)
    lab = ImageCms.createProfile("LAB", 5000)
    srgb = ImageCms.createProfile("sRGB")
    to_lab = ImageCms.buildTransform(srgb, lab, "RGB", "LAB")
    stored = ImageCms.applyTransform(Image.new("RGB", (32, 32), colour), to_lab)
    assert stored is not None
    profile = ImageCms.ImageCmsProfile(lab).tobytes()
    path = make_picture("lab.tif", stored, "TIFF", icc_profile=profile)
    seen = opened(make_previews(path).large).getpixel((16, 16))
    assert all(abs(a - b) <= 4 for a, b in zip(seen, colour, strict=True))


def test_a_damaged_profile_leaves_the_colours_as_stored(make_picture: Callable[..., Path]) -> None:
    path = make_picture("odd.jpg", Image.new("RGB", (32, 32), (120, 200, 40)), icc_profile=b"no profile at all")
    seen = opened(make_previews(path).large).getpixel((16, 16))
    assert all(abs(a - b) <= 4 for a, b in zip(seen, (120, 200, 40), strict=True))


def test_a_profile_for_other_channels_leaves_the_colours_as_stored(make_picture: Callable[..., Path]) -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    path = make_picture("grey.jpg", Image.new("L", (32, 32), 100), icc_profile=profile)
    seen = opened(make_previews(path).large).getpixel((16, 16))
    assert all(abs(value - 100) <= 3 for value in seen)


def test_what_is_transparent_shows_white_paper(make_picture: Callable[..., Path]) -> None:
    image = Image.new("RGBA", (64, 64), (255, 0, 0, 0))
    image.paste((0, 0, 255, 255), (0, 0, 32, 64))
    seen = opened(make_previews(make_picture("cut-out.png", image, "PNG")).large)
    assert min(seen.getpixel((56, 32))) >= 250
    assert seen.getpixel((8, 32))[2] >= 240


def test_a_scaled_edge_against_nothing_takes_no_colour_from_it(make_picture: Callable[..., Path]) -> None:
    image = Image.new("RGBA", (3200, 64), (0, 0, 0, 0))
    image.paste((255, 255, 255, 255), (0, 0, 1601, 64))
    seen = opened(make_previews(make_picture("edge.png", image, "PNG")).large).convert("L")
    assert seen.getextrema()[0] >= 250


def test_a_see_through_palette_shows_white_paper(make_picture: Callable[..., Path]) -> None:
    image = quartered().quantize(8)
    path = make_picture("palette.png", image, "PNG", transparency=image.getpixel((3, 3)))
    assert corners(opened(make_previews(path).large)) == ["white", "green", "blue", "white"]


@pytest.mark.parametrize(
    "mode, kind, brightness",
    [
        ("P", "PNG", 100),
        ("1", "PNG", 255),
        ("L", "PNG", 100),
        ("LA", "PNG", 100),
        ("CMYK", "JPEG", 100),
        ("CMYK", "TIFF", 100),
        ("YCbCr", "TIFF", 100),
    ],
)
def test_every_mode_of_pixels_becomes_plain_colour(
    make_picture: Callable[..., Path], mode: str, kind: str, brightness: int
) -> None:
    image = Image.new("RGB", (2000, 32), (brightness,) * 3).convert(mode)
    seen = opened(make_previews(make_picture("mode", image, kind)).large)
    assert (seen.mode, seen.size) == ("RGB", (1600, 26))
    assert all(abs(value - brightness) <= 4 for value in seen.getpixel((20, 10)))


@pytest.mark.parametrize("kind", ["PNG", "TIFF"])
def test_sixteen_bit_greys_keep_their_brightness(make_picture: Callable[..., Path], kind: str) -> None:
    image = Image.new("I;16", (64, 64), 0x8000)
    seen = opened(make_previews(make_picture("deep", image, kind)).large)
    assert all(abs(value - 128) <= 2 for value in seen.getpixel((32, 32)))


def test_sixteen_bit_greys_in_the_other_byte_order_keep_theirs(make_picture: Callable[..., Path]) -> None:
    image = Image.new("I;16B", (64, 64), 0x4000)
    seen = opened(make_previews(make_picture("deep", image, "TIFF")).large)
    assert all(abs(value - 64) <= 2 for value in seen.getpixel((32, 32)))


@pytest.mark.parametrize("value, brightness", [(0.5, 128), (200.0, 200), (32896.0, 128)])
def test_greys_in_floats_are_read_by_their_own_range(
    make_picture: Callable[..., Path], value: float, brightness: int
) -> None:
    image = Image.new("F", (64, 64), value)
    seen = opened(make_previews(make_picture("float", image, "TIFF")).large)
    assert all(abs(seen_value - brightness) <= 2 for seen_value in seen.getpixel((32, 32)))


def test_long_integers_are_spread_over_their_own_range(make_picture: Callable[..., Path]) -> None:
    image = Image.new("I", (64, 64), -50_000)
    image.paste(1_000_000, (32, 0, 64, 64))
    seen = opened(make_previews(make_picture("long", image, "TIFF")).large).convert("L")
    assert (seen.getpixel((4, 32)) <= 3, seen.getpixel((60, 32)) >= 252) == (True, True)


def test_a_progressive_jpeg_goes_in(tmp_path: Path) -> None:
    path = tmp_path / "progressive.jpg"
    path.write_bytes(encoded(quartered(), "JPEG", progressive=True))
    assert corners(opened(make_previews(path).large)) == UPRIGHT


def test_previews_are_jpeg_files(rosettes: list[Path]) -> None:
    previews = make_previews(rosettes[0])
    for content in (previews.small, previews.large):
        assert Image.open(io.BytesIO(content)).format == "JPEG"
        assert content.endswith(b"\xff\xd9")
