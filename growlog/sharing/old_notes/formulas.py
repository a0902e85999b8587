"""Cells of a spreadsheet whose formula has no result in the file, or whose result is an error.

The reader of spreadsheets hands such cells out as empty ones, which would lose them in silence.
"""

from collections.abc import Iterator
from typing import IO
from xml.etree import ElementTree
from zipfile import BadZipFile, ZipFile

_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_CALC = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}"
_WIDEST = 1000  # cells repeated beyond this are the empty rest of a line

Place = tuple[int, int]  # row and column, from 0


def cells_without_result(path: str, sheet: str) -> dict[Place, str]:
    """The error's name, or "" where there is no result, by place. Files of another make have none that can be told."""
    try:
        with ZipFile(path) as archive:
            names = set(archive.namelist())
            if "xl/workbook.xml" in names:
                part = _sheet_part(archive, sheet)
                return dict(_of_workbook(archive, part)) if part in names else {}
            if "content.xml" in names:
                with archive.open("content.xml") as file:
                    return dict(_of_open_document(file, sheet))
    except (BadZipFile, ElementTree.ParseError, KeyError, ValueError, EOFError):
        return {}  # the reader of the cells itself says what is wrong with the file
    return {}


def _sheet_part(archive: ZipFile, sheet: str) -> str:
    book = ElementTree.fromstring(archive.read("xl/workbook.xml"))
    link = next((s.get(_LINK) for s in book.iter(f"{_MAIN}sheet") if s.get("name") == sheet), None)
    links = ElementTree.fromstring(archive.read("xl/_rels/workbook.xml.rels"))
    target = next((r.get("Target", "") for r in links if r.get("Id") == link), "")
    return target.lstrip("/") if target.startswith("/") else f"xl/{target}"


def _of_workbook(archive: ZipFile, part: str) -> Iterator[tuple[Place, str]]:
    with archive.open(part) as file:
        for _event, element in ElementTree.iterparse(file):
            if element.tag == f"{_MAIN}c":
                value = element.findtext(f"{_MAIN}v")
                if element.get("t") == "e":
                    yield _place(element.get("r", "")), value or ""
                elif element.find(f"{_MAIN}f") is not None and not value and element.get("t") != "str":
                    yield _place(element.get("r", "")), ""
            if element.tag == f"{_MAIN}row":
                element.clear()


def _place(reference: str) -> Place:
    letters = reference.rstrip("0123456789")
    column = 0
    for letter in letters:
        column = column * 26 + ord(letter) - ord("A") + 1
    return int(reference[len(letters) :]) - 1, column - 1


def _of_open_document(file: IO[bytes], sheet: str) -> Iterator[tuple[Place, str]]:
    inside, row = False, 0
    for event, element in ElementTree.iterparse(file, ("start", "end")):
        if element.tag == f"{_TABLE}table":
            inside, row = event == "start" and element.get(f"{_TABLE}name") == sheet, 0
        elif element.tag == f"{_TABLE}table-row" and event == "end":
            if inside:
                yield from _of_row(element, row)
                row += int(element.get(f"{_TABLE}number-rows-repeated", "1"))
            element.clear()


def _of_row(element: ElementTree.Element, row: int) -> Iterator[tuple[Place, str]]:
    column = 0
    for cell in element:
        repeated = int(cell.get(f"{_TABLE}number-columns-repeated", "1"))
        failed = cell.get(f"{_CALC}value-type") == "error"
        if failed or (cell.get(f"{_TABLE}formula") and not cell.get(f"{_OFFICE}value-type")):
            for place in range(column, column + min(repeated, _WIDEST)):
                yield (row, place), "".join(cell.itertext()).strip() if failed else ""
        column += repeated
