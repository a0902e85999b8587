"""Finds the files that come with the program: packed in the wheel first, in the checkout second."""

from functools import cache
from pathlib import Path


class ResourceMissing(Exception):
    """A file that belongs to the program is not there; the installation is incomplete."""


@cache
def resource_root() -> Path:
    """The folder that holds icons, styles and the font."""
    package = Path(__file__).resolve().parent.parent
    return choose_root([package / "resources", package.parent / "resources"])


def choose_root(candidates: list[Path]) -> Path:
    """The first folder that has the styles in it."""
    for folder in candidates:
        if (folder / "styles").is_dir():
            return folder
    raise ResourceMissing("None of these folders holds the program's resources: " + ", ".join(map(str, candidates)))


def resource_path(*parts: str) -> Path:
    """The path of one resource, for example resource_path("icons", "undo.svg")."""
    path = resource_root().joinpath(*parts)
    if not path.exists():
        raise ResourceMissing(f"The program's file {path} is missing; install the program again.")
    return path


def resource_text(*parts: str) -> str:
    """The text of one resource."""
    return resource_path(*parts).read_text(encoding="utf-8")
