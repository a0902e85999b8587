"""Tables of old notes written for tests: text in any encoding, xlsx by another library, ods by hand."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from xml.sax.saxutils import escape
from zipfile import ZipFile

from openpyxl import Workbook

_NAMES = (
    'xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
    'xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" '
    'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"'
)
_ODS = "application/vnd.oasis.opendocument.spreadsheet"


def write_text(path: Path, text: str, encoding: str = "utf-8") -> Path:
    """A text file."""
    path.write_bytes(text.encode(encoding))
    return path


def write_xlsx(path: Path, **sheets: Sequence[Sequence[object]]) -> Path:
    """A workbook of these sheets; texts that begin with = are formulas without a result."""
    book = Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    book.save(path)
    return path


def write_ods(path: Path, rows: Sequence[Sequence[object]], name: str = "Notes") -> Path:
    """A sheet of texts and numbers as OpenDocument 1.3, part 3, section 9 (tables) has them.

    A tuple (formula, value) is a formula with its result, None for one without.
    """
    lines = "".join(f"<table:table-row>{''.join(map(_cell, row))}</table:table-row>" for row in rows)
    table = f'<table:table table:name="{name}">{lines}</table:table>'
    body = f"<office:body><office:spreadsheet>{table}</office:spreadsheet></office:body>"
    content = f'<?xml version="1.0"?><office:document-content {_NAMES} office:version="1.3">{body}'
    with ZipFile(path, "w") as archive:
        archive.writestr("mimetype", _ODS)
        archive.writestr("content.xml", content + "</office:document-content>")
        archive.writestr("META-INF/manifest.xml", _manifest())
    return path


def _cell(value: object) -> str:
    if isinstance(value, tuple):
        formula, result = value
        held = "" if result is None else f' office:value-type="float" office:value="{result}"'
        return f'<table:table-cell table:formula="of:{escape(formula)}"{held}/>'
    if isinstance(value, date):
        return f'<table:table-cell office:value-type="date" office:date-value="{value.isoformat()}"/>'
    if isinstance(value, (int, float)):
        return f'<table:table-cell office:value-type="float" office:value="{value}"/>'
    return f'<table:table-cell office:value-type="string"><text:p>{escape(str(value))}</text:p></table:table-cell>'


def _manifest() -> str:
    spaces = 'xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"'
    entry = f'<manifest:file-entry manifest:full-path="/" manifest:media-type="{_ODS}"/>'
    return f"<manifest:manifest {spaces}>{entry}</manifest:manifest>"
