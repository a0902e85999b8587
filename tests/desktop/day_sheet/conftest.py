"""A day of an invented crop, with pictures that come from memory and can be lost."""

from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime, time

import pytest
from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QColor, QImage

from growlog.desktop.background import TaskRunner
from growlog.desktop.pictures import Pictures
from growlog.records.crop import Crop
from growlog.records.entry import Detail, Entry, Feed, Owner, OwnerKind, Pick, Reading
from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
from growlog.services.day_sheet import DayEntry, DaySheet
from growlog.services.photo_uses import DayPhoto

SOWN = date(2025, 11, 15)
DAY = date(2026, 1, 18)
AGE = 64
CROP = Crop("crop-1", "Boxroom Gold", "cultivar-1", sown_on=SOWN)


def jpeg(colour: str, width_px: int = 30, height_px: int = 40) -> bytes:
    image = QImage(width_px, height_px, QImage.Format.Format_RGB32)
    image.fill(QColor(colour))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "JPEG", 95)
    return bytes(buffer.data().data())


SMALL = {"red": jpeg("#C02020"), "green": jpeg("#20A020")}
SHARP = {"red": jpeg("#C02020", 300, 400), "green": jpeg("#20A020", 300, 400)}


@pytest.fixture
def pictures(qapp: object) -> Iterator[Pictures]:
    """Pictures by the name of their colour; every other name is lost."""
    runner = TaskRunner()
    yield Pictures(runner, SMALL.get, lambda photo: SHARP.get(photo.sha256))
    assert runner.close()


def day_photo(sha256: str, day: date = DAY, leads: bool = True) -> DayPhoto:
    captured = CaptureTime(day, None, DateSource.TYPED)
    added = datetime(2026, 1, 19, tzinfo=UTC)
    photo = Photo(sha256, sha256, f"photos/{sha256}.jpg", 1, 300, 400, "image/jpeg", "leaf.jpg", captured, added)
    return DayPhoto(PhotoUse(f"use-{sha256}", sha256, CROP.id, day, leads=leads), photo)


def day_entry(detail: Detail, more: str = "", belongs: str = "", warning: str = "", at: time | None = None) -> DayEntry:
    entry = Entry(f"entry-{detail.kind}", Owner(OwnerKind.CROP, CROP.id), DAY, detail, at)
    return DayEntry(entry, detail.summary(), more, belongs, warning)


ENTRIES = (
    day_entry(Feed(volume_l=2.8), "EC 1.88\u2009mS/cm", at=time(8, 20)),
    day_entry(Pick(1, 86.0), warning="Inside the harvest interval of soap.", at=time(18, 20)),
    day_entry(Reading(24.6, 58), "VPD 1.30\u2009kPa of the air", "Box room"),
)


@pytest.fixture
def make_sheet() -> Callable[..., DaySheet]:
    def make(
        photos: tuple[DayPhoto, ...] = (day_photo("red"), day_photo("green", leads=False)),
        entries: tuple[DayEntry, ...] = ENTRIES,
        ages: tuple[int, ...] = (57, 64),
    ) -> DaySheet:
        return DaySheet(CROP, DAY, AGE, photos, entries, ages)

    return make
