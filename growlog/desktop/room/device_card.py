"""A fan, a pump, a heater or the like as a card of fields."""

from dataclasses import replace
from datetime import date

from growlog.desktop.look.widgets import ChoiceField, DayField, TextLabel, limited_number_field
from growlog.desktop.room.thing_cards import ThingCard
from growlog.records.display import fixed
from growlog.records.room import Device, DeviceSort
from growlog.words import say

ALWAYS, WITH_LAMPS, HOURS = "always", "with-lamps", "hours"


class DeviceCard(ThingCard[Device]):
    """What draws power beside the lamps, when, and how much of that time."""

    def __init__(self, device: Device, is_new: bool, today: date) -> None:
        super().__init__(device, is_new, say("Remove it"))
        sorts = [(sort.value, say(sort.label)) for sort in DeviceSort]
        self.sort_field = ChoiceField(say("Sort"), sorts, device.sort, name="sort")
        self.watts_field = limited_number_field("device_w", say("At the wall, all of them"))
        self.watts_field.set_value(device.device_w)
        times = [(ALWAYS, say("around the clock")), (WITH_LAMPS, say("with the lamps")), (HOURS, say("hours a day"))]
        self.time_field = ChoiceField(say("Runs"), times, _time_of(device), name="time")
        self.hours_field = limited_number_field("hours_per_day")
        self.hours_field.set_value(device.hours_per_day)
        self.duty_field = limited_number_field("duty_percent", say("Of that time"))
        self.duty_field.set_value(device.duty_percent)
        self.duty_field.line.setPlaceholderText("100")
        self.from_field = DayField(say("From"), device.from_day, near=today, name="from_day")
        self.until_field = DayField(say("Until"), device.until_day, near=today, name="until_day")
        self.grid.add(self.sort_field, self.watts_field, self.time_field, self.hours_field, self.duty_field)
        self.grid.add(self.from_field, self.until_field)
        self.day_label = TextLabel("", "small", wraps=True)
        self.body.insertWidget(1, self.day_label)
        for field in self.fields():
            field.value_changed.connect(self._show_day)
        self._show_day()

    def thing(self) -> Device:
        """The device in the fields."""
        time = self.time_field.value()
        return replace(
            self.before,
            name=self.name_field.value(),
            sort=DeviceSort(self.sort_field.value() or DeviceSort.FAN),
            device_w=self.watts_field.value(),
            hours_per_day=self.hours_field.value() if time == HOURS else None,
            with_lamps=time == WITH_LAMPS,
            duty_percent=self.duty_field.value(),
            from_day=self.from_field.value(),
            until_day=self.until_field.value(),
        )

    def check(self) -> bool:
        """Also that hours are stated where they count, and that it does not end before it begins."""
        fits = super().check()
        if self.time_field.value() == HOURS and self.hours_field.value() is None and not self.hours_field.is_refused:
            self.hours_field.show_problem(say("Say how many hours a day."))
        begins, ends = self.from_field.value(), self.until_field.value()
        if begins is not None and ends is not None and ends < begins:
            self.until_field.show_problem(say("It ends before it begins."))
        return fits and not any(field.is_refused for field in self.fields())

    def _show_day(self) -> None:
        self.hours_field.setEnabled(self.time_field.value() == HOURS)
        self.day_label.setText(_day_words(self.thing()))
        self._edited()


def _time_of(device: Device) -> str:
    if device.with_lamps:
        return WITH_LAMPS
    return ALWAYS if device.hours_per_day is None else HOURS


def _day_words(device: Device) -> str:
    if device.device_w is None:
        return say("Without watts it counts for nothing.")
    watts = device.device_w * (1 if device.duty_percent is None else device.duty_percent / 100)
    if device.with_lamps:
        return say("{watts} on average while the lamps are on.", watts=fixed(watts, 1, "W"))
    hours = 24 if device.hours_per_day is None else device.hours_per_day
    return say("{energy} a day.", energy=fixed(watts * hours / 1000, 2, "kWh"))
