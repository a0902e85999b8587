"""A package's records spread into rows of plain values, and rows put together to records again."""

from collections.abc import Iterable, Mapping
from dataclasses import fields
from typing import Any

from growlog.records.climate_day import ClimateSample
from growlog.records.entry import KINDS, Detail, Entry, Owner, OwnerKind
from growlog.records.photo import CaptureTime, Photo
from growlog.sharing.package import Package
from growlog.sharing.table_descriptions import KIND_TABLES, RECORDS, SAMPLES, ListedTable, listed_in, tables

Row = dict[str, Any]

_CAPTURE_FIELDS = tuple(f.name for f in fields(CaptureTime))
# Rows stand in the order of time, then of names; the id decides between equals.
_ORDER = ("day", "from_day", "sown_on", "transplanted_on", "captured_day", "captured_at", "at",
          "name", "label", "edition", "id")  # fmt: skip


def rows_of(package: Package) -> dict[str, list[Row]]:
    """The rows of every table, in the order in which they are written."""
    rows: dict[str, list[Row]] = {name: [] for name in tables()}
    for name in RECORDS:
        records = [package.logbook] if name == "logbook" else getattr(package, name)
        for record in _sorted((_record_row(r), r) for r in records):
            rows[name].append(_record_row(record))
            _add_items(rows, name, record.id, record)
    for entry in _sorted((_entry_row(e), e) for e in package.entries):
        rows["entries"].append(_entry_row(entry))
        table = KIND_TABLES[entry.kind]
        rows[table].append({"entry_id": entry.id, **_own_fields(entry.detail)})
        _add_items(rows, table, entry.id, entry.detail)
    for file in _sorted((_record_row(f), f) for f in package.logger_files):
        samples = sorted(package.climate_samples.get(file.id, ()), key=lambda s: s.at_utc)
        rows[SAMPLES] += [{"file_id": file.id, **_own_fields(s)} for s in samples]
    return rows


def items_of(table: str, rows: Mapping[str, Iterable[Row]]) -> dict[str, dict[str, tuple[Any, ...]]]:
    """What rows of a table list: by the field's name, then by the owner's id, in the order of positions."""
    found: dict[str, dict[str, tuple[Any, ...]]] = {}
    for listed in listed_in(table):
        by_owner: dict[str, list[Any]] = {}
        for row in sorted(rows[listed.name], key=lambda r: int(r["position"])):
            by_owner.setdefault(row[listed.key], []).append(_item(listed, row))
        found[listed.field] = {key: tuple(items) for key, items in by_owner.items()}
    return found


def record_of_row(table: str, row: Row, items: dict[str, dict[str, tuple[Any, ...]]]) -> Any:
    """The record of a row and what it lists."""
    values = dict(row) | {field: by_owner.get(row["id"], ()) for field, by_owner in items.items()}
    if RECORDS[table] is Photo:
        values["captured"] = CaptureTime(**{name: values.pop(f"captured_{name}") for name in _CAPTURE_FIELDS})
    return RECORDS[table](**values)


def samples_of_rows(rows: Iterable[Row]) -> dict[str, tuple[ClimateSample, ...]]:
    """The samples of each logger file, by the file's id."""
    found: dict[str, list[ClimateSample]] = {}
    for row in rows:
        sample = ClimateSample(**{name: value for name, value in row.items() if name != "file_id"})
        found.setdefault(row["file_id"], []).append(sample)
    return {file_id: tuple(samples) for file_id, samples in found.items()}


def owner_of_row(row: Row) -> Owner | None:
    """Whose entry it is; None unless exactly one is named."""
    owners = [Owner(kind, row[f"{kind.value}_id"]) for kind in OwnerKind if row[f"{kind.value}_id"] is not None]
    return owners[0] if len(owners) == 1 else None


def entry_of_row(row: Row, owner: Owner, detail: Detail) -> Entry:
    """The entry of its row and its detail."""
    not_fields = {"kind", *(f"{kind.value}_id" for kind in OwnerKind)}
    return Entry(owner=owner, detail=detail, **{k: v for k, v in row.items() if k not in not_fields})


def detail_of_row(kind: str, row: Row, items: dict[str, dict[str, tuple[Any, ...]]]) -> Detail:
    """The detail of a row of its kind's table and what it lists."""
    lists = {field: by_owner.get(row["entry_id"], ()) for field, by_owner in items.items()}
    return KINDS[kind](**{k: v for k, v in row.items() if k != "entry_id"}, **lists)


def _record_row(record: Any) -> Row:
    row = _own_fields(record)
    if isinstance(record, Photo):
        captured = row.pop("captured")
        row |= {f"captured_{name}": getattr(captured, name) for name in _CAPTURE_FIELDS}
    return row


def _entry_row(entry: Entry) -> Row:
    row = _own_fields(entry) | {"kind": entry.kind}
    for kind in OwnerKind:
        row[f"{kind.value}_id"] = entry.owner.id if entry.owner.kind is kind else None
    return row


def _own_fields(record: Any) -> Row:
    return {f.name: getattr(record, f.name) for f in fields(record)}


def _add_items(rows: dict[str, list[Row]], table: str, owner_id: str, holder: Any) -> None:
    for listed in listed_in(table):
        for position, item in enumerate(getattr(holder, listed.field), start=1):
            own = {listed.column: item} if listed.column else _own_fields(item)
            rows[listed.name].append({listed.key: owner_id, "position": position, **own})


def _item(listed: ListedTable, row: Row) -> Any:
    if listed.column:
        return row[listed.column]
    return listed.item(**{f.name: row[f.name] for f in fields(listed.item)})


def _sorted(pairs: Iterable[tuple[Row, Any]]) -> list[Any]:
    return [record for _, record in sorted(pairs, key=lambda pair: _sort_key(pair[0]))]


def _sort_key(row: Row) -> tuple[tuple[bool, Any], ...]:
    values = [row[name] for name in _ORDER if name in row]
    return tuple((value is None, "" if value is None else value) for value in values)
