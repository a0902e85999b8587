"""The forms with lines of chips: single weights, culls and codes."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from growlog.desktop.entry_form.codes_field import CodesField
from growlog.desktop.entry_form.culls_field import CullsField
from growlog.desktop.entry_form.weights_field import WeightsField
from growlog.records.entry import Cull, CullCause, Pick, StageSeen
from tests.desktop.entry_form.conftest import Hands

MakeHands = Callable[..., Hands]


def weigh(hand: Hands, *weights: str) -> None:
    for weight in weights:
        hand.type("weights_g", weight)
        hand.qtbot.keyClick(hand.line("weights_g"), Qt.Key.Key_Return)


def text_of(hand: Hands, name: str) -> str:
    line = hand.line(name)
    assert isinstance(line, QLineEdit)
    return line.text()


def weights_field(hand: Hands) -> WeightsField:
    field = hand.form.cell("weights_g").field
    assert isinstance(field, WeightsField)
    return field


def test_weights_typed_one_after_the_other_make_the_pick(hands: MakeHands):
    hand = hands("pick")
    weigh(hand, "86", "120.5", "104")
    assert (text_of(hand, "fruit_count"), text_of(hand, "total_weight_g")) == ("3", "310.5")
    assert "3 fruit weighed, 310.5\u2009g" in weights_field(hand).sum_label.text()
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(3, 310.5, (86.0, 120.5, 104.0))


def test_backspace_on_the_empty_line_strikes_the_last_weight(hands: MakeHands):
    hand = hands("pick")
    weigh(hand, "86", "120")
    hand.qtbot.keyClick(hand.line("weights_g"), Qt.Key.Key_Backspace)
    assert weights_field(hand).value() == (86.0,)
    assert (text_of(hand, "fruit_count"), text_of(hand, "total_weight_g")) == ("1", "86.0")


def test_a_chip_that_is_clicked_is_struck(hands: MakeHands):
    hand = hands("pick")
    weigh(hand, "86", "120")
    weights_field(hand).chip_line.chips[0].click()
    assert weights_field(hand).value() == (120.0,)


def test_the_last_weight_counts_even_without_enter(hands: MakeHands):
    hand = hands("pick")
    weigh(hand, "86")
    hand.type("weights_g", "90")
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(2, 176.0, (86.0, 90.0))


def test_a_weight_that_is_no_number_stays_in_the_line_and_is_refused(hands: MakeHands):
    hand = hands("pick")
    weigh(hand, "heavy")
    assert "Write a weight" in hand.says("weights_g")
    assert text_of(hand, "weights_g") == "heavy"


def test_a_count_typed_by_the_grower_is_kept_when_fewer_were_weighed(hands: MakeHands):
    hand = hands("pick")
    hand.type("fruit_count", "5")
    weigh(hand, "86", "120")
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(5, None, (86.0, 120.0))


def test_a_pick_may_be_unweighed(hands: MakeHands):
    hand = hands("pick")
    hand.type("fruit_count", "4")
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(4)
    total = hand.line("total_weight_g")
    assert isinstance(total, QLineEdit)
    assert total.placeholderText() == "not weighed"


def test_single_weights_that_do_not_make_the_total_are_refused(hands: MakeHands):
    hand = hands("pick", Pick(2, 206.0, (86.0, 120.0)))
    hand.type("total_weight_g", "300")
    assert "add up to 206.0\u2009g" in hand.says("total_weight_g")
    assert hand.write() is None


def test_culls_have_a_row_each(hands: MakeHands):
    hand = hands("pick")
    field = hand.form.cell("culls").field
    assert isinstance(field, CullsField)
    field.add_button.click()
    row = field.rows[0]
    hand.qtbot.keyClicks(row.count.line, "2")
    hand.qtbot.keyClicks(row.weight.line, "90")
    row.cause.box.setCurrentIndex(row.cause.box.findText("cracked"))
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(culls=(Cull(2, CullCause.CRACKED, 90.0),))


def test_a_cull_without_a_count_is_refused_and_its_row_can_be_taken_out(hands: MakeHands):
    hand = hands("pick", Pick(1, 86.0))
    field = hand.form.cell("culls").field
    assert isinstance(field, CullsField)
    field.add_button.click()
    assert hand.write() is None
    field.rows[0].remove_button.click()
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(1, 86.0)


def test_ounces_of_fruit_are_kept_as_grams(hands: MakeHands):
    hand = hands("pick", units="us")
    weigh(hand, "3", "4.5")
    written = hand.write()
    assert written is not None
    assert isinstance(written.detail, Pick)
    # NIST SP 811, B.8: an ounce is 28.349 52 g
    assert written.detail.weights_g == (85.049, 127.573)


def test_codes_are_typed_or_taken_from_the_list(hands: MakeHands):
    hand = hands("stage", species="pattypan")
    field = hand.form.cell("codes").field
    assert isinstance(field, CodesField)
    hand.type("codes", "19/61")
    hand.qtbot.keyClick(hand.line("codes"), Qt.Key.Key_Return)
    buds = next(part for part in (a.menu() for a in field.menu.actions()) if part and part.title().startswith("5"))
    buds.actions()[0].trigger()
    assert "61: 1st flower open on main stem (from memory)" in field.meanings.text()
    written = hand.write()
    assert written is not None
    assert written.detail == StageSeen(("19", "61", "51"))


def test_a_code_of_one_digit_is_refused(hands: MakeHands):
    hand = hands("stage")
    hand.type("codes", "6")
    hand.qtbot.keyClick(hand.line("codes"), Qt.Key.Key_Return)
    assert "not a BBCH code" in hand.says("codes")


def test_the_scale_follows_the_species(hands: MakeHands):
    hand = hands("stage", species="chilli")
    field = hand.form.cell("codes").field
    assert isinstance(field, CodesField)
    assert "solanaceous" in field.scale_field.box.currentText()
