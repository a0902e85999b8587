"""The logbook as an open data set: written out whole, and read into a new logbook."""

import secrets
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from datetime import date
from pathlib import Path

from growlog.records.change import Change
from growlog.records.logbook import LogbookFacts
from growlog.records.problems import RecordRefused
from growlog.services.climate.days import remake_days
from growlog.services.open_logbook import Clock, LogbookProblem, OpenLogbook, new_id
from growlog.services.package_records import package_of
from growlog.services.photos_for_others import copied_without_places
from growlog.sharing.data_package import (
    Package,
    PackageProblem,
    Stopped,
    check_photo,
    copy_photo,
    read_as_of,
    read_package,
    write_package,
)
from growlog.storage.logbook_folder import LogbookFolder, make_logbook, open_logbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]

# What others point at comes first.
_IN_ORDER = ("rooms", "lamps", "tanks", "cultivars", "crops", "plants", "placements", "products", "waters", "mixes",
             "feed_targets", "photos", "photo_uses", "entries", "stock_moves", "routines", "due_answers", "feed_steps",
             "light_steps", "devices", "tariffs", "purchases", "decisions", "review_photos", "logger_files",
             "column_maps")  # fmt: skip


class ExchangeRefused(LogbookProblem):
    """A data package cannot be written or read; nothing of it was kept. str() is the sentence."""


def export_logbook(
    log: OpenLogbook,
    folder: Path,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
    *,
    complete: bool = False,
) -> Package | None:
    """Writes the logbook and its photos as a data package into a new or empty folder; None where cancelled.

    Photos go without places, their pixels as they are; complete keeps the originals byte for byte, places with them,
    and then the package, read in and written out complete again, has the same bytes. What was in the bin and the
    history stay behind. ExchangeRefused with a sentence if the folder is not empty, cannot be written, or an original
    photo is missing or damaged; nothing half-written stays.
    """
    with _told(folder):
        _must_be_free(folder)
        with log.unit() as unit:
            package = package_of(unit, log.today())
        half = _beside(folder)
        try:
            half.mkdir(parents=True)
            stop = cancelled or _never
            if complete:
                list(_copied(package, log.folder, half, on_progress, stop))
            else:
                package = _without_places(log, package, half, on_progress, stop)
            write_package(package, half)
            _put_in_place(half, folder)
        except Stopped:
            return None
        finally:
            shutil.rmtree(half, ignore_errors=True)
    return package


def import_package(
    folder: Path,
    into: OpenLogbook,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Change | None:
    """Reads a data package and its photos into a logbook that holds nothing yet; None where cancelled.

    ExchangeRefused with a sentence naming file, row and column where anything is wrong; then nothing was written.
    """
    with _told(into.folder):
        return _take_over(folder, into.disk, on_progress, cancelled or _never)


def new_logbook_of(
    package_folder: Path,
    folder: Path,
    clock: Clock,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> bool:
    """Makes a logbook of a data package in a new or empty folder, whole or not at all; False where cancelled.

    LogbookProblem with a sentence where the folder is not empty or anything of the package is wrong.
    """
    with _told(folder):
        _must_be_free(folder)
        half = _beside(folder)
        try:
            change = _build(package_folder, half, clock, on_progress, cancelled or _never)
            if change is not None:
                _put_in_place(half, folder)
        finally:
            shutil.rmtree(half, ignore_errors=True)
    return change is not None


def _build(
    package_folder: Path, half: Path, clock: Clock, on_progress: Progress | None, cancelled: Cancelled
) -> Change | None:
    make_logbook(half)
    disk = open_logbook(half, clock.now)
    try:
        return _take_over(package_folder, disk, on_progress, cancelled)
    finally:
        disk.close()


def sample_last_day(folder: Path) -> date:
    """The last day that the data package in a folder tells of; ExchangeRefused if it is none."""
    with _told(folder):
        return read_as_of(folder)


def _take_over(folder: Path, disk: LogbookFolder, on_progress: Progress | None, cancelled: Cancelled) -> Change | None:
    package = read_package(folder)
    with disk.unit() as unit:
        _must_be_empty(unit, disk.folder)
    copied: list[Path] = []
    try:
        for photo in package.photos:
            check_photo(folder, photo, cancelled)
        for path in _copied(package, folder, disk.folder, on_progress, cancelled):
            copied.append(path)
        return _write(package, disk)
    except BaseException as error:
        _take_away(copied)  # no row was kept, so the copies belong to nothing
        if isinstance(error, Stopped):
            return None
        raise


def _copied(
    package: Package, source: Path, target: Path, on_progress: Progress | None, cancelled: Cancelled
) -> Iterator[Path]:
    """Copies the photos, giving each new file as soon as it is there."""
    for number, photo in enumerate(package.photos, start=1):
        path = copy_photo(source, target, photo, cancelled)
        if path is not None:
            yield path
        if on_progress is not None:
            on_progress(number, len(package.photos))


def _without_places(
    log: OpenLogbook, package: Package, half: Path, on_progress: Progress | None, cancelled: Cancelled
) -> Package:
    """Writes the photos without places; the package then tells of the files as they are there."""
    written = []
    for number, photo in enumerate(copied_without_places(log, package.photos, half, cancelled), start=1):
        written.append(photo)
        if on_progress is not None:
            on_progress(number, len(package.photos))
    changed = sum(photo.changed for photo in written)
    return replace(package, photos=tuple(photo.photo for photo in written), photos_without_places=changed)


def _write(package: Package, disk: LogbookFolder) -> Change:
    group = new_id()
    with disk.unit() as unit:
        _must_be_empty(unit, disk.folder)
        _write_facts(unit, group, package.logbook)
        for name in _IN_ORDER:
            unit.add(group, *getattr(package, name))
        for file in package.logger_files:
            unit.climate_samples.insert(file.id, file.room_id, package.climate_samples.get(file.id, ()))
        _make_climate_days(unit, package)
        unit.commit()
    return Change(group, say("Read {name}", name=package.logbook.name), tuple(c.id for c in package.crops), None)


def _make_climate_days(unit: UnitOfWork, package: Package) -> None:
    """A package holds samples and not the days made of them."""
    try:
        remake_days(unit, *package.logger_files)
    except OverflowError as error:
        names = ", ".join(file.name for file in package.logger_files)
        raise ExchangeRefused(say("The times of {names} in logger_files.csv cannot be right.", names=names)) from error


def _write_facts(unit: UnitOfWork, group: str, facts: LogbookFacts) -> None:
    for old in unit.logbook.all():
        if old.id != facts.id:
            unit.remove(group, old)
    known = unit.logbook.find(facts.id)
    if known is None:
        unit.add(group, facts)
    else:
        unit.change(group, replace(facts, version=known.version))


def _must_be_empty(unit: UnitOfWork, folder: Path) -> None:
    if any(getattr(unit, name).all(removed=True) for name in _IN_ORDER):
        raise ExchangeRefused(say("{folder} holds records already. Read it into a new logbook.", folder=folder))


def _must_be_free(folder: Path) -> None:
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise ExchangeRefused(say("{folder} is not empty. Choose a new or an empty folder.", folder=folder))


def _put_in_place(half: Path, folder: Path) -> None:
    if folder.exists():  # empty, as was checked; not every system renames onto a folder
        folder.rmdir()
    half.replace(folder)


def _beside(folder: Path) -> Path:
    return folder.resolve().with_name(f".{folder.resolve().name}.{secrets.token_hex(4)}.part")


def _take_away(files: list[Path]) -> None:
    for file in files:
        with suppress(OSError):
            file.unlink()
            file.parent.rmdir()


def _never() -> bool:
    return False


@contextmanager
def _told(folder: Path) -> Iterator[None]:
    """What the disk or the files refuse, as the one kind of problem that callers know."""
    try:
        yield
    except PackageProblem as problem:
        raise ExchangeRefused(str(problem)) from problem
    except RecordRefused as refusal:
        raise ExchangeRefused(str(refusal)) from refusal
    except OSError as error:
        reason = error.strerror or str(error)
        raise ExchangeRefused(say("{folder} cannot be used: {reason}.", folder=folder, reason=reason)) from error
