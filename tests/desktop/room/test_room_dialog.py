"""The room's dialog: what it saves in one go, what it takes off, what it refuses, and its cautions."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from growlog.desktop.look.widgets import TextLabel
from growlog.records.room import Device, DeviceSort, Lamp, Room, Tank
from growlog.services.rooms import RoomView
from tests.desktop.hands import retype
from tests.desktop.room.conftest import BOX_ROOM, FAN, LAMP, MakePerson, Person

pytestmark = pytest.mark.slow


def press(button: object) -> None:
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)  # type: ignore[call-overload]


def test_only_what_was_changed_is_saved(person: MakePerson) -> None:
    one = person()
    retype(one.lamp().wall_field, "104")
    one.save()
    assert one.saved == [Lamp("lamp", "room", "Panel", 2, 100, 104, 2.7)]
    assert one.dialog.isVisible()  # until it was written


def test_an_unchanged_room_saves_nothing_and_goes(person: MakePerson) -> None:
    one = person()
    one.save()
    assert (one.times, one.dialog.isVisible()) == (0, False)


def test_lamp_device_tank_and_room_are_confirmed_together(person: MakePerson) -> None:
    one = person()
    retype(one.dialog.page.name_field, "Back room")
    retype(one.lamp().numbers["ballast_loss_percent"], "12")
    one.dialog.page.show_part("devices")
    retype(one.device().watts_field, "15")
    one.dialog.page.show_part("tanks")
    retype(one.tank().volume_field, "25")
    one.save()
    assert one.times == 1
    assert [type(record) for record in one.saved] == [Room, Lamp, Device, Tank]


def test_a_new_room_comes_before_what_is_in_it(person: MakePerson) -> None:
    one = person(rooms=())
    page = one.dialog.page
    QTest.keyClicks(page.name_field.line, "Attic")
    press(page.lamps.add_button)
    QTest.keyClicks(one.lamp().name_field.line, "Tube")
    page.show_part("tanks")
    press(page.tanks.add_button)
    QTest.keyClicks(one.tank().name_field.line, "Tank B")
    one.tank().recirculates_box.click()
    one.save()
    room, lamp, tank = one.saved
    assert isinstance(room, Room)
    assert isinstance(lamp, Lamp)
    assert isinstance(tank, Tank)
    assert (room.name, lamp.name, lamp.room_id, tank.recirculates) == ("Attic", "Tube", room.id, True)


def test_another_room_is_saved_in_the_same_go(person: MakePerson) -> None:
    one = person()
    retype(one.dialog.page.floor_field, "5")
    press(one.dialog.new_button)
    QTest.keyClicks(one.dialog.page.name_field.line, "Attic")
    one.save()
    assert [room.name for room in one.saved if isinstance(room, Room)] == ["Box room", "Attic"]
    assert one.times == 1


def test_rooms_are_chosen_by_name_and_what_was_typed_in_one_stays(person: MakePerson) -> None:
    attic = RoomView(Room("attic", "Attic", 2.0), (), ())
    one = person(rooms=(BOX_ROOM, attic))
    retype(one.dialog.page.floor_field, "5")
    one.dialog.room_field.box.setCurrentIndex(1)
    assert one.dialog.page.name_field.value() == "Attic"
    assert one.dialog.windowTitle() == "Attic"
    one.dialog.room_field.box.setCurrentIndex(0)
    one.save()
    (room,) = one.saved
    assert isinstance(room, Room)
    assert room.floor_m2 == 5


def test_a_lamp_taken_off_is_told_when_the_room_is_saved(person: MakePerson) -> None:
    one = person()
    press(one.lamp().remove_button)
    assert one.times == 0
    one.save()
    assert one.removed == [LAMP]


def test_a_new_lamp_taken_off_again_is_not_told(person: MakePerson) -> None:
    one = person()
    press(one.dialog.page.lamps.add_button)
    press(one.lamp(1).remove_button)
    one.save()
    assert one.times == 0


def test_a_lamp_has_kind_life_bulb_and_price(person: MakePerson) -> None:
    one = person()
    card = one.lamp()
    card.kind_field.box.setCurrentIndex(card.kind_field.box.findData("hps"))
    retype(card.numbers["rated_life_h"], "24000")
    retype(card.bulb_field, "2025-10-01")
    retype(card.price_field, "49,90")
    one.save()
    (lamp,) = one.saved
    assert isinstance(lamp, Lamp)
    assert (lamp.kind, lamp.rated_life_h, str(lamp.bulb_from_day), lamp.price_minor) == (
        "hps", 24000, "2025-10-01", 4990,
    )  # fmt: skip


@pytest.mark.parametrize("kind, wall, loss, words", [
    ("", "110", "", "220 W at the wall, as measured"),
    ("", "", "10", "220 W at the wall, with the loss"),
    ("hps", "", "", "as ballasts of this kind take"),
    ("", "", "", "200 W, as rated"),
])  # fmt: skip
def test_a_lamp_says_what_it_draws_and_how_that_is_known(
    person: MakePerson, kind: str, wall: str, loss: str, words: str
) -> None:
    one = person()
    card = one.lamp()
    retype(card.rated_field, "100" if kind == "" else "250")
    retype(card.wall_field, wall)
    retype(card.numbers["ballast_loss_percent"], loss)
    card.kind_field.box.setCurrentIndex(card.kind_field.box.findData(kind) if kind else 0)
    assert words in card.watts_label.text().replace("\u2009", " ")


def test_a_device_counts_by_hours_and_duty(person: MakePerson) -> None:
    one = person()
    one.dialog.page.show_part("devices")
    card = one.device()
    card.sort_field.box.setCurrentIndex(card.sort_field.box.findData("heater"))
    retype(card.watts_field, "400")
    card.time_field.box.setCurrentIndex(card.time_field.box.findData("hours"))
    one.save()
    assert card.hours_field.refusal == "Say how many hours a day."
    retype(card.hours_field, "6")
    retype(card.duty_field, "25")
    assert card.day_label.text().replace("\u2009", " ") == "0.60 kWh a day."
    one.save()
    assert one.saved == [Device("fan", "room", "Fan", DeviceSort.HEATER, 400, 6, False, 25)]
    assert one.saved[0] != FAN


@pytest.mark.parametrize("text, sentence", [("0", "outside 0.01 to 10000"), ("x", "Write a number")])
def test_a_floor_that_cannot_be_is_refused_beside_its_field(person: MakePerson, text: str, sentence: str) -> None:
    one = person()
    retype(one.dialog.page.floor_field, text)
    one.save()
    assert sentence in one.dialog.page.floor_field.message_label.text()
    assert one.times == 0


def test_a_time_zone_that_is_none_is_refused(person: MakePerson) -> None:
    one = person()
    one.dialog.page.zone_field.set_value("Moon/Crater")
    one.save()
    assert one.dialog.page.zone_field.refusal == "Choose a time zone from the list."
    assert one.times == 0


def test_what_is_refused_in_another_part_is_shown(person: MakePerson) -> None:
    one = person()
    press(one.dialog.page.lamps.add_button)
    one.dialog.page.show_part("cautions")
    one.save()
    assert one.dialog.page.switch.value() == "lamps"
    assert one.lamp(1).name_field.refusal == "This cannot be left empty."
    assert one.times == 0


def test_escape_saves_nothing(person: MakePerson) -> None:
    one = person()
    QTest.keyClicks(one.dialog.page.name_field.line, " two")
    QTest.keyClick(one.dialog, Qt.Key.Key_Escape)
    assert (one.times, one.dialog.isVisible()) == (0, False)


def _said(one: Person) -> str:
    return " ".join(label.text() for label in one.dialog.page.cautions.findChildren(TextLabel))


def test_the_cautions_name_their_sources_and_defer_to_licensed_work(person: MakePerson) -> None:
    one = person()
    one.dialog.page.show_part("cautions")
    said = _said(one)
    for words in ("residual-current device", "plugs and ballasts off the floor", "outer glass is broken", "CO2",
                  "mould", "21 CFR 1040.30", "licensed electrician"):  # fmt: skip
        assert words in said


@pytest.mark.parametrize("text", ["100", "99999999"])
def test_a_figure_that_no_lamp_has_is_refused_and_nothing_is_worked_out_from_it(person: MakePerson, text: str) -> None:
    one = person()
    card = one.lamp()
    retype(card.wall_field, "")
    retype(card.numbers["ballast_loss_percent"], text)
    assert card.watts_label.text() == ""
    one.save()
    assert card.numbers["ballast_loss_percent"].is_refused
    assert one.times == 0
