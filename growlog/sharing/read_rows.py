"""The tables of a package as rows of values, each with its place; what does not fit is refused."""

from dataclasses import dataclass
from pathlib import Path

from growlog.sharing.cells import Column, read_cell
from growlog.sharing.csv_text import read_csv
from growlog.sharing.problems import PackageProblem
from growlog.sharing.rows import Row
from growlog.sharing.table_descriptions import LATER_COLUMNS, LATER_TABLES, Table, tables
from growlog.words import say


@dataclass(frozen=True)
class ReadTable:
    """A table as read. The first of its rows is row 2 of the file."""

    table: Table
    rows: list[Row]
    numbers: dict[tuple[object, ...], int]  # the file's row of each key

    def problem(self, sentence: str, row: Row, column: str = "") -> PackageProblem:
        """A problem of one of its rows."""
        known = column if column in self.table.header else self.table.header[0]
        return PackageProblem(sentence, self.table.file, self.numbers[self.key_of(row)], known)

    def key_of(self, row: Row) -> tuple[object, ...]:
        """What names the row."""
        return tuple(row[name] for name in self.table.key)


def read_tables(folder: Path) -> dict[str, ReadTable]:
    """All tables; PackageProblem for a missing file, a wrong header, a wrong row or value, a broken reference.

    A package of the first format lacks later tables and columns: such a table is empty, such a column has its default.
    """
    read = {name: _read_table(folder, table) for name, table in tables().items()}
    for table in read.values():
        _check_references(table, read)
    return read


def _read_table(folder: Path, table: Table) -> ReadTable:
    read = ReadTable(table, [], {})
    if table.name in LATER_TABLES and not (folder / table.file).exists():
        return read
    lines = read_csv(folder / table.file)
    columns = _columns_of(table, lines[0] if lines else [])
    for number, cells in enumerate(lines[1:], start=2):
        row = _read_row(table, columns, number, cells)
        key = read.key_of(row)
        if key in read.numbers:
            sentence = say("This is the same as in row {row}.", row=read.numbers[key])
            raise PackageProblem(sentence, table.file, number, table.key[-1])
        read.rows.append(row)
        read.numbers[key] = number
    return read


def _columns_of(table: Table, header: list[str]) -> list[Column]:
    later = LATER_COLUMNS.get(table.name, frozenset())
    columns = [c for c in table.columns if c.name in header or c.name not in later]
    if header != [c.name for c in columns]:
        sentence = say("The header must be: {header}", header=",".join(table.header))
        raise PackageProblem(sentence, table.file, 1)
    return columns


def _read_row(table: Table, columns: list[Column], number: int, cells: list[str]) -> Row:
    if len(cells) != len(columns):
        sentence = say("The row has {found} fields, not {wanted}.", found=len(cells), wanted=len(columns))
        raise PackageProblem(sentence, table.file, number)
    row: Row = {column.name: column.default for column in table.columns if column not in columns}
    for column, text in zip(columns, cells, strict=True):
        try:
            row[column.name] = read_cell(column, text)
        except ValueError as error:
            raise PackageProblem(str(error), table.file, number, column.name) from error
    return row


def _check_references(read: ReadTable, all_read: dict[str, ReadTable]) -> None:
    for column in (c for c in read.table.columns if c.points_to):
        target = all_read[column.points_to]
        for row in read.rows:
            value = row[column.name]
            if value is not None and (value,) not in target.numbers:
                sentence = say("{id} is not in {file}.", id=value, file=target.table.file)
                raise read.problem(sentence, row, column.name)
