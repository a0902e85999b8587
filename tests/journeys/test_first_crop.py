"""From an empty logbook to a crop with photos, entries and a curve, through the real window."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, Qt, QUrl
from PySide6.QtGui import QDropEvent

from growlog.records.entry import Feed, Pick, Pollination
from growlog.services.crops import add_crop, new_crop
from tests.journeys.conftest import Person

ROSETTES = Path(__file__).parents[1] / "data" / "photos" / "daily-rosettes"
SOWN = date(2019, 10, 15)
TODAY = date(2019, 11, 5)

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def with_two_crops(make: Callable[..., Person]) -> Person:
    """A person with plant a and plant b sown on one day."""
    someone = make(TODAY)
    someone.new_logbook()
    desk = someone.window.desk
    assert desk is not None
    for name in ("Plant a", "Plant b"):
        crop, cultivar = new_crop(name, "rosette", SOWN, packet_days=30)
        assert desk.write(add_crop, crop, cultivar) is not None
    return someone


def choose(someone: Person, name: str) -> None:
    """Chooses a crop by its name."""
    desk = someone.window.desk
    assert desk is not None
    desk.selection.choose_crop(next(c.crop.id for c in desk.crops if c.crop.name == name))


def drop(someone: Person, files: list[Path]) -> None:
    """Drops files on the window, as a file manager does."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(f)) for f in files])
    event = QDropEvent(QPoint(400, 400), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton,
                       Qt.KeyboardModifier.NoModifier)  # fmt: skip
    someone.window.dropEvent(event)


def put_in(someone: Person) -> None:
    """Waits for the tray to have judged, then confirms."""
    photos = someone.window.opened.photos
    assert photos is not None
    tray = photos.tray
    assert tray is not None
    someone.qtbot.waitUntil(lambda: tray.is_at_rest and tray.in_button.isEnabled(), timeout=30_000)
    with someone.qtbot.waitSignal(tray.taken_in, timeout=30_000):
        someone.qtbot.mouseClick(tray.in_button, Qt.MouseButton.LeftButton)
    tray.close()


def test_a_crop_is_made_by_typing_its_name_and_species(person: Callable[..., Person]) -> None:
    someone = person(TODAY)
    someone.new_logbook()
    window = someone.window
    window.actions_table.by_name["new_crop"].trigger()
    assert window.opened is not None
    dialog = window.opened.crops.dialog
    someone.qtbot.keyClicks(dialog.form.name_field.line, "Boxroom Gold")
    dialog.form.species_field.set_value("pattypan")
    dialog.confirm()
    assert window.desk is not None
    assert [c.crop.name for c in window.desk.crops] == ["Boxroom Gold"]
    assert window.desk.board is not None
    assert window.desk.selection.day == TODAY


def test_both_daily_series_land_on_their_days_and_the_missing_day_is_a_gap(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    desk = someone.window.desk
    assert desk is not None
    for name, letter in (("Plant a", "a"), ("Plant b", "b")):
        choose(someone, name)
        drop(someone, sorted(ROSETTES.glob(f"plant-{letter}_*.jpg")))
        put_in(someone)
    days = {}
    for name in ("Plant a", "Plant b"):
        choose(someone, name)
        assert desk.board is not None
        days[name] = [desk.board.date_of(p.age) for p in desk.board.photo_days]
    assert days["Plant b"] == [date(2019, 10, d) for d in range(22, 32)] + [date(2019, 11, 1), date(2019, 11, 2)]
    assert days["Plant a"] == days["Plant b"][:-1]


def test_a_wrong_day_is_corrected_in_the_tray_before_anything_is_written(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    choose(someone, "Plant a")
    drop(someone, [ROSETTES / "plant-a_2019-10-22-11-05.jpg"])
    photos, desk = someone.window.opened.photos, someone.window.desk
    assert photos is not None
    assert desk is not None
    tray = photos.tray
    assert tray is not None
    someone.qtbot.waitUntil(lambda: tray.is_at_rest and tray.in_button.isEnabled(), timeout=30_000)
    tray.view.selectAll()
    tray.change_bar.day_set.emit(date(2019, 10, 20))
    put_in(someone)
    assert desk.board is not None
    assert [desk.board.date_of(p.age) for p in desk.board.photo_days] == [date(2019, 10, 20)]


def test_entries_raise_the_curve_can_be_undone_and_are_there_after_reopening(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    choose(someone, "Plant b")
    drop(someone, sorted(ROSETTES.glob("plant-b_*.jpg")))
    put_in(someone)
    desk, entries = someone.window.desk, someone.window.opened.entries
    assert desk is not None
    assert entries is not None
    desk.selection.choose_day(date(2019, 11, 1))
    for kind, typed in (("feed", {"volume_l": 0.5, "ph": 5.9}), ("pollination", {"females_pollinated": 2}),
                        ("pick", {"fruit_count": 2, "total_weight_g": 171.0})):  # fmt: skip
        entries.add(kind)
        assert entries.dialog is not None
        form = entries.dialog.form
        for name, value in typed.items():
            form.cell(name).field.set_value(value)
        form.write()
    assert desk.board is not None
    assert desk.sheet is not None
    assert {type(e.entry.detail) for e in desk.sheet.entries} == {Feed, Pollination, Pick}
    assert (desk.board.total.fruit_count, desk.board.total.weight_g) == (2, 171.0)
    someone.window.actions_table.by_name["undo"].trigger()
    assert desk.board.total.fruit_count == 0
    someone.window.actions_table.by_name["redo"].trigger()
    assert desk.board.total.fruit_count == 2
    folder = desk.log.folder
    someone.close()
    someone.start()
    someone.opening.open(folder)
    choose(someone, "Plant b")
    reopened = someone.window.desk
    assert reopened is not None
    assert reopened.board is not None
    assert reopened.board.total.weight_g == 171.0
    assert len(reopened.board.photo_days) == 12


def test_dropped_photos_are_taken_back_by_one_undo(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    choose(someone, "Plant a")
    drop(someone, sorted(ROSETTES.glob("plant-a_*.jpg"))[:3])
    put_in(someone)
    desk = someone.window.desk
    assert desk is not None
    assert desk.board is not None
    assert len(desk.board.photo_days) == 3
    desk.undo()
    assert desk.board.photo_days == ()
    desk.redo()
    assert len(desk.board.photo_days) == 3
