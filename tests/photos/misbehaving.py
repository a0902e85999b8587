"""A reader of pictures that does to its worker what a hostile file would; worker processes import it."""

import os
import threading
from pathlib import Path

from growlog.photos.survey import SurveyedPicture, survey_picture


def read(path: Path, cache_folder: Path) -> SurveyedPicture:
    """By the file's name: hangs, dies, signs with its number, wants all memory, breaks; else reads the picture."""
    if path.name.startswith("hangs"):
        threading.Event().wait()
    if path.name.startswith("dies"):
        os._exit(7)
    if path.name.startswith("signs"):
        path.with_name("signature").write_text(str(os.getpid()))
    if path.name.startswith("hoards"):
        bytearray(64 << 30)
    if path.name.startswith("broken program"):
        raise ZeroDivisionError
    return survey_picture(path, cache_folder)
