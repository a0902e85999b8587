"""Pages set by the typesetter from a template of the program and plain facts."""

import json
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

import typst

from growlog.sharing.own_files import resources_folder


def set_pages(template: str, facts: Mapping[str, Any]) -> bytes:
    """The PDF that a template of resources/sheets makes of the facts; these are read as data, never as markup.

    FileNotFoundError where the installation is incomplete.
    """
    resources = resources_folder()
    source = resources / "sheets" / f"{template}.typ"
    written: bytes = typst.compile(
        source,
        font_paths=[resources / "font"],
        ignore_system_fonts=True,
        sys_inputs={"sheet": json.dumps(facts, ensure_ascii=False)},
        format="pdf",
    )
    return written


def set_pages_with_files(template: str, facts: Mapping[str, Any], files: Mapping[str, bytes]) -> bytes:
    """As set_pages, with files that the template may show by their names: pictures and drawings.

    Letters that the program's font lacks, such as Hebrew or Arabic, are taken from the system's fonts.
    """
    return _with_files(template, facts, files, "pdf", None)[0]


def page_pictures(
    template: str, facts: Mapping[str, Any], files: Mapping[str, bytes], dots_per_inch: float
) -> list[bytes]:  # fmt: skip
    """The same pages as PNG pictures, for a look before printing and for the printer."""
    return _with_files(template, facts, files, "png", dots_per_inch)


def _with_files(
    template: str,
    facts: Mapping[str, Any],
    files: Mapping[str, bytes],
    kind: Literal["pdf", "png"],
    dots_per_inch: float | None,
) -> list[bytes]:
    """Sets the pages in a folder of their own: the typesetter reads nothing outside of it."""
    resources = resources_folder()
    with tempfile.TemporaryDirectory(prefix="pages-") as name:
        folder = Path(name)
        shutil.copyfile(resources / "sheets" / f"{template}.typ", folder / "page.typ")
        for file_name, content in files.items():
            (folder / file_name).write_bytes(content)
        made: Any = typst.compile(  # one file, or several where pages are pictures
            folder / "page.typ",
            root=folder,
            font_paths=[resources / "font"],
            ignore_system_fonts=False,
            sys_inputs={"sheet": json.dumps(facts, ensure_ascii=False)},
            format=kind,
            ppi=dots_per_inch,
        )
    return made if isinstance(made, list) else [made]
