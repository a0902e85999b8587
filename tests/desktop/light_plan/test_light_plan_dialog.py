"""The light programme at the screen: 25 hours refused, too many photons asked about, midnight by the stated rule."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, time

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.light_plan.light_plan_dialog import LightPlanDialog
from growlog.desktop.light_plan.step_form import StepForm
from growlog.desktop.light_plan.wording import span_words
from growlog.records.crop import Crop
from growlog.records.light_plan import LightStep
from growlog.records.problems import Problem
from growlog.records.room import Lamp, Room
from growlog.services.light.plan_book import LightPlanBook
from growlog.services.light.steps import LightStepView
from growlog.services.rooms import RoomView
from tests.desktop.hands import choose, retype

TODAY = date(2026, 3, 7)
# 2 lamps of 100 W with 2.5 µmol/J on 1 m²: 500 µmol/m²/s at most
LAMPS = (Lamp("a", "room", "Panel", 2, wall_w=100, efficacy_umol_per_j=2.5), Lamp("b", "room", "Bar"))
VIEW = RoomView(Room("room", "Box room", 1.0), LAMPS[:1], ())
GOLD = Crop("gold", "Boxroom Gold", "c", sown_on=date(2025, 11, 15))


def book(*steps: LightStep, view: RoomView | None = VIEW) -> LightPlanBook:
    shown = tuple(LightStepView(step, step.from_day, "") for step in steps)
    rooms = () if view is None else (view.room,)
    return LightPlanBook(TODAY, rooms, view, shown, (GOLD,), ())


class Person:
    """Someone at the dialog, with a form open."""

    def __init__(self, dialog: LightPlanDialog) -> None:
        self.dialog = dialog
        self.saved: list[LightStep] = []
        dialog.saved.connect(self.saved.append)

    @property
    def form(self) -> StepForm:
        assert self.dialog.form is not None
        return self.dialog.form


MakePerson = Callable[..., Person]


@pytest.fixture
def person(qtbot: QtBot) -> MakePerson:
    def make(shown: LightPlanBook | None = None, *, form: bool = True) -> Person:
        dialog = LightPlanDialog()
        qtbot.addWidget(dialog)
        with qtbot.waitActive(dialog):
            dialog.show()
        dialog.show_book(shown or book())
        if form:
            dialog.add()
        return Person(dialog)

    return make


def test_a_step_from_a_day_on_is_announced(person: MakePerson) -> None:
    one = person()
    retype(one.form.hours_field, "16")
    retype(one.form.on_field, "20:00")
    retype(one.form.output_field, "80")
    one.form.save()
    (step,) = one.saved
    assert (step.room_id, step.from_day, step.photoperiod_h, step.on_at, step.dimming_percent, step.lamp_ids) == (
        "room", TODAY, 16, time(20), 80, (),
    )  # fmt: skip


def test_25_hours_of_light_are_refused_beside_the_field(person: MakePerson) -> None:
    one = person()
    retype(one.form.hours_field, "25")
    one.form.save()
    assert "outside 0 to 24" in one.form.hours_field.refusal
    assert one.saved == []


def test_a_step_without_hours_is_refused(person: MakePerson) -> None:
    one = person()
    one.form.save()
    assert one.form.hours_field.refusal == "A number is needed here."
    assert one.saved == []


def test_light_past_midnight_says_the_next_day_and_the_rule_stands_there(person: MakePerson) -> None:
    one = person()
    retype(one.form.hours_field, "16")
    retype(one.form.on_field, "20:00")
    assert one.form.words_label.text().startswith("20:00 to 12:00 on the next day")
    said = " ".join(label.text() for label in one.dialog.findChildren(type(one.form.words_label)))
    assert "belongs to the day on which the lamps go on" in said


@pytest.mark.parametrize("hours, on_at, words", [
    (16, time(6), "06:00 to 22:00"), (18, time(6), "06:00 to 00:00 on the next day"), (24, time(6), "around the clock"),
    (14, None, "14 h, the time is not stated"), (None, time(6), ""),
])  # fmt: skip
def test_a_span_in_words(hours: float | None, on_at: time | None, words: str) -> None:
    assert span_words(hours, on_at).replace("\u2009", " ") == words


def test_more_photons_than_the_lamps_can_give_are_asked_about(person: MakePerson) -> None:
    one = person()
    retype(one.form.hours_field, "16")
    retype(one.form.canopy_field, "900")
    one.form.save()
    assert "500" in one.form.canopy_field.question
    assert one.saved == []
    one.form.answer_box.click()
    one.form.save()
    assert [step.canopy_ppfd_umol for step in one.saved] == [900]


def test_the_estimate_from_the_lamps_follows_the_output(person: MakePerson) -> None:
    one = person()
    retype(one.form.hours_field, "10")
    # 500 µmol/m²/s for 36 000 s are 18 mol/m²
    assert "18.0\u2009mol/m²" in one.form.words_label.text()
    retype(one.form.output_field, "50")
    assert "9.0\u2009mol/m²" in one.form.words_label.text()


def test_a_step_may_follow_a_crops_plant_age(person: MakePerson) -> None:
    one = person()
    choose(one.form.start_field, "age")
    retype(one.form.hours_field, "12")
    one.form.save()
    assert one.saved == []  # whose age, and which
    choose(one.form.crop_field, "gold")
    retype(one.form.age_field, "42")
    one.form.save()
    (step,) = one.saved
    assert (step.from_day, step.crop_id, step.from_age) == (None, "gold", 42)


def test_only_some_lamps_may_burn_but_one_must(person: MakePerson) -> None:
    one = person(book(view=replace(VIEW, lamps=LAMPS)))
    retype(one.form.hours_field, "12")
    for box in one.form.lamp_boxes.values():
        box.click()
    one.form.save()
    assert (one.saved, one.form.lamps_label.text()) == ([], "Choose at least one lamp.")
    one.form.lamp_boxes["b"].click()
    one.form.save()
    assert one.saved[0].lamp_ids == ("b",)


def test_a_chosen_step_opens_its_form_and_what_the_service_refuses_stands_there(person: MakePerson) -> None:
    step = LightStep("s", "room", date(2026, 1, 1), photoperiod_h=18, on_at=time(6))
    one = person(book(step), form=False)
    one.dialog.table.selectRow(0)
    assert one.form.hours_field.value() == 18
    one.dialog.show_problems([Problem("from_day", "There is a step from there on already. Change that one.")])
    assert one.form.day_field.is_refused
    QTest.mouseClick(one.form.leave_button, Qt.MouseButton.LeftButton)
    assert one.dialog.form is None


def test_without_a_room_the_room_is_opened_first(person: MakePerson) -> None:
    one = person(book(view=None), form=False)
    wanted: list[None] = []
    one.dialog.lamps_wanted.connect(lambda: wanted.append(None))
    one.dialog.empty.button.click()
    assert len(wanted) == 1


def test_the_keyboard_alone_adds_a_step(person: MakePerson) -> None:
    one = person(form=False)
    QTest.keyClick(one.dialog.empty.button, Qt.Key.Key_Space)
    assert one.form.hours_field.line.hasFocus()
    QTest.keyClicks(one.form.hours_field.line, "16")
    QTest.keyClick(one.form.hours_field.line, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert [step.photoperiod_h for step in one.saved] == [16]
