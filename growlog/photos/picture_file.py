"""A picture of unknown origin: opened by its content, its facts read before a single pixel is decoded."""

import logging
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

from PIL import Image, ImageFile

from growlog.photos.capture_time import ExifTimes
from growlog.photos.decoder_faults import DECODER_FAULTS
from growlog.photos.exif_facts import exif_facts
from growlog.photos.picture_end import ends_early
from growlog.photos.picture_kind import MediaType, media_type_of_file
from growlog.photos.picture_problem import PictureProblem, Reason, problem_from_os_error

PIXEL_LIMIT = 250_000_000  # 250 megapixels: beyond every camera, within the memory of a small computer

_NEW_SUBFILE_TYPE, _REDUCED_COPY, _DNG_VERSION = 254, 1, 50706


@dataclass(frozen=True)
class PictureFacts:
    """What a picture's header tells. Width and height are those of the picture held upright.

    orientation: the EXIF value 1 to 8 as stored. A HEIC tells 1: its decoder turns the picture by itself.
    """

    width_px: int
    height_px: int
    media_type: str
    orientation: int
    exif_times: ExifTimes


def read_facts(path: Path) -> PictureFacts:
    """The facts of the picture, from its header alone. Raises PictureProblem."""
    with open_picture(path) as (_, facts):
        return facts


@contextmanager
def open_picture(path: Path) -> Iterator[tuple[ImageFile.ImageFile, PictureFacts]]:
    """The picture, opened but not decoded, and its facts. What decoding throws becomes a PictureProblem.

    Silences warnings for the whole process meanwhile: meant for the one thread of a worker, or for tests.
    """
    media_type = media_type_of_file(path)
    with _silence(), _opened(path) as file:
        try:
            with _image(file, media_type) as image:
                yield image, _facts(image, file, media_type)
        except PictureProblem:
            raise
        except Image.DecompressionBombError as error:
            raise PictureProblem(Reason.TOO_MANY_PIXELS, str(error)) from error
        except DECODER_FAULTS as fault:
            raise _problem_of(fault, file, media_type) from fault


@contextmanager
def _silence() -> Iterator[None]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


@contextmanager
def _opened(path: Path) -> Iterator[BinaryIO]:
    try:
        file = path.open("rb")
    except OSError as error:
        raise problem_from_os_error(error) from error
    with file:
        yield file


def _image(file: BinaryIO, media_type: MediaType) -> ImageFile.ImageFile:
    # The reader is chosen here, so Pillow's own guard is only the second line, raised to our limit.
    Image.MAX_IMAGE_PIXELS = PIXEL_LIMIT
    logging.getLogger("PIL").addHandler(_NO_OUTPUT)
    file.seek(0)
    return _reader(media_type)(file)


_NO_OUTPUT = logging.NullHandler()


def _reader(media_type: MediaType) -> type[ImageFile.ImageFile]:
    """Imported at need: a worker that meets JPEG only never loads the HEIC decoder."""
    if media_type is MediaType.JPEG:
        # Not the multi-picture reader: only the first picture counts, and a damaged index cannot hurt.
        from PIL.JpegImagePlugin import JpegImageFile

        return JpegImageFile
    if media_type is MediaType.PNG:
        from PIL.PngImagePlugin import PngImageFile

        return PngImageFile
    if media_type is MediaType.WEBP:
        from PIL.WebPImagePlugin import WebPImageFile

        return WebPImageFile
    if media_type is MediaType.TIFF:
        from PIL.TiffImagePlugin import TiffImageFile

        return TiffImageFile
    return _heif_reader()


def _heif_reader() -> type[ImageFile.ImageFile]:
    from pi_heif import HeifImageFile, options

    options.THUMBNAILS = options.DEPTH_IMAGES = options.AUX_IMAGES = False
    reader: type[ImageFile.ImageFile] = HeifImageFile
    return reader


def _facts(image: ImageFile.ImageFile, file: BinaryIO, media_type: MediaType) -> PictureFacts:
    width_px, height_px = image.size
    if width_px * height_px > PIXEL_LIMIT:
        raise PictureProblem(Reason.TOO_MANY_PIXELS, f"{width_px} x {height_px}")
    if media_type is MediaType.TIFF:
        _refuse_raw(image)
    orientation, exif_times = exif_facts(image, file)
    if orientation >= 5 and not turns_itself(media_type):
        width_px, height_px = height_px, width_px
    return PictureFacts(width_px, height_px, media_type, orientation, exif_times)


def turns_itself(media_type: str) -> bool:
    """Whether the decoder of this kind already hands out upright sizes and pixels."""
    return media_type in (MediaType.TIFF, MediaType.HEIC, MediaType.HEIF)


def _refuse_raw(image: ImageFile.ImageFile) -> None:
    """A camera's raw file is a TIFF whose first page is a small copy, which would pass for the photo."""
    tags = getattr(image, "tag_v2", {})
    if _DNG_VERSION in tags or tags.get(_NEW_SUBFILE_TYPE) == _REDUCED_COPY:
        raise PictureProblem(Reason.UNSUPPORTED, "camera raw")


def _problem_of(fault: BaseException, file: BinaryIO, media_type: MediaType) -> PictureProblem:
    if isinstance(fault, OSError) and fault.errno is not None:
        return problem_from_os_error(fault)
    if isinstance(fault, MemoryError):
        return PictureProblem(Reason.UNREADABLE, "out of memory")
    broken_off = "truncated" in str(fault).lower() or _ends_early(file, media_type)
    return PictureProblem(Reason.TRUNCATED if broken_off else Reason.UNREADABLE, str(fault))


def _ends_early(file: BinaryIO, media_type: MediaType) -> bool:
    try:
        return ends_early(file, media_type)
    except (OSError, ValueError):  # the card was pulled, or the decoder closed the file
        return False
