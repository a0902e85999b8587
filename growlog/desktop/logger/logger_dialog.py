"""Brings a logger's file into a room: its questions answered in place, what it would bring, and one confirmation."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QWidget

from growlog.desktop.background import Lane, TaskRunner
from growlog.desktop.cautions_box import CautionsBox
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.logger.files_view import FilesView
from growlog.desktop.logger.plan_view import PlanView
from growlog.desktop.logger.question_cards import QuestionCards
from growlog.desktop.logger.work import LoggerServices, Progress
from growlog.desktop.look.widgets import Banner, ChoiceField, EmptyState, ProgressPanel, TextLabel
from growlog.desktop.old_notes.work import Outcome, Work, run_work
from growlog.desktop.tall_dialog import TallDialog
from growlog.records.change import Change
from growlog.records.room import Room
from growlog.services.cautions import CautionTopic
from growlog.services.climate.logger_plan import LoggerAnswers, LoggerPlan
from growlog.words import say, say_count

READING, ANSWERING, CARRYING, SAVING = "reading", "answering", "carrying", "saving"


class LoggerDialog(TallDialog):
    """Not modal. Nothing is written before it is confirmed; carried_in tells the change that was."""

    carried_in = Signal(object)
    remove_wanted = Signal(str)
    room_wanted = Signal()

    def __init__(
        self,
        runner: TaskRunner,
        services: LoggerServices,
        rooms: Sequence[Room],
        room_id: str,
        files: FileChoice,
        writable: bool = True,
        parent: QWidget | None = None,
    ) -> None:
        subtitle = say("Nothing is in the logbook before you bring it in.")
        super().__init__(say("Logger readings in"), subtitle, parent, 860)
        self.setObjectName("logger")
        self._runner, self._services, self._files, self._writable = runner, services, files, writable
        self._rooms = {room.id: room for room in rooms}
        self.plan: LoggerPlan | None = None
        self._path: Path | None = None
        self._work: Work | None = None
        self._works: list[Work] = []
        self._doing = ""
        self._closing = False
        chosen = room_id if room_id in self._rooms else next(iter(self._rooms), None)
        named = [(room.id, room.name) for room in rooms]
        self.room_field = ChoiceField(say("Room"), named, chosen, name="room", beside=True)
        self.file_label = TextLabel("", "heading", wraps=True)
        self.banner = Banner()
        self.progress = ProgressPanel()
        self.empty = EmptyState("", say("Choose a file…"), name="emptyLogger")
        self.questions = QuestionCards()
        self.view = PlanView()
        self.files_view = FilesView(writable)
        self.other_button = self.add_button(say("Another file…"), name="otherFile", left=True)
        self.save_button = self.add_button(say("Save the rows that stay out…"), name="saveRefused", left=True)
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self.in_button = self.add_button("", "primary", name="bringIn")
        self.in_button.setDefault(False)
        self._fill_body()
        self._connect()
        self.show_files()
        self._refresh()
        self.empty.button.setFocus()

    @property
    def is_at_rest(self) -> bool:
        """Whether nothing is under way."""
        return not self._doing

    @property
    def room_id(self) -> str:
        """The room that readings go to."""
        return self.room_field.value() or ""

    def show_files(self) -> None:
        """The files of the room as they stand."""
        room = self._rooms.get(self.room_id)
        self.files_view.setVisible(room is not None)
        if room is not None:
            self.files_view.show_files(self._services.files(room.id), room.zone)

    def read(self, path: Path) -> None:
        """Reads a file and says what it would bring."""
        if self._doing == CARRYING or not self.room_id:
            return
        self._stop_work()
        self.banner.hide()
        self._path = path
        work = partial(self._services.plan, path, self.room_id, None)
        self._start(READING, say("Reading {file}", file=path.name), work)

    def confirm(self) -> None:
        """Brings in what is shown."""
        if self.plan is not None and self.in_button.isEnabled():
            self.banner.hide()
            self._start(CARRYING, say("Bringing in"), partial(self._services.carry_in, self.plan))

    def stop_and_wait(self, seconds: float = 20) -> None:
        """Before the logbook is closed: what is under way ends, and nothing is half written."""
        for work in self._works:
            work.stop()
        for work in self._works:
            work.wait(seconds)

    def done(self, result: int) -> None:
        """Puts the dialog away; while samples are being written it stops that first."""
        self._stop_work()
        if self._doing == CARRYING:
            self._closing = True
            return
        super().done(result)

    def _fill_body(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(24)
        row.addWidget(self.file_label, 1)
        row.addWidget(self.room_field)
        self.body.addLayout(row)
        for widget in (self.banner, self.progress, self.questions, self.empty, self.view):
            self.body.addWidget(widget)
        self.body.addSpacing(8)
        self.body.addWidget(self.files_view)
        self.body.addStretch(1)
        self.body.addWidget(CautionsBox([CautionTopic.MOULD]))
        self.banner.hide()

    def _connect(self) -> None:
        self.empty.chosen.connect(self._begin)
        self.other_button.clicked.connect(self._choose_file)
        self.save_button.clicked.connect(self._save_refused)
        self.close_button.clicked.connect(self.close)
        self.in_button.clicked.connect(self.confirm)
        self.room_field.value_changed.connect(self._room_chosen)
        self.questions.answered.connect(self._answered)
        self.progress.stopped.connect(self._stop_work)
        self.banner.closed.connect(self.banner.hide)
        self.files_view.remove_wanted.connect(self.remove_wanted)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _begin(self) -> None:
        if self._rooms:
            self._choose_file()
        else:
            self.room_wanted.emit()

    def _choose_file(self) -> None:
        filters = [say("Tables") + " (*.csv *.tsv *.txt)", say("All files") + " (*)"]
        path = self._files.file_to_open(say("Choose a file of a logger"), filters)
        if path is not None:
            self.read(path)

    def _room_chosen(self) -> None:
        self.show_files()
        if self._path is not None and self._doing != CARRYING:
            self.read(self._path)
        self._refresh()

    def _answered(self, key: str, value: str) -> None:
        if self.plan is None or self._doing == CARRYING:
            return
        answers: LoggerAnswers = replace(self.plan.answers, **{key.replace("-", "_"): value})
        self._stop_work()
        self._start(ANSWERING, say("Looking at the rows"), partial(_answer, self._services, self.plan, answers))

    def _save_refused(self) -> None:
        if self.plan is None:
            return
        suggested = say("{name} left out", name=self.plan.path.stem) + ".csv"
        path = self._files.file_to_save(say("Save the rows that stay out"), suggested, [f"{say('Tables')} (*.csv)"])
        if path is not None:
            self._start(SAVING, say("Saving"), partial(_save, self._services, self.plan, path))

    def _start(self, doing: str, words: str, function: Callable[[Progress], Any]) -> None:
        self._doing = doing
        self._work = Work()
        self._works = [work for work in self._works if not work.is_over] + [self._work]
        self.progress.start(words)
        self._refresh()
        self._runner.run(
            run_work, self._work, function,
            on_done=self._ended, on_failed=self._failed, on_progress=self._show_progress, lane=Lane.DATABASE,
        )  # fmt: skip

    def _show_progress(self, progress: tuple[Work, int, int]) -> None:
        work, done, total = progress
        if work is self._work and total:
            percent = min(100, 100 * done // total)
            self.progress.show_progress(percent, 100)
            self.progress.count_label.setText(say("{percent} %", percent=percent))

    def _ended(self, outcome: Outcome) -> None:
        if outcome.work is not self._work:
            return  # other work has taken its place
        ended = self._end_work()
        if outcome.problem:
            self._say(outcome.problem, "problem")
        elif outcome.result is not None:
            self._take(ended, outcome.result)
        elif ended == CARRYING:
            self._say(say("Stopped. Nothing was brought in."), "inform")
        else:
            self._say(say("Stopped. The file was not read to its end."), "inform")
        self._refresh()
        self._close_if_wanted()

    def _failed(self, _error: Exception) -> None:
        self._end_work()
        self._say(say("This could not be done. Nothing was brought in."), "problem")
        self._refresh()
        self._close_if_wanted()

    def _take(self, ended: str, result: Any) -> None:
        if ended in (READING, ANSWERING):
            self._show_plan(result)
        elif ended == CARRYING:
            self._has_carried(result)
        else:
            one, many = "{n} row saved with its reason.", "{n} rows saved with their reasons."
            self._say(say_count(one, many, result), "inform")

    def _show_plan(self, plan: LoggerPlan) -> None:
        self.plan = plan
        self.questions.show_questions(plan.questions)
        self.view.show_plan(plan)
        if plan.problem:
            self._say(plan.problem, "problem")

    def _has_carried(self, change: Change) -> None:
        n = 0 if self.plan is None else self.plan.sample_count
        self.plan, self._path = None, None
        self.questions.show_questions(())
        self.view.show_plan(None)
        self._say(say_count("{n} sample is in.", "{n} samples are in.", n), "inform")
        self.carried_in.emit(change)
        self.show_files()

    def _end_work(self) -> str:
        ended, self._doing, self._work = self._doing, "", None
        self.progress.finish()
        return ended

    def _close_if_wanted(self) -> None:
        if self._closing:
            self._closing = False
            self.close()

    def _stop_work(self) -> None:
        if self._work is not None:
            self._work.stop()

    def _refresh(self) -> None:
        plan, busy = self.plan, bool(self._doing)
        if self._rooms:
            sentence = say(
                "Choose a file that your logger or its app exported: CSV with time, temperature and humidity."
            )
            self.empty.set_sentence(sentence, say("Choose a file…") if self._writable else "")
        else:
            self.empty.set_sentence(say("Readings belong to a room. There is none yet."), say("Open the room…"))
        self.empty.setVisible(plan is None and not busy)
        self.file_label.setText("" if self._path is None else self._path.name)
        self.room_field.setVisible(len(self._rooms) > 1)
        self.other_button.setVisible(plan is not None)
        self.save_button.setVisible(plan is not None and bool(plan.refused) and not plan.open_questions)
        self.in_button.setVisible(plan is not None)
        n = 0 if plan is None or plan.open_questions else plan.sample_count
        words = say_count("Bring in {n} sample", "Bring in {n} samples", n) if n else say("Bring in")
        self.in_button.setText(f"{words}  Ctrl \u23ce")
        self.in_button.setEnabled(not busy and plan is not None and plan.ready and self._writable)
        self.in_button.setToolTip(
            say("Answer the questions first.") if plan is not None and plan.open_questions else ""
        )
        for widget in (self.room_field, self.other_button, self.save_button, self.questions, self.files_view):
            widget.setEnabled(self._doing != CARRYING)

    def _say(self, sentence: str, tone: str) -> None:
        self.banner.show_message(sentence, tone)
        self.banner.show()


def _answer(services: LoggerServices, plan: LoggerPlan, answers: LoggerAnswers, _progress: Progress) -> LoggerPlan:
    return services.answer(plan, answers)


def _save(services: LoggerServices, plan: LoggerPlan, path: Path, _progress: Progress) -> int:
    return services.save_refused(plan, path)
