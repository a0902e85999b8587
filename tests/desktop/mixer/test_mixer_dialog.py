"""The mixer while it is typed: what it shows at once, what it says beside its fields, what it lets through."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from growlog.desktop.mixer import MixerDialog
from growlog.desktop.mixer.wording import unit_words
from growlog.records.source_water import SourceWater
from growlog.services.mixer import MixerDose, MixerState, Range, bench_of, offers_at
from growlog.services.open_logbook import OpenLogbook
from growlog.services.waters import save_water
from tests.desktop.mixer.conftest import line_of, retype

pytestmark = pytest.mark.slow

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


def element(dialog: MixerDialog, name: str) -> tuple[str, str]:
    row = next(r for r in dialog.elements.rows if r.name_label.text() == name)
    return row.value_label.text(), row.words_label.text()


def test_each_key_shows_the_tank_anew_and_asks_the_logbook_nothing(
    dialog: MixerDialog, log: OpenLogbook, monkeypatch: pytest.MonkeyPatch
) -> None:
    line = line_of(dialog, "Concentrate A")
    assert plain(line.tank_label.text()) == "60.0 mL"
    before = float(element(dialog, "Ca")[0])

    def read_again() -> None:
        raise AssertionError("the logbook was read")

    monkeypatch.setattr(log, "unit", read_again)
    retype(dialog, line.amount.line, "6")
    assert plain(line.tank_label.text()) == "120 mL"
    # All calcium comes from this concentrate: twice the dose, twice the calcium.
    assert float(element(dialog, "Ca")[0]) == pytest.approx(2 * before, rel=0.01)


def test_the_strength_scales_every_dose(dialog: MixerDialog) -> None:
    retype(dialog, dialog.strength_field.line, "50")
    assert plain(line_of(dialog, "Concentrate A").tank_label.text()) == "30.0 mL"
    assert dialog.state.doses[0].amount == 3.0


def test_what_three_ml_per_us_gallon_are_for_the_tank(dialog: MixerDialog) -> None:
    """3 mL per US gallon is 0.79 mL/L, so 15.9 mL in 20 L. Common practice, no source."""
    line = line_of(dialog, "Concentrate A")
    line.unit_box.setFocus()
    line.unit_box.setCurrentIndex(line.unit_box.findData("mL/gal_us"))
    dialog.current_state()
    assert plain(line.tank_label.text()) == "15.9 mL"
    assert unit_words("mL/gal_us") == "mL/US gal"


def test_a_tank_of_nothing_is_refused_beside_its_field_and_nothing_is_logged(dialog: MixerDialog, qtbot: QtBot) -> None:
    retype(dialog, dialog.tank_field.line, "0")
    assert dialog.tank_field.refusal == "The volume of the tank is not above 0 L."
    assert dialog.elements.rows == [] or not dialog.elements.rows[0].value_label.isVisible()
    retype(dialog, line_of(dialog, "Concentrate A").amount.line, "4")
    assert dialog.tank_field.is_refused  # typing elsewhere does not take the sentence away
    with qtbot.assertNotEmitted(dialog.log_wanted):
        QTest.keyClick(dialog, Key.Key_Return, Control)
    assert dialog.tank_field.line.hasFocus()
    retype(dialog, dialog.tank_field.line, "10")
    assert not dialog.tank_field.is_refused
    with qtbot.waitSignal(dialog.log_wanted):
        QTest.keyClick(dialog, Key.Key_Return, Control)


def test_a_word_where_a_number_belongs_stops_the_log_and_keeps_the_last_figures(
    dialog: MixerDialog, qtbot: QtBot
) -> None:
    line = line_of(dialog, "Concentrate A")
    retype(dialog, line.amount.line, "6")
    line.amount.line.selectAll()
    QTest.keyClicks(line.amount.line, "two")
    dialog.current_state()
    assert plain(line.tank_label.text()) == "120 mL"
    assert line.message.text() == "Write a number, for example 1.5."
    with qtbot.assertNotEmitted(dialog.save_wanted):
        dialog.save_button.click()
    assert "marked above" in dialog.note_label.text()


def test_more_than_the_label_allows_is_said_and_allowed(dialog: MixerDialog, qtbot: QtBot) -> None:
    dialog.table.add(MixerDose("Strong", 0.0, "mL/L"))
    line = line_of(dialog, "Strong")
    assert line.amount.line.hasFocus()
    retype(dialog, line.amount.line, "3")
    assert plain(line.message.text()) == "This is above the maximum on its label, 2 mL/L."
    assert not line.amount.is_refused
    with qtbot.waitSignal(dialog.log_wanted):
        dialog.log_button.click()


def test_a_product_without_analysis_is_unknown_and_never_nothing(dialog: MixerDialog) -> None:
    dialog.table.add(MixerDose("Tonic", 0.0, "mL/L"))
    retype(dialog, line_of(dialog, "Tonic").amount.line, "5")
    assert line_of(dialog, "Tonic").message.text() == "What Tonic brings is not known and is missing in the sums."
    assert dialog.unknown_label.isVisible()
    assert dialog.unknown_label.text().endswith("Tonic")
    assert dialog.ec_card.meter_label.text() == "What Tonic adds to it is not known."


def test_gallons_of_two_kinds_are_asked_about_beside_the_line(dialog: MixerDialog) -> None:
    for name, unit in (("Concentrate A", "mL/gal_us"), ("Concentrate B", "mL/gal_imp")):
        box = line_of(dialog, name).unit_box
        box.setCurrentIndex(box.findData(unit))
    dialog.current_state()
    assert "US and imperial gallons" in line_of(dialog, "Concentrate B").message.text()
    assert line_of(dialog, "Concentrate A").message.text() == ""


def test_a_salt_dosed_by_spoons_without_its_density_is_refused_beside_its_line(dialog: MixerDialog) -> None:
    line = line_of(dialog, "Magnesium sulfate")
    line.unit_box.setCurrentIndex(line.unit_box.findData("tsp/gal_us"))
    dialog.current_state()
    assert "density" in line.message.text().casefold()
    assert dialog.view is not None
    assert not dialog.view.ready


def test_own_ranges_put_each_element_within_or_beside(dialog: MixerDialog) -> None:
    calcium = float(element(dialog, "Ca")[0])
    dialog.targets.take_own("", {"Ca": Range(calcium + 10, calcium + 60), "K": Range(100, 400)})
    dialog.current_state()
    _, words = element(dialog, "Ca")
    assert words.endswith("below")
    assert float(words.split()[0]) == pytest.approx(10, abs=0.6)
    assert element(dialog, "K")[1] == "within"
    row = next(r for r in dialog.elements.rows if r.name_label.text() == "Ca")
    assert row.mark.is_outside
    assert row.words_label.property("tone") == "problem"


def test_a_published_target_says_where_it_is_from_and_how_sure(dialog: MixerDialog) -> None:
    box = dialog.targets.field.box
    box.setCurrentIndex(1)  # 0 is none; the first published one suits the crop
    dialog.current_state()
    assert "Certainty" in dialog.targets.note_label.text()


def test_mmol_and_meq_are_the_same_content_in_other_units(dialog: MixerDialog) -> None:
    mg = float(element(dialog, "Ca")[0])
    dialog.unit_switch.button("mmol/L").click()
    mmol = float(element(dialog, "Ca")[0])
    dialog.unit_switch.button("meq/L").click()
    meq = float(element(dialog, "Ca")[0])
    # Calcium weighs 40.078 g/mol and carries two charges: Prohaska, T. et al. (2022), Pure and Applied Chemistry 94.
    assert mmol == pytest.approx(mg / 40.078, rel=0.02)
    assert meq == pytest.approx(2 * mmol, rel=0.02)


def test_a_scale_of_a_meter_is_named_as_one(dialog: MixerDialog) -> None:
    card = dialog.ec_card
    ms = float(card.value_label.text())
    card.unit_field.box.setCurrentIndex(card.unit_field.box.findData("700"))
    assert float(card.value_label.text()) == pytest.approx(700 * ms, rel=0.01)
    assert card.scale_label.isVisible()
    assert card.scale_label.text() == "A scale of the meter, not mg/L of nutrients."


def test_a_product_comes_in_by_the_menu_and_goes_by_its_button(dialog: MixerDialog) -> None:
    names = [action.text() for action in dialog.table.add_menu.actions()]
    assert names[:3] == ["Concentrate A", "Concentrate B", "Magnesium sulfate"]
    action = next(a for a in dialog.table.add_menu.actions() if a.text() == "Strong")
    action.trigger()
    assert len(dialog.state.doses) == 4
    QTest.mouseClick(line_of(dialog, "Strong").remove_button, Qt.MouseButton.LeftButton)
    assert [d.product for d in dialog.current_state().doses] == ["Concentrate A", "Concentrate B", "Magnesium sulfate"]


def test_tab_goes_along_a_line_and_down_to_the_next(dialog: MixerDialog) -> None:
    first, second = dialog.table.lines[0], dialog.table.lines[1]
    first.amount.setFocus()
    seen = []
    for _ in range(3):
        QTest.keyClick(QApplication.focusWidget(), Key.Key_Tab)
        seen.append(QApplication.focusWidget())
    assert seen == [first.unit_box, first.remove_button, second.amount.line]


def test_escape_puts_the_mixer_away_and_hands_over_what_was_typed(dialog: MixerDialog, qtbot: QtBot) -> None:
    retype(dialog, dialog.tank_field.line, "12.5")
    with qtbot.waitSignal(dialog.put_away) as away:
        QTest.keyClick(dialog, Key.Key_Escape)
    kept = away.args[0]
    assert isinstance(kept, MixerState)
    assert kept.tank_l == 12.5


def test_the_order_and_the_cautions_stand_below_in_words(dialog: MixerDialog) -> None:
    from growlog.desktop.look.widgets import TextLabel
    from growlog.desktop.mixer.order_card import CautionLine

    texts = [label.text() for label in dialog.order.findChildren(TextLabel)]
    steps = [t for t in texts if t.startswith(("Fill", "Concentrate"))]
    assert plain(steps[0]) == "Fill 18 L of water."
    assert plain(steps[1]).startswith("Concentrate A 60 mL")
    cautions = [line.label.text() for line in dialog.order.findChildren(CautionLine)]
    assert any(sentence.startswith("Never join undiluted") for sentence in cautions)


def test_a_dose_that_is_not_touched_stays_exact_behind_its_rounded_figure(dialog: MixerDialog) -> None:
    dose = MixerDose("Concentrate A", 10 / 3, "mL/L", dialog.state.doses[0].product_id)
    dialog.show_state(replace(dialog.state, doses=(dose,)))
    assert dialog.table.lines[0].amount.line.text() == "3.333"
    retype(dialog, dialog.tank_field.line, "12")
    assert dialog.current_state().doses == (dose,)
    retype(dialog, dialog.table.lines[0].amount.line, "3.3")
    assert dialog.current_state().doses[0].amount == 3.3


def test_a_blend_that_does_not_add_up_is_refused_beside_the_water(dialog: MixerDialog, log: OpenLogbook) -> None:
    save_water(log, SourceWater("tap", "tap", ec_ms_per_cm=0.42, ca_mg_per_l=48.0))
    save_water(log, SourceWater("rain", "rain"))
    dialog.show_bench(bench_of(log, dialog.state), offers_at(bench_of(log, dialog.state)))
    box = dialog.water.field.box
    box.setCurrentIndex(box.findText("a blend"))
    assert {s.water_id: s.water_share for s in dialog.current_state().waters} == {"tap": 0.5, "rain": 0.5}
    share = dialog.water._shares["tap"].line
    retype(dialog, share, "70")
    assert dialog.water.field.refusal == "The shares of the waters add up to 100 %."
    retype(dialog, dialog.water._shares["rain"].line, "30")
    assert not dialog.water.field.is_refused
    assert element(dialog, "Ca")[1].endswith("from water")
