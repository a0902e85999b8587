"""Room, light programme, logger and money in the real window: one save, one undo, and the board follows."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from growlog.records.crop import Crop
from growlog.services.energy.tariffs import tariffs_of
from growlog.services.light.steps import light_steps_of
from growlog.services.money.purchases import purchases_of
from growlog.services.open_logbook import OpenLogbook
from growlog.services.rooms import rooms_of
from tests.desktop.fakes import FakeFileChoice, FakeMessages
from tests.desktop.hands import retype
from tests.logbooks import furnish, logbook, plant_crop

pytestmark = pytest.mark.slow


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    planted = plant_crop(log)
    furnish(log, planted, share=1.0)
    return planted


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path, log: OpenLogbook, crop: Crop) -> Iterator[MainWindow]:
    made = MainWindow(Settings(tmp_path / "settings.ini"), FakeMessages(), FakeFileChoice())
    qtbot.addWidget(made)
    made.show_logbook(log)
    with qtbot.waitActive(made):
        made.show()
    yield made
    made.close()


def act(window: MainWindow, name: str) -> None:
    window.actions_table.by_name[name].trigger()


def until_idle(qtbot: QtBot, window: MainWindow) -> None:
    qtbot.waitUntil(lambda: not window.runner.is_busy, timeout=20_000)


def test_a_lamp_and_a_fan_go_in_with_one_save_and_out_with_one_undo(window: MainWindow, log: OpenLogbook) -> None:
    act(window, "room")
    assert window.opened is not None
    dialog = window.opened.rooms.room
    assert dialog is not None
    dialog.page.lamps.add()
    retype(dialog.page.lamps.cards[0].name_field, "Panel")
    dialog.page.show_part("devices")
    dialog.page.devices.add()
    retype(dialog.page.devices.cards[0].name_field, "Fan")
    dialog.save()
    (view,) = rooms_of(log)
    assert (len(view.lamps), len(view.devices), dialog.isVisible()) == (1, 1, False)
    act(window, "undo")
    (view,) = rooms_of(log)
    assert (view.lamps, view.devices) == ((), ())


def test_a_step_of_the_programme_reaches_the_board(qtbot: QtBot, window: MainWindow, log: OpenLogbook) -> None:
    act(window, "light_plan")
    until_idle(qtbot, window)
    assert window.opened is not None
    dialog = window.opened.rooms.light_plan
    assert dialog is not None
    dialog.empty.button.click()
    assert dialog.form is not None
    retype(dialog.form.hours_field, "16")
    retype(dialog.form.day_field, "2026-01-10")
    dialog.form.save()
    until_idle(qtbot, window)
    assert [view.step.photoperiod_h for view in light_steps_of(log, rooms_of(log)[0].room.id)] == [16]
    assert [row.cells[1] for row in dialog.table.rows()] == ["16\u2009h"]
    assert window.desk is not None
    assert window.desk.board is not None
    assert [span.photoperiod_h for span in window.desk.board.light] == [16]
    dialog.close()


def test_two_tariffs_from_one_day_are_refused_beside_the_day(
    qtbot: QtBot, window: MainWindow, log: OpenLogbook
) -> None:
    act(window, "money")
    until_idle(qtbot, window)
    assert window.opened is not None
    dialog = window.opened.money.dialog
    assert dialog is not None
    dialog.show_part("power")
    for _ in range(2):
        dialog.power.add()
        assert dialog.power.form is not None
        retype(dialog.power.form.name_field, "One price")
        retype(dialog.power.form.rows[0].price_field, "0.30")
        dialog.power.form.save()
        until_idle(qtbot, window)
    assert dialog.power.form is not None
    assert "two tariffs cannot hold at once" in dialog.power.form.day_field.refusal
    assert len(tariffs_of(log)) == 1
    dialog.close()


def test_a_purchase_is_counted_at_once_and_undone(qtbot: QtBot, window: MainWindow, log: OpenLogbook) -> None:
    act(window, "money")
    until_idle(qtbot, window)
    assert window.opened is not None
    dialog = window.opened.money.dialog
    assert dialog is not None
    dialog.crop_page.empty.button.click()
    form = dialog.purchases.form
    assert form is not None
    retype(form.name_field, "Seed")
    retype(form.price_field, "3.50")
    form.save()
    until_idle(qtbot, window)
    assert [p.price_minor for p in purchases_of(log)] == [350]
    dialog.show_part("crop")
    assert dialog.crop_page.total_label.text().startswith("3.50")
    act(window, "undo")
    until_idle(qtbot, window)
    assert dialog.crop_page.empty.isVisible()
    dialog.close()


def test_the_cost_lane_is_read_once_it_is_shown(qtbot: QtBot, window: MainWindow) -> None:
    assert window.page is not None
    assert window.desk is not None
    assert window.desk.board is not None
    assert window.desk.board.use is None
    window.page.board.hidden_lanes_changed.emit([])
    until_idle(qtbot, window)
    assert window.desk.board.use is not None


def test_all_figures_open_with_their_explanations(qtbot: QtBot, window: MainWindow) -> None:
    act(window, "figures")
    until_idle(qtbot, window)
    assert window.opened is not None
    dialog = window.opened.money.figures
    assert dialog is not None
    assert {"plant-age", "cost-per-fruit", "kwh", "mean-vpd"} <= set(dialog.shown())
    dialog.close()


def test_a_logger_file_goes_in_and_the_board_shows_the_air(
    qtbot: QtBot, window: MainWindow, log: OpenLogbook, tmp_path: Path
) -> None:
    path = tmp_path / "logger.csv"
    path.write_text("Time,Temp (°C),RH (%)\n2026-01-10 08:00,21.5,60\n2026-01-10 08:10,22.5,61\n", encoding="utf-8")
    assert window.opened is not None
    window.opened.rooms.open_logger(path=path)
    until_idle(qtbot, window)
    dialog = window.opened.rooms.logger
    assert dialog is not None
    dialog.confirm()
    until_idle(qtbot, window)
    assert window.desk is not None
    assert window.desk.board is not None
    assert [day.climate.temperature_max_c for day in window.desk.board.climate] == [22.5]
    act(window, "undo")
    assert window.desk.board.climate == ()
    assert dialog.files_view.none_label.isVisible()
    dialog.close()
