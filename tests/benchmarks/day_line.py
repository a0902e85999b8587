"""One step of the day line through the real window, against reading and painting one small preview."""

from pathlib import Path
from time import perf_counter

from PySide6.QtCore import QByteArray
from PySide6.QtGui import QImage, QPainter, QPixmap
from PySide6.QtWidgets import QApplication

from growlog.desktop.look.theme import apply_theme
from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from growlog.services.logbooks import clock_as_of, open_log
from growlog.services.sample import sample_last_day


def step_seconds(window: MainWindow, ages: list[int]) -> float:
    """Moves the line to each age and paints what changed."""
    assert window.desk is not None
    start = perf_counter()
    for age in ages:
        window.desk.choose_age(age)
        QApplication.sendPostedEvents()  # layout and painting of what changed
    return (perf_counter() - start) / len(ages)


def preview_seconds(files: list[Path]) -> float:
    """Reads, decodes and paints small previews."""
    target = QPixmap(340, 420)
    start = perf_counter()
    for file in files:
        image = QImage.fromData(QByteArray(file.read_bytes()))
        painter = QPainter(target)
        painter.drawImage(target.rect(), image)
        painter.end()
    return (perf_counter() - start) / len(files)


def ratio(logbook: Path, cache: Path, sample: Path, rounds: int) -> float:
    """The best of each over the days of the first cleared crop."""
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    apply_theme(app, "light", 100)
    window = MainWindow(Settings(cache / "benchmark.ini"))
    window.resize(1440, 900)
    window.show_logbook(open_log(logbook, clock_as_of(sample_last_day(sample)), cache))
    assert window.desk is not None
    window.desk.selection.choose_crop(next(c.crop.id for c in window.desk.crops if not c.crop.growing))
    window.show()
    assert window.desk.days is not None
    log = window.desk.log
    from growlog.photos.previews import PreviewSize

    files = [log.previews.path_of(p.photo.sha256, PreviewSize.SMALL) for p in window.desk.days.photos]
    ages = list(window.desk.days.photo_ages)
    step_seconds(window, ages)
    pairs = [(step_seconds(window, ages), preview_seconds(files)) for _ in range(rounds)]
    window.close()
    return min(p[0] for p in pairs) / min(p[1] for p in pairs)
