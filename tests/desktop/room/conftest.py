"""Room dialogs on the screen that is not there, and what they confirm."""

from collections.abc import Callable, Sequence
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.room import RoomDialog
from growlog.desktop.room.device_card import DeviceCard
from growlog.desktop.room.lamp_card import LampCard
from growlog.desktop.room.thing_cards import TankCard
from growlog.records.crop import Crop, Placement
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.services.room_changes import Removable, RoomBook, RoomRecord
from growlog.services.rooms import RoomView

TODAY = date(2026, 3, 7)
LAMP = Lamp("lamp", "room", "Panel", 2, 100, 105, 2.7)
TANK = Tank("tank", "room", "Tank A", 20.0)
FAN = Device("fan", "room", "Fan", device_w=12)
BOX_ROOM = RoomView(Room("room", "Box room", 4.0, "Europe/Berlin"), (LAMP,), (TANK,), (FAN,))
GOLD = Crop("gold", "Boxroom Gold", "c", sown_on=date(2025, 11, 15))
VIOLET = Crop("violet", "Porch Violet", "c", sown_on=date(2025, 12, 23))
PLACES = (Placement("p1", "gold", "room", date(2025, 11, 15), floor_share=0.6),)


class Person:
    """Someone at a room's dialog, and what it was told to save and to take off."""

    def __init__(self, dialog: RoomDialog) -> None:
        self.dialog = dialog
        self.saved: list[RoomRecord] = []
        self.removed: list[Removable] = []
        self.times = 0
        dialog.confirmed.connect(self._note)

    def lamp(self, place: int = 0) -> LampCard:
        return [c for c in self.dialog.page.lamps.cards if isinstance(c, LampCard)][place]

    def device(self, place: int = 0) -> DeviceCard:
        return [c for c in self.dialog.page.devices.cards if isinstance(c, DeviceCard)][place]

    def tank(self, place: int = 0) -> TankCard:
        return [c for c in self.dialog.page.tanks.cards if isinstance(c, TankCard)][place]

    def save(self) -> None:
        QTest.keyClick(self.dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)

    def _note(self, saved: list[RoomRecord], removed: list[Removable]) -> None:
        self.times += 1
        self.saved += saved
        self.removed += removed


MakePerson = Callable[..., Person]


@pytest.fixture
def person(qtbot: QtBot) -> MakePerson:
    """Opens the dialog of some rooms with two crops, one of which stands in the box room."""

    def make(
        rooms: Sequence[RoomView] = (BOX_ROOM,), placements: Sequence[Placement] = PLACES, currency: str = "EUR"
    ) -> Person:
        book = RoomBook(tuple(rooms), tuple(placements), (GOLD, VIOLET), {}, currency, TODAY)
        dialog = RoomDialog(book)
        qtbot.addWidget(dialog)
        with qtbot.waitActive(dialog):
            dialog.show()
        return Person(dialog)

    return make
