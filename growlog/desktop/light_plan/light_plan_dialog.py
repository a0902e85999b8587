"""The light programme of a room: its steps by date or plant age, and what the crops there get of it today."""

from collections.abc import Iterable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.light_plan.step_form import StepForm
from growlog.desktop.light_plan.wording import lit_words, midnight_rule, span_words
from growlog.desktop.look.widgets import Banner, Button, ChoiceField, EmptyState, SectionTitle, TextLabel
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.desktop.tall_dialog import TallDialog
from growlog.records.display import THIN, fixed, plain
from growlog.records.light_plan import LightStep
from growlog.records.problems import Problem
from growlog.services.light.plan_book import LightPlanBook
from growlog.services.light.steps import LightStepView, new_step
from growlog.words import say, show_day, show_number


class LightPlanDialog(TallDialog):
    """Shows a book once it was read; a step is saved or taken out by itself, as one change."""

    saved = Signal(object)
    removed = Signal(object)
    room_wanted = Signal(str)
    lamps_wanted = Signal()

    def __init__(self, writable: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(say("Light programme"), "", parent, 820)
        self.setObjectName("lightPlan")
        self._writable = writable
        self.book: LightPlanBook | None = None
        self.form: StepForm | None = None
        self.room_field = ChoiceField(say("Room"), [], name="room", beside=True)
        self.banner = Banner("", "asks", can_close=False)
        self.today_title = SectionTitle(say("Today"))
        self.today_column = QVBoxLayout()
        columns = [
            Column(say("From")), Column(say("Hours"), True, 72), Column(say("On"), width_px=220),
            Column(say("Output"), True, 72), Column(say("Canopy"), True, 116), Column(say("Lamps"), width_px=130),
        ]  # fmt: skip
        self.table = PlainTable(columns, say("Steps of the light programme"), "lightSteps", 8)
        self.empty = EmptyState("", say("Add a step…"), name="emptyLightPlan")
        self.more_button = Button(say("Add a step"), "", "plus", "addStep")
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self._fill_body()
        self._connect()
        self._show_parts()

    def show_book(self, book: LightPlanBook) -> None:
        """All anew; a step that is being typed stays."""
        self.book = book
        chosen = None if book.view is None else book.view.room.id
        self.room_field.set_choices([(room.id, room.name) for room in book.rooms], chosen)
        self.set_title(say("Light programme"), "" if book.view is None else book.view.room.name)
        self.table.show_rows([_row(view, book) for view in book.steps])
        self._show_today(book)
        questions = dict.fromkeys(question for lit in book.lit for question in lit.questions)
        self.banner.show_message("\n".join(questions), "asks")
        self._show_parts()

    def add(self) -> None:
        """A form for another step, from today on."""
        if self.book is not None and self.book.view is not None:
            self._open(new_step(self.book.view.room.id, self.book.today), is_new=True)

    def set_waiting(self, waiting: bool) -> None:
        """While a step is being written nothing of it can be changed."""
        self.set_note(say("Writing…") if waiting else "")
        if self.form is not None:
            self.form.setEnabled(not waiting)

    def close_form(self) -> None:
        """Puts the form away."""
        if self.form is not None:
            self.form.hide()
            self.form.deleteLater()
            self.form = None
            self.table.clearSelection()
        self._show_parts()

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Why it was not written."""
        if self.form is not None:
            self.form.show_problems(problems)

    def _fill_body(self) -> None:
        self.today_column.setSpacing(4)
        self.body.addWidget(self.room_field, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(self.banner)
        self.body.addWidget(self.today_title)
        self.body.addLayout(self.today_column)
        self.body.addWidget(SectionTitle(say("Steps")))
        self.body.addWidget(TextLabel(midnight_rule(), "small", wraps=True))
        self.body.addWidget(self.table)
        self.body.addWidget(self.empty)
        self.body.addWidget(self.more_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addStretch(1)

    def _connect(self) -> None:
        self.room_field.value_changed.connect(self._room_chosen)
        self.table.row_chosen.connect(self._open_chosen)
        self.more_button.clicked.connect(self.add)
        self.empty.chosen.connect(self._begin)
        self.close_button.clicked.connect(self.close)

    def _show_today(self, book: LightPlanBook) -> None:
        while (item := self.today_column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for lit in book.lit:
            self.today_column.addWidget(TextLabel(lit_words(lit), wraps=True))
        if not book.lit and book.view is not None:
            self.today_column.addWidget(TextLabel(say("No crop stands in this room today."), "small"))

    def _room_chosen(self) -> None:
        self.close_form()
        self.room_wanted.emit(self.room_field.value() or "")

    def _begin(self) -> None:
        if self.book is not None and self.book.view is None:
            self.lamps_wanted.emit()
        else:
            self.add()

    def _open_chosen(self, key: str) -> None:
        found = [v.step for v in self.book.steps if v.step.id == key] if self.book is not None else []
        if found and self._writable and (self.form is None or self.form.step_id != key):
            self._open(found[0], is_new=False)

    def _open(self, step: LightStep, *, is_new: bool) -> None:
        if self.book is None:
            return
        if self.form is not None:
            self.form.hide()
            self.form.deleteLater()
        self.form = StepForm(step, is_new, self.book)
        self.form.saved.connect(self.saved)
        self.form.removed.connect(self.removed)
        self.form.left.connect(self.close_form)
        self.body.insertWidget(self.body.indexOf(self.more_button), self.form)
        self.form.show()
        self._show_parts()
        if is_new:
            self.form.hours_field.setFocus()
        self.bring_into_view(self.form)

    def _show_parts(self) -> None:
        book = self.book
        known = book is not None and book.view is not None
        has_any = bool(self.table.rows())
        self.room_field.setVisible(book is not None and len(book.rooms) > 1)
        self.banner.setVisible(bool(self.banner.sentence))
        self.today_title.setVisible(known)
        self.table.setVisible(has_any)
        self.more_button.setVisible(has_any and self.form is None and self._writable)
        self.empty.setVisible(book is not None and not has_any and self.form is None)
        if known:
            sentence = say("No step yet. Say from when on the lamps burn how many hours; the board's light follows it.")
            self.empty.set_sentence(sentence, say("Add a step…") if self._writable else "")
        else:
            self.empty.set_sentence(say("There is no room yet."), say("Open the room…"))


def _row(view: LightStepView, book: LightPlanBook) -> Row:
    step = view.step
    names = {crop.id: crop.name for crop in book.crops}
    if step.from_day is not None:
        start = show_day(step.from_day)
    else:
        crop = names.get(step.crop_id or "", say("a crop that never stood here"))
        start = say("day {age} of {crop}", age=step.from_age, crop=crop)
        start += f", {show_day(view.day)}" if view.day is not None else ""
    output = "" if step.dimming_percent is None else f"{show_number(step.dimming_percent, 0)}{THIN}%"
    canopy = "" if step.canopy_ppfd_umol is None else fixed(step.canopy_ppfd_umol, 0, "µmol/m²/s")
    cells = (start, plain(step.photoperiod_h, "h"), span_words(step.photoperiod_h, step.on_at), output, canopy,
             _lamps(step, book))  # fmt: skip
    return Row(step.id, cells, mute=view.day is None)


def _lamps(step: LightStep, book: LightPlanBook) -> str:
    lamps = {} if book.view is None else {lamp.id: lamp.name for lamp in book.view.lamps}
    if not step.lamp_ids:
        return say("all")
    return ", ".join(lamps.get(lamp_id, "?") for lamp_id in step.lamp_ids)
