"""The form of a crop: what it proposes, what it refuses beside the field, and the records it gives."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from growlog.desktop.crop_form import CropDialog
from growlog.records.crop import Crop, Placement, StartedFrom
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.problems import Problem
from growlog.records.room import Room, Tank
from growlog.services.rooms import RoomView

pytestmark = pytest.mark.slow

TODAY = date(2026, 3, 7)
BOX_ROOM = RoomView(Room("room", "Box room", 4.0), (), (Tank("tank", "room", "Tank A", 20.0),))
GOLD = Crop("gold", "Boxroom Gold", "packet", sown_on=date(2025, 11, 15), seed_lot="lot 7", medium="coir")
PACKET = Cultivar("packet", "pattypan", "Boxroom Gold", FloweringHabit.SEPARATE, 58)


class Confirmed(list[tuple[Crop, Cultivar, Placement | None]]):
    """What a dialog has confirmed."""

    def take(self, crop: Crop, cultivar: Cultivar, placement: Placement | None) -> None:
        self.append((crop, cultivar, placement))


def shown(qtbot: QtBot, dialog: CropDialog) -> Confirmed:
    qtbot.addWidget(dialog)
    confirmed = Confirmed()
    dialog.confirmed.connect(confirmed.take)
    with qtbot.waitActive(dialog):
        dialog.show()
    return confirmed


def retype(line: QLineEdit, text: str) -> None:
    line.setFocus()
    line.selectAll()
    QTest.keyClicks(line, text)


def name_a_crop(dialog: CropDialog, name: str = "Landing Light", species: str = "chilli") -> None:
    QTest.keyClicks(dialog.form.name_field.line, name)
    line = dialog.form.species_field.box.lineEdit()
    assert line is not None
    QTest.keyClicks(line, species)


def confirm(dialog: CropDialog) -> None:
    QTest.keyClick(dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)


def test_a_name_a_kind_and_the_first_day_are_enough(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY)
    confirmed = shown(qtbot, dialog)
    name_a_crop(dialog)
    confirm(dialog)
    crop, cultivar, placement = confirmed[0]
    assert (crop.name, crop.sown_on, crop.cultivar_id, placement) == ("Landing Light", TODAY, cultivar.id, None)
    assert (cultivar.species, cultivar.name) == ("chilli", "Landing Light")
    assert dialog.isVisible()


def test_the_kind_of_plant_proposes_its_usual_flowers_and_counting(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY)
    confirmed = shown(qtbot, dialog)
    name_a_crop(dialog)
    assert dialog.form.habit_field.value() == FloweringHabit.PERFECT
    assert dialog.form.count_field.value() == CountsFrom.TRANSPLANTING
    confirm(dialog)
    cultivar = confirmed[0][1]
    assert (cultivar.habit, cultivar.packet_counts_from) == (FloweringHabit.PERFECT, CountsFrom.TRANSPLANTING)


def test_flowers_that_were_chosen_stay_when_the_kind_changes(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY)
    shown(qtbot, dialog)
    box = dialog.form.habit_field.box
    box.setCurrentIndex(box.findData(FloweringHabit.SETS_ALONE))
    name_a_crop(dialog)
    assert dialog.form.habit_field.value() == FloweringHabit.SETS_ALONE


def test_an_empty_name_and_kind_are_refused_beside_their_fields(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY)
    confirmed = shown(qtbot, dialog)
    confirm(dialog)
    assert dialog.form.name_field.message_label.text() == "This cannot be left empty."
    assert dialog.form.species_field.message_label.text().startswith("Say what kind of plant it is")
    assert confirmed == []


def test_a_day_before_sowing_is_told_while_it_is_typed_and_goes_when_it_is_mended(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    shown(qtbot, dialog)
    emerged = dialog.form.days["emerged_on"]
    retype(emerged.line, "2025-11-10")
    assert emerged.refusal.startswith("This is before day 0")
    retype(emerged.line, "2025-11-21")
    assert emerged.refusal == ""


def test_a_mended_sowing_day_mends_the_other_field_too(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    shown(qtbot, dialog)
    retype(dialog.form.days["emerged_on"].line, "2025-11-10")
    retype(dialog.form.days["sown_on"].line, "2025-11-01")
    assert dialog.form.days["emerged_on"].refusal == ""


def test_a_day_that_has_not_come_is_refused_but_a_planned_clearing_is_not(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    confirmed = shown(qtbot, dialog)
    retype(dialog.form.days["planned_clearing_on"].line, "2026-05-01")
    retype(dialog.form.days["sown_on"].line, "2026-03-08")
    assert dialog.form.days["sown_on"].is_refused
    assert not dialog.form.days["planned_clearing_on"].is_refused
    confirm(dialog)
    assert confirmed == []


def test_more_seeds_emerged_than_sown_is_refused(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    confirmed = shown(qtbot, dialog)
    retype(dialog.form.seeds_sown_field.line, "3")
    retype(dialog.form.seeds_emerged_field.line, "4")
    assert dialog.form.seeds_emerged_field.refusal == "More seeds emerged than were sown."
    confirm(dialog)
    assert confirmed == []


def test_an_unusual_count_of_days_is_asked_about_and_may_stand(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    confirmed = shown(qtbot, dialog)
    retype(dialog.form.packet_days_field.line, "250")
    dialog.form.name_field.setFocus()
    assert "unusual" in dialog.form.packet_days_field.question
    confirm(dialog)
    assert confirmed[0][1].packet_days == 250


def test_a_bought_plant_is_asked_for_its_transplanting_instead_of_its_sowing(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY)
    confirmed = shown(qtbot, dialog)
    name_a_crop(dialog)
    box = dialog.form.start_field.box
    box.setCurrentIndex(box.findData(StartedFrom.BOUGHT_PLANT))
    assert not dialog.form.days["sown_on"].isVisible()
    confirm(dialog)
    transplanted = dialog.form.days["transplanted_on"]
    assert transplanted.refusal == "Say when the plant was transplanted: plant age counts from that day."
    retype(transplanted.line, "2026-03-01")
    confirm(dialog)
    assert confirmed[0][0].day_zero == date(2026, 3, 1)


def test_an_unchanged_crop_comes_back_as_it_was(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, [BOX_ROOM], (GOLD, PACKET), Placement("p", "gold", "room", TODAY, None, "tank", 0.25))
    confirmed = shown(qtbot, dialog)
    confirm(dialog)
    assert confirmed == [(GOLD, PACKET, None)]


def test_a_room_with_share_and_tank_becomes_a_placement_from_sowing(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, [BOX_ROOM])
    confirmed = shown(qtbot, dialog)
    name_a_crop(dialog)
    retype(dialog.form.days["sown_on"].line, "2026-02-01")
    place = dialog.form.place
    place.room_field.box.setCurrentIndex(place.room_field.box.findData("room"))
    QTest.keyClicks(place.share_field.line, "25")
    place.tank_field.box.setCurrentIndex(place.tank_field.box.findData("tank"))
    confirm(dialog)
    crop, _, placement = confirmed[0]
    assert placement is not None
    assert (placement.crop_id, placement.room_id, placement.tank_id) == (crop.id, "room", "tank")
    assert (placement.from_day, placement.floor_share) == (date(2026, 2, 1), 0.25)


def test_seldom_used_fields_are_folded_away_until_they_hold_something(qtbot: QtBot) -> None:
    new, present = CropDialog(TODAY), CropDialog(TODAY, present=(GOLD, PACKET))
    shown(qtbot, new)
    shown(qtbot, present)
    assert not new.form.seed_lot_field.isVisible()
    assert present.form.seed_lot_field.isVisible()
    QTest.mouseClick(new.form.more_button, Qt.MouseButton.LeftButton)
    assert new.form.seed_lot_field.isVisible()


@pytest.mark.parametrize("field, is_beside", [("name", True), ("crop", False)])
def test_what_the_logbook_refuses_stands_beside_its_field_or_above_the_form(
    qtbot: QtBot, field: str, is_beside: bool
) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    shown(qtbot, dialog)
    dialog.show_problems([Problem(field, "There is a crop of this name already. Choose another.")])
    assert dialog.form.name_field.message_label.isVisible() == is_beside
    assert dialog.banner.isVisible() == (not is_beside)


def test_escape_confirms_nothing(qtbot: QtBot) -> None:
    dialog = CropDialog(TODAY, present=(GOLD, PACKET))
    confirmed = shown(qtbot, dialog)
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    assert confirmed == []
