"""Records to plain values (what JSON can hold) and back, by their type hints."""

import types
from dataclasses import fields, is_dataclass
from datetime import date, datetime, time
from enum import StrEnum
from functools import cache
from typing import Any, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from growlog.records.entry import KINDS
from growlog.records.entry.base import Detail

R = TypeVar("R")
_PLAIN_ALREADY = frozenset((str, int, float, bool, type(None)))


def to_plain(value: Any) -> Any:
    """A record or one of its values as dicts, lists, text, numbers, booleans and None."""
    if isinstance(value, Detail):
        return {"kind": value.kind, **_plain_fields(value)}
    if is_dataclass(value) and not isinstance(value, type):
        return _plain_fields(value)
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, (datetime, date, time)):
        return value.isoformat()
    if isinstance(value, tuple):
        return [to_plain(v) for v in value]
    return value


def from_plain(record_type: type[R], plain: dict[str, Any]) -> R:
    """The record that to_plain made these values of; fields that are not there get their default."""
    hints = _hints(cast(Any, record_type))
    return record_type(**{name: _from(hints[name], v) for name, v in plain.items() if name in hints})


def _plain_fields(value: Any) -> dict[str, Any]:
    # Most values are plain already, and a change of very many records asks a million times.
    own = {f.name: getattr(value, f.name) for f in fields(value)}
    return {name: v if type(v) in _PLAIN_ALREADY else to_plain(v) for name, v in own.items()}


@cache
def _hints(record_type: Any) -> dict[str, Any]:
    names = {f.name for f in fields(record_type)}
    return {name: hint for name, hint in get_type_hints(record_type).items() if name in names}


def _from(hint: Any, value: Any) -> Any:
    if value is None:
        return None
    if get_origin(hint) in (Union, types.UnionType):
        hint = next(a for a in get_args(hint) if a is not type(None))
    if get_origin(hint) is tuple:
        return tuple(_from(get_args(hint)[0], v) for v in value)
    return _from_single(hint, value)


def _from_single(hint: Any, value: Any) -> Any:
    if hint is Detail:
        return from_plain(KINDS[value["kind"]], value)
    if isinstance(hint, type) and is_dataclass(hint):
        return from_plain(cast(type[Any], hint), value)
    if hint in (datetime, date, time):
        return hint.fromisoformat(value)
    if hint is float:
        return float(value)
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return hint(value)
    return value
