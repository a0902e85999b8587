"""Writes growing-room.pot, the template that translations start from, out of the program's own sources."""

import sys
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import write_po

ROOT = Path(__file__).parents[2]
TEMPLATE = Path(__file__).with_name("growing-room.pot")
KEYWORDS = {"say": None, "mark": None, "say_count": (1, 2)}


def template() -> bytes:
    """The template's content. Line numbers are left out, so that it changes only when words do."""
    catalogue = Catalog(project="Growing-room Logbook", charset="utf-8")
    found = extract_from_dir(ROOT / "growlog", [("**.py", "python")], keywords=KEYWORDS)
    for file, _line, message, comments, context in sorted(found, key=lambda f: (f[0], f[1])):
        catalogue.add(message, locations=[(f"growlog/{file}", None)], auto_comments=comments, context=context)
    for page in sorted((ROOT / "resources" / "help").glob("*.md")):
        for sentence in _sentences(page.read_text(encoding="utf-8")):
            catalogue.add(sentence, locations=[(f"resources/help/{page.name}", None)])
    out = BytesIO()
    write_po(out, catalogue, omit_header=True, sort_output=True, include_lineno=False)
    return out.getvalue()


def _sentences(page: str) -> list[str]:
    """The titles and sentences of a help page; its tables hold lines to type, which are not translated."""
    lines = [line.strip().removeprefix("## ") for line in page.splitlines()]
    return [line for line in lines if line and not line.startswith(("|", "# "))]


if __name__ == "__main__":
    TEMPLATE.write_bytes(template())
    sys.stdout.write(f"{TEMPLATE.name} written\n")
