"""The recipe of a preview: upright, sRGB, scaled down, JPEG, bare pixels. One decode serves both sizes."""

import io
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from PIL import Image, ImageFile

from growlog.photos.picture_file import PictureFacts, open_picture, turns_itself
from growlog.photos.pixel_modes import on_paper_in_srgb, scalable

RECIPE_VERSION = 1  # raise it whenever the same file would give other previews: the cache then starts afresh


class PreviewSize(StrEnum):
    """The two previews of a picture."""

    SMALL = "small"
    LARGE = "large"


LONG_SIDE_PX = {PreviewSize.SMALL: 320, PreviewSize.LARGE: 1600}
_JPEG_QUALITY = {PreviewSize.SMALL: 80, PreviewSize.LARGE: 85}

_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


@dataclass(frozen=True)
class Previews:
    """Both previews as JPEG files, and the facts of the picture they were made from."""

    small: bytes
    large: bytes
    facts: PictureFacts


def make_previews(path: Path) -> Previews:
    """Both previews of the picture, never larger than the picture itself. Raises PictureProblem."""
    with open_picture(path) as (image, facts):
        large = _upright(on_paper_in_srgb(_decode_scaled(image), image.info.get("icc_profile")), facts)
        small = _scaled_down(large, PreviewSize.SMALL)
        return Previews(_jpeg(small, PreviewSize.SMALL), _jpeg(large, PreviewSize.LARGE), facts)


def _decode_scaled(image: ImageFile.ImageFile) -> Image.Image:
    # A JPEG can be decoded at a half, a quarter or an eighth, which is several times faster.
    image.draft(None, _fitting(image.size, PreviewSize.LARGE))
    image.load()
    return _scaled_down(scalable(image), PreviewSize.LARGE)


def _scaled_down(image: Image.Image, size: PreviewSize) -> Image.Image:
    fitting = _fitting(image.size, size)
    if fitting == image.size:
        return image
    return image.resize(fitting, Image.Resampling.LANCZOS, reducing_gap=2.0)


def _fitting(size_px: tuple[int, int], size: PreviewSize) -> tuple[int, int]:
    scale = min(1.0, LONG_SIDE_PX[size] / max(size_px))
    return max(1, round(size_px[0] * scale)), max(1, round(size_px[1] * scale))


def _upright(image: Image.Image, facts: PictureFacts) -> Image.Image:
    turn = None if turns_itself(facts.media_type) else _TURNS.get(facts.orientation)
    return image if turn is None else image.transpose(turn)


def _jpeg(image: Image.Image, size: PreviewSize) -> bytes:
    image.info.clear()  # Pillow would carry a comment over
    out = io.BytesIO()
    image.save(out, format="JPEG", quality=_JPEG_QUALITY[size])
    return out.getvalue()
