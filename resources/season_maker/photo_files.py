"""Writes drawn photos as JPEG with the camera's dates, and their plant masks as one-bit PNG."""

import hashlib
import io
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path

from PIL import Image

from .drawing.picture import Drawn, draw_photo
from .photo_plan import PhotoPlan
from .plant_state import PlantState
from .season import Season

QUALITY = 75
MASK_SIZE = (225, 300)
EXIF_IFD = 0x8769
MAKE, MODEL, ORIENTATION, DATE_TIME = 0x010F, 0x0110, 0x0112, 0x0132
DATE_TIME_ORIGINAL, OFFSET_TIME_ORIGINAL, SUBSEC_TIME_ORIGINAL = 0x9003, 0x9011, 0x9291
STORED_TURN = {6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270}


@dataclass(frozen=True)
class PhotoFile:
    """A finished photo: its bytes and where they belong below the output folder."""

    plan: PhotoPlan
    path: str
    sha256: str
    jpeg: bytes
    mask_png: bytes


def photo_jobs(season: Season) -> list[tuple[PhotoPlan, PlantState]]:
    """Every photo of the season with the plant it shows."""
    return [(photo, crop.life.state(photo.age, photo.evening)) for crop in season.crops for photo in crop.photos]


def make_photo(job: tuple[PhotoPlan, PlantState]) -> PhotoFile:
    """Draw and encode one photo."""
    plan, state = job
    drawn = draw_photo(state, plan.camera)
    jpeg = _jpeg(plan, drawn)
    digest = hashlib.sha256(jpeg).hexdigest()
    name = f"{plan.taken_at:%Y-%m-%d_%H%M%S}_{digest[:8]}"
    return PhotoFile(plan, f"photos/{plan.crop}/{name}.jpg", digest, jpeg, _mask_png(drawn))


def make_photos(jobs: Iterable[tuple[PhotoPlan, PlantState]], workers: int) -> Iterator[PhotoFile]:
    """All photos, in order; the bytes do not depend on the number of workers."""
    if workers <= 1:
        yield from map(make_photo, jobs)
        return
    with get_context("spawn").Pool(workers) as pool:
        yield from pool.imap(make_photo, jobs, chunksize=4)


def write_photo(photo: PhotoFile, folder: Path) -> None:
    """Put photo and mask below the folder."""
    place = folder / photo.path
    mask_place = folder / photo.path.replace("photos/", "masks/", 1).replace(".jpg", ".png")
    for path, content in ((place, photo.jpeg), (mask_place, photo.mask_png)):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)


def _jpeg(plan: PhotoPlan, drawn: Drawn) -> bytes:
    stored = drawn.photo.transpose(STORED_TURN[plan.orientation]) if plan.orientation in STORED_TURN else drawn.photo
    buffer = io.BytesIO()
    stored.save(buffer, "JPEG", quality=QUALITY, optimize=True, progressive=True, exif=_exif(plan))
    return buffer.getvalue()


def _exif(plan: PhotoPlan) -> Image.Exif:
    stamp = f"{plan.taken_at:%Y:%m:%d %H:%M:%S}"
    exif = Image.Exif()
    exif[MAKE], exif[MODEL], exif[ORIENTATION], exif[DATE_TIME] = "Pocket", "Pocket camera", plan.orientation, stamp
    inner = exif.get_ifd(EXIF_IFD)
    inner[DATE_TIME_ORIGINAL], inner[SUBSEC_TIME_ORIGINAL] = stamp, plan.subsecond
    if plan.utc_offset:
        inner[OFFSET_TIME_ORIGINAL] = plan.utc_offset
    return exif


def _mask_png(drawn: Drawn) -> bytes:
    buffer = io.BytesIO()
    small = drawn.mask.resize(MASK_SIZE, Image.Resampling.BOX).point([0] * 128 + [255] * 128)
    small.convert("1", dither=Image.Dither.NONE).save(buffer, "PNG", optimize=True)
    return buffer.getvalue()
