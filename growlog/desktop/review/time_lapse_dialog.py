"""What a time-lapse shows: days, size, speed, fade, labels and curve."""

from collections.abc import Iterable

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QCheckBox, QWidget

from growlog.desktop.look.widgets import (
    Banner,
    ChoiceField,
    DialogFrame,
    Field,
    FormGrid,
    NumberField,
    TextLabel,
)
from growlog.desktop.review.waiting import progress_above_buttons
from growlog.records.display import THIN
from growlog.records.problems import Problem
from growlog.services.time_lapse import TimeLapseChoice, TimeLapsePlan, held_words
from growlog.words import say, say_count, show_number

_SIZES = {"1920x1080": (1920, 1080), "1280x720": (1280, 720), "1080x1920": (1080, 1920), "1080x1080": (1080, 1080)}
_FADE = 0.4  # of a day's time
_PAUSE_MS = 250


class TimeLapseDialog(DialogFrame):
    """Asks what the film would be a moment after each change; announces what is to be written."""

    asked = Signal(object)  # TimeLapseChoice
    wanted = Signal(object)
    stopped = Signal()

    def __init__(self, crop_name: str, last_age: int, parent: QWidget | None = None) -> None:
        super().__init__(say("Time-lapse"), crop_name, parent, 560)
        self.setObjectName("timeLapse")
        self.first_field = NumberField(say("From day"), "d", 0, last_age, name="first_age")
        self.last_field = NumberField(say("To day"), "d", 0, last_age, name="last_age")
        self.every_field = NumberField(say("One picture for so many days"), "d", 1, 60, name="every_days")
        sizes = [("", say("As the photos are")), *((key, f"{w}{THIN}×{THIN}{h}") for key, (w, h) in _SIZES.items())]
        self.size_field = ChoiceField(say("Size in pixels"), sizes, "", name="size_px")
        self.speed_field = NumberField(say("Days a second"), "", 0.2, None, 1, name="days_per_second")
        self.fade_box = _box(say("Fade each picture into the next"), "fade")
        self.labels_box = _box(say("With the day and the date"), "labels")
        self.curve_box = _box(say("With the yield growing along the lower edge"), "curve")
        self.plan_label = TextLabel("", "strong", wraps=True)
        self.held_label = TextLabel("", "small", wraps=True)
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.progress = progress_above_buttons(self)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._fill()
        self.leave_button = self.add_button(say("Close"), name="leave")
        self.save_button = self.add_button(say("Save the film…"), "primary", "save")
        self._connect()
        self._allow(True)

    def choice(self) -> TimeLapseChoice:
        """What stands in the fields; an empty field takes what it shows in grey."""
        return TimeLapseChoice(
            first_age=_whole(self.first_field.value()),
            last_age=_whole(self.last_field.value()),
            every_days=_whole(self.every_field.value()) or 1,
            size_px=_SIZES.get(self.size_field.value() or ""),
            days_per_second=self.speed_field.value() or TimeLapseChoice.days_per_second,
            fade=_FADE if self.fade_box.isChecked() else 0.0,
            labels=self.labels_box.isChecked(),
            curve=self.curve_box.isChecked(),
        )

    def ask(self) -> None:
        """Asks what the film would be, if that can be told."""
        self._timer.stop()
        if self._is_fit():
            self.asked.emit(self.choice())

    def confirm(self) -> None:
        """Announces what is to be written."""
        if self._is_fit():
            self.wanted.emit(self.choice())

    def show_plan(self, plan: TimeLapsePlan) -> None:
        """What the film will be."""
        self.banner.hide()
        days = say_count("{n} day", "{n} days", plan.days)
        size = f"{plan.width_px}{THIN}×{THIN}{plan.height_px}"
        seconds = show_number(plan.seconds, 0 if plan.seconds >= 10 else 1)
        self.plan_label.setText(say("{days} in {seconds} s, {size} pixels", days=days, seconds=seconds, size=size))
        self.held_label.setText(held_words(plan) or say("Each day has a photo."))

    def say_problem(self, sentence: str) -> None:
        """Why there can be no such film."""
        self.plan_label.setText("")
        self.held_label.setText("")
        self.banner.show_message(sentence, "problem")
        self.banner.show()

    def start(self) -> None:
        """It is being written."""
        self.banner.hide()
        self.progress.start(say("Making the film…"))
        self._allow(False)

    def show_progress(self, progress: tuple[int, int]) -> None:
        """How far it is."""
        self.progress.show_progress(*progress)

    def end(self, problem: str = "") -> None:
        """It is over; a problem stays to be read."""
        self.progress.finish()
        self._allow(True)
        if problem:
            self.banner.show_message(problem, "problem")
            self.banner.show()

    def _numbers(self) -> list[NumberField]:
        return [self.first_field, self.last_field, self.every_field, self.speed_field]

    def _boxes(self) -> list[QCheckBox]:
        return [self.fade_box, self.labels_box, self.curve_box]

    def _fill(self) -> None:
        usual = (say("first photo"), say("last photo"), "1", show_number(TimeLapseChoice.days_per_second, 0))
        for field, text in zip(self._numbers(), usual, strict=True):
            field.line.setPlaceholderText(text)
        grid = FormGrid(2, 190)
        grid.add(self.first_field, self.last_field, self.every_field, self.speed_field, self.size_field)
        self.body.addWidget(self.banner)
        self.body.addWidget(grid)
        for box in self._boxes():
            self.body.addWidget(box)
        self.body.addWidget(self.plan_label)
        self.body.addWidget(self.held_label)
        self.body.addStretch(1)

    def _connect(self) -> None:
        fields: list[Field] = [*self._numbers(), self.size_field]
        for field in fields:
            field.value_changed.connect(self._timer.start)
        for box in self._boxes():
            box.toggled.connect(self._toggled)
        self._timer.timeout.connect(self.ask)
        self.progress.stopped.connect(self.stopped)
        self.leave_button.clicked.connect(self.reject)
        self.save_button.clicked.connect(self.confirm)

    def _is_fit(self) -> bool:
        """Says beside the fields what is wrong with the choice."""
        if not all(field.check() for field in self._numbers()):
            return False
        problems = self.choice().problems()
        self._show(problems)
        return not problems

    def _show(self, problems: Iterable[Problem]) -> None:
        by_name = {field.objectName(): field for field in self._numbers()}
        for problem in problems:
            if problem.field in by_name:
                by_name[problem.field].show_problem(problem.sentence)
            else:
                self.say_problem(problem.sentence)

    def _toggled(self, _on: bool) -> None:
        self._timer.start()

    def _allow(self, allowed: bool) -> None:
        for part in (*self._numbers(), self.size_field, *self._boxes(), self.save_button):
            part.setEnabled(allowed)


def _box(words: str, name: str) -> QCheckBox:
    box = QCheckBox(words)
    box.setObjectName(name)
    box.setChecked(True)
    return box


def _whole(value: float | None) -> int | None:
    return None if value is None else int(value)
