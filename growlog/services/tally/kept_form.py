"""A tally as text and back. What does not hold exactly what a tally holds is refused as a whole."""

import json
import types
from dataclasses import fields, is_dataclass
from typing import Any, Union, get_args, get_origin, get_type_hints

from growlog.records.plain import from_plain, to_plain
from growlog.services.tally.tally import Tally

FORM, VERSION = "session-tally", 1


class UnreadableDraft(Exception):
    """A text that is no tally, or one of a later version of the program."""


def text_of(tally: Tally) -> str:
    """The tally as JSON with the name and the version of its form."""
    return json.dumps({"form": FORM, "version": VERSION, "tally": to_plain(tally)}, ensure_ascii=False, indent=1)


def tally_of(text: str) -> Tally:
    """The tally that text_of made this text of. Raises UnreadableDraft."""
    try:
        whole = json.loads(text)
        if (whole["form"], whole["version"]) != (FORM, VERSION):
            raise UnreadableDraft(f"form {whole['form']} version {whole['version']}")
        tally = from_plain(Tally, whole["tally"])
        if not _fits(Tally, tally) or not _holds(to_plain(tally), whole["tally"]):
            raise UnreadableDraft("not the values of a tally")
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise UnreadableDraft(str(error)) from error
    return tally


def _holds(made: Any, kept: Any) -> bool:
    """Whether all that was kept came back; what a later field adds is no loss."""
    if isinstance(kept, dict) and isinstance(made, dict):
        return all(key in made and _holds(made[key], value) for key, value in kept.items())
    if isinstance(kept, list) and isinstance(made, list):
        return len(kept) == len(made) and all(_holds(m, k) for m, k in zip(made, kept, strict=True))
    return bool(made == kept)


def _fits(hint: Any, value: Any) -> bool:
    """Whether a value, with all that it holds, is of the type that the record states."""
    if get_origin(hint) in (Union, types.UnionType):
        return any(_fits(one, value) for one in get_args(hint))
    if get_origin(hint) is tuple:
        return isinstance(value, tuple) and all(_fits(get_args(hint)[0], item) for item in value)
    if hint in (int, float, bool, str):
        return type(value) is hint
    if not isinstance(value, hint):
        return False
    if not is_dataclass(hint):
        return True
    hints = get_type_hints(hint)
    return all(_fits(hints[f.name], getattr(value, f.name)) for f in fields(hint))
