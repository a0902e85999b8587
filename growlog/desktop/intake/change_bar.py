"""What can be changed about the chosen photos: their day, their crop, the clock, whether they go in."""

from collections.abc import Sequence
from datetime import date, timedelta

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import (
    Button,
    ChoiceField,
    DayField,
    FlowLayout,
    NumberField,
    TextLabel,
    check_all,
)
from growlog.records.crop import Crop
from growlog.words import say, say_count


class ChangeBar(QWidget):
    """Says to which photos the changes go, and emits them."""

    day_set = Signal(object)
    crop_set = Signal(str)
    leave_out_wanted = Signal()
    as_read_wanted = Signal()
    shift_wanted = Signal(object)

    def __init__(self, crops: Sequence[Crop], today: date | None = None) -> None:
        super().__init__()
        self.scope_label = TextLabel("", "strong", wraps=True)
        self.day_field = DayField(say("Day"), near=today, name="trayDay", beside=True)
        self.day_button = Button(say("Set day"), name="setDay")
        self._crop_ids = [c.id for c in crops]
        named = [(c.id, _with_figure(number, c.name)) for number, c in enumerate(crops, 1)]
        self.crop_field = ChoiceField(say("Crop"), named, name="trayCrop", beside=True)
        self.crop_field.box.setToolTip(say("In the list, the figure before a crop's name puts the chosen photos to it"))
        self.crop_button = Button(say("Set crop"), name="setCrop")
        self.leave_out_button = Button(say("Leave out"), name="leaveOut")
        self.day_field.line.setMaximumWidth(current().px(112))
        self.as_read_button = Button(say("Day as read"), name="asRead")
        self.as_read_button.setToolTip(say("Takes back what was typed or shifted"))
        self.shift_button = Button(say("Shift the clock…"), name="openShift")
        self.shift_button.setCheckable(True)
        self.shift_panel = ShiftPanel()
        self.shift_panel.hide()
        self._place()
        self.day_button.clicked.connect(self._set_day)
        self.day_field.line.returnPressed.connect(self._set_day)
        self.crop_button.clicked.connect(self._set_crop)
        self.leave_out_button.clicked.connect(self._leave_out)
        self.as_read_button.clicked.connect(self._as_read)
        self.shift_button.toggled.connect(self.shift_panel.setVisible)
        self.shift_panel.shift_wanted.connect(self.shift_wanted)

    def show_scope(self, chosen: int, total: int, leaves_out: bool) -> None:
        """How many photos are chosen, and whether leaving out or taking back is what can be done with them."""
        if chosen:
            words = say_count("{n} photo chosen", "{n} photos chosen", chosen)
        else:
            words = say("Choose photos in the list to change them; Ctrl+A chooses all.")
        self.scope_label.setText(words)
        for widget in (
            self.day_field,
            self.day_button,
            self.crop_field,
            self.crop_button,
            self.leave_out_button,
            self.as_read_button,
        ):
            widget.setEnabled(chosen > 0)
        self.leave_out_button.setText(say("Leave out") if leaves_out or not chosen else say("Take back in"))
        self.shift_panel.show_scope(chosen, total)

    def crop_of_figure(self, figure: int) -> str | None:
        """The crop that a figure key puts the chosen photos to; None where the list is shorter."""
        return self._crop_ids[figure - 1] if figure <= len(self._crop_ids) else None

    def _place(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.scope_label)
        row = FlowLayout()
        for widget in (
            self.day_field,
            self.day_button,
            self.crop_field,
            self.crop_button,
            self.leave_out_button,
            self.as_read_button,
            self.shift_button,
        ):
            row.addWidget(widget)
        column.addLayout(row)
        column.addWidget(self.shift_panel)

    def _set_day(self) -> None:
        self.day_field.required = True
        day = self.day_field.value() if self.day_field.check() else None
        self.day_field.required = False
        if day is not None:
            self.day_set.emit(day)

    def _set_crop(self) -> None:
        crop_id = self.crop_field.value() if self.crop_field.check() else None
        if crop_id is not None:
            self.crop_set.emit(crop_id)

    def _leave_out(self) -> None:
        self.leave_out_wanted.emit()

    def _as_read(self) -> None:
        self.as_read_wanted.emit()


class ShiftPanel(QWidget):
    """By how much a camera's clock was wrong: later or earlier by days, hours, minutes."""

    shift_wanted = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.direction_field = ChoiceField(
            say("Move the time"),
            [("later", say("later, the clock was slow")), ("earlier", say("earlier, the clock was fast"))],
            "later",
            name="shiftDirection",
            beside=True,
        )
        self.direction_field.box.setMinimumContentsLength(22)
        self.days_field = NumberField(say("by"), say("days"), 0, 20000, name="shiftDays", beside=True)
        self.hours_field = NumberField("", say("hours"), 0, 9999, name="shiftHours", beside=True)
        self.minutes_field = NumberField("", say("minutes"), 0, 9999, name="shiftMinutes", beside=True)
        self.button = Button("", name="shift")
        row = FlowLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        for widget in (self.direction_field, *self._numbers(), self.button):
            row.addWidget(widget)
        for field in self._numbers():
            field.line.setMaximumWidth(current().px(64))
        self.button.clicked.connect(self._shift)
        for field in self._numbers():
            field.line.returnPressed.connect(self._shift)

    def show_scope(self, chosen: int, total: int) -> None:
        """To how many photos the shift goes; with none chosen, to all."""
        if chosen:
            self.button.setText(say_count("Shift {n} photo", "Shift {n} photos", chosen))
        else:
            self.button.setText(say("Shift all {n}", n=total))

    def amount(self) -> timedelta:
        """By how much, negative for earlier."""
        days, hours, minutes = (field.value() or 0 for field in self._numbers())
        by = timedelta(days=days, hours=hours, minutes=minutes)
        return -by if self.direction_field.value() == "earlier" else by

    def _numbers(self) -> tuple[NumberField, NumberField, NumberField]:
        return self.days_field, self.hours_field, self.minutes_field

    def _shift(self) -> None:
        if check_all(list(self._numbers())) and self.amount():
            self.shift_wanted.emit(self.amount())


def _with_figure(number: int, name: str) -> str:
    return f"{number}  {name}" if number <= 9 else name
