"""The crop review in the window: read, told, followed and corrected."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.look.widgets import TextLabel
from growlog.desktop.review.happened_part import HappenedPart
from growlog.desktop.review.line_table import LineTable, NoteButton
from growlog.desktop.review.review_dialog import ReviewDialog
from growlog.records.entry import Pick
from growlog.services.crops import crop_and_cultivar
from growlog.services.entries import add_entry
from growlog.services.review.model import Happening, ReviewLine, ReviewSection
from tests.desktop.review.at_the_desk import Desktop
from tests.logbooks import entry_on
from tests.services.photo_rows import photo_on

pytestmark = pytest.mark.slow

Left = Qt.MouseButton.LeftButton


def texts_of(dialog: ReviewDialog) -> list[str]:
    return [label.text().replace("\u2009", " ") for label in dialog.findChildren(TextLabel)]


def test_it_says_that_it_is_being_put_together_until_it_was_read(desktop: Desktop) -> None:
    assert desktop.window.opened is not None
    QTest.keySequence(desktop.window, desktop.window.actions_table.by_name["review"].shortcut())
    dialog = desktop.window.opened.reviews.dialog
    assert dialog is not None
    assert dialog.waiting_label.isVisible()
    assert not dialog.share_button.isEnabled()
    desktop.read_review()
    assert not dialog.waiting_label.isVisible()
    assert dialog.share_button.isEnabled()


def test_what_was_picked_stands_first_and_an_earlier_crop_beside_it(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert dialog.page is not None
    said = texts_of(dialog)
    assert any(text.startswith("6 fruit, 500 g") for text in said)  # 2 + 2 + 2 fruit of 160, 250 and 90 g
    production = dialog.page.tables["production"]
    assert "300 g" in [text.replace("\u2009", " ") for text in cells(production)]  # the earlier crop's one pick
    assert production.shown_beside() == 1


def test_a_line_without_data_says_so_quietly(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert dialog.page is not None
    climate = dialog.page.tables["climate"]
    unknown = [label for label in climate.findChildren(TextLabel) if label.text() == "no data"]
    assert unknown
    assert {label.property("tone") for label in unknown} == {"mute"}


def test_the_number_behind_a_figure_tells_how_it_is_worked_out(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert dialog.page is not None
    assert dialog.review is not None
    button = dialog.page.tables["gave"].findChildren(NoteButton)[0]
    button.click()
    assert dialog.note is not None
    shown = next(note for note in dialog.review.notes if str(note.number) == button.text())
    assert dialog.note.parts["method"].text() == shown.method
    assert dialog.note.parts["source"].text() == shown.source
    dialog.note.close()


def test_a_photo_and_a_day_of_the_story_open_that_day_on_the_board(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert dialog.page is not None
    assert desktop.window.desk is not None
    tiles = dialog.page.tiles.tiles
    assert [tile.photo.age for tile in tiles] == [5, 44, 66]  # of 15 November
    QTest.mouseClick(tiles[1], Left)
    assert desktop.window.desk.selection.day == date(2025, 12, 29)
    assert desktop.window.desk.selection.crop_id == desktop.crop.id


def test_a_photo_whose_file_is_gone_says_so(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert dialog.page is not None
    dialog.page.tiles.grab()
    desktop.wait()
    assert all(tile.is_lost for tile in dialog.page.tiles.tiles)
    assert "missing" in dialog.page.tiles.tiles[0].toolTip()


def test_the_words_of_quality_are_kept_and_undone(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert not dialog.quality.save_button.isEnabled()
    taste = dialog.quality.fields["taste"]
    taste.line.setFocus()
    QTest.keyClicks(taste.line, "mild <b>& nutty")
    dialog.quality.save_button.click()
    desktop.read_review()
    assert crop_and_cultivar(desktop.log, desktop.crop.id)[0].taste == "mild <b>& nutty"
    assert "mild <b>& nutty" in cells(table(dialog, "quality"))
    assert desktop.window.desk is not None
    desktop.window.desk.undo()
    desktop.wait()
    assert dialog.quality.fields["taste"].value() == ""


def test_it_follows_what_is_written_elsewhere_and_keeps_words_that_are_being_typed(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert desktop.window.desk is not None
    QTest.keyClicks(dialog.quality.fields["keeping"].line, "two we")
    desktop.window.desk.write(add_entry, entry_on(desktop.crop, date(2026, 2, 1), Pick(1, 80.0)))
    desktop.wait()
    assert any(text.startswith("7 fruit") for text in texts_of(dialog))
    assert dialog.quality.fields["keeping"].value() == "two we"


def test_what_kept_it_from_being_read_stands_there_with_a_way_to_try_again(desktop: Desktop) -> None:
    dialog = desktop.review()
    dialog.say_problem("This crop has not begun yet.")
    assert dialog.banner.isVisible()
    with desktop.qtbot.waitSignal(dialog.read_again):
        dialog.banner.action_button.click()
    desktop.wait()
    assert not dialog.banner.isVisible()


def test_photos_are_chosen_by_hand_and_picked_by_age_again(desktop: Desktop) -> None:
    dialog = desktop.review()
    reviews = desktop.window.opened.reviews
    assert reviews is not None
    reviews.open_photos()
    assert reviews.photos is not None
    tiles = reviews.photos.grid.tiles
    assert len(reviews.photos.ticked()) == len(tiles) == 3
    for tile in tiles:
        tile.setChecked(False)
    assert not reviews.photos.use_button.isEnabled()
    tiles[2].setChecked(True)
    reviews.photos.use_button.click()
    desktop.wait()
    assert shown_ages(dialog) == [66]
    assert "1 photo, chosen by hand" in texts_of(dialog)
    reviews.open_photos()
    reviews.photos.automatic_button.click()
    desktop.wait()
    assert shown_ages(dialog) == [5, 44, 66]


def test_the_other_photos_of_a_day_are_shown_when_asked_and_ticks_stay(desktop: Desktop) -> None:
    photo_on(desktop.log, desktop.crop, date(2025, 12, 29))
    desktop.review()
    assert desktop.window.opened is not None
    reviews = desktop.window.opened.reviews
    reviews.open_photos()
    assert reviews.photos is not None
    reviews.photos.grid.tiles[0].setChecked(False)
    reviews.photos.every_box.click()
    tiles = reviews.photos.grid.tiles
    assert [tile.photo.age for tile in tiles] == [5, 44, 44, 66]
    assert [tile.isChecked() for tile in tiles] == [False, True, False, True]
    tiles[2].setChecked(True)
    reviews.photos.every_box.click()
    assert [tile.isChecked() for tile in reviews.photos.grid.tiles] == [False, True, True, True]
    reviews.photos.close()
    desktop.wait()


def test_earlier_crops_that_find_no_room_are_named(qtbot: QtBot) -> None:
    line = ReviewLine("weight", "Weight", "2 kg", ("1 kg", "3 kg", "4 kg"))
    names = ["Skylight Round", "Porch Violet", "Landing Light"]
    lines = LineTable(ReviewSection("production", "Production", (line,)), names, packet=False)
    qtbot.addWidget(lines)
    lines.resize(1200, 100)
    lines.show()
    assert lines.shown_beside() == 3
    assert not lines.left_out.isVisible()
    lines.resize(520, 100)
    assert lines.shown_beside() == 1
    assert "Porch Violet; Landing Light" in lines.left_out.text()
    assert lines.left_out.isVisible()


def test_more_than_thirty_notes_are_shown_when_asked(qtbot: QtBot) -> None:
    day = date(2026, 2, 2)
    part = HappenedPart("Notes", [Happening(79, day, "note", f"note {n}") for n in range(33)], "Nothing was noted.")
    qtbot.addWidget(part)
    assert "note 32" not in [label.text() for label in part.findChildren(TextLabel)]
    assert part.more_button.text() == "Show 3 more"
    part.more_button.click()
    assert "note 32" in [label.text() for label in part.findChildren(TextLabel)]


def table(dialog: ReviewDialog, key: str) -> LineTable:
    assert dialog.page is not None
    return dialog.page.tables[key]


def cells(lines: LineTable) -> list[str]:
    return [label.text() for label in lines.findChildren(TextLabel)]


def shown_ages(dialog: ReviewDialog) -> list[int]:
    assert dialog.page is not None
    return [tile.photo.age for tile in dialog.page.tiles.tiles]


def test_the_curve_can_be_saved_with_the_earlier_crop_beside_it(desktop: Desktop) -> None:
    dialog = desktop.review()
    assert dialog.page is not None
    data = dialog.page.curve.data()
    assert data is not None
    assert (data.x_title, data.y_title) == ("plant age, days", "marketable yield so far, kg")
    assert [line.ys[-1] for line in data.lines] == pytest.approx([0.5, 0.3])
    assert [line.dash for line in data.lines] == ["", "dash"]
    assert dialog.page.chart_menu.isVisibleTo(dialog)
