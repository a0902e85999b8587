"""The dialog of crops side by side."""

from collections.abc import Callable
from datetime import timedelta
from functools import partial
from typing import Any, cast

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.explanation import ExplanationDialog
from growlog.desktop.pictures import Pictures
from growlog.desktop.side_by_side.beside_dialog import BesideDialog
from growlog.records.crop import Crop
from growlog.services.crops import clear_crop
from growlog.services.open_logbook import OpenLogbook
from growlog.services.side_by_side.beside import crops_beside
from tests.logbooks import plant_crop
from tests.services.yield_view.seasons import at, picked

pytestmark = pytest.mark.slow


class IdleRunner:
    """Takes work and never does it."""

    def run(self, work: Callable[[], Any], **more: Any) -> None:
        return None


def answer(dialog: BesideDialog, log: OpenLogbook, crop_ids: list[str]) -> None:
    dialog.show_crops(crops_beside(log, crop_ids, at(77)))


def shown(qtbot: QtBot, log: OpenLogbook, crops: list[Crop], chosen: int = 2) -> BesideDialog:
    pictures = Pictures(cast(TaskRunner, IdleRunner()), lambda sha256: None, lambda photo: None)
    ids = [c.id for c in crops]
    dialog = BesideDialog([(c.id, c.name) for c in crops], ids[:chosen], pictures)
    qtbot.addWidget(dialog)
    dialog.crops_wanted.connect(partial(answer, dialog, log))
    answer(dialog, log, ids[:chosen])
    dialog.resize(900, 700)
    dialog.show()
    dialog.grab()
    return dialog


def two(log: OpenLogbook, crop: Crop) -> list[Crop]:
    picked(log, crop)
    before = plant_crop(log, "Attic Gold", at(0) - timedelta(days=100))
    picked(log, before, [(40, 1, 100.0), (52, 3, 300.0)])
    clear_crop(log, before.id, before.day_zero + timedelta(days=70))
    return [crop, before]


def test_curves_are_overlaid_and_switched(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    data = dialog.chart.data
    assert data is not None
    assert [line.name for line in data.lines] == ["Boxroom Gold", "Attic Gold"]
    assert len({(line.token, line.dash) for line in data.lines}) == 2
    assert (data.x_title, data.y_title) == ("plant age, days", "marketable yield so far of the crop, kg")
    dialog.aligned.set_value("first-pick")
    dialog.counted.set_value("fruit")
    data = dialog.chart.data
    assert data is not None
    assert data.lines[1].xs == [0, 12, 30]
    assert list(data.lines[1].ys) == [1, 4, 4]
    assert data.x_title == "days from first pick"


def test_crops_without_a_curve_of_the_kind_are_named_with_the_reason(
    qtbot: QtBot, log: OpenLogbook, crop: Crop
) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    dialog.per.set_value("floor")
    assert "Attic Gold: Its floor is not known." in dialog.notes.text()
    assert dialog.chart.data is not None
    assert dialog.chart.data.is_empty
    dialog.counted.set_value("cost")
    assert not dialog.per.isEnabled()
    assert "No cost is known." in dialog.notes.text()


def test_it_says_that_one_plant_of_each_is_not_a_trial(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    assert "One plant of each is not a trial" in dialog.note_label.text()
    assert dialog.chart.data is not None
    assert "One plant of each is not a trial" in dialog.chart.data.notes[-1]


def test_the_best_has_a_star_and_a_click_on_a_title_sorts(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    dialog.page.set_value("facts")
    rows = {row[1]: row for row in dialog.facts.shown()}
    assert rows["Weight of the marketable fruit"][2:] == ["★ 2415\u2009g", "400\u2009g", "more is better"]
    assert rows["Plant age of the first pick"][2:] == ["44\u2009d", "★ 40\u2009d", "less is better"]
    assert rows["Mean weight of a weighed fruit"][4] == ""
    dialog.facts.sortByColumn(2, Qt.SortOrder.DescendingOrder)
    assert dialog.facts.shown()[0][1] == "Weight of the marketable fruit"


def test_opening_a_row_explains_it_for_each_crop(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    dialog.page.set_value("facts")
    row = next(n for n, cells in enumerate(dialog.facts.shown()) if cells[1] == "Weight of the marketable fruit")
    dialog.facts.activated.emit(dialog.facts.model().index(row, 1))
    explained = dialog.findChild(ExplanationDialog)
    assert explained is not None
    assert explained.choice.box.count() == 2
    assert explained.choice.box.itemText(1) == "Attic Gold"
    explained.close()


def test_the_slider_moves_the_photos_of_both_together(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    dialog.page.set_value("photos")
    dialog.age.setValue(60)
    assert dialog.age_label.text() == "day 60"
    assert dialog.photos.titles == ["Boxroom Gold, no photo near day 60", "Attic Gold, no photo near day 60"]
    assert dialog.age.maximum() == 77


def test_fewer_than_two_crops_ask_for_more(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    with qtbot.waitSignal(dialog.crops_wanted):
        dialog.boxes[crop.id].click()
    assert dialog.empty.isVisible()
    assert dialog.empty.sentence_label.text() == "Choose two crops or more."
    assert not dialog.save_button.isEnabled()


def test_the_table_is_handed_out_as_csv(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    with qtbot.waitSignal(dialog.table_wanted) as wanted:
        dialog.save_button.click()
    assert wanted.args[0].startswith("key,family,fact,unit,better,Boxroom Gold,Attic Gold,best\r\n")


def test_the_button_that_saves_the_chart_goes_with_the_curves(qtbot: QtBot, log: OpenLogbook, crop: Crop) -> None:
    dialog = shown(qtbot, log, two(log, crop))
    seen = []
    for page in ("curves", "photos", "facts", "curves"):
        dialog.page.set_value(page)
        seen.append(dialog.chart_menu.isVisible())
    assert seen == [True, False, False, True]
