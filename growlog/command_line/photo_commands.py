"""The command that takes photos in."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import progress, tell, tell_json
from growlog.command_line.parameters import as_of_option, folder_argument
from growlog.services.crops import crop_named
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_intake import IntakeItem, Outcome, judge, look_at, take_in
from growlog.words import say, say_count

_LEFT_OUT = "left-out"
_WORDS = {
    Outcome.NEW: "added",
    Outcome.QUESTIONED: "questioned",
    Outcome.DUPLICATE: "duplicate",
    Outcome.WAITING: "waiting",
    Outcome.REFUSED: "refused",
}


@dataclass(frozen=True)
class Taken:
    """A file and what happened to it."""

    item: IntakeItem
    outcome: str

    @property
    def went_in(self) -> bool:
        """Whether it is in the logbook now or was before."""
        return self.outcome in ("added", "questioned", "duplicate")


@click.command("add-photos", help=say("Add photos, or folders of them, to a crop of the logbook in FOLDER."))
@folder_argument
@click.option("--crop", "crop_name", required=True, metavar="NAME", help=say("The crop that they show."))
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path, readable=False))
@click.option("--json", "as_json", is_flag=True, help=say("Tell of each file as JSON."))
@click.option("--strict", is_flag=True, help=say("Leave out photos whose day is doubtful."))
@as_of_option
@click.pass_obj
def add_photos_command(
    call: Call, folder: Path, crop_name: str, files: tuple[Path, ...], as_json: bool, strict: bool
) -> int:
    """Takes photos in and tells what happened to each."""
    with opened(call, folder) as log:
        crop = crop_named(log, crop_name)
        if crop is None:
            raise click.UsageError(say("There is no crop {name} in {folder}.", name=crop_name, folder=folder))
        with progress(say("Reading photos"), quiet=as_json) as show:
            items = judge(log, list(look_at(log, files, crop.id, show)))
        taken = _take(log, items, strict, as_json)
    if as_json:
        tell_json({"files": [_as_values(t) for t in taken]})
    else:
        _tell_all(taken)
    return 0 if all(t.went_in for t in taken) else 1


def _take(log: OpenLogbook, items: list[IntakeItem], strict: bool, quiet: bool) -> list[Taken]:
    left = {i for i, item in enumerate(items) if strict and item.outcome is Outcome.QUESTIONED}
    with progress(say("Copying photos"), quiet=quiet) as show:
        done, _change = take_in(log, [item for i, item in enumerate(items) if i not in left], show)
    rest = iter(done)
    return [
        Taken(item, _LEFT_OUT) if i in left else _taken(next(rest)) for i, item in enumerate(items)
    ]  # fmt: skip


def _taken(item: IntakeItem) -> Taken:
    return Taken(item, _WORDS[item.outcome])


def _as_values(taken: Taken) -> dict[str, Any]:
    item = taken.item
    return {
        "file": str(item.path),
        "day": None if item.day is None else item.day.isoformat(),
        "date_source": item.source.value,
        "outcome": taken.outcome,
        "reason": item.reason,
    }


def _tell_all(taken: list[Taken]) -> None:
    for one in taken:
        if one.item.reason:
            tell(f"{one.item.path}: {one.item.reason}")
    counts = {outcome: sum(t.outcome == outcome for t in taken) for outcome in (*_WORDS.values(), _LEFT_OUT)}
    added = counts["added"] + counts["questioned"]
    parts = [say_count("{n} photo added", "{n} photos added", added)]
    if counts["duplicate"]:
        parts.append(say_count("{n} was there already", "{n} were there already", counts["duplicate"]))
    out = counts["refused"] + counts["waiting"] + counts[_LEFT_OUT]
    if out:
        parts.append(say_count("{n} left out", "{n} left out", out))
    tell(", ".join(parts))
