"""The commands for the open data set: write it, read it."""

from pathlib import Path

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import progress, tell
from growlog.command_line.parameters import FOLDER_TO_BE, as_of_option, folder_argument
from growlog.services.exchange import export_logbook, import_package, new_logbook_of
from growlog.services.sample import holds_logbook
from growlog.words import say, say_count


@click.command("export", help=say("Write the logbook in FOLDER as an open data set, its photos with it."))
@folder_argument
@click.option("--to", "target", required=True, type=FOLDER_TO_BE, metavar="DIR", help=say("A new or an empty folder."))
@click.option("--complete", is_flag=True,
              help=say("Keep the photos byte for byte, places with them; import and the same export give the same "
                       "bytes."))  # fmt: skip
@as_of_option
@click.pass_obj
def export_command(call: Call, folder: Path, target: Path, complete: bool) -> int:
    """Writes the data package."""
    with opened(call, folder, read_only=True) as log, progress(say("Copying photos")) as show:
        package = export_logbook(log, target, show, complete=complete)
    entries = 0 if package is None else len(package.entries)
    tell(say_count("{n} entry written to {folder}.", "{n} entries written to {folder}.", entries, folder=target))
    if package is not None and package.photos:
        tell(_about_photos(package.photos_without_places, complete))
    return 0


def _about_photos(changed: int, complete: bool) -> str:
    if complete:
        return say("The photos are the originals, byte for byte: places and cameras are still in them.")
    if not changed:
        return say("No photo told a place; the photos are the originals.")
    return say_count(
        "Places and camera notes were taken out of {n} photo; its pixels are as they were.",
        "Places and camera notes were taken out of {n} photos; their pixels are as they were.",
        changed,
    )


@click.command("import", help=say("Read an open data set into a new logbook."))
@click.argument("source", metavar="DIR", type=click.Path(path_type=Path))
@click.option(
    "--to", "target", required=True, type=FOLDER_TO_BE, metavar="FOLDER", help=say("A new folder, or an empty logbook.")
)
@as_of_option
@click.pass_obj
def import_command(call: Call, source: Path, target: Path) -> int:
    """Reads a data package."""
    with progress(say("Copying photos")) as show:
        if holds_logbook(target):
            with opened(call, target) as log:
                import_package(source, log, show)
        else:
            new_logbook_of(source, target, call.clock(), show)
    tell(say("The data set was read into {folder}.", folder=target))
    return 0
