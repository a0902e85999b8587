"""Films read again: how many frames, how large, how long, and what stands in them."""

from pathlib import Path

import av
import pytest
from PIL import Image

from growlog.photos import time_lapse
from growlog.photos.time_lapse import FRAMES_A_SECOND, FilmDay, FilmShape, NoEncoder, write_film
from tests.photos.conftest import encoded

pytestmark = pytest.mark.slow

FONT = Path(__file__).parents[2] / "resources" / "font"
RED, BLUE = (200, 20, 20), (20, 20, 200)


def one_colour(colour: tuple[int, int, int], size: tuple[int, int] = (64, 64)) -> bytes:
    return encoded(Image.new("RGB", size, colour), "JPEG", quality=95)


def film(tmp_path: Path, days: list[FilmDay], shape: FilmShape) -> Path:
    path = tmp_path / "film.mp4"
    assert write_film(path, days, len(days), shape, FONT) == shape.frame_count(len(days))
    return path


def frames_of(path: Path) -> list[Image.Image]:
    with av.open(str(path)) as container:
        return [frame.to_image() for frame in container.decode(video=0)]


def near(colour: tuple[int, ...], wanted: tuple[int, ...]) -> bool:
    return all(abs(a - b) < 25 for a, b in zip(colour, wanted, strict=True))


def test_a_film_has_its_size_its_frames_and_its_length_in_h264(tmp_path: Path) -> None:
    path = film(tmp_path, [FilmDay(one_colour(RED))] * 5, FilmShape(96, 128, 3, 0, tail_frames=9))
    with av.open(str(path)) as container:
        stream = container.streams.video[0]
        assert (stream.codec_context.name, stream.width, stream.height) == ("h264", 96, 128)
        assert stream.average_rate == FRAMES_A_SECOND
        assert float(stream.duration * stream.time_base) == pytest.approx((5 * 3 + 9) / FRAMES_A_SECOND)
    assert len(frames_of(path)) == 24


def test_colours_come_through(tmp_path: Path) -> None:
    frame = frames_of(film(tmp_path, [FilmDay(one_colour(RED))] * 2, FilmShape(64, 64, 2, 0)))[1]
    assert near(frame.getpixel((32, 32)), RED)


def test_one_picture_fades_into_the_next_and_then_stands(tmp_path: Path) -> None:
    days = [FilmDay(one_colour(RED)), FilmDay(one_colour(BLUE))]
    seen = [f.getpixel((32, 32)) for f in frames_of(film(tmp_path, days, FilmShape(64, 64, 4, 2, tail_frames=1)))]
    assert all(near(pixel, RED) for pixel in seen[:4])
    assert seen[3][0] > seen[4][0] > seen[5][0] > seen[6][0]
    assert all(near(pixel, BLUE) for pixel in seen[6:])


def test_a_day_without_a_picture_holds_the_one_before(tmp_path: Path) -> None:
    days = [FilmDay(None), FilmDay(one_colour(BLUE)), FilmDay(None)]
    seen = frames_of(film(tmp_path, days, FilmShape(64, 64, 2, 0, tail_frames=1)))
    assert near(seen[0].getpixel((32, 32)), (22, 24, 29))
    assert near(seen[-1].getpixel((32, 32)), BLUE)


def test_a_picture_of_another_shape_is_shown_whole(tmp_path: Path) -> None:
    frame = frames_of(film(tmp_path, [FilmDay(one_colour(BLUE, (64, 32)))], FilmShape(64, 64, 1, 0)))[0]
    assert near(frame.getpixel((32, 32)), BLUE)
    assert near(frame.getpixel((32, 4)), (22, 24, 29))


def test_the_curve_grows_along_the_lower_edge(tmp_path: Path) -> None:
    days = [FilmDay(one_colour(BLUE), "Day 1", "18 January", "", part) for part in (0.0, 1.0)]
    seen = frames_of(film(tmp_path, days, FilmShape(128, 128, 2, 0, tail_frames=1)))

    def orange(frame: Image.Image) -> int:
        strip = frame.crop((64, 108, 128, 128)).convert("RGB")
        return sum(r > b + 20 for r, _, b in strip.get_flattened_data())

    assert orange(seen[0]) == 0
    assert orange(seen[-1]) > 200


def test_the_label_stands_in_the_lower_edge(tmp_path: Path) -> None:
    with_label = frames_of(film(tmp_path, [FilmDay(one_colour(BLUE), "Day 43")], FilmShape(256, 256, 1, 0)))[0]
    strip = with_label.crop((0, 216, 256, 256)).convert("L")
    assert strip.getextrema()[1] > 150


def test_without_an_encoder_it_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(time_lapse, "_ENCODERS", ("no-such",))
    with pytest.raises(NoEncoder):
        write_film(tmp_path / "film.mp4", [FilmDay(one_colour(RED))], 1, FilmShape(64, 64, 1, 0), FONT)
