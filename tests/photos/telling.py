"""Pictures of each kind that tell where and by whom they were taken."""

from PIL import ExifTags, Image, PngImagePlugin

from tests.photos.conftest import encoded, exif_with, quartered
from tests.photos.heic_maker import heic

SECRET = b"Nowhere Lane 7"
GPS = {1: "N", 2: (48.0, 51.0, 29.6), 3: "E", 4: (2.0, 17.0, 40.2), 27: b"ASCII\0\0\0" + SECRET}
XMP = b'<x:xmpmeta xmlns:x="adobe:ns:meta/"><place>' + SECRET + b"</place></x:xmpmeta>"


def telling_exif(orientation: int = 6) -> Image.Exif:
    """A block with a place, an owner and the camera's own notes beside the way up and the date."""
    exif = exif_with(orientation, original="2026:01:18 18:41:02", original_offset="+01:00")
    exif[ExifTags.Base.Artist] = SECRET.decode()
    exif[ExifTags.IFD.GPSInfo] = GPS
    exif.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.UserComment] = b"ASCII\0\0\0" + SECRET
    exif.get_ifd(ExifTags.IFD.Exif)[ExifTags.IFD.MakerNote] = b"maker " + SECRET
    return exif


def telling_jpeg(**more: object) -> bytes:
    return encoded(quartered(), "JPEG", exif=telling_exif().tobytes(), xmp=XMP, comment=SECRET, quality=90, **more)


def telling_png() -> bytes:
    texts = PngImagePlugin.PngInfo()
    texts.add_text("Location", SECRET.decode())
    texts.add_itxt("XML:com.adobe.xmp", XMP.decode(), zip=False)
    return encoded(quartered(), "PNG", exif=telling_exif().tobytes(), pnginfo=texts)


def telling_webp() -> bytes:
    return encoded(quartered(), "WEBP", exif=telling_exif().tobytes(), xmp=XMP, lossless=True)


def telling_tiff() -> bytes:
    exif = Image.Exif()
    exif.load(telling_exif().tobytes())  # a block that was read is the one that this writer takes
    return encoded(quartered(), "TIFF", exif=exif, tiffinfo={700: XMP})


def telling_heic() -> bytes:
    rows = [[220 if x < 32 else 40 for x in range(64)] for _ in range(48)]
    return heic(rows, exif=telling_exif().tobytes())
