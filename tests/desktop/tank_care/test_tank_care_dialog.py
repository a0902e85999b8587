"""Tank care: a proposal asked for and carried over into the record, pH never a blind dose, uptake from two readings."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.calculations.products import Product
from growlog.calculations.tank import Tank, explain_uptake
from growlog.desktop.mixer.order_card import CautionLine
from growlog.desktop.tank_care import TankCareDialog
from growlog.records.entry import Owner, OwnerKind, TankCare, TankDose, TankWork
from growlog.records.problems import Problem
from growlog.services.mix_order import Portion
from growlog.services.tank_care import TopUpAsked, TopUpProposal, UptakeView
from tests.logbooks import TODAY

pytestmark = pytest.mark.slow

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def dialog(qtbot: QtBot) -> TankCareDialog:
    made = TankCareDialog(
        TODAY, [("blue", "Blue tank")], [("every", "Everyday")], [("Phosphoric acid 25 %", "acid", "mL")]
    )
    qtbot.addWidget(made)
    made.top_up.start(20.0, 1.8)
    with qtbot.waitActive(made):
        made.show()
    return made


def type_tank(dialog: TankCareDialog, volume: str, ec: str) -> None:
    for key, text in (("volume_now_l", volume), ("ec_now_ms_per_cm", ec)):
        line = dialog.top_up.fields[key].line
        line.setFocus()
        QTest.keyClicks(line, text)
        QTest.keyClick(line, Key.Key_Tab)


def proposal(drain_l: float = 0.0) -> TopUpProposal:
    part = Portion(Product("Concentrate A", "liquid", "w/v", {"ca": 4.7}), 12.5, "mL", "part-a")
    return TopUpProposal(drain_l, 8.0, 4.2, 52.0, (part,), ("Fill in 8.0 L of water.",), 0.2, 1.6, ())


def test_the_proposal_is_asked_for_as_soon_as_the_figures_stand(dialog: TankCareDialog, qtbot: QtBot) -> None:
    asked: list[TopUpAsked] = []
    dialog.top_up.asked.connect(asked.append)
    type_tank(dialog, "12", "2.1")
    assert asked[-1] == TopUpAsked(12.0, 2.1, 20.0, 1.8, None)
    assert len(asked) == 1  # nothing was asked while a figure was missing


def test_the_proposal_follows_what_is_typed_without_leaving_the_field(dialog: TankCareDialog, qtbot: QtBot) -> None:
    type_tank(dialog, "12", "2.1")
    dialog.top_up.show_proposal(proposal())
    line = dialog.top_up.fields["ec_wanted_ms_per_cm"].line
    line.setFocus()
    line.selectAll()
    with qtbot.waitSignal(dialog.top_up.asked) as asked:
        QTest.keyClicks(line, "1.5")
    assert asked.args == [TopUpAsked(12.0, 2.1, 20.0, 1.5, None)]
    line.selectAll()
    QTest.keyClicks(line, "x")
    qtbot.waitUntil(lambda: not dialog.top_up.order.isVisible())


def test_what_is_missing_is_said_only_when_it_is_asked_for(dialog: TankCareDialog, qtbot: QtBot) -> None:
    type_tank(dialog, "12", "")
    assert not dialog.top_up.fields["ec_now_ms_per_cm"].is_refused
    with qtbot.assertNotEmitted(dialog.top_up.asked):
        dialog.top_up.find_button.click()
    assert dialog.top_up.fields["ec_now_ms_per_cm"].refusal == "A number is needed here."


def test_the_proposal_fills_the_record_in_and_is_written_as_it_was_really_done(
    dialog: TankCareDialog, qtbot: QtBot
) -> None:
    type_tank(dialog, "12", "2.1")
    dialog.top_up.show_proposal(proposal())
    record = dialog.top_up.record
    amount = record.doses[0][1]
    amount.line.clear()
    QTest.keyClicks(amount.line, "10")
    QTest.keyClicks(record.fields["ec_after_ms_per_cm"].line, "1.82")
    with qtbot.waitSignal(dialog.confirmed) as confirmed:
        QTest.keyClick(dialog, Key.Key_Return, Control)
    entry = confirmed.args[0]
    assert entry.owner == Owner(OwnerKind.TANK, "blue")
    expected = TankCare(
        TankWork.TOP_UP, 12.0, 8.0, None, 2.1, 1.82, mix_id="every",
        doses=(TankDose("Concentrate A", 10.0, "mL", "part-a"),),
    )  # fmt: skip
    assert entry.detail == expected


def test_too_strong_a_tank_is_a_correction(dialog: TankCareDialog) -> None:
    type_tank(dialog, "20", "2.8")
    dialog.top_up.show_proposal(proposal(drain_l=6.0))
    assert dialog.top_up.work_field.value() == TankWork.CORRECTION.value
    assert dialog.top_up.record.fields["drained_l"].value() == 6.0


def test_a_refusal_of_the_proposal_stands_beside_its_field(dialog: TankCareDialog) -> None:
    dialog.top_up.show_proposal(proposal())
    dialog.top_up.show_problems(
        [Problem("ec_wanted_ms_per_cm", "The water alone has 2.00 mS/cm."), Problem("doses", "x")]
    )
    assert dialog.top_up.fields["ec_wanted_ms_per_cm"].refusal == "The water alone has 2.00 mS/cm."
    assert dialog.top_up.message.text() == "x"
    assert not dialog.top_up.order.isVisible()


def test_the_ph_page_proposes_no_dose_and_shows_the_usual_cautions(dialog: TankCareDialog, qtbot: QtBot) -> None:
    dialog.page_switch.button("ph").click()
    assert dialog.ph.amount_field.is_empty()
    told = " ".join(line.label.text() for line in dialog.ph.findChildren(CautionLine))
    assert "Acid into water, never water into acid" in told
    assert "bleach" in told
    with qtbot.assertNotEmitted(dialog.confirmed):
        dialog.write_button.click()
    assert dialog.ph.product_field.is_refused


def test_a_step_of_the_ph_is_written_with_what_was_added(dialog: TankCareDialog, qtbot: QtBot) -> None:
    dialog.page_switch.button("ph").click()
    dialog.ph.product_field.box.setCurrentText("Phosphoric acid 25 %")
    QTest.keyClicks(dialog.ph.amount_field.line, "3.2")
    QTest.keyClicks(dialog.ph.record.fields["ph_before"].line, "6.6")
    QTest.keyClicks(dialog.ph.record.fields["ph_after"].line, "6.1")
    with qtbot.waitSignal(dialog.confirmed) as confirmed:
        QTest.keyClick(dialog, Key.Key_Return, Control)
    detail = confirmed.args[0].detail
    assert (detail.work, detail.ph_before, detail.ph_after) == (TankWork.PH, 6.6, 6.1)
    assert detail.doses == (TankDose("Phosphoric acid 25 %", 3.2, "mL", "acid"),)


def test_two_readings_are_needed_to_tell_what_the_plants_took(dialog: TankCareDialog, qtbot: QtBot) -> None:
    dialog.page_switch.button("uptake").click()
    assert dialog.uptake.nothing_label.isVisible()
    assert not dialog.write_button.isVisible()
    with qtbot.waitSignal(dialog.uptake.asked) as asked:
        dialog.uptake.show_readings(
            [("a", "1 March", ""), ("b", "4 March, as left", "4 March, as found"), ("c", "", "7 March")]
        )
    assert asked.args == ["b", "c"]
    assert [dialog.uptake.earlier_field.box.itemText(n) for n in range(2)] == ["1 March", "4 March, as left"]
    assert [dialog.uptake.later_field.box.itemText(n) for n in range(2)] == ["4 March, as found", "7 March"]
    figure = explain_uptake(Tank(20, 1.8), Tank(14, 1.9), Tank(0, 0))
    dialog.uptake.show_uptake(
        UptakeView(6.0, 1.6, -0.2, {"N": 151.4, "Fe": 1.62}, "The plants took up 1.60 mS/cm.", figure)
    )
    assert dialog.uptake.water_label.text().replace("\u2009", " ") == "6.0 L of water were used."
    assert dialog.uptake.elements_label.text() == "In the proportions of the mix, mg/L: N 151, Fe 1.6."


def test_without_a_tank_the_dialog_leads_to_the_room(qtbot: QtBot) -> None:
    dialog = TankCareDialog(TODAY, [], [], [])
    qtbot.addWidget(dialog)
    dialog.show()
    assert not dialog.top_up.isVisible()
    assert not dialog.write_button.isVisible()
    with qtbot.waitSignal(dialog.room_wanted):
        dialog.empty.button.click()
