"""The dialog "I have just been in the room": keys at the scale, large targets, one change when it is written."""

from collections.abc import Callable, Iterable
from datetime import date, datetime

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from growlog.desktop.entry_form.display_units import METRIC
from growlog.desktop.look.restyle import set_look_property
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import DayField, DialogFrame, Rule, TextField, TextLabel, announce
from growlog.desktop.tally.check_section import CheckSection
from growlog.desktop.tally.counters_section import CountersSection
from growlog.desktop.tally.crop_rail import CropRail
from growlog.desktop.tally.figure_keys import FigureKeys
from growlog.desktop.tally.keys import DAY, FIRST_CROP_KEY, LAST_CROP_KEY, NOTE
from growlog.desktop.tally.letters import Letters
from growlog.desktop.tally.minutes_section import MinutesSection
from growlog.desktop.tally.offer_page import OfferPage
from growlog.desktop.tally.pick_section import PickSection
from growlog.desktop.tally.questions_panel import QuestionsPanel
from growlog.desktop.tally.tally_model import ReadCrops, TallyModel
from growlog.desktop.tally.touch import LARGE_TEXT, touch, with_key
from growlog.desktop.throttle import Throttle
from growlog.records.problems import Problem
from growlog.services.tally import Tally, entries_of
from growlog.services.tally.wording import crop_line, minutes_text
from growlog.words import say, say_count, show_day

KEEP_MS = 500
_SIZE_PX = QSize(900, 780)
_ENTERS = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class SessionTally(DialogFrame):
    """Stays open until `finish`. keep is called soon after each change and gives "" or why it could not be kept."""

    write_wanted = Signal(object)  # Tally
    written_off = Signal()

    def __init__(
        self,
        tally: Tally,
        read_crops: ReadCrops,
        now: Callable[[], datetime],
        keep: Callable[[Tally], str],
        *,
        today: date,
        system: str = METRIC,
        offered: Tally | None = None,
        offer: str = "",
        keep_ms: int = KEEP_MS,
        parent: QWidget | None = None,
    ) -> None:
        """offered: a tally that was not finished; offer: the sentence about it. today: the latest day it can be of."""
        super().__init__(say("Session tally"), "", parent, _SIZE_PX.width())
        self.setObjectName("sessionTally")
        self.setModal(False)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._keep = keep
        self._read_crops = read_crops
        self._kept = tally
        self._offered = offered
        self._today = today
        self._ended = False
        self._warned = False  # that closing would lose what stands here
        self._unkept = False  # the last state could not be kept
        self.model = TallyModel(tally, read_crops, now, today, system, self)
        self._focus_timer = QTimer(self)  # what was just unfolded has its place only after this turn
        self._focus_timer.setSingleShot(True)
        self._throttle = Throttle(self._keep_now, keep_ms, self)
        self._figure_keys = FigureKeys(self)
        self.day_field = DayField(
            with_key(say("Day"), DAY), tally.day, latest=today, near=today, required=True, name="day", beside=True
        )
        self.rail = CropRail(self.model)
        self.questions = QuestionsPanel(self.model)
        self.pick = PickSection(self.model, self._figure_keys)
        self.counters = CountersSection(self.model, self._figure_keys)
        self.check_section = CheckSection(self.model, self._figure_keys)
        self.note_field = TextField(with_key(say("Note for this crop"), NOTE), longest=10_000, name="note")
        self.minutes = MinutesSection(self.model, self._figure_keys)
        self.offer_page = OfferPage(offer, self._lines_of(offered))
        self.sections = QWidget()
        self.empty_label = TextLabel(say("No crop grows on this day. Choose another day."), "title", wraps=True)
        self.letters = Letters(self.model, self.pick, self.check_section, self.minutes, self.questions,
                               self.note_field.line.setFocus, self.day_field.line.setFocus)  # fmt: skip
        self.kept_label = TextLabel("", "small")
        self.kept_below_label = TextLabel("", "small", wraps=True)  # where the text is too large for the foot
        self.away_button = self.add_button(say("Put away"), name="putAway")
        self.write_button = self.add_button("", "primary", name="write")
        self._lay_out()
        self._connect()
        self._offer(offered is not None)
        self._show()

    def write(self) -> None:
        """Emits write_wanted, or goes to what still stands against it."""
        if self._offered is not None:
            return
        if self.model.tally.typed and not self.model.enter_weight():
            self.go_to_weight()
        elif self.model.tally.stopwatch.running and self.model.watch_is_doubtful:
            self.model.start_or_stop()  # says that its question is open
            self.questions.go_to_watch()
        elif self._fields_fit() and not self._goes_to_open_question():
            self._write_now()

    def finish(self) -> None:
        """It was written: closes, and keeps nothing."""
        self._ended = True
        self._throttle.cancel()
        self.accept()
        self.close()

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """The logbook refused it: nothing was written and everything stands here."""
        self.model.show_refused(list(problems))
        self._goes_to_open_question()

    def refuse(self, sentence: str) -> None:
        """It could not be written: says so above the buttons, and keeps what was typed."""
        self.set_note(sentence)

    def go_to_weight(self) -> None:
        """Back to the scale."""
        self.pick.line.setFocus(Qt.FocusReason.OtherFocusReason)
        self.scroll_area.ensureWidgetVisible(self.pick.line, 0, 80)

    def go_on(self) -> None:
        """Takes up the tally that was not finished."""
        if self._offered is not None:
            tally, self._offered = self._offered, None
            self._kept = tally
            self.model.take(tally)
            self._offer(False)

    def write_off(self) -> None:
        """Lets go of the tally that was not finished."""
        if self._offered is not None:
            self._offered = None
            self.written_off.emit()
            self._offer(False)

    def reject(self) -> None:
        """Put away: what stands here is kept and offered again."""
        if self._end():
            super().reject()
            self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Closing the window is putting away, too."""
        if self._end():
            super().closeEvent(event)
        else:
            event.ignore()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that no field took: crops, writing, the way back, and letters for the scale."""
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        place = event.key() - Qt.Key.Key_F1 + 1 - FIRST_CROP_KEY
        if event.key() in _ENTERS:
            self.write() if control else self._enter()
        elif event.key() == Qt.Key.Key_Escape:
            self._escape()
        elif self._offered is not None or control or not self.model.crops:
            super().keyPressEvent(event)
        elif 0 <= place <= LAST_CROP_KEY - FIRST_CROP_KEY:
            self._choose_place(place)
        elif event.text().isprintable() and event.text():
            self.go_to_weight()
            QApplication.sendEvent(self.pick.line, event)
        else:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """Wide enough for rail and counters; within the screen."""
        look, room = current(), self.screen().availableGeometry().size() - QSize(24, 48)
        return QSize(look.px(_SIZE_PX.width()), look.px(_SIZE_PX.height())).boundedTo(room)

    def _end(self) -> bool:
        """Keeps what stands here at once, not when the next interval ends. False, once, where that cannot be."""
        self._throttle.cancel()
        if self._ended or self._offered is not None:
            return True
        problem = self._keep(self.model.tally)
        self._ended = not problem or self._warned
        if not self._ended:
            self._warned = True
            self._say(say("This is not kept: {reason} Write it, or close again to lose it.", reason=problem), True)
        return self._ended

    def _enter(self) -> None:
        focus = self.focusWidget()
        if isinstance(focus, QPushButton):
            focus.click()
        elif self._offered is None:
            self.go_to_weight()

    def _escape(self) -> None:
        if self.pick.culls_open:
            self.pick.open_culls(False)
        elif self._offered is None and self.focusWidget() is not self.pick.line:
            self.go_to_weight()
        else:
            self.reject()

    def _write_now(self) -> None:
        if self.model.tally.stopwatch.running:
            self.model.start_or_stop()
        if entries_of(self.model.tally):
            self.write_wanted.emit(self.model.tally)
        else:
            self.model.refuse(say("Nothing is tallied yet, so there is nothing to write."))

    def _goes_to_open_question(self) -> bool:
        problem = self.model.first_open()
        if problem is None:
            return False
        self.model.choose(problem.crop_id)
        self.scroll_area.ensureVisible(0, 0)
        self.go_to_weight()
        name = self.model.name_of(problem.crop_id)
        if problem.asks:
            self._say(say("{crop}: answer the question above first. Y says that it is right.", crop=name), True)
        else:
            self._say(f"{name}: {problem.sentence}", True)
        return True

    def _fields_fit(self) -> bool:
        fit = all([self.counters.time_field.check(), self.check_section.check(), self.minutes.check(),
                   self.day_field.check()])  # fmt: skip
        if not fit:
            self.model.refuse(say("Look at the field that is marked."))
        return fit

    def _choose(self, crop_id: str) -> None:
        if self._fields_fit():
            self.model.choose(crop_id)

    def _choose_place(self, place: int) -> None:
        if self._fields_fit():
            self.model.choose_place(place)

    def _choose_next(self, by: int) -> None:
        if self._fields_fit():
            self.model.choose_next(by)

    def _focus_moved(self, _old: QWidget | None, new: QWidget | None) -> None:
        if new is not None and self.sections.isAncestorOf(new):
            self._focus_timer.start()

    def _show_focus(self) -> None:
        focus = self.focusWidget()
        if focus is not None and self.sections.isAncestorOf(focus):
            self.scroll_area.ensureWidgetVisible(focus, 0, 80)

    def _day_chosen(self) -> None:
        day = self.day_field.value()
        if day is not None:
            self.model.set_day(day)

    def _note_typed(self) -> None:
        self.model.set_note(self.note_field.line.text())

    def _changed(self) -> None:
        self._show()
        if self._offered is None and (self.model.tally != self._kept or self._throttle.is_waiting):
            self._throttle.call(self.model.tally)

    def _keep_now(self, tally: Tally) -> None:
        self._kept = tally
        problem = self._keep(tally)
        self._unkept = bool(problem)
        self._show()
        if problem:
            self._say(say("This is not kept: {reason} Write it before you close.", reason=problem), True)

    def _say(self, sentence: str, refused: bool) -> None:
        """Beside the weight field while that is in hand, else above the buttons."""
        at_scale = self.focusWidget() in (self.pick.line, None)
        self.pick.show_said(sentence if at_scale else "", refused and at_scale)
        self.set_note("" if at_scale else sentence)
        set_look_property(self.note_label, "tone", "problem" if refused else "")
        announce(self.pick.said_label if at_scale else self.note_label, sentence)

    def _show(self) -> None:
        model = self.model
        if self.note_field.line.text() != model.crop.note:
            self.note_field.set_value(model.crop.note)
        if self.day_field.value() != model.tally.day and not self.day_field.line.hasFocus():
            self.day_field.set_value(model.tally.day)
        count = len(entries_of(model.tally))
        words = say_count("Write {n} entry", "Write {n} entries", count) if count else say("Write")
        self.write_button.setText(with_key(words, "Ctrl \u23ce"))
        left = model.tally.left_over_s(model.now()) or 0
        kept = say("Kept as you go. Nothing is in the log before you write it.")
        if self._unkept:
            kept = say("Not kept at present, and not in the log before you write it.")
        over = say("{minutes} is given to no crop and stays out.", minutes=minutes_text(left)) if left > 0 else ""
        for label in (self.kept_label, self.kept_below_label):
            label.setText("\n".join(part for part in (kept, over) if part))
        self._show_beginning()
        self._show_sections()

    def _show_beginning(self) -> None:
        at = self.model.tally.started_at
        time = f"{at:%H:%M}"
        begun = say("begun {time}", time=time)
        if at.date() != self._today:
            begun = say("begun {day}, {time}", day=show_day(at.date()), time=time)
        self.subtitle_label.setText(begun)

    def _show_sections(self) -> None:
        offered, has_crops = self._offered is not None, bool(self.model.crops)
        self.offer_page.setVisible(offered)
        self.sections.setVisible(not offered and has_crops)
        self.empty_label.setVisible(not offered and not has_crops)
        large = current().scale > LARGE_TEXT
        self.kept_label.setVisible(not large)
        self.kept_below_label.setVisible(large)
        self.rail.setVisible(not offered)
        self.day_field.setVisible(not offered)
        self.write_button.setEnabled(not offered)

    def _offer(self, is_open: bool) -> None:
        self._show()
        if is_open:
            self.offer_page.go_on_button.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.go_to_weight()

    def _lines_of(self, tally: Tally | None) -> list[str]:
        if tally is None:
            return []
        rows = self._read_crops(tally.day, [c.crop_id for c in tally.crops])
        names = {row.crop_id: row.name for row in rows}
        return [f"{names.get(c.crop_id, say('A crop'))}: {crop_line(c)}" for c in tally.crops]

    def _connect(self) -> None:
        line, model = self.pick.line, self.model
        line.entered.connect(model.enter_weight)
        line.strike_last.connect(model.strike_last)
        line.letter.connect(self.letters.take)
        line.letter_after_figures.connect(model.letter_after_figures)
        line.turned.connect(self._choose_next)
        self._figure_keys.done.connect(self.go_to_weight)
        self._figure_keys.refused.connect(model.refuse)
        self.rail.crop_chosen.connect(self._choose)
        self.day_field.value_changed.connect(self._day_chosen)
        self.note_field.value_changed.connect(self._note_typed)
        self.offer_page.go_on.connect(self.go_on)
        self.offer_page.write_off.connect(self.write_off)
        self.away_button.clicked.connect(self.reject)
        self.write_button.clicked.connect(self.write)
        self._focus_timer.timeout.connect(self._show_focus)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._focus_moved)
        model.changed.connect(self._changed)
        model.said.connect(self._say)

    def _lay_out(self) -> None:
        for widget in (self.day_field.line, self.day_field.calendar_button, self.note_field.line,
                       self.away_button, self.write_button):  # fmt: skip
            touch(widget)
        for button in (self.away_button, self.write_button):
            button.setDefault(False)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.note_field.line.setProperty("words", True)
        self.header_row.addWidget(self.day_field)
        self.buttons.insert_before_gap(self.kept_label)
        column = QVBoxLayout(self.sections)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        for part in (self.questions, self.pick, Rule(), self.counters, Rule(), self.check_section, self.note_field,
                     Rule(), self.minutes, self.kept_below_label):  # fmt: skip
            column.addWidget(part)
        for page in (self.offer_page, self.empty_label, self.sections):
            self.body.addWidget(page)
        self.body.addStretch(1)
        outer = self.layout()
        assert isinstance(outer, QVBoxLayout)
        outer.removeWidget(self.scroll_area)
        middle = QHBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.rail)
        middle.addWidget(self.scroll_area, 1)
        outer.insertLayout(1, middle, 1)
