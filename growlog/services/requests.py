"""What is asked of the window from outside: where the program's folders are, and a picture of a screen."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Folders:
    """Where this computer's user keeps previews (cache) and logbooks (data), and where the sample season lies."""

    cache: Path
    data: Path
    sample: Path


@dataclass(frozen=True)
class PictureRequest:
    """A screen to be drawn into a PNG file.

    screen: one of the names that the window knows. crop: a crop's name, None for the first. day: plant age in
    days, None for the last. theme: "light" or "dark". text_percent: size of text, 100 as designed.
    """

    folder: Path
    screen: str
    crop: str | None
    day: int | None
    width_px: int
    height_px: int
    theme: str
    text_percent: int
    to: Path
