"""The intake tray on a real logbook with real photos, driven by keys and mouse."""

import threading
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from growlog.desktop.intake.tray_table import CROP, DAY, FATE, PHOTO
from growlog.records.change import Change
from growlog.services.photo_intake import IntakeItem
from tests.desktop.intake.conftest import Bench

pytestmark = pytest.mark.slow


def cell(bench: Bench, name: str, column: int) -> str:
    """What a cell of a file's row says."""
    return str(bench.tray.table.index(place(bench, name), column).data()).replace("\n", ": ")


def place(bench: Bench, name: str) -> int:
    return [row.item.path.name for row in bench.tray.tray.rows].index(name)


def choose(bench: Bench, *names: str) -> None:
    """Clicks rows with ctrl held."""
    for name in names:
        index = bench.tray.table.index(place(bench, name), PHOTO)
        bench.tray.view.scrollTo(index)
        middle = bench.tray.view.visualRect(index).center()
        viewport, control = bench.tray.view.viewport(), Qt.KeyboardModifier.ControlModifier
        QTest.mouseClick(viewport, Qt.MouseButton.LeftButton, control, middle)


def uses_of(bench: Bench) -> list[tuple[str, date]]:
    """Which crop has a photo on which day."""
    names = {bench.gold.id: "gold", bench.light.id: "light"}
    with bench.log.unit() as unit:
        return sorted((names[use.crop_id], use.day) for use in unit.photo_uses.all())


FIRST, SECOND, THIRD = (f"plant-a_2019-10-{day}-11-05.jpg" for day in (22, 23, 24))


@pytest.fixture
def filled(bench: Bench, phone: Path) -> Bench:
    """The phone's folder has been read."""
    bench.tray.start([phone])
    bench.wait()
    return bench


def test_an_empty_tray_says_what_to_do_and_offers_two_ways(bench: Bench) -> None:
    assert bench.tray.empty.sentence_label.text() == "Drop photos or a folder here."
    assert bench.tray.empty.isVisible()
    assert not bench.tray.in_button.isVisible()


def test_a_chosen_folder_is_read(bench: Bench, phone: Path) -> None:
    bench.choice.answers = [phone]
    QTest.mouseClick(bench.tray.empty.folder_button, Qt.MouseButton.LeftButton)
    bench.wait()
    assert bench.tray.table.rowCount() == 5
    assert not bench.tray.empty.isVisible()


def test_each_file_shows_its_day_its_age_its_source_and_its_fate(filled: Bench) -> None:
    assert "day 2, 11:05, date in the file name" in cell(filled, FIRST, DAY)
    assert cell(filled, FIRST, CROP) == "Boxroom Gold"
    assert cell(filled, FIRST, FATE) == "goes in"
    assert cell(filled, "plant-a_2019-10-25-copy.jpg", FATE) == (
        "already there: The same picture is in the tray already."
    )
    assert cell(filled, "torn.jpg", FATE).startswith("refused: torn.jpg ")


def test_the_counts_and_the_button_say_what_confirming_does(filled: Bench) -> None:
    assert filled.tray.counts_label.text() == "3 go in, 1 already there, 1 refused"
    assert filled.tray.in_button.text().startswith("Put 3 photos in")


def test_ctrl_enter_puts_the_photos_in_and_tells_the_change(filled: Bench, qtbot: QtBot) -> None:
    with qtbot.waitSignal(filled.tray.taken_in, timeout=20000) as told:
        QTest.keyClick(filled.tray.view, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    filled.wait()
    change = told.args[0]
    assert isinstance(change, Change)
    assert change.title == "Add 3 photos"
    assert uses_of(filled) == [("gold", date(2019, 10, day)) for day in (22, 23, 24)]
    assert filled.tray.banner.sentence == "3 photos are in the logbook."
    left = [row.item.path.name for row in filled.tray.tray.rows]
    assert left == ["plant-a_2019-10-25-copy.jpg", "torn.jpg"]


def test_nothing_is_written_when_the_tray_is_put_away(filled: Bench, qtbot: QtBot) -> None:
    with qtbot.waitSignal(filled.tray.put_away):
        QTest.keyClick(filled.tray, Qt.Key.Key_Escape)
    assert not filled.tray.isVisible()
    assert uses_of(filled) == []


def test_photos_that_are_in_the_logbook_are_known_the_next_time(filled: Bench, phone: Path, qtbot: QtBot) -> None:
    with qtbot.waitSignal(filled.tray.taken_in, timeout=20000):
        QTest.mouseClick(filled.tray.in_button, Qt.MouseButton.LeftButton)
    filled.tray.start([phone / FIRST])
    filled.wait()
    assert cell(filled, FIRST, FATE).startswith("already there: This photo is already there, on")
    assert not filled.tray.in_button.isEnabled()


def test_a_typed_day_goes_to_all_chosen_photos(filled: Bench) -> None:
    choose(filled, FIRST, SECOND)
    filled.tray.change_bar.day_field.line.setFocus()
    QTest.keyClicks(filled.tray.change_bar.day_field.line, "2019-11-01")
    QTest.keyClick(filled.tray.change_bar.day_field.line, Qt.Key.Key_Return)
    filled.wait()
    assert "day 12, 11:05, typed" in cell(filled, FIRST, DAY)
    assert "day 12, 11:05, typed" in cell(filled, SECOND, DAY)
    assert "day 4, 11:05, date in the file name" in cell(filled, THIRD, DAY)


def test_a_day_after_today_is_questioned_but_goes_in(filled: Bench) -> None:
    choose(filled, FIRST)
    QTest.keyClicks(filled.tray.change_bar.day_field.line, "2019-12-24")
    QTest.mouseClick(filled.tray.change_bar.day_button, Qt.MouseButton.LeftButton)
    filled.wait()
    sentence = "This day has not come yet: is the camera's clock right?"
    assert cell(filled, FIRST, FATE) == f"goes in, look again: {sentence}"
    assert filled.tray.reason_label.text() == sentence
    assert filled.tray.counts_label.text().startswith("3 go in, 1 of them to look at again")


def test_a_text_that_is_no_day_changes_nothing_and_is_told(filled: Bench) -> None:
    choose(filled, FIRST)
    QTest.keyClicks(filled.tray.change_bar.day_field.line, "yesterday")
    QTest.mouseClick(filled.tray.change_bar.day_button, Qt.MouseButton.LeftButton)
    assert "date in the file name" in cell(filled, FIRST, DAY)
    assert filled.tray.change_bar.day_field.refusal.startswith("Write a day as")


def test_another_crop_for_chosen_photos_reaches_the_logbook(filled: Bench, qtbot: QtBot) -> None:
    choose(filled, SECOND)
    filled.tray.change_bar.crop_field.set_value(filled.light.id)
    QTest.mouseClick(filled.tray.change_bar.crop_button, Qt.MouseButton.LeftButton)
    filled.wait()
    assert cell(filled, SECOND, CROP) == "Landing Light"
    with qtbot.waitSignal(filled.tray.taken_in, timeout=20000):
        filled.tray.confirm()
    assert ("light", date(2019, 10, 23)) in uses_of(filled)


def test_delete_leaves_chosen_photos_out_and_takes_them_back(filled: Bench) -> None:
    choose(filled, THIRD)
    QTest.keyClick(filled.tray.view, Qt.Key.Key_Delete)
    filled.wait()
    assert cell(filled, THIRD, FATE) == "left out"
    assert filled.tray.change_bar.leave_out_button.text() == "Take back in"
    assert cell(filled, "plant-a_2019-10-25-copy.jpg", FATE) == "goes in"
    QTest.keyClick(filled.tray.view, Qt.Key.Key_Delete)
    filled.wait()
    assert cell(filled, THIRD, FATE) == "goes in"


def test_with_nothing_chosen_the_clock_is_shifted_for_all(filled: Bench) -> None:
    bar = filled.tray.change_bar
    QTest.mouseClick(bar.shift_button, Qt.MouseButton.LeftButton)
    assert bar.shift_panel.button.text() == "Shift all 4"
    bar.shift_panel.direction_field.set_value("earlier")
    QTest.keyClicks(bar.shift_panel.hours_field.line, "12")
    QTest.mouseClick(bar.shift_panel.button, Qt.MouseButton.LeftButton)
    filled.wait()
    days = [row.item.day for row in filled.tray.tray.rows if row.is_picture]
    assert days == [date(2019, 10, day) for day in (21, 22, 23, 25)]
    assert "23:05" in cell(filled, FIRST, DAY)


def test_ctrl_a_chooses_all_pictures(filled: Bench) -> None:
    QTest.keyClick(filled.tray.view, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    assert filled.tray.change_bar.scope_label.text() == "4 photos chosen"


def test_a_day_is_typed_in_its_cell(filled: Bench, qtbot: QtBot) -> None:
    view, index = filled.tray.view, filled.tray.table.index(place(filled, FIRST), DAY)
    view.setCurrentIndex(index)
    view.edit(index)
    editor = view.viewport().findChild(QLineEdit)
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, "2019-10-30")
    with qtbot.waitSignal(filled.tray.table.changed_by_hand):
        QTest.keyClick(editor, Qt.Key.Key_Return)
    filled.wait()
    assert "day 10" in cell(filled, FIRST, DAY)


def test_more_files_can_be_dropped_and_listed_ones_are_not_doubled(filled: Bench, phone: Path, tmp_path: Path) -> None:
    more = tmp_path / "2019-10-28.jpg"
    more.write_bytes((phone.parents[0] / "phone" / FIRST).read_bytes() + b"\0")
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(more)), QUrl.fromLocalFile(str(phone / FIRST))])
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    filled.tray.dropEvent(QDropEvent(QPointF(5, 5), Qt.DropAction.CopyAction, mime, buttons, keys))
    filled.wait()
    assert filled.tray.table.rowCount() == 6
    assert filled.tray.banner.sentence == "1 file is in the tray already."


def test_a_folder_without_pictures_is_told(bench: Bench, tmp_path: Path) -> None:
    (tmp_path / "papers").mkdir()
    bench.tray.start([tmp_path / "papers"])
    bench.wait()
    assert bench.tray.banner.sentence.startswith("There is no picture in what was chosen.")
    assert bench.tray.empty.isVisible()


def test_closing_while_photos_are_copied_stops_and_keeps_what_was_copied(filled: Bench, qtbot: QtBot) -> None:
    reached, go_on = threading.Event(), threading.Event()
    whole = filled.tray._take_in

    def held(items, on_progress, cancelled):  # type: ignore[no-untyped-def]
        def after_one(done: int, total: int) -> None:
            on_progress(done, total)
            if done == 1:
                reached.set()
                go_on.wait(10)

        return whole(items, after_one, cancelled)

    filled.tray._take_in = held
    filled.tray.confirm()
    assert reached.wait(10)
    filled.tray.close()
    assert filled.tray.isVisible()
    with qtbot.waitSignals([filled.tray.taken_in, filled.tray.put_away], timeout=20000):
        go_on.set()
    assert not filled.tray.isVisible()
    assert uses_of(filled) == [("gold", date(2019, 10, 22))]


def test_a_failed_copy_says_that_nothing_is_in_the_logbook(
    filled: Bench, qtbot: QtBot, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(items: list[IntakeItem], on_progress: object, cancelled: object) -> tuple[list[IntakeItem], None]:
        raise RuntimeError("no such disk")

    filled.tray._take_in = broken
    filled.tray.confirm()
    filled.wait()
    assert filled.tray.banner.sentence == "The photos could not be put in; none of them is in the logbook."
    assert filled.tray.table.rowCount() == 5
    assert "no such disk" in caplog.text


def test_the_keys_go_to_the_list_once_files_are_read(filled: Bench) -> None:
    assert filled.tray.focusWidget() is filled.tray.view


def test_photos_without_a_crop_wait_until_one_is_set(bench: Bench, phone: Path) -> None:
    bench.tray._crop_id = None
    bench.tray.start([phone / FIRST])
    bench.wait()
    assert cell(bench, FIRST, FATE) == "waits: Choose the crop it shows."
    assert not bench.tray.in_button.isEnabled()
    QTest.keyClick(bench.tray.view, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    bench.tray.change_bar.crop_field.set_value(bench.light.id)
    QTest.mouseClick(bench.tray.change_bar.crop_button, Qt.MouseButton.LeftButton)
    bench.wait()
    assert cell(bench, FIRST, FATE) == "goes in"


def test_a_figure_puts_the_chosen_photos_to_the_crop_of_that_number(filled: Bench) -> None:
    choose(filled, FIRST, SECOND)
    QTest.keyClick(filled.tray.view, Qt.Key.Key_1)
    filled.wait()
    assert (cell(filled, FIRST, CROP), cell(filled, THIRD, CROP)) == ("Landing Light", "Boxroom Gold")


def test_a_figure_without_a_crop_changes_nothing(filled: Bench) -> None:
    choose(filled, FIRST)
    QTest.keyClick(filled.tray.view, Qt.Key.Key_9)
    filled.wait()
    assert cell(filled, FIRST, CROP) == "Boxroom Gold"
