"""Pages set by the typesetter from a template of the program and plain facts."""

import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

import typst

_PACKAGE = Path(__file__).resolve().parent.parent
_FOLDERS = (_PACKAGE / "resources", _PACKAGE.parent / "resources")


def set_pages(template: str, facts: Mapping[str, Any]) -> bytes:
    """The PDF that a template of resources/sheets makes of the facts; these are read as data, never as markup.

    FileNotFoundError where the installation is incomplete.
    """
    resources = _resources()
    source = resources / "sheets" / f"{template}.typ"
    written: bytes = typst.compile(
        source.read_bytes(),
        font_paths=[resources / "font"],
        ignore_system_fonts=True,
        sys_inputs={"sheet": json.dumps(facts, ensure_ascii=False)},
        format="pdf",
    )
    return written


@cache
def _resources() -> Path:
    for folder in _FOLDERS:
        if (folder / "sheets").is_dir():
            return folder
    raise FileNotFoundError(2, "Templates that belong to the program are missing", "resources/sheets")
