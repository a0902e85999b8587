"""One room in the room's dialog: its floor and zone, and its parts behind a switch."""

from dataclasses import replace
from functools import cache, partial
from typing import Any
from zoneinfo import available_timezones

from PySide6.QtCore import QTimeZone
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.cautions_box import CautionsBox
from growlog.desktop.crop_form.word_field import WordField
from growlog.desktop.look.widgets import FormGrid, SegmentSwitch, TextField, check_all, limited_number_field
from growlog.desktop.room.device_card import DeviceCard
from growlog.desktop.room.lamp_card import LampCard
from growlog.desktop.room.places_section import PlacesSection
from growlog.desktop.room.thing_cards import TankCard
from growlog.desktop.room.things_section import ThingsSection
from growlog.records.problems import Problem
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.services.cautions import CautionTopic
from growlog.services.open_logbook import new_id
from growlog.services.room_changes import Removable, RoomBook, RoomRecord
from growlog.services.rooms import RoomView
from growlog.words import say

LAMPS, DEVICES, TANKS, CROPS, CAUTIONS = "lamps", "devices", "tanks", "crops", "cautions"


class RoomPage(QWidget):
    """All of a room; changed_records() and removed_records() tell what is to be saved."""

    def __init__(self, book: RoomBook, view: RoomView | None = None) -> None:
        super().__init__()
        self.is_new = view is None
        self._room = view.room if view is not None else Room(new_id(), "", zone=system_zone())
        self._book = book
        self.name_field = TextField(say("Name"), self._room.name, required=True, name="name")
        self.floor_field = limited_number_field("floor_m2")
        self.floor_field.set_value(self._room.floor_m2)
        sentence = say("Choose a time zone from the list.")
        self.zone_field = WordField(say("Time zone"), _zones(), self._room.zone, "zone", none_but_these=sentence)
        given = view or RoomView(self._room, (), ())
        self.lamps = self._lamps(given)
        self.devices = self._devices(given)
        self.tanks = self._tanks(given)
        placements = book.placements_in(self._room.id)
        self.places = PlacesSection(self._room, placements, book.crops, given.tanks, book.today)
        self.cautions = CautionsBox(list(CautionTopic), 9, sources=True)
        self.parts: dict[str, QWidget] = {
            LAMPS: self.lamps, DEVICES: self.devices, TANKS: self.tanks, CROPS: self.places, CAUTIONS: self.cautions,
        }  # fmt: skip
        words = {LAMPS: say("Lamps"), DEVICES: say("Devices"), TANKS: say("Tanks"), CROPS: say("Crops"),
                 CAUTIONS: say("Cautions")}  # fmt: skip
        self.switch = SegmentSwitch(list(words.items()), LAMPS, say("Part of the room"), wraps=True)
        self._place()
        self.switch.value_changed.connect(self.show_part)
        self.show_part(LAMPS)

    @property
    def room_id(self) -> str:
        """Whose page it is."""
        return self._room.id

    def room(self) -> Room:
        """What stands in the fields of the room itself."""
        return replace(
            self._room,
            name=self.name_field.value(),
            floor_m2=self.floor_field.value(),
            zone=self.zone_field.value(),
            energy_sharing=self.places.sharing(),
        )

    def show_part(self, key: str) -> None:
        """One of the parts behind the switch."""
        self.switch.set_value(key)
        for name, part in self.parts.items():
            part.setVisible(name == key)

    def changed_records(self) -> list[RoomRecord]:
        """The room first, then what is in it."""
        found: list[RoomRecord] = [self.room()] if self.is_new or self.room() != self._room else []
        for section in (self.lamps, self.devices, self.tanks):
            found += section.changed_things()
        return found + self.places.changed_placements()

    def removed_records(self) -> list[Removable]:
        """What was taken off."""
        things = [*self.lamps.removed, *self.devices.removed, *self.tanks.removed]
        return [*things, *self.places.removed]

    def check(self) -> bool:
        """Whether all can be taken; shows the part with the first field that is refused and goes there."""
        fits = check_all([self.name_field, self.floor_field, self.zone_field])
        for key, part in ((LAMPS, self.lamps), (DEVICES, self.devices), (TANKS, self.tanks), (CROPS, self.places)):
            if not part.check() and fits:
                fits = False
                self.show_part(key)
                part.check()
        return fits

    def show_problems(self, problems: list[Problem]) -> None:
        """What was refused when it was to be written; most was said beside its field before."""
        fields = {"name": self.name_field, "floor_m2": self.floor_field, "zone": self.zone_field}
        for problem in problems:
            fields.get(problem.field, self.name_field).show_problem(problem.sentence)

    def _place(self) -> None:
        grid = FormGrid(3)
        grid.add(self.name_field, self.floor_field, self.zone_field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(grid)
        column.addWidget(self.switch)
        for part in self.parts.values():
            column.addWidget(part)
        column.addStretch(1)

    def _lamps(self, view: RoomView) -> ThingsSection:
        words = say("Add a lamp"), say("No lamp yet. Without lamps neither light nor electricity can be worked out.")
        below = CautionsBox([CautionTopic.LAMPS, CautionTopic.MAINS, CautionTopic.HEAT])
        new = partial(_new_lamp, self._room.id)
        return ThingsSection(view.lamps, self._lamp_card, new, words, "addLamp", below)

    def _devices(self, view: RoomView) -> ThingsSection:
        words = say("Add a device"), say("No fan, pump or heater yet.")
        new = partial(_new_device, self._room.id)
        return ThingsSection(
            view.devices, self._device_card, new, words, "addDevice", CautionsBox([CautionTopic.MAINS], 2)
        )

    def _tanks(self, view: RoomView) -> ThingsSection:
        words = say("Add a tank"), say("No tank yet.")
        return ThingsSection(view.tanks, TankCard, partial(_new_tank, self._room.id), words, "addTank")

    def _lamp_card(self, lamp: Any, is_new: bool) -> LampCard:
        return LampCard(lamp, is_new, self._book.currency, self._book.today, self._book.bulbs.get(lamp.id))

    def _device_card(self, device: Any, is_new: bool) -> DeviceCard:
        return DeviceCard(device, is_new, self._book.today)


def _new_lamp(room_id: str) -> Lamp:
    return Lamp(new_id(), room_id, "")


def _new_device(room_id: str) -> Device:
    return Device(new_id(), room_id, "")


def _new_tank(room_id: str) -> Tank:
    return Tank(new_id(), room_id, "")


@cache
def _zones() -> tuple[str, ...]:
    return tuple(sorted(available_timezones()))


def system_zone() -> str:
    """The time zone that the system is set to, UTC where it does not say."""
    zone = bytes(QTimeZone.systemTimeZoneId().data()).decode()
    return zone if zone in _zones() else "UTC"
