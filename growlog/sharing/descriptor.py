"""The package's datapackage.json: a Frictionless tabular data package with a Table Schema for each table."""

import json
from datetime import date
from pathlib import Path
from typing import Any

from growlog.sharing.cells import Column
from growlog.sharing.package import Package
from growlog.sharing.problems import PackageProblem
from growlog.sharing.table_descriptions import Table, tables
from growlog.words import say

DESCRIPTOR = "datapackage.json"
FORMAT_VERSION = 2  # the next one when a reader of today would misread what is written

_DESCRIPTION = (
    "A logbook of crops grown under lamps: one CSV file per table, and the original photos below photos/."
    " Columns carry their unit in their name. Days and times are those of the grower's wall calendar and clock;"
    " moments are UTC. A text that a spreadsheet would take for a formula is guarded: a text that begins with"
    " =, +, -, @, a tab or a carriage return, or with one or more apostrophes followed by one of these, is written"
    " with one more apostrophe before it. Take the first apostrophe away from a text that begins with one or more"
    " apostrophes followed by one of these. Numbers are never guarded. What was in the bin, and the history of"
    " changes, are not part of it."
)
_DIALECT = {
    "delimiter": ",",
    "lineTerminator": "\r\n",
    "quoteChar": '"',
    "doubleQuote": True,
    "skipInitialSpace": False,
    "header": True,
    "caseSensitiveHeader": True,
}


def descriptor_text(package: Package) -> str:
    """The file's text. Its date of creation is the last day that the package tells of, not the computer's clock."""
    descriptor = {
        "profile": "tabular-data-package",
        "name": "growing-room-logbook",
        "title": package.logbook.name,
        "description": _DESCRIPTION + _about_photos(package),
        "created": f"{package.as_of.isoformat()}T00:00:00Z",
        "format_version": FORMAT_VERSION,
        "as_of": package.as_of.isoformat(),
        "resources": [_resource(table) for table in tables().values()],
    }
    return json.dumps(descriptor, indent=2, ensure_ascii=False) + "\n"


def _about_photos(package: Package) -> str:
    if not package.photos_without_places:
        return ""
    return (
        f" Of the photos {package.photos_without_places} are not the originals byte for byte: places, owners and notes"
        " of the camera were taken out of the files. Their pixels, dates and the way up are as they were."
    )


def read_as_of(folder: Path) -> date:
    """The last day that the package in a folder tells of; PackageProblem if it is none of ours."""
    descriptor = _read(folder)
    version = descriptor.get("format_version")
    if not isinstance(version, int) or version < 1:
        raise PackageProblem(say("This is not a logbook's data package."), DESCRIPTOR)
    if version > FORMAT_VERSION:
        raise PackageProblem(say("A newer version of this program wrote it. Read it with that version."), DESCRIPTOR)
    try:
        return date.fromisoformat(str(descriptor.get("as_of")))
    except ValueError as error:
        raise PackageProblem(say("as_of must be a day such as 2026-01-18."), DESCRIPTOR) from error


def _read(folder: Path) -> dict[str, Any]:
    try:
        found = json.loads((folder / DESCRIPTOR).read_text(encoding="utf-8-sig"))
    except FileNotFoundError as error:
        sentence = say("The file is missing in {folder}. Choose the folder that holds it.", folder=folder)
        raise PackageProblem(sentence, DESCRIPTOR) from error
    except OSError as error:
        reason = error.strerror or str(error)
        raise PackageProblem(say("The file cannot be read: {reason}.", reason=reason), DESCRIPTOR) from error
    except (ValueError, RecursionError) as error:
        raise PackageProblem(say("The file is not JSON text."), DESCRIPTOR) from error
    if not isinstance(found, dict):
        raise PackageProblem(say("This is not a logbook's data package."), DESCRIPTOR)
    return found


def _resource(table: Table) -> dict[str, Any]:
    return {
        "name": table.name,
        "path": table.file,
        "profile": "tabular-data-resource",
        "description": table.description,
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "dialect": _DIALECT,
        "schema": _schema(table),
    }


def _schema(table: Table) -> dict[str, Any]:
    schema: dict[str, Any] = {
        "fields": [_field(column) for column in table.columns],
        "missingValues": [""],
        "primaryKey": list(table.key) if len(table.key) > 1 else table.key[0],
    }
    keys = [
        {"fields": c.name, "reference": {"resource": c.points_to, "fields": "id"}}
        for c in table.columns
        if c.points_to
    ]  # fmt: skip
    return schema | ({"foreignKeys": keys} if keys else {})


def _field(column: Column) -> dict[str, Any]:
    field: dict[str, Any] = {"name": column.name, "type": column.sort.value, "description": column.description}
    constraints = _constraints(column)
    return field | ({"constraints": constraints} if constraints else {})


def _constraints(column: Column) -> dict[str, Any]:
    found: dict[str, Any] = {"required": True} if column.required else {}
    if column.choices:
        found["enum"] = list(column.choices)
    for key, value in (("minimum", column.lowest), ("maximum", column.highest)):
        if value is not None:
            found[key] = int(value) if value == int(value) else value
    return found
