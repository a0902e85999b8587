"""A day of the calendar, typed or chosen; and an optional time of day."""

from datetime import date, time, timedelta

from PySide6.QtCore import QDate, QEvent, QObject, QPoint, Qt
from PySide6.QtGui import QKeyEvent, QTextCharFormat
from PySide6.QtWidgets import QCalendarWidget, QFrame, QLineEdit, QToolButton, QVBoxLayout, QWidget

from growlog.desktop.look.icons import IconButton, keep_icon
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets.day_text import (
    NotADay,
    NotATime,
    day_text,
    parse_day,
    parse_time,
    time_text,
)
from growlog.desktop.look.widgets.field import Field
from growlog.words import say

_STEPS = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1, Qt.Key.Key_PageUp: 7, Qt.Key.Key_PageDown: -7}


class DayField(Field):
    """Takes a day in the locale's form or as 2026-01-18. Up and down keys go to the day after and before."""

    def __init__(
        self,
        label: str,
        day: date | None = None,
        earliest: date | None = None,
        latest: date | None = None,
        near: date | None = None,
        required: bool = False,
        name: str = "",
        beside: bool = False,
    ) -> None:
        """near: whose year is meant when none is typed, and where the calendar opens when the field is empty."""
        self.line = QLineEdit()
        super().__init__(label, self.line, "", name, beside)
        self.line.setMinimumWidth(104)
        self.calendar_button = IconButton("calendar", say("Choose a day"))
        self.row.insertWidget(self.row.indexOf(self.line) + 1, self.calendar_button)
        self.row.setSpacing(4)
        self._earliest = earliest
        self._latest = latest
        self._near = near
        self.required = required
        self._value: date | None = None
        self._popup: _CalendarPopup | None = None
        self.line.installEventFilter(self)
        self.line.textEdited.connect(self._typed)
        self.line.editingFinished.connect(self._finished)
        self.calendar_button.clicked.connect(self._open_calendar)
        self.set_value(day)

    def value(self) -> date | None:
        """The day; None where nothing, or nothing acceptable, stands."""
        return None if self.is_refused else self._value

    def set_value(self, day: date | None) -> None:
        """Shows a day without emitting value_changed."""
        self.line.setText(day_text(day))
        self._value = day
        self._judge(final=False)

    def set_range(self, earliest: date | None, latest: date | None) -> None:
        """Other first and last days from now on."""
        self._earliest = earliest
        self._latest = latest
        self._judge(final=bool(self.line.text()))

    def check(self) -> bool:
        """Judges what stands there as if typing had ended; false if it is refused."""
        self._read(final=True)
        return not self.is_refused

    def is_empty(self) -> bool:
        """Whether nothing stands there."""
        return not self.line.text().strip()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Up and down step by a day, page up and page down by a week."""
        if watched is self.line and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            step = _STEPS.get(Qt.Key(event.key()))
            if step is not None and self._start() is not None:
                self._choose(self._start(), step)
                return True
        return super().eventFilter(watched, event)

    def _start(self) -> date | None:
        return self._value or self._near

    def _choose(self, day: date | None, step: int = 0) -> None:
        if day is None:
            return
        self.set_value(day + timedelta(days=step))
        self.value_changed.emit()

    def _typed(self) -> None:
        self._read(final=False)
        self.value_changed.emit()

    def _finished(self) -> None:
        self._read(final=True)
        if self._value is not None:
            self.line.setText(day_text(self._value))
        self.editing_finished.emit()

    def _read(self, final: bool) -> None:
        try:
            self._value = parse_day(self.line.text(), self._near)
        except NotADay as problem:
            self._value = None
            self._say(str(problem) if final or self.is_refused else "", "")
            return
        self._judge(final)

    def _judge(self, final: bool) -> None:
        day = self._value
        if day is None:
            self.show_problem(say("A day is needed here.") if self.required and final else "")
        elif self._earliest is not None and day < self._earliest:
            self.show_problem(say("Not before {day}.", day=day_text(self._earliest)))
        elif self._latest is not None and day > self._latest:
            self.show_problem(say("Not after {day}.", day=day_text(self._latest)))
        else:
            self.clear_message()

    def _open_calendar(self) -> None:
        if self._popup is None:
            self._popup = _CalendarPopup(self)
            self._popup.calendar.clicked.connect(self._day_clicked)
            self._popup.calendar.activated.connect(self._day_clicked)
        self._popup.open_at(self.line.mapToGlobal(QPoint(0, self.line.height() + 2)), self._start())

    def _day_clicked(self, chosen: QDate) -> None:
        if self._popup is not None:
            self._popup.hide()
        self._choose(date(chosen.year(), chosen.month(), chosen.day()))
        self.editing_finished.emit()


class _CalendarPopup(QFrame):
    """A month to choose a day from."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self.setProperty("role", "floating")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(4, 4, 4, 4)
        self.calendar = QCalendarWidget()
        self.calendar.setVerticalHeaderFormat(QCalendarWidget.VerticalHeaderFormat.NoVerticalHeader)
        layout.addWidget(self.calendar)
        for button_name, icon_name in (("prevmonth", "previous-day"), ("nextmonth", "next-day")):
            button = self.calendar.findChild(QToolButton, f"qt_calendar_{button_name}")
            if button is not None:
                keep_icon(button, icon_name)
        theme_signal().changed.connect(self._tone)
        self._tone()

    def _tone(self) -> None:
        """Weekends in the second tone of the text instead of Qt's red, and room for the names of the days."""
        look = current()
        header, weekend = QTextCharFormat(), QTextCharFormat()
        header.setForeground(look.colour("mute"))
        header.setFontPointSize(max(7.0, 8.0 * look.scale))
        weekend.setForeground(look.colour("mute"))
        self.calendar.setHeaderTextFormat(header)
        for day in (Qt.DayOfWeek.Saturday, Qt.DayOfWeek.Sunday):
            self.calendar.setWeekdayTextFormat(day, weekend)
        self.calendar.setMinimumSize(look.px(300), look.px(230))

    def open_at(self, place: QPoint, day: date | None) -> None:
        """Opens below the field with a day chosen."""
        if day is not None:
            self.calendar.setSelectedDate(QDate(day.year, day.month, day.day))
        self.move(place)
        self.show()
        self.calendar.setFocus()


class TimeField(Field):
    """An optional time of day; 805 and 8.05 are read as 08:05."""

    def __init__(self, label: str, at: time | None = None, name: str = "", beside: bool = False) -> None:
        self.line = QLineEdit()
        super().__init__(label, self.line, "", name, beside)
        self.line.setMinimumWidth(64)
        self.line.setPlaceholderText(say("hh:mm"))
        self._value: time | None = None
        self.line.textEdited.connect(self._typed)
        self.line.editingFinished.connect(self._finished)
        self.set_value(at)

    def value(self) -> time | None:
        """The time of day; None where nothing, or nothing acceptable, stands."""
        return None if self.is_refused else self._value

    def set_value(self, at: time | None) -> None:
        """Shows a time of day without emitting value_changed."""
        self.line.setText(time_text(at))
        self._value = at
        self.clear_message()

    def check(self) -> bool:
        """Judges what stands there as if typing had ended; false if it is refused."""
        self._read(final=True)
        return not self.is_refused

    def is_empty(self) -> bool:
        """Whether nothing stands there."""
        return not self.line.text().strip()

    def _typed(self) -> None:
        self._read(final=self.is_refused)
        self.value_changed.emit()

    def _finished(self) -> None:
        self._read(final=True)
        if self._value is not None:
            self.line.setText(time_text(self._value))
        self.editing_finished.emit()

    def _read(self, final: bool) -> None:
        try:
            self._value = parse_time(self.line.text())
            self.clear_message()
        except NotATime:
            self._value = None
            self.show_problem(say("Write a time of day as 08:05.") if final else "")
