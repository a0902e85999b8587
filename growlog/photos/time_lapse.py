"""A crop's photos as a film: one picture a day, cross-faded, with a label and the yield along the lower edge."""

import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw, ImageFont

FRAMES_A_SECOND = 24
# H.264 by whatever of these the installed FFmpeg has; the wheels of PyAV bring the first.
_ENCODERS = ("libx264", "libopenh264", "h264_videotoolbox", "h264_mf")
_GROUND, _STRIP, _INK, _MUTE, _PICK = (22, 24, 29), (30, 33, 40), (236, 231, 220), (163, 168, 159), (240, 128, 60)
_BT709 = 1

Font = Any


class NoEncoder(Exception):
    """The installed FFmpeg cannot write H.264."""


@dataclass(frozen=True)
class FilmShape:
    """Width and height in pixels, both even. frames_a_day: 1 or more. fade_frames: of them, at the start of a day.

    tail_frames: how long the last picture stands at the end.
    """

    width_px: int
    height_px: int
    frames_a_day: int
    fade_frames: int
    tail_frames: int = FRAMES_A_SECOND

    def frame_count(self, days: int) -> int:
        """Frames of a film of so many days."""
        return days * self.frames_a_day + self.tail_frames


@dataclass(frozen=True)
class FilmDay:
    """A day of the film. jpeg: its picture, None holds the one before. title, below: the label, "" for none.

    amount: the yield so far in words; part: as a part of the highest, 0 to 1; None without a curve.
    """

    jpeg: bytes | None
    title: str = ""
    below: str = ""
    amount: str = ""
    part: float | None = None


def write_film(
    path: Path,
    days: Iterable[FilmDay],
    day_count: int,
    shape: FilmShape,
    font_folder: Path,
    on_frame: Callable[[int], None] | None = None,
) -> int:
    """Writes an MP4 with H.264 and returns its frames. day_count: how many days there will be, for the curve.

    on_frame: called with the frames so far; what it raises ends the writing. OSError where the disk does not take it;
    NoEncoder without one for H.264. The caller sees to it that nothing half-written stays.
    """
    av = film_library()
    try:
        with av.open(str(path), "w", format="mp4", options={"movflags": "+faststart"}) as film:
            stream = _stream(film, shape)
            written = 0
            for picture in _frames(days, day_count, shape, font_folder):
                for packet in stream.encode(_coded(av, picture, written)):
                    film.mux(packet)
                written += 1
                if on_frame is not None:
                    on_frame(written)
            for packet in stream.encode(None):
                film.mux(packet)
    except av.error.FFmpegError as error:
        raise OSError(error.errno, error.strerror) from error
    return written


def film_library() -> Any:
    """PyAV. Imported here: it takes long, and most starts of the program make no film."""
    return import_module("av")


def encoder() -> str:
    """The encoder of H.264 that is there."""
    available = film_library().codecs_available
    found = next((name for name in _ENCODERS if name in available), "")
    if not found:
        raise NoEncoder
    return found


def _stream(film: Any, shape: FilmShape) -> Any:
    name = encoder()
    options = {"crf": "20", "preset": "veryfast"} if name == "libx264" else {}
    stream = film.add_stream(name, rate=FRAMES_A_SECOND, options=options)
    stream.width, stream.height, stream.pix_fmt = shape.width_px, shape.height_px, "yuv420p"
    context = stream.codec_context
    context.time_base = Fraction(1, FRAMES_A_SECOND)
    context.colorspace = context.color_primaries = context.color_trc = _BT709
    return stream


def _coded(av: Any, picture: Image.Image, number: int) -> Any:
    frame = av.VideoFrame.from_image(picture).reformat(format="yuv420p", dst_colorspace="ITU709")
    frame.pts, frame.time_base = number, Fraction(1, FRAMES_A_SECOND)
    return frame


def _frames(
    days: Iterable[FilmDay], day_count: int, shape: FilmShape, font_folder: Path
) -> Iterator[Image.Image]:  # fmt: skip
    before = shown = Image.new("RGB", _photo_size(shape, with_strip=True), _GROUND)
    strip: _Strip | None = None
    for number, day in enumerate(days):
        if strip is None:
            strip = _Strip(shape, day_count, font_folder, is_shown=bool(day.title) or day.part is not None)
            before = shown = Image.new("RGB", _photo_size(shape, with_strip=strip.is_shown), _GROUND)
        before, shown = shown, shown if day.jpeg is None else _fitted(day.jpeg, before.size)
        strip.add(day)
        for frame in range(shape.frames_a_day):
            fading = frame < shape.fade_frames and number and before is not shown
            photo = Image.blend(before, shown, (frame + 1) / (shape.fade_frames + 1)) if fading else shown
            yield strip.below(photo)
    if strip is not None:
        last = strip.below(shown)
        for _ in range(shape.tail_frames):
            yield last


def _photo_size(shape: FilmShape, *, with_strip: bool) -> tuple[int, int]:
    return shape.width_px, shape.height_px - (_strip_height(shape) if with_strip else 0)


def _strip_height(shape: FilmShape) -> int:
    return max(2, round(min(shape.width_px, shape.height_px) * 0.16) // 2 * 2)


def _fitted(jpeg: bytes, size: tuple[int, int]) -> Image.Image:
    """The whole picture as large as fits, in the middle of the dark ground."""
    with Image.open(io.BytesIO(jpeg)) as picture:
        picture.draft("RGB", size)
        photo = picture.convert("RGB")
    scale = min(size[0] / photo.width, size[1] / photo.height)
    fitting = max(1, round(photo.width * scale)), max(1, round(photo.height * scale))
    ground = Image.new("RGB", size, _GROUND)
    ground.paste(
        photo.resize(fitting, Image.Resampling.LANCZOS, reducing_gap=2.0),
        ((size[0] - fitting[0]) // 2, (size[1] - fitting[1]) // 2),
    )
    return ground


class _Strip:
    """The lower edge: label at the left, amount at the right, and the curve so far behind them."""

    def __init__(self, shape: FilmShape, day_count: int, font_folder: Path, *, is_shown: bool) -> None:
        self._shape, self._day_count, self.is_shown = shape, day_count, is_shown
        self._height = _strip_height(shape)
        self._fonts = _fonts(font_folder, self._height)
        self._parts: list[float] = []
        self._now = Image.new("RGB", (1, 1))

    def add(self, day: FilmDay) -> None:
        """Draws the strip of another day."""
        self._parts.append(self._parts[-1] if day.part is None and self._parts else day.part or 0.0)
        if self.is_shown:
            self._now = self._drawn(day)

    def below(self, photo: Image.Image) -> Image.Image:
        """A whole frame: the photo above the strip of the day."""
        if not self.is_shown:
            return photo
        frame = Image.new("RGB", (self._shape.width_px, self._shape.height_px), _GROUND)
        frame.paste(photo, (0, 0))
        frame.paste(self._now, (0, photo.height))
        return frame

    def _drawn(self, day: FilmDay) -> Image.Image:
        width, height = self._shape.width_px, self._height
        strip = Image.new("RGB", (width, height), _STRIP)
        draw = ImageDraw.Draw(strip, "RGBA")
        if day.part is not None:
            self._draw_curve(draw, width, height)
        edge, bold, plain = round(height * 0.2), *self._fonts
        draw.text((edge, height * 0.46), day.title, _INK, bold, anchor="ls")
        draw.text((edge, height * 0.82), day.below, _MUTE, plain, anchor="ls")
        draw.text((width - edge, height * 0.46), day.amount, _INK, bold, anchor="rs")
        return strip

    def _draw_curve(self, draw: ImageDraw.ImageDraw, width: int, height: int) -> None:
        line = self._steps(width, height)
        draw.polygon([(0, height), *line, (line[-1][0], height)], fill=(*_PICK, 60))
        draw.line(line, fill=_PICK, width=max(2, height // 40))

    def _steps(self, width: int, height: int) -> Sequence[tuple[float, float]]:
        span, tall = width / max(self._day_count, 1), height * 0.48  # below the label
        points: list[tuple[float, float]] = []
        for number, part in enumerate(self._parts):
            y = height - 1 - tall * part
            points += [(number * span, y), ((number + 1) * span, y)]
        return points


@cache
def _fonts(folder: Path, height: int) -> tuple[Font, Font]:
    sizes = (("LogbookSans-SemiBold.otf", 0.34), ("LogbookSans-Regular.otf", 0.24))
    bold, plain = (ImageFont.truetype(str(folder / name), max(6, round(height * part))) for name, part in sizes)
    return bold, plain
