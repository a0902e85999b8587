"""Writing a data package: the tables and their description. The same records give the same bytes."""

import os
from pathlib import Path

from growlog.sharing.cells import write_cell
from growlog.sharing.csv_text import csv_text
from growlog.sharing.descriptor import DESCRIPTOR, descriptor_text
from growlog.sharing.package import Package
from growlog.sharing.rows import Row, rows_of
from growlog.sharing.table_descriptions import Table, tables


def package_files(package: Package) -> dict[str, bytes]:
    """The package's files by name, photos excepted."""
    rows = rows_of(package)
    files = {table.file: _table_text(table, rows[table.name]).encode() for table in tables().values()}
    return files | {DESCRIPTOR: descriptor_text(package).encode()}


def write_package(package: Package, folder: Path) -> None:
    """Writes the tables and their description into an existing folder, down to the disk."""
    for name, content in package_files(package).items():
        with (folder / name).open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())


def _table_text(table: Table, rows: list[Row]) -> str:
    return csv_text([table.header, *([write_cell(row[name]) for name in table.header] for row in rows)])
