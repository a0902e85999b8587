"""Pixels of every kind brought to plain RGB: palettes, deep greys, transparency, print colours, profiles."""

import io

from PIL import Image, ImageCms

from growlog.photos.decoder_faults import DECODER_FAULTS

_PAPER_WHITE = (255, 255, 255)
_AS_THEY_ARE = ("L", "RGB", "RGBA", "LA", "CMYK")
_DEEP = ("I", "I;16", "I;16L", "I;16B", "I;16N", "F")
_WITH_ALPHA = ("RGBA", "LA")
_DEPTH_16_TO_8 = 1 / 257


def scalable(image: Image.Image) -> Image.Image:
    """The same picture in a mode that can be scaled smoothly."""
    if image.mode in _AS_THEY_ARE and "transparency" not in image.info:
        return image
    if image.mode in _DEEP:
        return _eight_bit_grey(image)
    has_alpha = image.has_transparency_data
    return image.convert("RGBA" if has_alpha else "RGB")


def on_paper_in_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    """RGB pixels: what is transparent shows white paper, colours as the profile meant them."""
    if image.mode in _WITH_ALPHA:
        image = _on_paper(image)
    if profile:
        image = _in_srgb(image, profile)
    return image if image.mode == "RGB" else image.convert("RGB")


def _eight_bit_grey(image: Image.Image) -> Image.Image:
    """Deep greys: 16 bits as such; floats and long integers by their own range, which nothing else tells."""
    if image.mode.startswith("I;16"):
        low, scale = 0.0, _DEPTH_16_TO_8
        image = image if image.mode == "I;16" else image.convert("I")
    else:
        low, scale = _range_of(image)
    return image.point(lambda value: value * scale + (-low * scale)).convert("L")


def _range_of(image: Image.Image) -> tuple[float, float]:
    low, high = (float(value) for value in image.getextrema())  # type: ignore[arg-type]
    if low >= 0 and high <= 1 and image.mode == "F":
        return 0.0, 255.0
    if low >= 0 and high <= 255:
        return 0.0, 1.0
    if low >= 0 and high <= 65535:
        return 0.0, _DEPTH_16_TO_8
    return low, 255.0 / (high - low)


def _on_paper(image: Image.Image) -> Image.Image:
    picture = image.convert("RGBA")
    paper = Image.new("RGB", picture.size, _PAPER_WHITE)
    paper.paste(picture, mask=picture.getchannel("A"))
    return paper


def _in_srgb(image: Image.Image, profile: bytes) -> Image.Image:
    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if image.mode == "RGB" and "sRGB" in ImageCms.getProfileDescription(source):
            return image
        turned = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, *DECODER_FAULTS):
        return image  # a damaged or foreign profile: the colours stay as stored
    return turned or image
