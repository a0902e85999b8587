"""The room sheet: a week on paper, to be filled in with a pencil in the room and typed up at the desk."""

from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from growlog import words
from growlog.records.cultivar import FloweringHabit
from growlog.services.crops import CropSummary, crops_of
from growlog.services.open_logbook import OpenLogbook
from growlog.services.paper import Paper as Paper
from growlog.services.rooms import rooms_of
from growlog.sharing.typeset import page_pictures, set_pages
from growlog.sharing.whole_file import write_whole
from growlog.words import say, show_day

CROPS_PER_PAGE = 2  # three leave columns that no pencil fits into
DAYS = 7


@dataclass(frozen=True)
class RoomSheet:
    """What was written, for the sentence that says so."""

    path: Path
    first_day: date
    page_count: int


def week_of(day: date) -> date:
    """The Monday of a day's week (ISO 8601 weeks begin on Monday)."""
    return day - timedelta(days=day.weekday())


def write_room_sheet(log: OpenLogbook, path: Path, first_day: date, paper: Paper = Paper.A4) -> RoomSheet:
    """Writes the sheet of the seven days from first_day as a PDF; OSError where the disk does not take it.

    A crop stands on it that is growing in those days; without any there is one empty block to be named by hand.
    """
    pages = _pages(log, first_day)
    write_whole(path, set_pages("room_sheet", _facts(log, pages, first_day, paper)))
    return RoomSheet(path, first_day, len(pages))


def room_sheet_pictures(
    log: OpenLogbook, first_day: date, paper: Paper = Paper.A4, dots_per_inch: float = 200
) -> list[bytes]:  # fmt: skip
    """The same pages as PNG files of whole sheets, for the printer."""
    return page_pictures("room_sheet", _facts(log, _pages(log, first_day), first_day, paper), {}, dots_per_inch)


def _pages(log: OpenLogbook, first_day: date) -> list[list[CropSummary]]:
    last_day = first_day + timedelta(days=DAYS - 1)
    crops = [c for c in crops_of(log) if _stands(c, first_day, last_day)]
    return [crops[i : i + CROPS_PER_PAGE] for i in range(0, len(crops), CROPS_PER_PAGE)] or [[]]


def _facts(log: OpenLogbook, pages: list[list[CropSummary]], first_day: date, paper: Paper) -> dict[str, Any]:
    days = [first_day + timedelta(days=n) for n in range(DAYS)]
    return {
        "paper": paper.typeset_name,
        "language": words.locale_name().split("_")[0],
        "title": say("Room sheet"),
        "week": say("{first} to {last}", first=show_day(days[0]), last=show_day(days[-1])),
        "room": ", ".join(r.room.name for r in rooms_of(log)),
        "room_columns": [say("Air °F") if words.units() == "us" else say("Air °C"), say("RH %"), say("Minutes")],
        "days": [{"name": words.show_weekday(day), "date": words.show_day_of_year(day)} for day in days],
        "pages": [_page(crops, number, len(pages), first_day) for number, crops in enumerate(pages, 1)],
        "notes": say("Notes: problems, training, what to do next"),
        "caution": say("Keep water off plugs and lamps. Labels of nutrients and treatments rule."),
    }


def _page(crops: list[CropSummary], number: int, page_count: int, first_day: date) -> dict[str, Any]:
    shown = [_crop(c, first_day) for c in crops] or [_unnamed()]
    return {"number": say("page {n} of {all}", n=number, all=page_count), "crops": shown}


def _crop(summary: CropSummary, first_day: date) -> dict[str, Any]:
    age = (first_day - summary.crop.day_zero).days
    about = say("{species}, from day {age}", species=summary.cultivar.species, age=max(0, age))
    return {"name": summary.crop.name, "about": about, "columns": _columns(summary.cultivar.habit)}


def _unnamed() -> dict[str, Any]:
    return {"name": say("Crop:"), "about": "", "columns": _columns(FloweringHabit.SEPARATE)}


def _columns(habit: FloweringHabit) -> list[str]:
    volume, fruit = (say("Feed gal"), say("Picks, oz each")) if words.units() == "us" else _metric()
    flowers = say("Trusses shaken") if habit is FloweringHabit.PERFECT else say("Flowers pollinated")
    return [volume, say("EC"), say("pH"), flowers, fruit]


def _metric() -> tuple[str, str]:
    return say("Feed L"), say("Picks, g each")


def _stands(summary: CropSummary, first_day: date, last_day: date) -> bool:
    crop = summary.crop
    return crop.day_zero <= last_day and (crop.cleared_on is None or crop.cleared_on >= first_day)
