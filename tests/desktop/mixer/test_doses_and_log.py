"""Doses for a target, and mix and log: what is asked, what comes back, what is refused."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from growlog.calculations.unmet import Unmet
from growlog.desktop.mixer.doses_dialog import LOCKED, OUT, Candidate, DosesDialog
from growlog.desktop.mixer.log_dialog import LogDialog
from growlog.desktop.mixer.order_card import CautionLine
from growlog.desktop.mixer.own_target_dialog import OwnTargetDialog
from growlog.desktop.mixer.stock_dialog import StockDialog
from growlog.records.entry import Owner, OwnerKind
from growlog.records.problems import Problem
from growlog.services.feeding_round import RoundRow
from growlog.services.mixer import DoseProposal, MixerDose, MixerState, OwnTarget, Range, TargetOffer
from tests.logbooks import TODAY

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier
OWN = OwnTarget({"N": Range(140, 180)}, "squash in fruit")
CANDIDATES = [Candidate("Concentrate A", "mL", True, 5.0), Candidate("Magnesium sulfate", "g", False)]


def row(name: str, kind: OwnerKind = OwnerKind.CROP, plants: int = 1) -> RoundRow:
    return RoundRow(Owner(kind, name.casefold()), name, "day 64", plants)


@pytest.fixture
def doses(qtbot: QtBot) -> DosesDialog:
    made = DosesDialog(MixerState(20.0, target=OWN), [TargetOffer("squash", OWN, "", True)], CANDIDATES)
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
    return made


@pytest.fixture
def logging(qtbot: QtBot) -> LogDialog:
    rows = [row("Gold", plants=1), row("Round", plants=3), row("Blue tank", OwnerKind.TANK)]
    made = LogDialog(TODAY, 20.0, rows, ["gold"], "Your meter should read 1.90 mS/cm.")
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
    return made


def test_the_wishes_are_what_stands_in_the_lines(doses: DosesDialog, qtbot: QtBot) -> None:
    first, second = doses.lines
    assert second.use == OUT  # what is not in the mix is taken only when it is said so
    first.use_box.setCurrentIndex(first.use_box.findData(LOCKED))
    second.use_box.setCurrentIndex(second.use_box.findData("free"))
    QTest.keyClicks(second.highest.line, "0.4")
    doses.g_field.line.clear()
    QTest.keyClicks(doses.g_field.line, "0.01")
    doses.weights_button.click()
    QTest.keyClicks(doses.weights["Ca"].line, "3")
    with qtbot.waitSignal(doses.wished) as wished:
        QTest.keyClick(doses, Key.Key_Return, Control)
    target, wishes = wished.args
    assert target == OWN
    assert wishes.candidates == ("Concentrate A", "Magnesium sulfate")
    assert wishes.locked == {"Concentrate A"}
    assert wishes.highest_per_l == {"Magnesium sulfate": 0.4}
    assert (wishes.smallest_ml, wishes.smallest_g, wishes.weights) == (0.1, 0.01, {"Ca": 3.0})


def test_without_any_product_it_says_what_to_do_first(qtbot: QtBot) -> None:
    empty = DosesDialog(MixerState(20.0, target=OWN), [], [])
    qtbot.addWidget(empty)
    with qtbot.assertNotEmitted(empty.wished):
        empty.find_button.click()
    assert any("copy its label" in label.text() for label in empty.result_card.findChildren(QLabel))


def test_the_highest_dose_of_the_label_stands_in_the_empty_field(doses: DosesDialog) -> None:
    assert [line.highest.line.placeholderText() for line in doses.lines] == ["label: 5.00", "no limit"]


def test_nothing_that_may_be_used_is_said_before_anything_is_asked(doses: DosesDialog, qtbot: QtBot) -> None:
    doses.lines[0].use_box.setCurrentIndex(doses.lines[0].use_box.findData(OUT))
    with qtbot.assertNotEmitted(doses.wished):
        doses.find_button.click()
    assert doses.result_card.isVisible()
    assert not doses.take_button.isEnabled()


def test_what_cannot_be_met_is_named_with_its_reason_and_the_doses_are_taken_over(
    doses: DosesDialog, qtbot: QtBot
) -> None:
    found = MixerState(20.0, doses=(MixerDose("Concentrate A", 3.2, "mL/L"),))
    miss = Unmet("K", 230.0, 180.0, "Every product with K here also brings N.")
    doses.show_proposal(DoseProposal(found, (miss,), ()))
    told = [line.label.text() for line in doses.result_card.findChildren(CautionLine)]
    assert told == ["K: 180 instead of 230 mg/L. Every product with K here also brings N."]
    with qtbot.waitSignal(doses.taken) as taken:
        doses.take_button.click()
    assert taken.args == [found]


def test_an_ec_is_asked_for_the_strength_and_a_refusal_stands_beside_it(doses: DosesDialog, qtbot: QtBot) -> None:
    doses.way.button("ec").click()
    with qtbot.assertNotEmitted(doses.ec_wished):
        doses.find_button.click()
    assert doses.ec_field.refusal == "A number is needed here."
    QTest.keyClicks(doses.ec_field.line, "1.6")
    with qtbot.waitSignal(doses.ec_wished) as wished:
        doses.find_button.click()
    assert wished.args == [1.6]
    doses.show_problems([Problem("ec_ms_per_cm", "Too strong.")])
    assert doses.ec_field.refusal == "Too strong."


def test_an_empty_volume_takes_its_share_by_plants(logging: LogDialog) -> None:
    assert [(f.owner.id, f.volume_l) for f in logging.feeds()] == [("gold", 20.0)]
    logging.lines[1].tick.click()
    assert [(f.owner.id, f.volume_l) for f in logging.feeds()] == [("gold", 5.0), ("round", 15.0)]
    QTest.keyClicks(logging.lines[0].volume.line, "8")
    assert [f.volume_l for f in logging.feeds()] == [8.0, 12.0]


def test_typing_a_volume_takes_its_line_in(logging: LogDialog) -> None:
    QTest.keyClicks(logging.lines[2].volume.line, "4")
    assert [f.owner.kind for f in logging.feeds()] == [OwnerKind.CROP, OwnerKind.TANK]
    assert logging.write_button.text().startswith("Write 2 feeds")


def test_what_was_measured_goes_with_the_feeds(logging: LogDialog, qtbot: QtBot) -> None:
    assert logging.ec_field.line.hasFocus()
    QTest.keyClicks(logging.ec_field.line, "1.93")
    QTest.keyClicks(logging.ph_field.line, "5.9")
    QTest.keyClicks(logging.minutes_field.line, "12")
    with qtbot.waitSignal(logging.confirmed) as confirmed:
        QTest.keyClick(logging, Key.Key_Return, Control)
    feeds, mixed, day = confirmed.args
    assert len(feeds) == 1
    assert (mixed.ec_ms_per_cm, mixed.ph, mixed.labour_minutes, day) == (1.93, 5.9, 12, TODAY)


def test_a_refusal_of_the_logbook_stands_beside_its_field(logging: LogDialog) -> None:
    logging.show_problems(
        [Problem("ec_ms_per_cm", "Too much."), Problem("feeds", "More is given than the tank holds.")]
    )
    assert logging.ec_field.refusal == "Too much."
    assert logging.message.text() == "More is given than the tank holds."


def test_nobody_ticked_cannot_be_written(logging: LogDialog, qtbot: QtBot) -> None:
    logging.lines[0].tick.click()
    assert not logging.write_button.isEnabled()
    with qtbot.assertNotEmitted(logging.confirmed):
        logging.confirm()


def test_own_ranges_keep_their_order_and_a_range_upside_down_is_refused(qtbot: QtBot) -> None:
    dialog = OwnTargetDialog({"N": Range(140, 180, "a source", "high")})
    qtbot.addWidget(dialog)
    low, high = dialog.fields["K"]
    QTest.keyClicks(low.line, "260")
    QTest.keyClicks(high.line, "210")
    with qtbot.assertNotEmitted(dialog.confirmed):
        dialog.confirm()
    assert high.refusal == "Below where it begins."
    high.line.clear()
    QTest.keyClicks(high.line, "300")
    with qtbot.waitSignal(dialog.confirmed) as confirmed:
        dialog.confirm()
    name, ranges = confirmed.args
    assert name == ""
    assert ranges == {"N": Range(140, 180, "a source", "high"), "K": Range(260.0, 300.0)}


def test_the_day_of_the_log_is_never_one_to_come(logging: LogDialog, qtbot: QtBot) -> None:
    logging.day_field.set_value(date(2026, 3, 9))
    with qtbot.assertNotEmitted(logging.confirmed):
        logging.confirm()
    assert logging.day_field.is_refused


def test_what_falls_out_of_one_concentrate_is_said_as_its_strength_is_typed(qtbot: QtBot) -> None:
    dialog = StockDialog(lambda times: ["Gypsum falls out."] if times > 20 else [])
    qtbot.addWidget(dialog)
    assert dialog.sentences() == ["Gypsum falls out."]
    dialog.times_field.line.clear()
    QTest.keyClicks(dialog.times_field.line, "10")
    assert dialog.sentences()[0].startswith("Nothing of this is known to fall out")
    dialog.times_field.line.clear()
    QTest.keyClicks(dialog.times_field.line, "0.5")
    dialog.times_field.line.editingFinished.emit()
    assert dialog.times_field.is_refused
