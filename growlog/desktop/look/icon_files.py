"""Small pictures that a style sheet can only name as files: arrows and ticks in the theme's colours."""

import hashlib
import tempfile
from pathlib import Path

_ARROWS = {"down": "M3 5.5 L7 9.5 L11 5.5", "up": "M3 8.5 L7 4.5 L11 8.5", "right": "M5.5 3 L9.5 7 L5.5 11"}
_TICKS = {
    "check": "M3 7.4 L5.8 10.2 L11 4.4",
    "dash": "M3.2 7 L10.8 7",
    "dot": "M4.5 7 A2.5 2.5 0 1 0 9.5 7 A2.5 2.5 0 1 0 4.5 7",
}


class _Folder:
    kept: tempfile.TemporaryDirectory[str] | None = None


def arrow_file(direction: str, colour: str) -> str:
    """The path of an arrow's picture, as a style sheet wants it."""
    return _write(_ARROWS[direction], colour)


def tick_file(shape: str, colour: str) -> str:
    """The path of the picture inside a ticked box."""
    return _write(_TICKS[shape], colour)


def _write(path: str, colour: str) -> str:
    text = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="14" height="14" viewBox="0 0 14 14">'
        f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="1.6"'
        ' stroke-linecap="round" stroke-linejoin="round"/></svg>'
    )
    name = hashlib.sha256(text.encode()).hexdigest()[:16] + ".svg"
    file = _folder() / name
    if not file.exists():
        file.write_text(text, encoding="utf-8")
    return file.as_posix()


def _folder() -> Path:
    """A folder of this run alone, removed when the program ends."""
    if _Folder.kept is None or not Path(_Folder.kept.name).is_dir():
        _Folder.kept = tempfile.TemporaryDirectory(prefix="growing-room-", ignore_cleanup_errors=True)
    return Path(_Folder.kept.name)
