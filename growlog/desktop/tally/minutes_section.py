"""Labour of the session: a running stopwatch or typed minutes, and how they are shared over the crops."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import FlowLayout, TextLabel
from growlog.desktop.look.widgets.number_field import NumberField, limited_number_field
from growlog.desktop.tally.figure_keys import FigureKeys
from growlog.desktop.tally.keys import MINUTES, SHARE, STOPWATCH
from growlog.desktop.tally.tally_model import TallyModel
from growlog.desktop.tally.touch import touch, touch_button, with_key
from growlog.services.tally.wording import minutes_line
from growlog.words import say

_TICK_MS = 1000


class MinutesSection(QWidget):
    """Start, stop, type, share; and below it where the minutes went."""

    def __init__(self, model: TallyModel, keys: FigureKeys) -> None:
        super().__init__()
        self._model = model
        self._shown_for = ""
        self.watch_button = touch_button("", icon="clock", name="stopwatch")
        self.watch_label = TextLabel("", "figure")
        self.watch_label.setAccessibleName(say("Time on the stopwatch"))
        whole, here = say("Minutes of the session"), with_key(say("Minutes for this crop"), MINUTES)
        self.session_field = limited_number_field("labour_minutes", whole, "sessionMinutes")
        self.here_field = limited_number_field("labour_minutes", here, "minutes")
        self.share_button = touch_button(with_key(say("Share equally"), SHARE), name="share")
        self.where_label = TextLabel("", "", wraps=True)
        self._timer = QTimer(self)
        self._timer.setInterval(_TICK_MS)
        for field in (self.session_field, self.here_field):
            touch(field.line)
            keys.watch(field.line)
        self._place()
        self.watch_button.clicked.connect(model.start_or_stop)
        self.share_button.clicked.connect(model.share_equally)
        self.session_field.value_changed.connect(self._session_typed)
        self.here_field.value_changed.connect(self._here_typed)
        self._timer.timeout.connect(self._tick)
        model.changed.connect(self.show_tally)
        self.show_tally()

    def go_to_minutes(self) -> None:
        """To the minutes of the crop in hand."""
        self.here_field.line.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def check(self) -> bool:
        """Whether the minutes can be read."""
        return all([self.session_field.check(), self.here_field.check()])

    def show_tally(self) -> None:
        """Draws what the model holds."""
        tally, crop = self._model.tally, self._model.crop
        running = tally.stopwatch.running
        self.watch_button.setText(with_key(say("Stop") if running else say("Start the stopwatch"), STOPWATCH))
        if running != self._timer.isActive():
            self._timer.start() if running else self._timer.stop()
        other_crop, self._shown_for = crop.crop_id != self._shown_for, crop.crop_id
        self._show_in(self.session_field, tally.minutes_typed, False)
        self._show_in(self.here_field, crop.minutes, other_crop)
        self._tick()

    def _show_in(self, field: NumberField, minutes: int | None, by_force: bool) -> None:
        if by_force or (not field.line.hasFocus() and not field.is_refused and field.value() != minutes):
            field.set_value(minutes)

    def _tick(self) -> None:
        model = self._model
        now, tally = model.now(), model.tally
        minutes, seconds = divmod(tally.stopwatch.elapsed_s(now), 60)
        self.watch_label.setText(f"{minutes}:{seconds:02d}")
        named = [(model.name_of(c.crop_id), c) for c in tally.crops]
        line = minutes_line(named, tally.chosen, tally.left_over_s(now))
        self.where_label.setText(say("Minutes: {where}", where=line) if line else say("Minutes: none given yet"))

    def _session_typed(self) -> None:
        if not self.session_field.is_refused:
            value = self.session_field.value()
            self._model.set_session_minutes(None if value is None else int(value))

    def _here_typed(self) -> None:
        if not self.here_field.is_refused:
            value = self.here_field.value()
            self._model.set_minutes(None if value is None else int(value))

    def _place(self) -> None:
        row = FlowLayout(None, 16)
        for widget in (_level(self.watch_button, self.watch_label), self.session_field, self.here_field,
                       _level(self.share_button)):  # fmt: skip
            row.addWidget(widget)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(row)
        column.addWidget(self.where_label)


def _level(*widgets: QWidget) -> QWidget:
    """Widgets in a row, level with the editors of fields that have their label above."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    column.addWidget(TextLabel("\u00a0", "field-label"))
    row = QHBoxLayout()
    row.setSpacing(12)
    for widget in widgets:
        row.addWidget(widget)
    column.addLayout(row)
    return holder
