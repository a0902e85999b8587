"""The dialog that carries old notes in: a file, the use of its columns, what its rows become, and one confirmation."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import QSize, QTimer, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget

from growlog.desktop.background import Lane, TaskRunner
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import (
    Banner,
    ChoiceField,
    DialogFrame,
    EmptyState,
    ProgressPanel,
    TextLabel,
)
from growlog.desktop.old_notes import wording
from growlog.desktop.old_notes.columns_panel import ColumnsPanel
from growlog.desktop.old_notes.preview import Preview
from growlog.desktop.old_notes.questions_box import QuestionsBox
from growlog.desktop.old_notes.work import OldNotesServices, Outcome, ReadFile, Work, read_file, run_work
from growlog.records.change import Change
from growlog.records.column_map import MappedColumn
from growlog.records.crop import Crop
from growlog.services.old_notes.import_plan import Answers, ImportPlan, Question, RowOutcome
from growlog.services.old_notes.old_table import Progress
from growlog.words import say, say_count

_PLAN_AFTER_MS = 120
_SLIPS = "year_slips"


class OldNotesDialog(DialogFrame):
    """Not modal. Nothing is written before the grower confirms; carried_in tells the change that was."""

    carried_in = Signal(object)

    def __init__(
        self,
        runner: TaskRunner,
        services: OldNotesServices,
        crops: Sequence[Crop],
        crop_id: str | None,
        files: FileChoice,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(say("Old notes in"), say("Nothing is in the logbook before you carry it in."), parent, 1040)
        self.setObjectName("oldNotes")
        self._runner, self._services, self._files = runner, services, files
        self._read: ReadFile | None = None
        self._answers = Answers()
        self.plan: ImportPlan | None = None
        self._plan_holds = False
        self._work: Work | None = None
        self._works: list[Work] = []
        self._doing = ""
        self._closing = False
        self.banner = Banner()
        self.progress = ProgressPanel()
        self.empty = EmptyState(
            say("Choose a table of notes that were kept elsewhere: CSV, TSV, xlsx or ods."),
            say("Choose a file…"),
            name="emptyOldNotes",
        )
        self.file_label = TextLabel("", "heading", wraps=True)
        self.sheet_field = ChoiceField(say("Sheet"), [], name="sheet", beside=True)
        named = [(crop.id, crop.name) for crop in crops]
        self.crop_field = ChoiceField(say("Crop"), named, crop_id, say("as each row names it"), "crop", beside=True)
        self.choices = QWidget()
        self.questions = QuestionsBox()
        self.columns = ColumnsPanel()
        self.preview = Preview()
        self.known_box = QCheckBox(say("Carry in again what the logbook has already"))
        self.known_box.setObjectName("withKnown")
        self.counts_label = TextLabel("", "strong", wraps=True)
        self.other_button = self.add_button(say("Another file…"), name="otherFile", left=True)
        self.save_button = self.add_button(say("Save the rows that stay out…"), name="saveRefused", left=True)
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self.in_button = self.add_button("", "primary", name="carryIn")
        self.in_button.setDefault(False)  # Enter belongs to the fields
        self._plan_timer = QTimer(self)
        self._plan_timer.setSingleShot(True)
        self._fill_body()
        self._connect()
        self._refresh()
        self.empty.button.setFocus()

    @property
    def is_at_rest(self) -> bool:
        """Whether nothing is under way and the plan shown is the plan of what is chosen."""
        return not self._doing and not self._plan_timer.isActive()

    def sizeHint(self) -> QSize:
        """As high as the window beside it, so that a file's rows have room before one is chosen."""
        hint, window = super().sizeHint(), self.parentWidget()
        around = self.screen().availableGeometry().height() if window is None else window.window().height()
        return QSize(hint.width(), max(min(hint.height(), around - 64), min(current().px(760), around - 112)))

    def read(self, path: Path, sheet: str = "") -> None:
        """Reads a file, or another sheet of it."""
        if self._doing == "carrying":
            return
        self._stop_work()
        self.banner.hide()
        self._start("reading", say("Reading {file}", file=path.name),
                    partial(read_file, self._services, path, sheet))  # fmt: skip

    def confirm(self) -> None:
        """Carries in what is shown."""
        if self.plan is None or not self.in_button.isEnabled():
            return
        self.banner.hide()
        self._start("carrying", say("Carrying in"), partial(self._services.carry_in, self.plan))

    def stop_and_wait(self, seconds: float = 20) -> None:
        """Before the logbook is closed: what is under way ends, and nothing is half written."""
        self._plan_timer.stop()
        for work in self._works:
            work.stop()
        for work in self._works:
            work.wait(seconds)

    def done(self, result: int) -> None:
        """Puts the dialog away; while entries are being written it stops that first."""
        self._stop_work()
        if self._doing == "carrying":
            self._closing = True
            return
        self._plan_timer.stop()
        super().done(result)

    def _fill_body(self) -> None:
        row = QHBoxLayout(self.choices)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(24)
        row.addWidget(self.file_label, 1)
        row.addWidget(self.sheet_field)
        row.addWidget(self.crop_field)
        for widget in (self.banner, self.progress, self.choices, self.questions):
            self.body.addWidget(widget)
        self.body.addWidget(self.columns, 2)
        self.body.addWidget(self.empty, 1)
        self.body.addWidget(self.preview, 3)
        self.body.addWidget(self.known_box)
        self.body.addWidget(self.counts_label)
        self.banner.hide()

    def _connect(self) -> None:
        self._plan_timer.timeout.connect(self._start_planning)
        self.empty.chosen.connect(self._choose_file)
        self.other_button.clicked.connect(self._choose_file)
        self.save_button.clicked.connect(self._save_refused)
        self.close_button.clicked.connect(self.close)
        self.in_button.clicked.connect(self.confirm)
        self.sheet_field.value_changed.connect(self._sheet_chosen)
        self.crop_field.value_changed.connect(self._plan_again)
        self.known_box.toggled.connect(self._known_chosen)
        self.columns.changed.connect(self._columns_changed)
        self.questions.answered.connect(self._answered)
        self.progress.stopped.connect(self._stop_work)
        self.banner.closed.connect(self.banner.hide)
        self.banner.action_chosen.connect(self._look_again)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _choose_file(self) -> None:
        filters = [say("Tables") + " (*.csv *.tsv *.txt *.xlsx *.xlsm *.ods)", say("All files") + " (*)"]
        path = self._files.file_to_open(say("Choose a table of old notes"), filters)
        if path is not None:
            self.read(path)

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
            self.progress.show_progress(done, total)

    def _ended(self, outcome: Outcome) -> None:
        if outcome.work is not self._work:
            return  # other work has taken its place
        ended = self._end_work()
        if outcome.problem:
            self._say(outcome.problem, "problem")
        elif outcome.result is not None:
            self._take_result(ended, outcome.result)
        elif ended == "carrying":
            self._say(say("Stopped. Nothing was carried in."), "inform")
        elif ended == "reading":
            self._say(say("Stopped. The file was not read to its end."), "inform")
        elif ended == "planning":
            self._say(say("Stopped before all rows were looked at."), "asks", say("Look at them"))
        self._refresh()
        self._close_if_wanted()

    def _failed(self, _error: Exception) -> None:
        self._end_work()
        self._say(say("This could not be done. Nothing was carried in."), "problem")
        self._refresh()
        self._close_if_wanted()

    def _end_work(self) -> str:
        ended, self._doing, self._work = self._doing, "", None
        self.progress.finish()
        return ended

    def _take_result(self, ended: str, result: Any) -> None:
        takers: dict[str, Callable[[Any], None]] = {
            "reading": self._has_read,
            "planning": self._has_planned,
            "carrying": self._has_carried,
            "saving": self._has_saved,
        }
        takers[ended](result)

    def _close_if_wanted(self) -> None:
        if self._closing:
            self._closing = False
            self.close()

    def _has_read(self, read: ReadFile) -> None:
        self._read, self.plan = read, None
        known = read.column_map
        self._answers = Answers(known.date_order, known.decimal) if read.is_remembered else Answers()
        sheets = [(name, name) for name in read.table.sheets]
        self.sheet_field.set_choices(sheets, read.table.sheet)
        hint = say("Read as the last file of this shape was.") if read.is_remembered else ""
        self.columns.show_table(read.table, read.column_map.columns, hint)
        self.questions.show_questions(())
        self.preview.table.setFocus()
        self._start_planning()

    def _sheet_chosen(self) -> None:
        if self._read is not None:
            self.read(self._read.path, self.sheet_field.value() or "")

    def _columns_changed(self, columns: tuple[MappedColumn, ...]) -> None:
        if self._read is not None:
            self._read = replace(self._read, column_map=replace(self._read.column_map, columns=columns))
            self._plan_again()

    def _known_chosen(self, with_known: bool) -> None:
        self._answers = replace(self._answers, with_known=with_known)
        self._plan_again()

    def _answered(self, question: Question, value: str) -> None:
        if question.key in ("date_order", "decimal", _SLIPS):
            self._answers = answered(self._answers, question.key, value)
            self._plan_again()
        elif question.place is not None:
            self.columns.choose(question.place, value)

    def _plan_again(self) -> None:
        if self._read is not None and self._doing != "carrying":
            self._stop_work()
            self._work, self._doing, self._plan_holds = None, "", False
            self._plan_timer.start(_PLAN_AFTER_MS)
            self._refresh()

    def _look_again(self) -> None:
        self.banner.hide()
        self._plan_again()

    def _start_planning(self) -> None:
        if self._read is None:
            return
        self._plan_holds = False
        table, column_map, crop_id = self._read.table, self._read.column_map, self.crop_field.value()
        plan = partial(self._services.plan, table, column_map, crop_id, self._answers)
        self._start("planning", say("Looking at the rows"), plan)

    def _has_planned(self, plan: ImportPlan) -> None:
        self.plan, self._plan_holds = plan, True
        self.preview.show_plan(plan)
        self.questions.show_questions([*plan.questions, *self._slips(plan)])

    def _slips(self, plan: ImportPlan) -> list[Question]:
        asked = plan.count(RowOutcome.ASKED)
        choices = (("mend", say("Take the year that fits")), ("keep", say("Keep the year as written")))
        return [Question(_SLIPS, wording.slips_sentence(asked), choices)] if asked else []

    def _has_carried(self, change: Change) -> None:
        self._say(say("Carried in: {what}.", what=change.title), "inform")
        self.carried_in.emit(change)
        self._plan_again()

    def _save_refused(self) -> None:
        if self.plan is None or self._read is None:
            return
        suggested = say("{name} left out", name=self._read.path.stem) + ".csv"
        path = self._files.file_to_save(say("Save the rows that stay out"), suggested, [f"{say('Tables')} (*.csv)"])
        if path is None:
            return
        self._start("saving", say("Saving"), partial(_save, self._services, self.plan, path))

    def _has_saved(self, n: int) -> None:
        self._say(say_count("{n} row saved with its reason.", "{n} rows saved with their reasons.", n), "inform")

    def _stop_work(self) -> None:
        if self._work is not None:
            self._work.stop()

    def _refresh(self) -> None:
        read, plan, busy = self._read, self.plan, bool(self._doing) or self._plan_timer.isActive()
        self.empty.setVisible(read is None and not self._doing)
        shown: tuple[QWidget, ...] = (self.choices, self.columns, self.preview, self.counts_label,
                                      self.other_button, self.in_button)  # fmt: skip
        for widget in shown:
            widget.setVisible(read is not None)
        self.sheet_field.setVisible(read is not None and len(read.table.sheets) > 1)
        self.file_label.setText("" if read is None else _file_words(read))
        known = read is not None and plan is not None and (plan.known_count > 0 or self._answers.with_known)
        self.known_box.setVisible(known)
        self.counts_label.setText(_counts_words(plan))
        n = 0 if plan is None or plan.questions else len(plan.entries)
        words = say_count("Carry in {n} entry", "Carry in {n} entries", n) if n else say("Carry in")
        self.in_button.setText(f"{words}  Ctrl \u23ce")
        self.in_button.setEnabled(not busy and self._plan_holds and plan is not None and plan.is_ready)
        self.save_button.setVisible(plan is not None and bool(plan.refused))
        self.save_button.setEnabled(not busy)
        changing: tuple[QWidget, ...] = (self.columns, self.choices, self.other_button, self.known_box, self.questions)
        for widget in changing:
            widget.setEnabled(self._doing != "carrying")

    def _say(self, sentence: str, tone: str, action: str = "") -> None:
        self.banner.show_message(sentence, tone, action)
        self.banner.show()


def answered(answers: Answers, key: str, value: str) -> Answers:
    """The answers with one more."""
    if key == "date_order":
        return replace(answers, date_order=value)
    if key == "decimal":
        return replace(answers, decimal=value)
    return replace(answers, year_slips=value)


def _save(services: OldNotesServices, plan: ImportPlan, path: Path, _progress: Progress) -> int:
    return services.save_refused(plan, path)


def _file_words(read: ReadFile) -> str:
    n = len(read.table.rows)
    return f"{read.table.name} · {say_count('{n} row', '{n} rows', n)}"


def _counts_words(plan: ImportPlan | None) -> str:
    if plan is None:
        return ""
    if plan.questions:
        return say("Answer the question first; then the rows are shown.")
    return wording.counts_line(plan)
