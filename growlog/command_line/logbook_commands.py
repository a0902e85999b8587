"""Commands on a logbook as a whole: open it, make one, the sample season, its crops."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import Any

import click

from growlog.command_line.openers import Call
from growlog.command_line.output import tell, tell_json
from growlog.command_line.parameters import FOLDER_TO_BE, as_of_option, folder_argument, read_day
from growlog.services.crops import CropSummary, add_crop, crops_of, new_crop
from growlog.services.logbooks import clock_as_of, new_logbook, open_log
from growlog.services.open_logbook import LogbookNotWritable, LogbookProblem, NewerLogbook, NotALogbook, OpenLogbook
from growlog.services.sample import SAMPLE_NAME, build_sample, holds_logbook, sample_last_day
from growlog.words import say


@contextmanager
def opened(call: Call, folder: Path, *, read_only: bool = False) -> Iterator[OpenLogbook]:
    """An open logbook, closed at the end."""
    log = _open(call, folder, read_only)
    try:
        yield log
    finally:
        log.close()


@click.command("open", help=say("Open the logbook in FOLDER."))
@folder_argument
@click.option("--read-only", is_flag=True, help=say("Look at it only; another window may write to it."))
@as_of_option
@click.pass_obj
def open_command(call: Call, folder: Path, read_only: bool) -> int:
    """Opens the window, after a look at what is no logbook."""
    try:
        open_log(folder, call.clock(), call.openers.cache_folder(), read_only=True).close()
    except (NotALogbook, NewerLogbook):
        raise
    except LogbookProblem:
        pass  # an older one that has to be brought up to date: the window does that
    return call.openers.open_window(folder, call.as_of, read_only)


@click.command("demo", help=say("Open the sample season, an invented year in a box room."))
@click.option("--to", "target", type=FOLDER_TO_BE, metavar="FOLDER", help=say("Where to put it."))
@click.option("--no-open", is_flag=True, help=say("Only put it there."))
@as_of_option
@click.pass_obj
def demo_command(call: Call, target: Path | None, no_open: bool) -> int:
    """Builds the sample season unless it is there, says where, and opens it as of its last day."""
    source = call.openers.sample_folder()
    folder = target or call.openers.data_folder() / SAMPLE_NAME
    last_day = sample_last_day(source)
    if not holds_logbook(folder):
        build_sample(source, folder, clock_as_of(last_day))
    tell(say("The sample season is in {folder}.", folder=folder))
    return 0 if no_open else call.openers.open_window(folder, call.as_of or last_day, False)


@click.command("new", help=say("Make an empty logbook in FOLDER, a new or an empty one."))
@folder_argument
@click.option("--name", default="", help=say("Name of the logbook; the folder's if not given."))
@as_of_option
@click.pass_obj
def new_command(call: Call, folder: Path, name: str) -> int:
    """Makes a logbook."""
    new_logbook(folder, call.clock(), name or folder.resolve().name)
    tell(say("A new logbook is in {folder}.", folder=folder))
    return 0


@click.command("add-crop", help=say("Add a crop to the logbook in FOLDER."))
@folder_argument
@click.option("--name", required=True, help=say("Name of the crop, unlike all others."))
@click.option("--species", required=True, metavar="WORDS", help=say("What kind of plant it is, such as chilli."))
@click.option("--sown", required=True, callback=read_day, metavar="DATE", help=say("Day of sowing."))
@click.option("--packet-days", type=int, metavar="N", help=say("Days to maturity, as the packet has them."))
@as_of_option
@click.pass_obj
def add_crop_command(
    call: Call, folder: Path, name: str, species: str, sown: date, packet_days: int | None
) -> int:  # fmt: skip
    """Writes a crop with its cultivar."""
    with opened(call, folder) as log:
        crop, cultivar = new_crop(name, species, sown, packet_days=packet_days)
        add_crop(log, crop, cultivar)
    tell(say("Added {name}.", name=crop.name))
    return 0


@click.command("list", help=say("List the crops of the logbook in FOLDER."))
@folder_argument
@click.option("--json", "as_json", is_flag=True, help=say("As JSON."))
@as_of_option
@click.pass_obj
def list_command(call: Call, folder: Path, as_json: bool) -> int:
    """Prints the crops."""
    with opened(call, folder, read_only=True) as log:
        crops = [_crop_values(summary) for summary in crops_of(log)]
    if as_json:
        tell_json({"crops": crops})
    elif not crops:
        tell(say("There is no crop in this logbook yet."))
    for crop in crops if not as_json else []:
        tell(_crop_line(crop))
    return 0


def _open(call: Call, folder: Path, read_only: bool) -> OpenLogbook:
    cache = call.openers.cache_folder()
    try:
        return open_log(folder, call.clock(), cache, read_only=read_only)
    except LogbookNotWritable:
        if not read_only:
            raise
        return open_log(folder, call.clock(), cache)  # an older one is brought up to date first


def _crop_values(summary: CropSummary) -> dict[str, Any]:
    crop, total = summary.crop, summary.total
    return {
        "name": crop.name,
        "species": summary.cultivar.species,
        "sown": _day(crop.sown_on),
        "cleared": _day(crop.cleared_on),
        "age_days": summary.age_days,
        "photos": summary.photo_count,
        "entries": summary.entry_count,
        "fruit": total.fruit_count,
        "culled": total.culled_count,
        "weight_g": round(total.weight_g, 3),
        "estimated_g": round(total.estimated_g, 3),
        "first_flower_age": summary.first_flower_age,
        "first_pick_age": summary.first_pick_age,
    }


def _crop_line(crop: dict[str, Any]) -> str:
    return say(
        "{name} ({species}): day {age_days}, photos {photos}, entries {entries}, fruit {fruit}, {weight} g",
        **crop,
        weight=f"{crop['weight_g']:.0f}",
    )


def _day(day: date | None) -> str | None:
    return None if day is None else day.isoformat()
