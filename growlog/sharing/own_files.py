"""Where the files lie that belong to the program: beside the package when it is developed, in it when installed."""

from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent
_FOLDERS = (_PACKAGE / "resources", _PACKAGE.parent / "resources")


@cache
def resources_folder() -> Path:
    """The folder of templates, fonts and tables; FileNotFoundError where the installation is incomplete."""
    for folder in _FOLDERS:
        if (folder / "sheets").is_dir():
            return folder
    raise FileNotFoundError(2, "Templates that belong to the program are missing", "resources/sheets")
