"""The shelf, waters, feed plan and tank care in the real window, each written to a real logbook and followed."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from growlog.desktop.shelf.product_form import ProductFormCard
from growlog.desktop.shelf.stock_form import StockForm
from growlog.desktop.windows.nutrient_windows import NutrientWindows
from growlog.records.entry import TankCare
from growlog.services.feed_plan import steps_of
from growlog.services.mixer import save_state
from growlog.services.mixes import mixes_of
from growlog.services.shelf import shelf
from growlog.services.waters import waters_of
from tests.desktop.fakes import FakeFileChoice, FakeMessages
from tests.logbooks import logbook, plant_crop
from tests.services.mixer.bottles import make_shelf

pytestmark = pytest.mark.slow


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path) -> Iterator[MainWindow]:
    made = MainWindow(Settings(tmp_path / "settings.ini"), FakeMessages(), FakeFileChoice())
    qtbot.addWidget(made)
    with logbook(tmp_path) as log:
        save_state(log, make_shelf(log, plant_crop(log)).state, "Everyday")
        made.show_logbook(log)
        with qtbot.waitActive(made):
            made.show()
        yield made
        made.close()


@pytest.fixture
def opened(window: MainWindow) -> NutrientWindows:
    assert window.opened is not None
    return window.opened.nutrients


def trigger(window: MainWindow, name: str) -> None:
    window.actions_table.by_name[name].trigger()


def test_a_product_is_put_on_the_shelf_counted_removed_and_brought_back(
    window: MainWindow, opened: NutrientWindows
) -> None:
    assert window.desk is not None
    log = window.desk.log
    trigger(window, "shelf")
    dialog = opened.shelf.shelf
    assert dialog is not None
    dialog.new_button.click()
    assert isinstance(dialog.form, ProductFormCard)
    QTest.keyClicks(dialog.form.name_field.line, "Tonic")
    dialog.form.write_button.click()
    assert dialog.form is None  # written, so the list stands there again
    row = next(r for r in dialog.rows if r.item.product.name == "Tonic")
    row.stock_button.click()
    assert isinstance(dialog.form, StockForm)
    dialog.form.sort_switch.button("counted").click()
    QTest.keyClicks(dialog.form.amount_field.line, "250")
    dialog.form.write_button.click()
    assert next(i.level for i in shelf(log) if i.product.name == "Tonic") == 250
    next(r for r in dialog.rows if r.item.product.name == "Tonic").remove_button.click()
    assert "Tonic" not in [r.item.product.name for r in dialog.rows]
    window.desk.undo()
    assert "Tonic" in [r.item.product.name for r in dialog.rows]


def test_a_name_that_is_taken_is_refused_and_the_label_stays_open(window: MainWindow, opened: NutrientWindows) -> None:
    trigger(window, "shelf")
    dialog = opened.shelf.shelf
    assert dialog is not None
    dialog.new_button.click()
    assert isinstance(dialog.form, ProductFormCard)
    QTest.keyClicks(dialog.form.name_field.line, "concentrate a")
    dialog.form.write_button.click()
    assert isinstance(dialog.form, ProductFormCard)
    assert "already" in dialog.form.name_field.refusal


def test_a_water_is_kept_and_can_be_chosen_in_the_open_mixer(window: MainWindow, opened: NutrientWindows) -> None:
    assert window.desk is not None
    trigger(window, "mixer")
    trigger(window, "waters")
    dialog = opened.shelf.waters
    assert dialog is not None
    dialog.new_button.click()
    assert dialog.form is not None
    QTest.keyClicks(dialog.form.name_field.line, "tap")
    QTest.keyClicks(dialog.form.elements["ca"].line, "48")
    dialog.form.write_button.click()
    assert [w.name for w in waters_of(window.desk.log)] == ["tap"]
    assert opened.mixer.dialog is not None
    assert opened.mixer.dialog.water.field.box.findText("tap") >= 0


def test_a_step_of_the_plan_is_kept_and_the_mixer_opens_with_it(window: MainWindow, opened: NutrientWindows) -> None:
    assert window.desk is not None
    trigger(window, "feed_plan")
    plan = opened.tanks.plan
    assert plan is not None
    plan.new_button.click()
    assert plan.form is not None
    plan.form.age_field.line.clear()
    QTest.keyClicks(plan.form.age_field.line, "40")
    plan.form.strength_field.line.clear()
    QTest.keyClicks(plan.form.strength_field.line, "80")
    plan.form.write_button.click()
    crop_id = window.desk.selection.crop_id
    assert [(s.from_age, s.strength_percent) for s in steps_of(window.desk.log, crop_id)] == [(40, 80.0)]
    assert len(plan.rows) == 1
    trigger(window, "mixer")
    assert opened.mixer.dialog is not None
    state = opened.mixer.dialog.current_state()
    assert (state.mix_name, state.strength_percent) == ("Everyday", 80.0)


def test_tank_care_is_proposed_by_the_balance_written_and_draws_the_bottles_down(
    window: MainWindow, opened: NutrientWindows
) -> None:
    assert window.desk is not None
    trigger(window, "tank_care")
    care = opened.tanks.care
    assert care is not None
    assert care.top_up.fields["volume_wanted_l"].value() == 20.0  # the tank full again
    for key, text in (("volume_now_l", "10"), ("ec_now_ms_per_cm", "1.0")):
        QTest.keyClicks(care.top_up.fields[key].line, text)
    care.top_up.find_button.click()
    record = care.top_up.record
    assert record.fields["water_added_l"].value() == 10.0
    amounts = {dose.product: field.value() for dose, field in record.doses}
    care.write_button.click()
    with window.desk.log.unit() as unit:
        written = [e.detail for e in unit.entries.all(kind="tank-care")]
    assert len(written) == 1
    assert isinstance(written[0], TankCare)
    assert written[0].mix_id == mixes_of(window.desk.log)[0].id
    level = next(i.level for i in shelf(window.desk.log) if i.product.name == "Concentrate A")
    assert level == pytest.approx(1000 - float(amounts["Concentrate A"] or 0), abs=0.01)
    assert not care.isVisible()


def test_too_much_salt_in_the_water_is_refused_beside_the_wish(window: MainWindow, opened: NutrientWindows) -> None:
    trigger(window, "tank_care")
    care = opened.tanks.care
    assert care is not None
    for key, text in (("volume_now_l", "10"), ("ec_now_ms_per_cm", "1.0"), ("water_ec_ms_per_cm", "3")):
        QTest.keyClicks(care.top_up.fields[key].line, text)
    care.top_up.find_button.click()
    assert "The water alone has" in care.top_up.fields["ec_wanted_ms_per_cm"].refusal


def test_top_up_is_reached_from_the_mixer_with_its_doses(window: MainWindow, opened: NutrientWindows) -> None:
    trigger(window, "mixer")
    assert opened.mixer.dialog is not None
    box = opened.mixer.dialog.mix_field.box
    box.setCurrentIndex(box.findText("Everyday"))
    opened.mixer.dialog.top_up_button.click()
    care = opened.tanks.care
    assert care is not None
    assert care.uses_mixer
    assert care.tank_field.box.currentText() == "Blue tank"
