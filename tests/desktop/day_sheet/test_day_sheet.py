"""The day sheet: what is seen of a day, and what its keys, buttons and menus announce."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLabel, QMenu, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.day_sheet import DaySheetPanel
from growlog.desktop.look.marks import MarkSign
from growlog.desktop.pictures import Pictures
from growlog.services.day_sheet import DaySheet
from tests.desktop.day_sheet.conftest import ENTRIES, day_photo

MakeSheet = Callable[..., DaySheet]
SIGNALS = (
    "day_step",
    "add_wanted",
    "correct_wanted",
    "remove_wanted",
    "photo_opened",
    "photo_chosen_to_lead",
    "photo_move_wanted",
    "photo_remove_wanted",
    "compare_wanted",
    "add_photos_wanted",
)


class Wishes(list[tuple[object, ...]]):
    """All that a panel announced, in order: the signal's name and what it carried."""

    def __init__(self, panel: DaySheetPanel) -> None:
        super().__init__()
        for name in SIGNALS:
            getattr(panel, name).connect(self._keeper(name))

    def _keeper(self, name: str) -> Callable[..., None]:
        def keep(*values: object) -> None:
            self.append((name, *values))

        return keep


@pytest.fixture
def panel(qtbot: QtBot, pictures: Pictures) -> DaySheetPanel:
    made = DaySheetPanel(pictures)
    qtbot.addWidget(made)
    made.resize(352, 860)
    with qtbot.waitActive(made):
        made.show()
    return made


def seen_words(widget: QWidget) -> list[str]:
    return [label.text() for label in widget.findChildren(QLabel) if label.isVisible() and label.text()]


def action(menu: QMenu, words: str) -> QAction:
    return next(a for a in menu.actions() if a.text().startswith(words))


def test_a_day_shows_its_age_its_date_and_all_its_entries(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    words = seen_words(panel)
    assert "Day 64" in words
    assert any("18" in text and "January" in text for text in words)
    assert {"Feed 2.8\u2009L", "Picked 1, 86\u2009g", "08:20", "EC 1.88\u2009mS/\u2060cm"} <= set(words)
    assert [row.findChild(MarkSign).kind for row in panel.rows] == ["feed", "pick", "reading"]  # type: ignore[union-attr]


def test_an_entry_of_the_room_bears_the_rooms_name(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    assert panel.rows[2].more_label.text() == "Box room \u00b7 VPD 1.30\u2009kPa of the air"


def test_a_warning_stands_with_the_mark_of_a_problem(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    assert panel.rows[1].warning_label.isVisible()
    assert panel.rows[1].warning_label.property("tone") == "problem"
    marks = [sign.kind for sign in panel.rows[1].findChildren(MarkSign) if sign.isVisible()]
    assert marks == ["pick", "problem"]
    assert not panel.rows[0].warning_label.isVisible()


def test_a_screen_reader_hears_the_kind_with_the_words(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    assert panel.rows[0].accessibleName().startswith("Feed, Feed 2.8")


def test_the_arrows_ask_for_the_days_beside(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    qtbot.mouseClick(panel.earlier_button, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(panel.later_button, Qt.MouseButton.LeftButton)
    assert wishes == [("day_step", -1), ("day_step", 1)]


def test_enter_and_a_double_click_correct_and_delete_removes(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    qtbot.keyClick(panel.rows[0], Qt.Key.Key_Return)
    qtbot.mouseDClick(panel.rows[1], Qt.MouseButton.LeftButton)
    qtbot.keyClick(panel.rows[2], Qt.Key.Key_Delete)
    assert wishes == [
        ("correct_wanted", "entry-feed"),
        ("correct_wanted", "entry-pick"),
        ("remove_wanted", "entry-reading"),
    ]


def test_the_button_of_a_row_offers_both(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    action(panel.rows[0].menu, "Correct").trigger()
    action(panel.rows[0].menu, "Remove").trigger()
    assert wishes == [("correct_wanted", "entry-feed"), ("remove_wanted", "entry-feed")]


def test_the_down_key_goes_from_row_to_row(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.show_day(make_sheet())
    panel.rows[0].setFocus()
    qtbot.keyClick(panel.rows[0], Qt.Key.Key_Down)
    assert panel.rows[1].hasFocus()
    qtbot.keyClick(panel.rows[1], Qt.Key.Key_Up)
    assert panel.rows[0].hasFocus()


def test_the_focus_stays_on_an_entry_that_was_corrected(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    panel.rows[1].setFocus()
    panel.show_day(make_sheet())
    assert panel.rows[1].hasFocus()


@pytest.mark.parametrize(
    "key, kind",
    [
        (Qt.Key.Key_F, "feed"),
        (Qt.Key.Key_K, "pick"),
        (Qt.Key.Key_P, "pollination"),
        (Qt.Key.Key_T, "training"),
        (Qt.Key.Key_R, "reading"),
        (Qt.Key.Key_S, "stage"),
        (Qt.Key.Key_N, "note"),
    ],
)
def test_a_single_key_asks_for_an_entry(
    panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot, key: Qt.Key, kind: str
):
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    panel.rows[0].setFocus()
    qtbot.keyClick(panel.rows[0], key)
    panel.add_row.buttons[kind].click()
    assert wishes == [("add_wanted", kind)] * 2


def test_the_other_kinds_are_in_the_menu(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    action(panel.add_row.menu, "Treatment").trigger()
    action(panel.add_row.menu, "Light change").trigger()
    assert wishes == [("add_wanted", "treatment"), ("add_wanted", "light")]


def test_read_only_shows_all_and_offers_no_change(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.set_writable(False)
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    assert not panel.add_row.isVisible()
    assert not panel.rows[0].more_button.isVisible()
    for key in (Qt.Key.Key_Return, Qt.Key.Key_Delete, Qt.Key.Key_F):
        qtbot.keyClick(panel.rows[0], key)
    assert wishes == []
    assert [a.text() for a in panel.photo_menu(0).actions()] == ["Open large"]
    assert "Feed 2.8\u2009L" in seen_words(panel)


def test_a_day_without_anything_says_so_and_offers_a_way_on(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.show_day(make_sheet(photos=(), entries=()))
    wishes = Wishes(panel)
    assert {"No photo of this day.", "Nothing is written for this day yet."} <= set(seen_words(panel))
    assert not panel.photo_frame.isVisible()
    qtbot.mouseClick(panel.no_photo.button, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(panel.no_entries.button, Qt.MouseButton.LeftButton)
    assert wishes == [("add_photos_wanted",), ("add_wanted", "note")]


def test_without_a_crop_there_is_one_sentence_and_no_key_works(panel: DaySheetPanel, qtbot: QtBot):
    wishes = Wishes(panel)
    assert seen_words(panel) == ["Choose a crop, and its days appear here."]
    qtbot.keyClick(panel, Qt.Key.Key_F)
    assert wishes == []


def test_the_small_picture_is_there_at_once_and_the_sharp_one_follows(
    panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot, pictures: Pictures
):
    with qtbot.waitSignal(pictures.sharp_arrived):
        panel.show_day(make_sheet())
        image = panel.photo_frame.shown.image
        assert image is not None
        assert image.width() == 30
    image = panel.photo_frame.shown.image
    assert image is not None
    assert image.width() == 300
    assert panel.photo_frame.grab().toImage().pixelColor(40, 40).red() > 150


def test_a_lost_picture_has_a_sentence_in_its_place(
    panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot, pictures: Pictures
):
    with qtbot.waitSignal(pictures.lost):
        panel.show_day(make_sheet(photos=(day_photo("gone"),)))
    assert panel.photo_frame.shown.is_lost
    assert panel.photo_frame.isVisible()


def test_another_photo_of_the_day_is_chosen_from_the_strip(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.show_day(make_sheet())
    qtbot.mouseClick(panel.photo_strip.thumbnails[1], Qt.MouseButton.LeftButton)
    assert panel.photo is not None
    assert panel.photo.use.id == "use-green"
    assert [t.isChecked() for t in panel.photo_strip.thumbnails] == [False, True]
    assert panel.photo_frame.grab().toImage().pixelColor(40, 40).green() > 120


def test_a_single_photo_has_no_strip(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet(photos=(day_photo("red"),)))
    assert not panel.photo_strip.isVisible()


def test_the_shown_photo_stays_when_the_day_is_shown_anew(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    panel.choose_photo(1)
    panel.show_day(make_sheet())
    assert panel.photo is not None
    assert panel.photo.use.id == "use-green"


def test_the_photo_opens_by_click_and_by_enter(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    sheet = make_sheet()
    panel.show_day(sheet)
    wishes = Wishes(panel)
    qtbot.mouseClick(panel.photo_frame, Qt.MouseButton.LeftButton)
    qtbot.keyClick(panel.photo_frame, Qt.Key.Key_Return)
    assert wishes == [("photo_opened", sheet.photos[0])] * 2


def test_a_photo_can_lead_move_and_go(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    wishes = Wishes(panel)
    menu = panel.photo_menu(1)
    for words in ("Let it lead", "Move to", "Remove"):
        action(menu, words).trigger()
    assert wishes == [
        ("photo_chosen_to_lead", "use-green"),
        ("photo_move_wanted", "use-green"),
        ("photo_remove_wanted", "use-green"),
    ]
    assert not action(panel.photo_menu(0), "Let it lead").isEnabled()


def test_the_photo_is_compared_with_the_week_before(panel: DaySheetPanel, make_sheet: MakeSheet, qtbot: QtBot):
    panel.show_day(make_sheet(ages=(0, 50, 56, 60, 64)))
    wishes = Wishes(panel)
    assert panel.photo_frame.compare_button.text() == "Compare with day 56"
    qtbot.mouseClick(panel.photo_frame.compare_button, Qt.MouseButton.LeftButton)
    menu = panel.photo_frame.compare_menu()
    action(menu, "Day 0").trigger()
    assert wishes == [("compare_wanted", 56), ("compare_wanted", 0)]


def test_the_only_photo_of_a_crop_has_nothing_to_be_compared_with(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet(ages=(64,)))
    assert not panel.photo_frame.compare_button.isVisible()


@pytest.mark.parametrize("width", [300, 400])
def test_nothing_is_wider_than_the_column(panel: DaySheetPanel, make_sheet: MakeSheet, width: int):
    panel.resize(width, 860)
    panel.show_day(make_sheet())
    panel.grab()
    for row in panel.rows:
        assert row.geometry().right() <= panel.scroll_area.viewport().width()
    assert len(panel.rows) == len(ENTRIES)


def test_an_emptier_day_shows_no_row_of_a_fuller_one(panel: DaySheetPanel, make_sheet: MakeSheet):
    panel.show_day(make_sheet())
    panel.show_day(make_sheet(entries=ENTRIES[2:]))
    assert [row.shown.entry.kind for row in panel.rows] == ["reading"]
    assert "Feed 2.8\u2009L" not in seen_words(panel)
    assert panel.rows[0].findChild(MarkSign).kind == "reading"  # type: ignore[union-attr]
    panel.show_day(make_sheet())
    assert [row.isVisible() for row in panel.rows] == [True, True, True]
