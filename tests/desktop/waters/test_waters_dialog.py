"""Source waters: an analysis as the report states it, alkalinity in its own unit, rain as nothing."""

from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.waters import WatersDialog
from growlog.desktop.waters.water_form import WaterForm
from growlog.desktop.waters.waters_dialog import water_line
from growlog.records.source_water import SourceWater
from growlog.services.open_logbook import OpenLogbook
from growlog.services.waters import check_water, save_water
from tests.logbooks import TODAY, logbook

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def dialog(qtbot: QtBot, log: OpenLogbook) -> WatersDialog:
    made = WatersDialog(TODAY, partial(check_water, log))
    qtbot.addWidget(made)
    made.show_waters([])
    with qtbot.waitActive(made):
        made.show()
    return made


def form_of(dialog: WatersDialog) -> WaterForm:
    assert dialog.form is not None
    return dialog.form


def test_a_hardness_in_german_degrees_is_kept_as_calcium_carbonate(dialog: WatersDialog, qtbot: QtBot) -> None:
    """One °dH of carbonate hardness is 10 mg/L CaO, which is 17.85 mg/L CaCO3: DIN 38409-6 (1986), from memory."""
    dialog.new_button.click()
    form = form_of(dialog)
    QTest.keyClicks(form.name_field.line, "tap")
    form.unit_field.box.setCurrentIndex(form.unit_field.box.findData("°dH"))
    QTest.keyClicks(form.alkalinity_field.line, "7")
    assert form.as_caco3_label.isVisible()
    with qtbot.waitSignal(dialog.saved) as saved:
        QTest.keyClick(form.name_field.line, Key.Key_Return, Control)
    assert saved.args[0].alkalinity_mg_per_l_caco3 == pytest.approx(124.9, abs=0.2)


def test_bicarbonate_is_taken_too(dialog: WatersDialog) -> None:
    """61.016 mg/L HCO3 are 50.04 mg/L CaCO3, one milliequivalent of each; from the atomic weights."""
    dialog.new_button.click()
    form = form_of(dialog)
    form.unit_field.box.setCurrentIndex(form.unit_field.box.findData("mg/L HCO3"))
    QTest.keyClicks(form.alkalinity_field.line, "122")
    assert form.water().alkalinity_mg_per_l_caco3 == pytest.approx(100.05, abs=0.2)


def test_what_was_not_measured_stays_unstated(dialog: WatersDialog, qtbot: QtBot) -> None:
    dialog.new_button.click()
    form = form_of(dialog)
    QTest.keyClicks(form.name_field.line, "tap")
    QTest.keyClicks(form.elements["ca"].line, "48")
    with qtbot.waitSignal(dialog.saved) as saved:
        form.write_button.click()
    water = saved.args[0]
    assert (water.ca_mg_per_l, water.mg_mg_per_l, water.ec_ms_per_cm) == (48.0, None, None)


def test_rain_is_a_water_with_nothing_in_it(dialog: WatersDialog, qtbot: QtBot) -> None:
    dialog.rain_button.click()
    with qtbot.waitSignal(dialog.saved) as saved:
        form_of(dialog).write_button.click()
    assert water_line(saved.args[0]) == "nothing in it: rain or reverse osmosis"


def test_a_name_that_is_taken_is_refused_beside_it(dialog: WatersDialog, log: OpenLogbook, qtbot: QtBot) -> None:
    save_water(log, SourceWater("tap", "tap", ec_ms_per_cm=0.4))
    dialog.new_button.click()
    QTest.keyClicks(form_of(dialog).name_field.line, "Tap")
    with qtbot.assertNotEmitted(dialog.saved):
        form_of(dialog).write_button.click()
    assert "already" in form_of(dialog).name_field.refusal


def test_an_impossible_content_is_refused_beside_its_field(dialog: WatersDialog, qtbot: QtBot) -> None:
    dialog.new_button.click()
    form = form_of(dialog)
    QTest.keyClicks(form.name_field.line, "brine")
    QTest.keyClicks(form.elements["na"].line, "30000")
    with qtbot.assertNotEmitted(dialog.saved):
        form.write_button.click()
    assert form.elements["na"].is_refused


def test_a_water_is_changed_and_removed_by_its_row(dialog: WatersDialog, log: OpenLogbook, qtbot: QtBot) -> None:
    water = SourceWater("tap", "tap", ec_ms_per_cm=0.42, ph=7.6, alkalinity_mg_per_l_caco3=120)
    dialog.show_waters([water])
    row = dialog.rows[0]
    assert row.line_label.text().replace("\u2009", " ") == "EC 0.42 mS/cm, pH 7.6, alkalinity 120 mg/L"
    row.change_button.click()
    assert form_of(dialog).ec_field.value() == 0.42
    with qtbot.waitSignal(dialog.removed) as removed:
        row.remove_button.click()
    assert removed.args == [water]
