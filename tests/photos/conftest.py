"""Pictures for the tests of the photo layer: the real ones, and a maker of small ones."""

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

DATA = Path(__file__).parents[1] / "data" / "photos"

ORIENTATION, EXIF_BLOCK = 274, 0x8769


@pytest.fixture
def rosettes() -> list[Path]:
    return sorted((DATA / "daily-rosettes").glob("*.jpg"))


@pytest.fixture
def turned_portraits() -> list[Path]:
    return sorted((DATA / "orientation").glob("*.jpg"))


@pytest.fixture
def make_picture(tmp_path: Path) -> Callable[..., Path]:
    """Writes a picture and gives its path; the kind is told by `kind`, never by the name."""

    def make(name: str = "leaf.jpg", image: Image.Image | None = None, kind: str = "JPEG", **more: object) -> Path:
        path = tmp_path / name
        path.write_bytes(encoded(image or quartered(), kind, **more))
        return path

    return make


def encoded(image: Image.Image, kind: str, **more: object) -> bytes:
    out = io.BytesIO()
    image.save(out, format=kind, **more)
    return out.getvalue()


def quartered(width_px: int = 64, height_px: int = 48) -> Image.Image:
    """Red, green over blue, white: shows which way up it is."""
    image = Image.new("RGB", (width_px, height_px), (255, 255, 255))
    left, top = width_px // 2, height_px // 2
    image.paste((220, 20, 20), (0, 0, left, top))
    image.paste((20, 180, 20), (left, 0, width_px, top))
    image.paste((20, 20, 220), (0, top, left, height_px))
    return image


def corners(image: Image.Image) -> list[str]:
    """The colours at the four corners, top left to bottom right, by name."""
    named = {"red": (220, 20, 20), "green": (20, 180, 20), "blue": (20, 20, 220), "white": (255, 255, 255)}
    rgb = image.convert("RGB")
    right, bottom = rgb.width - 4, rgb.height - 4
    seen = [rgb.getpixel(at) for at in ((3, 3), (right, 3), (3, bottom), (right, bottom))]
    return [
        min(named, key=lambda name: sum((a - b) ** 2 for a, b in zip(named[name], colour, strict=True)))
        for colour in seen
    ]


def opened(content: bytes) -> Image.Image:
    image = Image.open(io.BytesIO(content))
    image.load()
    return image


def exif_with(orientation: int | None = None, **times: str) -> Image.Exif:
    """An EXIF block: `original`, `digitized`, `plain`, each also with `_subsecond` and `_offset`."""
    outer = {"plain": 306}
    inner = {
        "original": 36867,
        "digitized": 36868,
        "plain_offset": 36880,
        "original_offset": 36881,
        "digitized_offset": 36882,
        "plain_subsecond": 37520,
        "original_subsecond": 37521,
        "digitized_subsecond": 37522,
    }
    exif = Image.Exif()
    if orientation is not None:
        exif[ORIENTATION] = orientation
    for name, text in times.items():
        if name in outer:
            exif[outer[name]] = text
        else:
            exif.get_ifd(EXIF_BLOCK)[inner[name]] = text
    return exif
