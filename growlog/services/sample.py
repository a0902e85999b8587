"""The sample season: a logbook of its own, made from the data package that comes with the program."""

from pathlib import Path

from growlog.services.exchange import new_logbook_of, sample_last_day
from growlog.services.open_logbook import Clock
from growlog.storage.logbook_folder import DATABASE

__all__ = ["SAMPLE_NAME", "build_sample", "holds_logbook", "sample_last_day"]

SAMPLE_NAME = "sample-season"  # its folder among the user's logbooks


def build_sample(source_folder: Path, target_folder: Path, clock: Clock) -> None:
    """Makes a logbook of the sample season in a new or empty folder, whole or not at all.

    LogbookProblem with a sentence where that cannot be.
    """
    new_logbook_of(source_folder, target_folder, clock)


def holds_logbook(folder: Path) -> bool:
    """Whether a folder holds a logbook's database already; whether it is sound is seen on opening."""
    return (folder / DATABASE).is_file()
