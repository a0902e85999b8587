"""Intake of photos, against a plain loop of hash, one scaled decode and two encodes on as many workers."""

import hashlib
import io
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from time import perf_counter

from PIL import Image

from growlog.services.photo_intake import judge, look_at, take_in
from tests.logbooks import logbook, plant_crop

WORKERS = 2


def make_photos(folder: Path, count: int) -> list[Path]:
    """Large JPEG files with some detail, each of its own content and day."""
    folder.mkdir()
    noise = Image.effect_noise((500, 375), 60).resize((4000, 3000)).convert("RGB")
    files = []
    for number in range(count):
        file = folder / f"2026-01-{number % 28 + 1:02}_{number:04}.jpg"
        noise.point([min(255, v + number) for v in range(256)] * 3).save(file, quality=85)
        files.append(file)
    return files


def plain(file: Path) -> str:
    """What cannot be avoided: hash, one scaled decode, two encodes."""
    content = file.read_bytes()
    with Image.open(io.BytesIO(content)) as picture:
        picture.draft("RGB", (1600, 1600))
        picture.thumbnail((1600, 1600))
        picture.save(io.BytesIO(), "JPEG", quality=85)
        picture.thumbnail((320, 320))
        picture.save(io.BytesIO(), "JPEG", quality=80)
    return hashlib.sha256(content).hexdigest()


def plain_seconds(files: list[Path]) -> float:
    """The plain loop in spawned workers, as intake has them."""
    start = perf_counter()
    with ProcessPoolExecutor(WORKERS, mp_context=get_context("spawn")) as pool:
        assert len(set(pool.map(plain, files))) == len(files)
    return perf_counter() - start


def intake_seconds(folder: Path, files: list[Path]) -> float:
    """Look, judge, copy and write."""
    with logbook(folder) as log:
        crop = plant_crop(log)
        start = perf_counter()
        items = judge(log, list(look_at(log, files, crop.id)))
        _, change = take_in(log, items)
        took = perf_counter() - start
        assert change is not None
        assert len(change.record_ids) == len(files)
    return took


def ratio(folder: Path, count: int, rounds: int) -> float:
    """The best of each, in turn."""
    files = make_photos(folder / "photos", count)
    pairs = []
    for number in range(rounds):
        target = folder / f"round-{number}"
        target.mkdir()
        pairs.append((intake_seconds(target, files), plain_seconds(files)))
    return min(p[0] for p in pairs) / min(p[1] for p in pairs)
