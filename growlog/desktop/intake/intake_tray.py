"""The window of the intake tray: it reads files, shows what will happen to each, and puts them in when told to."""

import threading
from collections.abc import Callable, Sequence
from datetime import date, timedelta
from pathlib import Path

from PySide6.QtCore import QModelIndex, QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from growlog.desktop.background import Lane, TaskRunner
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.intake import wording
from growlog.desktop.intake.change_bar import ChangeBar
from growlog.desktop.intake.reading import Judge, LookAt, Read, TakeIn, TakenIn, copy_files, read_files
from growlog.desktop.intake.tray_model import Tray, TrayRow
from growlog.desktop.intake.tray_parts import EmptyTray
from growlog.desktop.intake.tray_table import TrayTable
from growlog.desktop.intake.tray_view import TrayView
from growlog.desktop.look.widgets import Banner, DialogFrame, ProgressPanel, TextLabel
from growlog.desktop.pictures import Pictures
from growlog.records.photo import Photo
from growlog.records.problems import RecordRefused
from growlog.services.crops import CropSummary
from growlog.services.open_logbook import LogbookProblem
from growlog.services.photo_intake import IntakeItem
from growlog.words import say, say_count

_JUDGE_AFTER_MS = 60
_JUDGE_WHILE_READING_MS = 400  # every judgement goes over all rows
_PICTURES = "*.jpg *.jpeg *.png *.webp *.tif *.tiff *.heic *.heif"


class IntakeTray(DialogFrame):
    """Not modal. Nothing is written before the grower confirms; taken_in tells what was, put_away that it closed."""

    taken_in = Signal(object)
    put_away = Signal()

    def __init__(
        self,
        runner: TaskRunner,
        look_at: LookAt,
        judge: Judge,
        take_in: TakeIn,
        crops: Sequence[CropSummary],
        crop_id: str | None,
        read_small: Callable[[str], bytes | None],
        file_choice: FileChoice,
        today: date | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(say("Intake tray"), say("Nothing is in the logbook before you put it in."), parent, 1000)
        self.setObjectName("intakeTray")
        self.setAcceptDrops(True)
        self._runner, self._look_at, self._judge, self._take_in = runner, look_at, judge, take_in
        self._crop_id = crop_id
        self._file_choice = file_choice
        self._stop = threading.Event()
        self._waiting_paths: list[Path] = []
        self._reading = self._copying = self._judging = False
        self._closing = self._is_away = False
        plain_crops = [summary.crop for summary in crops]
        self.tray = Tray()
        self.table = TrayTable(self.tray, plain_crops)
        self.pictures = Pictures(runner, read_small, _no_sharp, self)
        self.view = TrayView(self.table, self.pictures, plain_crops)
        self.empty = EmptyTray()
        self.change_bar = ChangeBar(plain_crops, today)
        self.banner = Banner()
        self.progress = ProgressPanel()
        self.reason_label = TextLabel("", "", wraps=True)
        self.counts_label = TextLabel("", "strong", wraps=True)
        self.files_button = self.add_button(say("Choose files…"), name="moreFiles", left=True)
        self.away_button = self.add_button(say("Put away"), name="putAway")
        self.in_button = self.add_button("", "primary", name="putIn")
        self.in_button.setDefault(False)  # Enter belongs to the fields
        self._judge_timer = QTimer(self)
        self._judge_timer.setSingleShot(True)
        self._fill_body()
        self._connect()
        self._refresh()
        self.empty.files_button.setFocus()

    def start(self, paths: Sequence[Path]) -> None:
        """Reads more files and folders; may be called while others are being read."""
        if not paths or self._copying:
            return
        self._is_away = False
        self.banner.hide()
        self._waiting_paths += paths
        if not self._reading:
            self._read_next()
        self.view.setFocus()

    @property
    def is_at_rest(self) -> bool:
        """Whether nothing is being read, judged or copied, and the last judgement holds."""
        return self.tray.is_settled and not (self._reading or self._copying or self._judging)

    def confirm(self) -> None:
        """Puts in what goes in."""
        sent = self.tray.going_in()
        if not self.in_button.isEnabled() or not sent:
            return
        self._copying = True
        self._stop = threading.Event()
        self.banner.hide()
        self.progress.start(say("Putting photos into the logbook"))
        self._refresh()
        self._sent = sent
        items = [row.item for row in sent]
        self._runner.run(
            copy_files, self._take_in, items, self._stop,
            on_done=self._copied, on_failed=self._copy_failed, on_progress=self._copy_progress, lane=Lane.DATABASE,
        )  # fmt: skip

    def done(self, result: int) -> None:
        """Puts the tray away; while photos are copied it stops first, and closes when what was copied is written."""
        self._stop_work()
        if self._copying:
            self._closing = True
            return
        self._is_away = True
        self._judge_timer.stop()
        super().done(result)
        self.put_away.emit()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Takes files and folders."""
        if event.mimeData().hasUrls() and not self._copying:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Reads what was dropped."""
        paths = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        event.acceptProposedAction()
        self.start(paths)

    def _fill_body(self) -> None:
        self.body.addWidget(self.banner)
        self.body.addWidget(self.progress)
        self.body.addWidget(self.empty, 1)
        self.body.addWidget(self.change_bar)
        self.body.addWidget(self.view, 1)
        self.body.addWidget(self.reason_label)
        self.body.addWidget(self.counts_label)
        self.banner.hide()

    def _connect(self) -> None:
        self._judge_timer.timeout.connect(self._start_judging)
        self.pictures.small_arrived.connect(self.view.picture_arrived)
        self.view.chosen_changed.connect(self._show_chosen)
        self.view.leave_out_pressed.connect(self._leave_out)
        self.table.changed_by_hand.connect(self._changed)
        self.table.refused_text.connect(self._say_problem)
        bar = self.change_bar
        bar.day_set.connect(self._set_day)
        bar.crop_set.connect(self._set_crop)
        self.view.figure_pressed.connect(self._set_crop_by_figure)
        bar.leave_out_wanted.connect(self._leave_out)
        bar.as_read_wanted.connect(self._put_as_read)
        bar.shift_wanted.connect(self._shift)
        self.empty.files_wanted.connect(self._choose_files)
        self.empty.folder_wanted.connect(self._choose_folder)
        self.files_button.clicked.connect(self._choose_files)
        self.away_button.clicked.connect(self.close)
        self.in_button.clicked.connect(self.confirm)
        self.progress.stopped.connect(self._stop_work)
        self.banner.closed.connect(self.banner.hide)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _choose_files(self) -> None:
        self.start(self._file_choice.files_to_open(say("Choose photos"), [say("Pictures") + f" ({_PICTURES})"]))

    def _choose_folder(self) -> None:
        folder = self._file_choice.folder(say("Choose a folder of photos"))
        self.start([folder] if folder is not None else [])

    def _read_next(self) -> None:
        paths, self._waiting_paths = self._waiting_paths, []
        self._reading = True
        self._stop = threading.Event()
        self.progress.start(say("Reading photos"))
        self._refresh()
        self._runner.run(
            read_files, self._look_at, paths, self._crop_id, self._stop,
            on_done=self._read_ended, on_failed=self._read_failed, on_progress=self._read_progress,
        )  # fmt: skip

    def _read_progress(self, read: Read) -> None:
        listed = self.table.add(read.items)
        if listed:
            one, many = "{n} file is in the tray already.", "{n} files are in the tray already."
            self._say(say_count(one, many, listed), "inform")
        if read.total and not self._stop.is_set():
            self.progress.show_progress(read.done, read.total)
        self._changed()

    def _read_ended(self, _: object = None) -> None:
        self._reading = False
        if self._waiting_paths and not self._stop.is_set():
            self._read_next()
            return
        self._waiting_paths = []
        self.progress.finish()
        if not self.tray.rows and not self.banner.isVisibleTo(self):
            self._say(say("There is no picture in what was chosen. Choose other files or another folder."), "asks")
        self._changed()

    def _read_failed(self, error: Exception) -> None:
        self._say_problem(say("Not all files could be read. Those listed can go in; try the others again."))
        self._read_ended()

    def _changed(self) -> None:
        self._refresh()
        if not self._is_away and not self.tray.is_settled and not self._judge_timer.isActive():
            self._judge_timer.start(_JUDGE_WHILE_READING_MS if self._reading else _JUDGE_AFTER_MS)

    def _start_judging(self) -> None:
        if self._judging or self._copying:
            return
        self._judging = True
        self._judged_rows, self._judged_version = self.tray.to_judge(), self.tray.version
        items = [row.item for row in self._judged_rows]
        self._runner.run(self._judge, items, on_done=self._judged, on_failed=self._judge_failed, lane=Lane.DATABASE)

    def _judged(self, items: list[IntakeItem]) -> None:
        self._judging = False
        self.tray.take_judgement(self._judged_version, self._judged_rows, items)
        self.table.show_changes()
        self._changed()

    def _judge_failed(self, error: Exception) -> None:
        self._judging = False
        self._say_problem(_sentence(error, say("The logbook could not be asked about these photos.")))

    def _copy_progress(self, progress: tuple[int, int]) -> None:
        if not self._stop.is_set():
            self.progress.show_progress(*progress)

    def _copied(self, result: TakenIn) -> None:
        written = 0 if result.change is None else len(result.change.record_ids)
        refused = self.table.take_result(self._sent, result.items, written)
        self._end_copying()
        self._say(wording.result_words(written, refused, result.stopped), "problem" if refused else "inform")
        self.taken_in.emit(result.change)
        if self._closing:
            self.close()

    def _copy_failed(self, error: Exception) -> None:
        self._closing = False
        self._end_copying()
        self._say_problem(_sentence(error, say("The photos could not be put in; none of them is in the logbook.")))

    def _end_copying(self) -> None:
        self._copying = False
        self.progress.finish()
        self._changed()

    def _stop_work(self) -> None:
        self._stop.set()
        self._waiting_paths = []

    def _chosen(self) -> list[int]:
        return self.view.chosen_places()

    def _set_day(self, day: date) -> None:
        self.tray.set_day(self._chosen(), day)
        self._changed_rows()

    def _set_crop(self, crop_id: str) -> None:
        self.tray.set_crop(self._chosen(), crop_id)
        self._changed_rows()

    def _set_crop_by_figure(self, figure: int) -> None:
        crop_id = self.change_bar.crop_of_figure(figure)
        if crop_id is not None and self._chosen() and not self._copying:
            self._set_crop(crop_id)

    def _leave_out(self) -> None:
        places = self._chosen()
        if places and not self._copying:
            self.tray.leave_out(places, self.tray.would_leave_out(places))
            self._changed_rows()

    def _put_as_read(self) -> None:
        self.tray.put_as_read(self._chosen())
        self._changed_rows()

    def _shift(self, by: timedelta) -> None:
        places = self._chosen() or range(len(self.tray.rows))
        try:
            self.tray.shift(places, by)
        except OverflowError:
            self._say_problem(say("The calendar does not reach that far."))
        self._changed_rows()

    def _changed_rows(self) -> None:
        self.table.show_changes()
        self._changed()

    def _refresh(self) -> None:
        has_rows = bool(self.tray.rows)
        self.empty.setVisible(not has_rows and not self._reading)
        for widget in (self.view, self.change_bar, self.counts_label, self.files_button):
            widget.setVisible(has_rows or self._reading)
        self.in_button.setVisible(has_rows or self._reading)
        self.change_bar.setEnabled(not self._copying)
        self.files_button.setEnabled(not self._copying)
        self.table.editable = not self._copying
        counts = self.tray.counts()
        self.counts_label.setText(wording.counts_line(counts))
        words = say_count("Put {n} photo in", "Put {n} photos in", counts.going_in)
        self.in_button.setText(f"{words if counts.going_in else say('Put photos in')}  Ctrl \u23ce")
        self.in_button.setEnabled(self.is_at_rest and counts.going_in > 0)
        self._show_chosen()

    def _show_chosen(self) -> None:
        places = self._chosen()
        able, all_able = self.tray.pictures_among(places), self.tray.pictures_among(range(len(self.tray.rows)))
        self.change_bar.show_scope(len(able), len(all_able), self.tray.would_leave_out(places))
        current: QModelIndex = self.view.currentIndex()
        shown: TrayRow | None = self.tray.rows[current.row()] if current.isValid() and places else None
        reason = wording.reason_words(shown) if shown is not None else ""
        self.reason_label.setText(reason)
        self.reason_label.setVisible(bool(reason))

    def _say_problem(self, sentence: str) -> None:
        self._say(sentence, "problem")

    def _say(self, sentence: str, tone: str) -> None:
        self.banner.show_message(sentence, tone)
        self.banner.show()


def _no_sharp(photo: Photo) -> bytes | None:
    return None


def _sentence(error: Exception, otherwise: str) -> str:
    return str(error) if isinstance(error, (LogbookProblem, RecordRefused)) else otherwise
