"""Reading a data package back to records; nothing is taken on trust."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

from growlog.records.entry import Entry
from growlog.records.problems import Problem
from growlog.sharing.descriptor import read_as_of
from growlog.sharing.package import Package
from growlog.sharing.photo_files import stays_inside
from growlog.sharing.problems import PackageProblem
from growlog.sharing.read_rows import ReadTable, read_tables
from growlog.sharing.rows import (
    Row,
    detail_of_row,
    entry_of_row,
    items_of,
    owner_of_row,
    record_of_row,
    samples_of_rows,
)
from growlog.sharing.table_descriptions import KIND_TABLES, RECORDS, SAMPLES
from growlog.words import say

Tables = dict[str, ReadTable]


def read_package(folder: Path) -> Package:
    """The records of a package, its photos not looked at; PackageProblem names file, row and column of a fault."""
    as_of = read_as_of(folder)
    read = read_tables(folder)
    _one_logbook(read["logbook"])
    records: dict[str, Any] = {name: _records(name, read) for name in RECORDS}
    logbook = records.pop("logbook")[0]
    _unlike(read["crops"], "name", str.casefold)
    _unlike(read["photos"], "sha256", str)
    _unlike(read["photos"], "path", str)
    _photo_fields(read["photos"])
    samples = samples_of_rows(read[SAMPLES].rows)
    return Package(logbook=logbook, as_of=as_of, entries=tuple(_entries(read)), climate_samples=samples, **records)


def _records(name: str, read: Tables) -> tuple[Any, ...]:
    items = items_of(name, {key: table.rows for key, table in read.items()})
    records = []
    for row in read[name].rows:
        record = record_of_row(name, row, items)
        if hasattr(record, "problems"):
            _refuse(read[name], row, record.problems())
        records.append(record)
    return tuple(records)


def _entries(read: Tables) -> Iterable[Entry]:
    details = {kind: _details(kind, read) for kind in KIND_TABLES}
    for row in read["entries"].rows:
        owner = owner_of_row(row)
        if owner is None:
            sentence = say("An entry belongs to exactly one crop, plant, tank or room.")
            raise read["entries"].problem(sentence, row, "crop_id")
        detail = details[row["kind"]].pop(row["id"], None)
        if detail is None:
            file = read[KIND_TABLES[row["kind"]]].table.file
            raise read["entries"].problem(say("{file} has no row for this entry.", file=file), row, "kind")
        entry = entry_of_row(row, owner, detail)
        _refuse(read["entries"], row, [p for p in entry.problems() if p not in detail.problems()])
        yield entry
    _nothing_left(details, read)


def _details(kind: str, read: Tables) -> dict[str, Any]:
    table = read[KIND_TABLES[kind]]
    items = items_of(table.table.name, {key: t.rows for key, t in read.items()})
    details = {}
    for row in table.rows:
        detail = detail_of_row(kind, row, items)
        _refuse(table, row, detail.problems())
        details[row["entry_id"]] = detail
    return details


def _nothing_left(details: dict[str, dict[str, Any]], read: Tables) -> None:
    for kind, left in details.items():
        for entry_id in left:
            sentence = say("The entry is of another kind in entries.csv.")
            raise read[KIND_TABLES[kind]].problem(sentence, {"entry_id": entry_id}, "entry_id")


def _refuse(table: ReadTable, row: Row, problems: list[Problem]) -> None:
    firm = [p for p in problems if not p.asks]
    if firm:
        raise table.problem(firm[0].sentence, row, firm[0].field)


def _one_logbook(table: ReadTable) -> None:
    if len(table.rows) != 1:
        sentence = say("There must be one row, there are {count}.", count=len(table.rows))
        raise PackageProblem(sentence, table.table.file)


def _unlike(table: ReadTable, column: str, fold: Callable[[str], str]) -> None:
    seen: set[str] = set()
    for row in table.rows:
        value = fold(row[column])
        if value in seen:
            raise table.problem(say("{value} is there twice.", value=row[column]), row, column)
        seen.add(value)


def _photo_fields(table: ReadTable) -> None:
    for row in table.rows:
        if len(row["sha256"]) != 64 or set(row["sha256"]) - set("0123456789abcdef"):
            raise table.problem(say("A SHA-256 has 64 digits of 0 to 9 and a to f."), row, "sha256")
        if not stays_inside(row["path"]):
            raise table.problem(say("The path leads out of the folder photos."), row, "path")
