"""HEIC from phones: real coded pictures, written by the tests themselves."""

from collections.abc import Callable
from datetime import date, time
from pathlib import Path

import pytest

from growlog.photos.capture_time import capture_time
from growlog.photos.picture_file import read_facts
from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.photos.previews import make_previews
from growlog.records.photo import DateSource
from tests.photos.conftest import exif_with, opened
from tests.photos.heic_maker import heic

BRIGHT_TOP_LEFT = [[220 if x < 32 and y < 16 else 40 for x in range(64)] for y in range(48)]


@pytest.fixture
def make_heic(tmp_path: Path) -> Callable[..., Path]:
    def make(name: str = "phone.heic", **more: object) -> Path:
        path = tmp_path / name
        path.write_bytes(heic(BRIGHT_TOP_LEFT, **more))
        return path

    return make


def bright_corner(path: Path) -> tuple[int, int]:
    """Which corner of the large preview is bright: 0 or 1 across, 0 or 1 down."""
    image = opened(make_previews(path).large).convert("L")
    right, bottom = image.width - 4, image.height - 4
    places = {(0, 0): (3, 3), (1, 0): (right, 3), (0, 1): (3, bottom), (1, 1): (right, bottom)}
    bright = [corner for corner, at in places.items() if image.getpixel(at) > 128]
    assert len(bright) == 1
    return bright[0]


def test_a_heic_is_decoded(make_heic: Callable[..., Path]) -> None:
    path = make_heic()
    facts = read_facts(path)
    assert (facts.width_px, facts.height_px, facts.media_type) == (64, 48, "image/heic")
    assert bright_corner(path) == (0, 0)


@pytest.mark.parametrize("quarter_turns, corner", [(1, (0, 1)), (2, (1, 1)), (3, (1, 0))])
def test_a_turn_told_by_the_container_is_applied(
    make_heic: Callable[..., Path], quarter_turns: int, corner: tuple[int, int]
) -> None:
    path = make_heic(quarter_turns=quarter_turns)
    facts = read_facts(path)
    upright = (64, 48) if quarter_turns == 2 else (48, 64)
    assert (facts.width_px, facts.height_px) == upright == opened(make_previews(path).large).size
    assert bright_corner(path) == corner


def test_a_turn_that_exif_tells_once_more_is_not_applied_twice(make_heic: Callable[..., Path]) -> None:
    path = make_heic(exif=exif_with(6).tobytes(), quarter_turns=3)
    assert read_facts(path).orientation == 1
    assert bright_corner(path) == (1, 0)


def test_the_time_in_a_heic_is_found(make_heic: Callable[..., Path]) -> None:
    exif = exif_with(original="2026:01:18 18:41:02", original_subsecond="7", original_offset="+01:00")
    times = read_facts(make_heic(exif=exif.tobytes())).exif_times
    found = capture_time(times, "phone.heic", None)
    assert (found.day, found.at) == (date(2026, 1, 18), time(18, 41, 2))
    assert (found.source, found.subsecond, found.utc_offset) == (DateSource.EXIF_ORIGINAL, "7", "+01:00")


def test_a_heic_named_jpg_goes_in_as_heic(make_heic: Callable[..., Path]) -> None:
    assert read_facts(make_heic("sent.jpg")).media_type == "image/heic"


@pytest.mark.parametrize("kept", [40, 0.3, 0.6, 0.95])
def test_a_heic_that_breaks_off_is_called_truncated(make_heic: Callable[..., Path], kept: float) -> None:
    path = make_heic()
    content = path.read_bytes()
    path.write_bytes(content[: int(kept if kept > 1 else len(content) * kept)])
    with pytest.raises(PictureProblem) as caught:
        make_previews(path)
    assert caught.value.reason is Reason.TRUNCATED


def test_a_film_in_the_same_container_is_no_picture(tmp_path: Path) -> None:
    path = tmp_path / "film.heic"
    path.write_bytes(b"\0\0\0\x18ftypisom\0\0\2\0isommp42" + bytes(100))
    with pytest.raises(PictureProblem) as caught:
        read_facts(path)
    assert caught.value.reason is Reason.NOT_A_PICTURE
