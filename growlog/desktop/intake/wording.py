"""What the intake tray says about a file, about all of them, and about what was done."""

from growlog.desktop.intake.tray_model import TrayCounts, TrayRow
from growlog.desktop.look.widgets.day_text import day_text, time_text
from growlog.records.crop import Crop
from growlog.records.photo import DateSource
from growlog.services.photo_intake import IntakeItem, Outcome
from growlog.words import mark, say, say_count

_SOURCES = {
    DateSource.EXIF_ORIGINAL: mark("camera's clock"),
    DateSource.EXIF_OTHER: mark("date kept in the picture"),
    DateSource.FILE_NAME: mark("date in the file name"),
    DateSource.FILE_TIME: mark("the file's own time"),
    DateSource.TYPED: mark("typed"),
    DateSource.UNKNOWN: mark("no date found"),
}

_FATES = {
    Outcome.NEW: mark("goes in"),
    Outcome.QUESTIONED: mark("goes in, look again"),
    Outcome.DUPLICATE: mark("already there"),
    Outcome.WAITING: mark("waits"),
    Outcome.REFUSED: mark("refused"),
}


def source_words(source: DateSource) -> str:
    """Where the day came from, and that one cannot rely on it where that is so."""
    words = say(_SOURCES[source])
    if source.sure or source is DateSource.UNKNOWN:
        return words
    return say("{source}, not sure", source=words)


def day_words(item: IntakeItem) -> str:
    """The day; what to do where there is none."""
    if item.picture is None:
        return ""
    return day_text(item.day) if item.day is not None else say("type the day")


def age_words(item: IntakeItem, crop: Crop | None) -> str:
    """The plant age on that day, as the board says it."""
    if crop is None or item.day is None:
        return ""
    return say("day {age}", age=str((item.day - crop.day_zero).days).replace("-", "\u2212"))


def day_and_source(item: IntakeItem, crop: Crop | None) -> str:
    """The quiet line below the day: plant age, time of day, where both came from."""
    if item.picture is None:
        return ""
    words = (age_words(item, crop), time_text(item.at), source_words(item.source))
    return ", ".join(word for word in words if word)


def fate_words(row: TrayRow) -> str:
    """What will happen to the file, in two or three words."""
    return say("left out") if row.left_out else say(_FATES[row.item.outcome])


def reason_words(row: TrayRow) -> str:
    """The sentence behind it, or nothing."""
    return "" if row.left_out else row.item.reason


def counts_line(counts: TrayCounts) -> str:
    """How many files go in, and what keeps the others."""
    parts = [
        say_count("{n} goes in", "{n} go in", counts.going_in),
        _part(counts.questioned, "{n} of them to look at again", "{n} of them to look at again"),
        _part(counts.already_there, "{n} already there", "{n} already there"),
        _part(counts.waiting, "{n} waits for a crop or a day", "{n} wait for a crop or a day"),
        _part(counts.left_out, "{n} left out", "{n} left out"),
        _part(counts.refused, "{n} refused", "{n} refused"),
    ]
    return ", ".join(part for part in parts if part)


def result_words(written: int, refused: int, stopped: bool) -> str:
    """What was done, after the grower confirmed."""
    done = say_count("{n} photo is in the logbook.", "{n} photos are in the logbook.", written)
    parts = [done if written else say("No photo went in.")]
    if stopped:
        parts.append(say("It was stopped; the others are still in the tray."))
    if refused:
        one, many = "{n} file was refused; see why below.", "{n} files were refused; see why below."
        parts.append(say_count(one, many, refused))
    return " ".join(parts)


def _part(n: int, one: str, many: str) -> str:
    return say_count(one, many, n) if n else ""
