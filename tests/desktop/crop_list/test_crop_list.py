"""The crop list: what its cards say, and what keys and mouse ask for."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.calculations.yield_curve import PickPoint
from growlog.desktop.crop_list import CropList
from growlog.desktop.crop_list.wording import age_line, yield_line
from growlog.services.due import DueItem
from tests.desktop.crop_list.made_crops import summary
from tests.logbooks import TODAY

WEIGHED = (PickPoint(43, 15, 1280.0), PickPoint(64, 17, 1440.0))


@pytest.fixture
def crops(qtbot: QtBot) -> CropList:
    """Two growing crops and a cleared one, which is on the board."""
    shown = CropList()
    qtbot.addWidget(shown)
    shown.show_crops(
        [summary("Landing Light", "chilli", 128), summary("Porch Violet", "aubergine", 74),
         summary("Boxroom Gold", cleared=True, picks=WEIGHED)],
        "id of Boxroom Gold",
    )  # fmt: skip
    shown.resize(220, 700)
    shown.show()
    return shown


def test_a_growing_crop_tells_its_plant_age_and_a_cleared_one_how_long_it_stood() -> None:
    assert age_line(summary("Landing Light", "chilli", 128)) == "chilli, day 128"
    assert age_line(summary("Boxroom Gold", cleared=True)) == "pattypan, 112 days"


def test_the_yield_is_said_as_surely_as_it_is_known() -> None:
    assert yield_line(summary("a", picks=WEIGHED)) == "32 fruit, 2.72\u2009kg"
    assert yield_line(summary("a", picks=(PickPoint(40, 12, 71.0),))) == "12 fruit, 71\u2009g"
    partly = (PickPoint(40, 10, 100.0), PickPoint(41, 5, None))
    assert yield_line(summary("a", picks=partly)) == "15 fruit, about 150\u2009g"
    assert yield_line(summary("a", picks=(PickPoint(40, 5, None),))) == "5 fruit, not weighed"
    assert yield_line(summary("a", first_flower_age=71)) == "first flower day 71"
    assert yield_line(summary("a")) == "no fruit yet"
    assert yield_line(summary("a", cleared=True)) == "no fruit"


def test_the_cards_stand_in_their_order_and_the_one_on_the_board_is_marked(crops: CropList) -> None:
    assert [(card.name_label.text(), card.is_chosen) for card in crops.cards()] == [
        ("Landing Light", False),
        ("Porch Violet", False),
        ("Boxroom Gold", True),
    ]


def test_a_click_chooses_a_crop(crops: CropList, qtbot: QtBot) -> None:
    with qtbot.waitSignal(crops.crop_chosen) as chosen:
        QTest.mouseClick(crops.cards()[1], Qt.MouseButton.LeftButton)
    assert chosen.args == ["id of Porch Violet"]
    assert [card.is_chosen for card in crops.cards()] == [False, True, False]


def test_down_and_up_go_from_card_to_card_and_stop_at_the_ends(crops: CropList) -> None:
    chosen: list[str] = []
    crops.crop_chosen.connect(chosen.append)
    crops.cards()[1].setFocus()
    QTest.keyClick(crops.cards()[1], Qt.Key.Key_Down)
    QTest.keyClick(crops.cards()[2], Qt.Key.Key_Down)
    QTest.keyClick(crops.cards()[2], Qt.Key.Key_Up)
    assert chosen == ["id of Boxroom Gold", "id of Porch Violet"]


def test_enter_chooses_the_card_that_has_the_keys(crops: CropList, qtbot: QtBot) -> None:
    with qtbot.waitSignal(crops.crop_chosen) as chosen:
        QTest.keyClick(crops.cards()[0], Qt.Key.Key_Return)
    assert chosen.args == ["id of Landing Light"]


@pytest.mark.parametrize(
    "place, action, signal",
    [
        (0, "correct", "correct_wanted"),
        (0, "clear", "clear_wanted"),
        (2, "reopen", "reopen_wanted"),
        (2, "remove", "remove_wanted"),
    ],
)
def test_the_menu_of_a_card_asks_for_its_crop(
    crops: CropList, qtbot: QtBot, place: int, action: str, signal: str
) -> None:
    card = crops.cards()[place]
    card.menu_wanted.emit(card.crop_id, crops.mapToGlobal(QPoint(20, 20)))
    assert crops.menu is not None
    found = next(one for one in crops.menu.actions() if one.objectName() == action)
    with qtbot.waitSignal(getattr(crops, signal)) as asked:
        found.trigger()
    assert asked.args == [card.crop_id]
    crops.menu.close()


def test_a_growing_crop_cannot_be_grown_on_and_a_cleared_one_not_cleared(crops: CropList) -> None:
    names = []
    for card in (crops.cards()[0], crops.cards()[2]):
        card.menu_wanted.emit(card.crop_id, crops.mapToGlobal(QPoint(20, 20)))
        assert crops.menu is not None
        names.append([one.objectName() for one in crops.menu.actions() if one.objectName()])
        crops.menu.close()
    assert names == [["review", "correct", "clear", "remove"], ["review", "correct", "reopen", "remove"]]


def test_what_is_due_is_hidden_where_nothing_grows_and_takes_half_of_the_list_at_most(crops: CropList) -> None:
    many = [DueItem(f"key {n}", f"Weigh {n}", None, "", TODAY, TODAY, "Every day.") for n in range(40)]
    crops.due.show_due(many, TODAY, True, True)
    assert crops.due.isVisible()
    assert crops.due.height() <= crops.height() // 2
    crops.show_crops([summary("Boxroom Gold", cleared=True)], "")
    assert not crops.due.isVisible()


def test_the_button_below_asks_for_a_new_crop(crops: CropList, qtbot: QtBot) -> None:
    with qtbot.waitSignal(crops.new_crop_wanted):
        QTest.mouseClick(crops.new_button, Qt.MouseButton.LeftButton)


def test_an_empty_list_says_how_to_begin(crops: CropList, qtbot: QtBot) -> None:
    crops.show_crops([], "")
    assert crops.empty.isVisible()
    with qtbot.waitSignal(crops.new_crop_wanted):
        QTest.mouseClick(crops.empty.button, Qt.MouseButton.LeftButton)


def test_figures_are_not_cut_off_by_the_curve_in_a_narrow_list(crops: CropList, qtbot: QtBot) -> None:
    crops.resize(180, 700)
    card = crops.cards()[2]
    qtbot.waitUntil(lambda: card.width() < 180)
    qtbot.waitUntil(lambda: card.yield_label.shown_text() == "32 fruit, 2.72\u2009kg")


def test_a_list_for_reading_only_offers_no_form_that_could_only_be_refused(crops: CropList) -> None:
    crops.set_writable(False)
    assert not crops.new_button.isEnabled()
    assert not crops.empty.button.isEnabled()
    crops._open_menu(crops.cards()[0].crop_id, QPoint())
    assert crops.menu is not None
    offered = [action.objectName() for action in crops.menu.actions() if action.isEnabled() and action.objectName()]
    crops.menu.close()
    assert offered in ([], ["review"])
