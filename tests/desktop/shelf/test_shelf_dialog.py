"""The shelf: labels typed as they are printed, what is refused beside its field, and the stock of a bottle."""

from collections.abc import Sequence
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.shelf import ShelfDialog
from growlog.desktop.shelf.acid_form import AcidForm
from growlog.desktop.shelf.product_form import ProductFormCard
from growlog.desktop.shelf.shelf_row import stock_line
from growlog.desktop.shelf.stock_form import StockForm
from growlog.records.problems import Problem
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct, StockMove, StockMoveSort
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf import add_product, bought, moves_of, ready_products, shelf, stock_figures
from tests.logbooks import TODAY
from tests.services.mixer.bottles import bottle, salt

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier


def label(dialog: ShelfDialog) -> ProductFormCard:
    assert isinstance(dialog.form, ProductFormCard)
    return dialog.form


def new_label(dialog: ShelfDialog, name: str, basis: str | None = "w/v") -> ProductFormCard:
    dialog.new_button.click()
    form = label(dialog)
    QTest.keyClicks(form.name_field.line, name)
    if basis is not None:
        form.basis_field.box.setCurrentIndex(form.basis_field.box.findData(basis))
    return form


def analyse(form: ProductFormCard, shares: Sequence[tuple[str, str]]) -> None:
    for number, (word, percent) in enumerate(shares):
        if number == len(form.analysis.rows):
            form.analysis.add_button.click()
        row = form.analysis.rows[number]
        row.nutrient.box.setCurrentIndex(row.nutrient.box.findData(word))
        QTest.keyClicks(row.percent.line, percent)


def test_a_label_is_typed_and_kept_as_it_is_printed(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Bloom")
    analyse(form, [("n_nitrate", "4.2"), ("p2o5", "3"), ("fe", "0.07")])
    assert form.chelate_field.isVisible()  # asked for as soon as there is iron
    form.chelate_field.box.setCurrentIndex(form.chelate_field.box.findData("DTPA"))
    QTest.keyClicks(form.dose_field.line, "3")
    QTest.keyClicks(form.pack_field.line, "1000")
    QTest.keyClicks(form.price_field.line, "8.90")
    QTest.keyClicks(form.level_field.line, "400")
    with qtbot.waitSignal(dialog.added) as added:
        QTest.keyClick(form.name_field.line, Key.Key_Return, Control)
    product, level = added.args
    assert product.analysis == (LabelShare("n_nitrate", 4.2), LabelShare("p2o5", 3.0), LabelShare("fe", 0.07))
    assert (product.basis, product.chelate, product.pack_price_minor, level) == (LabelBasis.IN_VOLUME, "DTPA", 890, 400)


def test_a_per_cent_above_100_is_refused_in_its_row(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Bloom")
    analyse(form, [("k2o", "120")])
    with qtbot.assertNotEmitted(dialog.added):
        form.write_button.click()
    assert form.analysis.rows[0].percent.refusal.startswith("At most 100")


def test_more_than_100_per_cent_in_all_is_refused_below_the_rows(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Bloom")
    analyse(form, [("k", "60"), ("ca", "60")])
    with qtbot.assertNotEmitted(dialog.added):
        form.write_button.click()
    assert "100" in form.analysis.message.text()


def test_per_cent_by_weight_of_a_liquid_want_a_density_and_a_weighed_volume_gives_it(
    dialog: ShelfDialog, qtbot: QtBot
) -> None:
    form = new_label(dialog, "Bloom", "w/w")
    analyse(form, [("k2o", "5")])
    with qtbot.assertNotEmitted(dialog.added):
        form.write_button.click()
    assert "density" in form.density_field.refusal
    QTest.keyClicks(form.weighed_ml.line, "50")
    QTest.keyClicks(form.weighed_g.line, "59.5")
    assert form.density_field.value() == 1.19
    with qtbot.waitSignal(dialog.added) as added:
        form.write_button.click()
    assert added.args[0].density_g_per_ml == 1.19


def test_the_dialog_asks_what_the_per_cent_are_of(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Bloom", None)
    analyse(form, [("k2o", "5")])
    with qtbot.assertNotEmitted(dialog.added):
        form.write_button.click()
    assert form.basis_field.refusal == "Choose one."
    form.form_field.box.setCurrentIndex(form.form_field.box.findData("solid"))
    assert not form.basis_field.isVisible()  # a solid is labelled by weight


def test_a_product_without_analysis_may_stand_on_the_shelf(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Tonic", None)
    with qtbot.waitSignal(dialog.added) as added:
        form.write_button.click()
    assert added.args[0].analysis == ()


def test_a_row_that_was_begun_is_finished_or_taken_out(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Bloom")
    analyse(form, [("k2o", "5"), ("ca", "")])
    with qtbot.assertNotEmitted(dialog.added):
        form.write_button.click()
    assert form.analysis.rows[1].percent.is_refused
    form.analysis.rows[1].remove_button.click()
    with qtbot.waitSignal(dialog.added):
        form.write_button.click()


def test_a_nutrient_stated_twice_is_said_beside_it(dialog: ShelfDialog, qtbot: QtBot) -> None:
    form = new_label(dialog, "Bloom")
    analyse(form, [("k2o", "5"), ("k2o", "6")])
    with qtbot.assertNotEmitted(dialog.added):
        form.write_button.click()
    assert form.analysis.rows[0].percent.is_refused


def test_a_refusal_of_the_logbook_stands_beside_its_field(dialog: ShelfDialog) -> None:
    form = new_label(dialog, "Bloom")
    dialog.show_problems([Problem("name", "There is a product of this name already.")])
    assert form.name_field.refusal == "There is a product of this name already."


def test_a_ready_salt_opens_as_a_label_and_an_acid_asks_first_how_strong_it_is(
    dialog: ShelfDialog, qtbot: QtBot
) -> None:
    ready = {r.product.name: r for r in ready_products()}
    dialog.take_ready(ready["Potassium nitrate"])
    assert label(dialog).form_field.value() == ProductForm.SOLID.value
    assert [row.nutrient.value() for row in label(dialog).analysis.rows] == ["n_nitrate", "k"]
    dialog.take_ready(ready["Nitric acid (100 %)"])
    assert isinstance(dialog.form, AcidForm)
    QTest.keyClicks(dialog.form.percent_field.line, "38")
    QTest.keyClicks(dialog.form.density_field.line, "1.24")
    dialog.form.write_button.click()
    assert label(dialog).name_field.value() == "Nitric acid 38 %"
    with qtbot.waitSignal(dialog.added) as added:
        label(dialog).write_button.click()
    # HNO3 is 22.23 % N by weight: 14.007 / 63.012, Prohaska, T. et al. (2022), Pure and Applied Chemistry 94.
    assert added.args[0].analysis[0].label_percent == pytest.approx(0.38 * 22.23, rel=0.001)


def test_an_acid_without_a_density_goes_no_further(dialog: ShelfDialog) -> None:
    dialog.take_ready(next(r for r in ready_products() if r.needs_strength))
    assert isinstance(dialog.form, AcidForm)
    QTest.keyClicks(dialog.form.percent_field.line, "38")
    dialog.form.write_button.click()
    assert isinstance(dialog.form, AcidForm)
    assert dialog.form.density_field.is_refused


def stocked(log: OpenLogbook, dialog: ShelfDialog) -> tuple[ShelfProduct, StockForm]:
    product = replace(bottle("Bloom", k2o=5.0), pack_amount=500.0, pack_price_minor=690)
    add_product(log, product)
    bought(log, product.id, TODAY, 500, 690)
    dialog.show_shelf(shelf(log))
    dialog.open_stock(product, moves_of(log, product.id), stock_figures(log, product.id))
    assert isinstance(dialog.form, StockForm)
    return product, dialog.form


def test_what_was_bought_begins_with_a_pack_and_takes_a_price(
    dialog: ShelfDialog, log: OpenLogbook, qtbot: QtBot
) -> None:
    product, form = stocked(log, dialog)
    assert form.amount_field.value() == 500
    QTest.keyClicks(form.price_field.line, "7.20")
    with qtbot.waitSignal(dialog.stock_written) as written:
        QTest.keyClick(form.amount_field.line, Key.Key_Return, Control)
    wish = written.args[0]
    assert (wish.product_id, wish.sort, wish.amount, wish.price_minor) == (product.id, StockMoveSort.BOUGHT, 500, 720)


def test_what_was_counted_takes_no_price(dialog: ShelfDialog, log: OpenLogbook, qtbot: QtBot) -> None:
    _, form = stocked(log, dialog)
    form.sort_switch.button("counted").click()
    assert not form.price_field.isVisible()
    assert form.amount_field.label.text() == "In the bottle now"
    form.amount_field.line.clear()
    with qtbot.assertNotEmitted(dialog.stock_written):
        form.write_button.click()
    assert form.amount_field.refusal == "A number is needed here."


def test_a_stock_move_can_be_taken_back(dialog: ShelfDialog, log: OpenLogbook, qtbot: QtBot) -> None:
    _, form = stocked(log, dialog)
    with qtbot.waitSignal(dialog.move_removed) as removed:
        form.remove_buttons[0].click()
    move = removed.args[0]
    assert isinstance(move, StockMove)
    assert move.amount == 500


def test_a_row_says_what_is_left_for_how_long_and_at_what_cost(log: OpenLogbook) -> None:
    product = salt("Salt", k=38.0)
    add_product(log, product)
    assert stock_line(shelf(log)[0], "EUR") == "stock not counted"
    bought(log, product.id, TODAY, 500, 690)
    assert stock_line(shelf(log)[0], "EUR").replace("\u2009", " ") == "500 g left, 13.80 EUR a kg"


def test_an_empty_shelf_says_what_to_do_first(dialog: ShelfDialog, qtbot: QtBot) -> None:
    from growlog.desktop.look.widgets import EmptyState

    empty = dialog.findChild(EmptyState)
    assert isinstance(empty, EmptyState)
    assert empty.isVisible()
    assert dialog.new_button.isVisible()
