"""The command that prints every computed figure of a crop."""

from pathlib import Path

import click

from growlog.calculations.explained_figure import Figure
from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import complain, tell, tell_json
from growlog.command_line.parameters import FOLDER_TO_BE, as_of_option
from growlog.command_line.work_out_command import shown
from growlog.records.crop import Crop
from growlog.services.crops import crop_named, crops_of
from growlog.services.facts.facts import fact_keys, facts_of
from growlog.services.figure_values import fact_values
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.words import say, show_day


@click.command("facts", help=say("Tell every computed figure of a crop, and with --json how each is worked out."))
@click.argument("folder", type=FOLDER_TO_BE, required=False)
@click.option("--crop", "name", default="", metavar="NAME", help=say("Which crop; the first in the list if not given."))
@click.option("--json", "as_json", is_flag=True, help=say("As JSON."))
@click.option("--keys", is_flag=True, help=say("List the keys of all figures; no folder is needed."))
@as_of_option
@click.pass_obj
def facts_command(call: Call, folder: Path | None, name: str, as_json: bool, keys: bool) -> int:
    """Prints the figures of one crop as of a day, or the keys of all."""
    if keys:
        _tell_keys(as_json)
        return 0
    if folder is None:
        raise click.UsageError(say("Say which logbook: its folder."))
    with opened(call, folder, read_only=True) as log:
        crop = _crop(log, name)
        figures = facts_of(log, crop.id, log.today())
    if as_json:
        tell_json({"figures": [fact_values(figure) for figure in figures]})
        return 0
    tell(say("{crop}, as of {day}", crop=crop.name, day=call.clock().today().isoformat()))
    for figure in figures:
        tell(_line(figure))
    return 0


def _tell_keys(as_json: bool) -> None:
    keys = fact_keys()
    if as_json:
        rows = [{"key": k.key, "family": f.key, "unit": k.unit, "meaning": say(k.meaning)} for f, k in keys]
        tell_json({"keys": rows})
        return
    for _, key in keys:
        unit = f" ({key.unit})" if key.unit else ""
        tell(f"{key.key}{unit}: {say(key.meaning)}")


def _crop(log: OpenLogbook, name: str) -> Crop:
    if name:
        crop = crop_named(log, name)
        if crop is None:
            raise LogbookProblem(say("There is no crop called {name} in this logbook.", name=name))
        return crop
    crops = crops_of(log)
    if not crops:
        today = show_day(log.today())
        raise LogbookProblem(say("There is no crop in this logbook that had begun by {day}.", day=today))
    if len(crops) > 1:
        first = crops[0].crop.name
        complain(say("There are several crops; these are the figures of {crop}. Say --crop for another.", crop=first))
    return crops[0].crop


def _line(figure: Figure) -> str:
    text = f"{figure.key}: {shown(figure.value, figure.unit)}"
    if figure.low is not None and figure.high is not None:
        text += say(" (between {low} and {high})", low=shown(figure.low, ""), high=shown(figure.high, ""))
    return text
