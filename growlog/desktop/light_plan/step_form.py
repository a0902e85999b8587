"""The form of a step: from when, how long, which lamps, how bright; it asks where the lamps cannot give that much."""

from collections.abc import Iterable
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QCheckBox

from growlog.calculations.light_needed import more_than_lamps_give
from growlog.calculations.light_programme import CanopyLight, CanopyWay, LightSetting, light_day
from growlog.desktop.light_plan.wording import dli_words, span_words
from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    DayField,
    Field,
    FlowLayout,
    FormGrid,
    TextLabel,
    TimeField,
    limited_number_field,
)
from growlog.records.display import fixed
from growlog.records.light_plan import LightStep
from growlog.records.problems import Problem
from growlog.records.room import Lamp
from growlog.services.light.lamps import burning, ppfd_of_lamps
from growlog.services.light.plan_book import LightPlanBook
from growlog.words import say

ON_DAY, AT_AGE = "day", "age"
_QUANTITIES = ("photoperiod_h", "dimming_percent", "canopy_ppfd_umol")


class StepForm(Card):
    """Emits what is to be written. More photons than the lamps can give is asked about, with a tick to answer."""

    saved = Signal(object)
    removed = Signal(object)
    left = Signal()

    def __init__(self, step: LightStep, is_new: bool, book: LightPlanBook) -> None:
        super().__init__()
        self.setObjectName("stepForm")
        self._before, self._is_new, self._book = step, is_new, book
        self._asked = ""
        starts = [(ON_DAY, say("on a day")), (AT_AGE, say("at a plant age"))]
        self.start_field = ChoiceField(say("Starts"), starts, ON_DAY if step.from_age is None else AT_AGE, name="start")
        self.day_field = DayField(say("Day"), step.from_day, near=book.today, name="from_day")
        crops = [(crop.id, crop.name) for crop in book.crops]
        self.crop_field = ChoiceField(say("Plant age of"), crops, step.crop_id, name="crop_id")
        self.age_field = limited_number_field("at_age", name="from_age")
        self.age_field.set_value(step.from_age)
        self.hours_field = limited_number_field("photoperiod_h")
        self.hours_field.set_value(None if is_new else step.photoperiod_h)
        self.on_field = TimeField(say("Lamps on at"), step.on_at, name="on_at")
        self.output_field = limited_number_field("dimming_percent")
        self.output_field.set_value(step.dimming_percent)
        self.output_field.line.setPlaceholderText("100")
        self.canopy_field = limited_number_field("canopy_ppfd_umol")
        self.canopy_field.set_value(step.canopy_ppfd_umol)
        self.lamp_boxes = {lamp.id: self._lamp_box(lamp) for lamp in self._lamps()}
        self.lamps_label = TextLabel("", "small", wraps=True)
        self.words_label = TextLabel("", "strong", wraps=True)
        self.answer_box = QCheckBox(say("Yes, it is right"))
        self.answer_box.setObjectName("canopy.answer")
        self.save_button = Button(f"{say('Save the step')}  Ctrl \u23ce", "primary", name="saveStep")
        self.leave_button = Button(say("Leave it"), name="leaveStep")
        self.remove_button = Button(say("Remove the step"), "link", "bin", "removeStep")
        self._place()
        self._connect()
        self._show()

    @property
    def step_id(self) -> str:
        """Which step it is."""
        return self._before.id

    def step(self) -> LightStep:
        """What stands in the fields."""
        by_age = self.start_field.value() == AT_AGE
        age = self.age_field.value()
        hours = self.hours_field.value()
        chosen = tuple(lamp_id for lamp_id, box in self.lamp_boxes.items() if box.isChecked())
        return replace(
            self._before,
            from_day=None if by_age else self.day_field.value(),
            crop_id=self.crop_field.value() if by_age else None,
            from_age=int(age) if by_age and age is not None else None,
            photoperiod_h=self._before.photoperiod_h if hours is None else hours,
            on_at=self.on_field.value(),
            dimming_percent=self.output_field.value(),
            canopy_ppfd_umol=self.canopy_field.value(),
            lamp_ids=() if len(chosen) == len(self.lamp_boxes) else chosen,
        )

    def save(self) -> None:
        """Emits the step, or goes to the first field that is refused or asks."""
        for field in self._fields():
            field.check()
        if self.hours_field.value() is None and not self.hours_field.is_refused:
            self.hours_field.show_problem(say("A number is needed here."))
        if not any(field.is_refused for field in self._fields()):
            self.show_problems([p for p in self.step().problems() if not p.asks])
        self._ask()
        if self.lamp_boxes and not any(box.isChecked() for box in self.lamp_boxes.values()):
            self.lamps_label.setText(say("Choose at least one lamp."))
            return
        refused = [field for field in self._fields() if field.is_refused]
        if refused:
            refused[0].setFocus(Qt.FocusReason.OtherFocusReason)
        elif self.answer_box.isVisibleTo(self) and not self.answer_box.isChecked():
            self.answer_box.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.saved.emit(self.step())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Sentences beside their fields."""
        by_name = {field.objectName(): field for field in self._fields()}
        for problem in problems:
            by_name.get(problem.field, self._fields()[1]).show_problem(problem.sentence)

    def _fields(self) -> list[Field]:
        return [field for field in self.grid.fields() if not field.isHidden()]

    def _lamps(self) -> tuple[Lamp, ...]:
        return () if self._book.view is None else self._book.view.lamps

    def _lamp_box(self, lamp: Lamp) -> QCheckBox:
        box = QCheckBox(lamp.name)
        box.setObjectName(f"lamp.{lamp.id}")
        box.setChecked(not self._before.lamp_ids or lamp.id in self._before.lamp_ids)
        box.toggled.connect(self._show)
        return box

    def _place(self) -> None:
        self.grid = FormGrid(4, 150)
        self.grid.add(self.start_field, self.day_field, self.crop_field, self.age_field, self.hours_field)
        self.grid.add(self.on_field, self.output_field, self.canopy_field)
        self.body.addWidget(self.grid)
        self.body.addWidget(self.answer_box)
        self.body.addWidget(self.words_label)
        lamps = FlowLayout(spacing_px=16)
        for box in self.lamp_boxes.values():
            lamps.addWidget(box)
        self.body.addLayout(lamps)
        self.body.addWidget(self.lamps_label)
        buttons = FlowLayout()
        buttons.addWidget(self.remove_button)
        buttons.add_gap()
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.save_button)
        self.remove_button.setVisible(not self._is_new)
        self.body.addLayout(buttons)

    def _connect(self) -> None:
        for field in self.grid.fields():
            field.value_changed.connect(self._show)
        self.canopy_field.editing_finished.connect(self._ask)
        self.save_button.clicked.connect(self.save)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            around = Qt.ShortcutContext.WidgetWithChildrenShortcut
            QShortcut(QKeySequence(keys), self, context=around).activated.connect(self.save)
        self.leave_button.clicked.connect(self.left)
        self.remove_button.clicked.connect(self._remove)

    def _show(self) -> None:
        by_age = self.start_field.value() == AT_AGE
        self.day_field.setVisible(not by_age)
        self.crop_field.setVisible(by_age)
        self.age_field.setVisible(by_age)
        self.words_label.setText(self._words())
        count = len(self.lamp_boxes)
        self.lamps_label.setText("" if count else say("The room has no lamp yet."))
        self._ask()

    def _words(self) -> str:
        hours = self.hours_field.value()
        if hours is None:
            return say("Say how many hours the lamps are on.")
        if not self._can_be():
            return ""
        words = span_words(hours, self.on_field.value())
        setting = self._setting()
        known = light_day(self._book.today, setting)
        return words if known.dli_mol is None else f"{words}: {dli_words(known)}"

    def _can_be(self) -> bool:
        """Whether hours, output and light are within what a lamp and a day have."""
        return not any(p.field in _QUANTITIES and not p.asks for p in self.step().problems())

    def _setting(self) -> LightSetting:
        """As the step would set it, with the light that is stated or, without, an estimate from the lamps."""
        step = self.step()
        setting = LightSetting(step.photoperiod_h, step.on_at, step.dimming_percent, step.lamp_ids)
        most = self._most(setting)
        stated = step.canopy_ppfd_umol
        return replace(setting, canopy=most if stated is None else CanopyLight(stated, CanopyWay.STATED))

    def _most(self, setting: LightSetting) -> CanopyLight | None:
        floor = None if self._book.view is None else self._book.view.room.floor_m2
        day = self.day_field.value() or self._book.today
        return ppfd_of_lamps(burning(self._lamps(), setting, day), floor, setting.output)

    def _ask(self) -> None:
        """More photons than the lamps can give on the floor."""
        if not self._can_be():
            return
        step = self.step()
        most = self._most(LightSetting(step.photoperiod_h, step.on_at, step.dimming_percent, step.lamp_ids))
        stated = step.canopy_ppfd_umol
        sentence = ""
        if stated is not None and most is not None and more_than_lamps_give(stated, most.ppfd_umol):
            sentence = say("The lamps can give {most} on this floor at most. Is it right?",
                           most=fixed(most.ppfd_umol, 0, "µmol/m²/s"))  # fmt: skip
        if sentence != self._asked:
            self.answer_box.setChecked(False)
        self._asked = sentence
        if sentence or not self.canopy_field.is_refused:
            self.canopy_field.show_question(sentence)
        self.answer_box.setVisible(bool(sentence))

    def _remove(self) -> None:
        self.removed.emit(self._before)
