"""The page of words of the quick line: its file cut into titles, sentences and tables of examples."""

from dataclasses import dataclass

from growlog.desktop.resources import resource_text


@dataclass(frozen=True)
class Example:
    """A line and what it becomes, entry by entry."""

    line: str
    becomes: tuple[str, ...]


@dataclass(frozen=True)
class Section:
    """A part of the page. sentences stand before its examples."""

    title: str
    sentences: tuple[str, ...]
    examples: tuple[Example, ...]


def help_sections() -> tuple[Section, ...]:
    """The page that comes with the program."""
    return sections_of(resource_text("help", "quick_line.md"))


def sections_of(page: str) -> tuple[Section, ...]:
    """The sections of a page: "## title", sentences, and tables of two columns with several entries parted by " ; "."""
    found: list[Section] = []
    for part in page.split("\n## ")[1:]:
        title, _, body = part.partition("\n")
        lines = [line.strip() for line in body.splitlines() if line.strip()]
        rows = [line for line in lines if line.startswith("|")][2:]  # after the column titles and their rule
        sentences = tuple(line for line in lines if not line.startswith("|"))
        found.append(Section(title.strip(), sentences, tuple(_example(row) for row in rows)))
    return tuple(found)


def _example(row: str) -> Example:
    line, becomes = (cell.strip() for cell in row.strip("|").split("|"))
    return Example(line, tuple(one.strip() for one in becomes.split(" ; ")))
