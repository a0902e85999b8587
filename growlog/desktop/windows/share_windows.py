"""Writes the review for others, prints it, and exports the logbook; the time-lapse has its own opener."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.printing import Printing, SystemPrinting
from growlog.desktop.review.export_dialog import ExportDialog
from growlog.desktop.review.share_dialog import HTML, ShareDialog
from growlog.desktop.review.wording import file_stem
from growlog.desktop.settings import Settings
from growlog.desktop.windows.file_ending import write_with_ending
from growlog.desktop.windows.page_printer import PagePrinter
from growlog.desktop.windows.placing import open_beside
from growlog.desktop.windows.review_windows import ReviewWindows
from growlog.desktop.windows.shared_work import SharedWork
from growlog.desktop.windows.time_lapse_windows import TimeLapseWindows
from growlog.services.exchange import export_logbook
from growlog.services.paper import Paper
from growlog.services.review.model import ReviewOptions
from growlog.services.share_review import SharedReview, review_page_pictures, write_review
from growlog.words import say, say_count


class ShareWindows(QObject):
    """One dialog of each kind; what it waits for is done in the background."""

    def __init__(
        self, desk: Desk, window: QWidget, settings: Settings, files: FileChoice, messages: Messages,
        printing: Printing | None = None,
    ) -> None:  # fmt: skip
        super().__init__(window)
        self._desk, self._window, self._settings = desk, window, settings
        self._files, self._messages = files, messages
        self._crop_id = ""
        self._written = Path()
        self.sharing = SharedWork(desk.runner, self)
        self.exporting = SharedWork(desk.runner, self)
        self.printer = PagePrinter(desk.runner, messages, printing or SystemPrinting(window), self)
        self.time_lapse = TimeLapseWindows(desk, window, files, messages)
        self.share: ShareDialog | None = None
        self.export: ExportDialog | None = None

    def follow(self, reviews: ReviewWindows) -> None:
        """Does what the review's buttons ask for."""
        reviews.share_wanted.connect(self.open_share)
        reviews.print_wanted.connect(self.print_review)
        reviews.time_lapse_wanted.connect(self.open_time_lapse)

    def open_share(self, crop_id: str = "") -> None:
        """Asks how the review of a crop, the chosen one if none is named, is written."""
        self._crop_id = crop_id or self._desk.selection.crop_id or ""
        if self._is_open(self.share):
            self._close(self.share)
        self.share = ShareDialog(self._crop_name(), self._settings.text("paper"), self._window)
        self.share.wanted.connect(self._save_review)
        self.share.stopped.connect(self.sharing.stop)
        self.share.finished.connect(self.sharing.stop)
        open_beside(self.share, self._window)

    def open_time_lapse(self, crop_id: str = "") -> None:
        """Asks what the time-lapse of a crop, the chosen one if none is named, shows."""
        self.time_lapse.open(crop_id)

    def open_export(self) -> None:
        """Asks how the logbook is exported."""
        if self._is_open(self.export):
            self._close(self.export)
        self.export = ExportDialog(self._window)
        self.export.wanted.connect(self._save_export)
        self.export.stopped.connect(self.exporting.stop)
        self.export.finished.connect(self.exporting.stop)
        open_beside(self.export, self._window)

    def print_review(self, crop_id: str = "") -> None:
        """Prints the review of a crop, of the chosen one if none is named."""
        self._crop_id = crop_id or self._desk.selection.crop_id or ""
        title = say("{crop}, crop review", crop=self._crop_name())
        paper = Paper(self._settings.text("paper") or Paper.A4)
        self.printer.print_pages(title, paper, partial(_pages, self._desk.log, self._crop_id))

    def put_away(self) -> None:
        """Stops what is being written; nothing half-written stays."""
        for work in (self.sharing, self.exporting, self.time_lapse.work):
            work.stop()

    @staticmethod
    def _is_open(dialog: QWidget | None) -> bool:
        return dialog is not None and isValid(dialog) and dialog.isVisible()

    @staticmethod
    def _close(dialog: QWidget | None) -> None:
        if dialog is not None:
            dialog.close()

    def _crop_name(self) -> str:
        return next((c.crop.name for c in self._desk.crops if c.crop.id == self._crop_id), "")

    def _save_review(self, form: str, options: ReviewOptions, paper: Paper) -> None:
        self._settings.set("paper", paper.value)
        kind = f"{say('Web page')} (*.html)" if form == HTML else f"{say('PDF')} (*.pdf)"
        path = self._files.file_to_save(say("Save the review"), f"{file_stem(self._crop_name())}.{form}", [kind])
        if path is not None:
            write_with_ending(path, f".{form}", self._messages, partial(self._write_review, options, paper))

    def _write_review(self, options: ReviewOptions, paper: Paper, path: Path) -> None:
        if self.share is not None:
            work = (write_review, self._desk.log, self._crop_id, path, options, paper)
            self.sharing.run(self.share, *work, on_done=self._say_written)

    def _say_written(self, written: SharedReview) -> None:
        self._written = written.path
        if self.share is not None:
            self.share.accept()
        said = say("The review is in {file}.", file=written.path.name)
        if written.missing:
            missing = say_count(
                "The file of {n} photo is missing; a line says so.",
                "The files of {n} photos are missing; a line says so.",
                written.missing,
            )
            said = f"{said} {missing}"
        self._messages.inform(said, say("Show it"), self._show)

    def _save_export(self, complete: bool) -> None:
        folder = self._files.folder(say("Choose a new or an empty folder for the export"))
        if folder is not None and self.export is not None:
            self._written = folder
            work = partial(export_logbook, complete=complete)
            self.exporting.run(self.export, work, self._desk.log, folder, on_done=self._say_exported)

    def _say_exported(self, _package: object) -> None:
        if self.export is not None:
            self.export.accept()
        said = say("The logbook is in {folder}.", folder=self._written.name)
        self._messages.inform(said, say("Show it"), self._show)

    def _show(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._written)))


def _pages(log: object, crop_id: str, paper: Paper, dots_per_inch: int) -> list[bytes]:
    return review_page_pictures(log, crop_id, None, paper, dots_per_inch)  # type: ignore[arg-type]
