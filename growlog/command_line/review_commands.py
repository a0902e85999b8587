"""The commands that share a crop: its review as a page or on paper, and its photos as a film."""

from pathlib import Path

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import progress, tell
from growlog.command_line.parameters import as_of_option, folder_argument, read_size, refuse_existing
from growlog.records.crop import Crop
from growlog.services.crops import crop_named
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.paper import Paper
from growlog.services.review.model import ReviewOptions
from growlog.services.share_review import write_review
from growlog.services.time_lapse import TimeLapseChoice, held_words, write_time_lapse
from growlog.words import say, say_count, show_number


@click.command("review", help=say("Write the review of a crop as a web page or a PDF, by the ending of FILE."))
@folder_argument
@click.option("--crop", "name", required=True, metavar="NAME", help=say("Which crop."))
@click.option("--to", "target", required=True, type=click.Path(path_type=Path), metavar="FILE.html|.pdf",
              help=say("The file to write."))  # fmt: skip
@click.option("--paper", type=click.Choice([p.value for p in Paper]), default="a4", help=say("Size of the paper."))
@click.option("--no-money", is_flag=True, help=say("Leave out costs and prices."))
@click.option("--no-notes", is_flag=True, help=say("Leave out notes and the reasons of decisions."))
@click.option(
    "--with-places", is_flag=True, help=say("Leave place and camera in the pictures. They are taken out else.")
)
@click.option("--photos", type=click.IntRange(9, 15), help=say("How many photos tell the story."))
@click.option("--replace", is_flag=True, help=say("Write over a file that is there."))
@as_of_option
@click.pass_obj
def review_command(
    call: Call,
    folder: Path,
    name: str,
    target: Path,
    paper: str,
    no_money: bool,
    no_notes: bool,
    with_places: bool,
    photos: int | None,
    replace: bool,
) -> int:
    """Writes the review."""
    refuse_existing(target, replace=replace)
    options = ReviewOptions(money=not no_money, notes=not no_notes, places=with_places, photo_count=photos)
    with opened(call, folder, read_only=True) as log, progress(say("Making pictures")) as show:
        crop = _crop(log, name)
        written = write_review(log, crop.id, target, options, Paper(paper), on_progress=show)
    if written is None:
        return 1
    tell(say("The review of {crop} is in {file}.", crop=crop.name, file=target))
    if written.missing:
        tell(say_count("{n} photo is missing or damaged; the review says so.",
                       "{n} photos are missing or damaged; the review says so.", written.missing))  # fmt: skip
    return 0


@click.command("time-lapse", help=say(
    "Write the photos of a crop as a film (MP4, H.264), a day after the other. On a day without a photo the last "
    "picture is held."))  # fmt: skip
@folder_argument
@click.option("--crop", "name", required=True, metavar="NAME", help=say("Which crop."))
@click.option("--to", "target", required=True, type=click.Path(path_type=Path), metavar="FILE.mp4",
              help=say("The file to write."))  # fmt: skip
@click.option("--from-day", type=int, help=say("First plant age; that of the first photo if not given."))
@click.option("--to-day", type=int, help=say("Last plant age; that of the last photo if not given."))
@click.option("--every", type=int, default=1, show_default=True, help=say("Show every so many days."))
@click.option("--size", callback=lambda c, p, v: None if v is None else read_size(c, p, v), metavar="WxH",
              help=say("Size in pixels, such as 960x1280; by the shape of the photos if not given."))  # fmt: skip
@click.option("--speed", type=float, default=6.0, show_default=True, help=say("Days a second."))
@click.option("--fade", type=float, default=0.4, show_default=True,
              help=say("Part of a day's time in which its picture fades in, 0 to 0.9."))  # fmt: skip
@click.option("--no-labels", is_flag=True, help=say("Without day and date."))
@click.option("--no-curve", is_flag=True, help=say("Without the yield along the lower edge."))
@click.option("--replace", is_flag=True, help=say("Write over a file that is there."))
@as_of_option
@click.pass_obj
def time_lapse_command(
    call: Call,
    folder: Path,
    name: str,
    target: Path,
    from_day: int | None,
    to_day: int | None,
    every: int,
    size: tuple[int, int] | None,
    speed: float,
    fade: float,
    no_labels: bool,
    no_curve: bool,
    replace: bool,
) -> int:
    """Writes the film."""
    refuse_existing(target, replace=replace)
    choice = TimeLapseChoice(from_day, to_day, every, size, speed, fade, not no_labels, not no_curve)
    with opened(call, folder, read_only=True) as log, progress(say("Making the film")) as show:
        crop = _crop(log, name)
        made = write_time_lapse(log, crop.id, target, choice, show)
    if made is None:
        return 1
    seconds = show_number(made.seconds, 1)
    tell(say("{crop}: {days} days in {seconds} s, in {file}.", crop=crop.name, days=made.days, seconds=seconds,
             file=target))  # fmt: skip
    if words := held_words(made):
        tell(f"{words}.")
    return 0


def _crop(log: OpenLogbook, name: str) -> Crop:
    found = crop_named(log, name)
    if found is None:
        raise LogbookProblem(say("There is no crop {name} in this logbook.", name=name))
    return found
