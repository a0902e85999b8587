"""Invented tables for pictures of the dialog: one that reads through, one with what goes wrong."""

from datetime import date, timedelta
from pathlib import Path

_HEADING = "Date;EC in;pH;Room °F;RH;Picked;Hanging;Note"


def written_example(folder: Path, day_zero: date, troubled: bool) -> Path:
    """A table of the days from plant age 58 on, written into a folder."""
    rows = [_row(day_zero + timedelta(58 + 2 * n), n) for n in range(24)]
    if troubled:
        rows[3] += ";one field too many"
        rows[5] = rows[5].replace("6,", "about 6,", 1)
        rows[8] = "soon;1,8;6,0;75;62;2 @ 65g;5;"
        rows[11] = _row(day_zero + timedelta(58 + 22 - 365), 11)
        rows[14] = rows[14].replace("1,9", "19,5")
    path = folder / ("notes-with-trouble.csv" if troubled else "notes.csv")
    path.write_text("\n".join([_HEADING, *rows]), encoding="cp1252")
    return path


def _row(day: date, n: int) -> str:
    picked = ("2 @ 65g", "", "3x70 g", "86+93+78")[n % 4]
    note = "first male flowers seen" if n == 2 else ""
    date_text, air = f"{day.day}.{day.month}.{day.year}", f"{74 + n % 4};{60 + n % 7}"
    return f"{date_text};1,{7 + n % 3};6,{n % 3};{air};{picked};{4 + n % 6};{note}"
