"""The command that draws a screen into a file."""

from pathlib import Path

import click

from growlog.command_line.openers import Call
from growlog.command_line.output import tell
from growlog.command_line.parameters import FOLDER_TO_BE, as_of_option, read_size
from growlog.services.requests import PictureRequest
from growlog.words import say


def _list_screens(context: click.Context, _parameter: click.Parameter, wanted: bool) -> None:
    if wanted:
        for name in context.ensure_object(Call).openers.screens():
            tell(name)
        context.exit(0)


@click.command("picture", help=say("Draw a screen of the logbook in FOLDER into a PNG file."))
@click.argument("folder", type=FOLDER_TO_BE)
@click.option("--screen", required=True, metavar="NAME", help=say("Which screen; --screens lists their names."))
@click.option("--crop", metavar="NAME", help=say("Which crop; the first if not given."))
@click.option("--day", type=int, metavar="N", help=say("Plant age in days; the last if not given."))
@click.option(
    "--size", callback=read_size, default="1440x900", show_default=True, help=say("Width and height in pixels.")
)
@click.option("--theme", type=click.Choice(["light", "dark"]), default="light", show_default=True)
@click.option(
    "--text", type=click.IntRange(50, 300), default=100, show_default=True, help=say("Size of text in per cent.")
)
@click.option("--to", "target", required=True, type=click.Path(path_type=Path, dir_okay=False), metavar="FILE.png")
@click.option(
    "--screens", is_flag=True, is_eager=True, expose_value=False, callback=_list_screens, help=say("List the screens.")
)
@as_of_option
@click.pass_obj
def picture_command(
    call: Call,
    folder: Path,
    screen: str,
    crop: str | None,
    day: int | None,
    size: tuple[int, int],
    theme: str,
    text: int,
    target: Path,
) -> int:
    """Hands the request to the window's side."""
    known = call.openers.screens()
    if screen not in known:
        raise click.UsageError(say("There is no screen {name}, only: {names}.", name=screen, names=", ".join(known)))
    request = PictureRequest(folder, screen, crop, day, size[0], size[1], theme, text, target)
    return call.openers.picture(request, call.as_of)
