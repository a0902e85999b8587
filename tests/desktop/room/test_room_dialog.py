"""The room's dialog: what it saves, what it takes off, what it refuses, and its caution."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.room import RoomDialog
from growlog.desktop.room.thing_cards import LampCard, TankCard
from growlog.records.room import Lamp, Room, Tank
from growlog.services.rooms import RoomView

BOX_ROOM = RoomView(
    Room("room", "Box room", 4.0, "Europe/Berlin"),
    (Lamp("lamp", "room", "Panel", 2, 100, 105, 2.7),),
    (Tank("tank", "room", "Tank A", 20.0),),
)


class Told:
    """What a dialog has saved and removed, in order."""

    def __init__(self, dialog: RoomDialog) -> None:
        self.saved: list[Room | Lamp | Tank] = []
        self.removed: list[Lamp | Tank] = []
        dialog.saved.connect(self.saved.append)
        dialog.removed.connect(self.removed.append)


def shown(qtbot: QtBot, view: RoomView | None) -> tuple[RoomDialog, Told]:
    dialog = RoomDialog(view)
    qtbot.addWidget(dialog)
    with qtbot.waitActive(dialog):
        dialog.show()
    return dialog, Told(dialog)


def lamp_card(dialog: RoomDialog, place: int = 0) -> LampCard:
    return [card for card in dialog.cards if isinstance(card, LampCard)][place]


def save(dialog: RoomDialog) -> None:
    QTest.keyClick(dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)


def test_only_what_was_changed_is_saved(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    lamp_card(dialog).wall_field.line.clear()
    QTest.keyClicks(lamp_card(dialog).wall_field.line, "104")
    save(dialog)
    assert told.saved == [Lamp("lamp", "room", "Panel", 2, 100, 104, 2.7)]
    assert not dialog.isVisible()


def test_an_unchanged_room_saves_nothing(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    save(dialog)
    assert (told.saved, told.removed) == ([], [])


def test_a_new_room_is_saved_before_its_lamps_and_tanks(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, None)
    QTest.keyClicks(dialog.name_field.line, "Attic")
    QTest.mouseClick(dialog.add_lamp_button, Qt.MouseButton.LeftButton)
    QTest.keyClicks(lamp_card(dialog).name_field.line, "Tube")
    QTest.mouseClick(dialog.add_tank_button, Qt.MouseButton.LeftButton)
    tank_card = next(card for card in dialog.cards if isinstance(card, TankCard))
    QTest.keyClicks(tank_card.name_field.line, "Tank B")
    tank_card.recirculates_box.click()
    save(dialog)
    room, lamp, tank = told.saved
    assert isinstance(room, Room)
    assert isinstance(lamp, Lamp)
    assert isinstance(tank, Tank)
    assert (room.name, lamp.name, lamp.room_id, tank.recirculates) == ("Attic", "Tube", room.id, True)


def test_a_lamp_taken_off_is_told_when_the_room_is_saved(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    QTest.mouseClick(lamp_card(dialog).remove_button, Qt.MouseButton.LeftButton)
    assert told.removed == []
    save(dialog)
    assert told.removed == [BOX_ROOM.lamps[0]]


def test_a_new_lamp_taken_off_again_is_not_told(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    QTest.mouseClick(dialog.add_lamp_button, Qt.MouseButton.LeftButton)
    QTest.mouseClick(lamp_card(dialog, 1).remove_button, Qt.MouseButton.LeftButton)
    save(dialog)
    assert (told.saved, told.removed) == ([], [])


@pytest.mark.parametrize("text, sentence", [("0", "outside 0.01 to 10000"), ("x", "Write a number")])
def test_a_floor_that_cannot_be_is_refused_beside_its_field(qtbot: QtBot, text: str, sentence: str) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    dialog.floor_field.line.clear()
    QTest.keyClicks(dialog.floor_field.line, text)
    save(dialog)
    assert sentence in dialog.floor_field.message_label.text()
    assert dialog.floor_field.message_label.isVisible()
    assert told.saved == []
    assert dialog.isVisible()


def test_a_time_zone_that_is_none_is_refused(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    dialog.zone_field.set_value("Moon/Crater")
    save(dialog)
    assert dialog.zone_field.refusal == "Choose a time zone from the list."
    assert told.saved == []


def test_a_lamp_without_a_name_is_refused(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    QTest.mouseClick(dialog.add_lamp_button, Qt.MouseButton.LeftButton)
    save(dialog)
    assert lamp_card(dialog, 1).name_field.refusal == "This cannot be left empty."
    assert told.saved == []


def test_escape_saves_nothing(qtbot: QtBot) -> None:
    dialog, told = shown(qtbot, BOX_ROOM)
    QTest.keyClicks(dialog.name_field.line, " two")
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert told.saved == []
    assert not dialog.isVisible()


def test_the_caution_names_water_and_mains_and_defers_to_licensed_work(qtbot: QtBot) -> None:
    dialog, _ = shown(qtbot, None)
    assert dialog.caution.isVisible()
    for words in ("residual-current protection", "drip loops", "plugs off the floor", "broken", "licensed electrician"):
        assert words in dialog.caution.sentence
