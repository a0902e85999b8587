"""A day sheet and a form on a real logbook: what is written in the form is read on the sheet."""

from datetime import date
from functools import partial
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.day_sheet import DaySheetPanel
from growlog.desktop.entry_form import EntryForm
from growlog.desktop.pictures import Pictures
from growlog.records.entry import Entry, Owner, OwnerKind, Pick, Treatment
from growlog.services.day_sheet import day_sheet_of
from growlog.services.entries import add_entry, check_entry, new_entry, owners_for
from tests.logbooks import logbook, plant_crop, write

DAY = date(2026, 1, 18)


@pytest.fixture
def panel(qtbot: QtBot, pictures: Pictures) -> DaySheetPanel:
    made = DaySheetPanel(pictures)
    qtbot.addWidget(made)
    return made


def test_a_pick_that_is_typed_stands_on_the_sheet(panel: DaySheetPanel, qtbot: QtBot, tmp_path: Path):
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        entry = new_entry(Owner(OwnerKind.CROP, crop.id), DAY, "pick")
        form = EntryForm(entry, owners_for(log, crop.id, DAY), [], partial(check_entry, log))
        qtbot.addWidget(form)
        qtbot.keyClicks(form.cell("fruit_count").field.editor, "1")
        qtbot.keyClicks(form.cell("total_weight_g").field.editor, "86")
        written: list[Entry] = []
        form.confirmed.connect(written.append)
        form.write()
        add_entry(log, written[0])
        panel.show_day(day_sheet_of(log, crop.id, DAY))
    assert [row.title_label.text() for row in panel.rows] == ["Picked 1, 86\u2009g"]
    assert "crop so far 1 fruit" in panel.rows[0].more_label.text()


def test_a_pick_inside_a_harvest_interval_is_asked_about_and_warned_of(
    panel: DaySheetPanel, qtbot: QtBot, tmp_path: Path
):
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, DAY, Treatment("soap", harvest_interval_days=3))
        entry = Entry("pick-1", Owner(OwnerKind.CROP, crop.id), DAY, Pick(1, 86.0))
        form = EntryForm(entry, owners_for(log, crop.id, DAY), [], partial(check_entry, log))
        qtbot.addWidget(form)
        assert "asks for no pick" in form.cell("day").field.message_label.text()
        assert form.value() is None
        form.cell("day").answer_box.click()
        confirmed = form.value()
        assert confirmed is not None
        add_entry(log, confirmed)
        panel.show_day(day_sheet_of(log, crop.id, DAY))
    warned = next(row for row in panel.rows if row.shown.entry.id == "pick-1")
    assert "not to be eaten" in warned.warning_label.text()


def test_a_day_before_sowing_is_refused_at_its_field(qtbot: QtBot, tmp_path: Path):
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        entry = Entry("pick-1", Owner(OwnerKind.CROP, crop.id), date(2025, 11, 1), Pick(1, 86.0))
        form = EntryForm(entry, owners_for(log, crop.id, DAY), [], partial(check_entry, log))
        qtbot.addWidget(form)
        assert "before day 0 of Boxroom Gold" in form.cell("day").field.message_label.text()
        assert form.value() is None
