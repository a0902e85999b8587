"""The feeding round, typed as a grower types it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from growlog.desktop.feeding_round.feeding_round_dialog import FeedingRoundDialog
from growlog.records.entry import Entry, Feed, Owner, OwnerKind
from growlog.records.feed_plan import FeedStep
from growlog.records.recipe import Mix
from growlog.services.feed_plan import PlannedFeed
from growlog.services.feeding_round import RoundRow

DAY = date(2026, 3, 6)
MIXES = [Mix("m1", "Bloom", 1, ()), Mix("m2", "Grow", 1, ())]
LAST = Feed(volume_l=1.2, ec_ms_per_cm=1.9, ph=5.9)


def row(name: str, plants: int = 1, last: Feed | None = LAST, last_day: date | None = date(2026, 3, 5)) -> RoundRow:
    return RoundRow(Owner(OwnerKind.CROP, name), name, "day 60", plants, last, last_day if last else None)


ROWS = [row("Boxroom Gold"), row("Skylight Round", 3), row("Landing Light", 1, None)]


class Round:
    """An open dialog and what it confirmed."""

    def __init__(self, qtbot: QtBot, rows: list[RoundRow]) -> None:
        self.dialog = FeedingRoundDialog(DAY, rows, MIXES, "m2", Entry.problems, "metric")
        qtbot.addWidget(self.dialog)
        with qtbot.waitActive(self.dialog):
            self.dialog.show()
        self.confirmed: list[list[Entry]] = []
        self.dialog.confirmed.connect(self.confirmed.append)

    def type(self, text: str) -> None:
        for number, part in enumerate(text.split("\t")):
            if number:
                self.press(Qt.Key.Key_Tab)
            QTest.keyClicks(QApplication.focusWidget(), part)

    def press(self, key: Qt.Key, with_key: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(QApplication.focusWidget(), key, with_key)

    def write(self) -> list[Feed]:
        self.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
        return [e.detail for e in self.confirmed[-1]] if self.confirmed else []  # type: ignore[misc]


@pytest.fixture
def feeding(qtbot: QtBot) -> Callable[..., Round]:
    def make(rows: list[RoundRow] = ROWS) -> Round:
        return Round(qtbot, rows)

    return make


def test_what_stands_for_all_goes_to_each_that_was_fed_lately(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    shown.type("1.2\t1.9\t5.8")
    assert shown.write() == [Feed("m2", None, 1.2, 1.9, 5.8), Feed("m2", None, 1.2, 1.9, 5.8)]
    assert [e.owner.id for e in shown.confirmed[0]] == ["Boxroom Gold", "Skylight Round"]


def test_enter_goes_down_the_column_and_own_figures_come_before_those_for_all(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    shown.type("1\t1.9")
    shown.press(Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    shown.press(Qt.Key.Key_Return)
    shown.type("1.5")
    shown.press(Qt.Key.Key_Return)
    shown.press(Qt.Key.Key_Return)
    shown.type("0.4")
    feeds = shown.write()
    assert [f.volume_l for f in feeds] == [1.5, 1, 0.4]
    assert [f.ec_ms_per_cm for f in feeds] == [1.9, 1.9, 1.9]


def test_a_volume_is_shared_out_by_plants(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    shown.type("2")
    shown.dialog.sharing_field.set_value("by-plants")
    assert [f.volume_l for f in shown.write()] == [0.5, 1.5]


def test_as_last_time_fills_each_line_with_its_own_feed(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    shown.press(Qt.Key.Key_F4)
    assert shown.write() == [Feed("m2", None, 1.2, 1.9, 5.9)] * 2


def test_water_only_has_no_mix(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    shown.type("1")
    shown.dialog.water_box.click()
    assert {(f.mix_id, f.water_only) for f in shown.write()} == {(None, True)}


def test_a_value_out_of_range_is_said_at_its_line_and_nothing_is_confirmed(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    shown.type("1\t\t15")
    assert shown.write() == []
    assert "pH 15" in shown.dialog.lines[0].message.text()


def test_an_unusual_value_is_asked_about_once_and_then_taken(feeding: Callable[..., Round]) -> None:
    shown = feeding([row("Boxroom Gold")])
    shown.type("1\t6")
    assert shown.write() == []
    assert "unusual" in shown.dialog.lines[0].message.text()
    shown.dialog.lines[0].answer_box.click()
    assert [f.ec_ms_per_cm for f in shown.write()] == [6]


def test_a_comma_is_a_decimal_sign_and_two_are_refused(feeding: Callable[..., Round]) -> None:
    shown = feeding([row("Boxroom Gold")])
    shown.type("1,2")
    assert [f.volume_l for f in shown.write()] == [1.2]
    shown.type(",3")
    assert shown.dialog.for_all["volume_l"].is_refused


def test_a_day_without_crops_says_so(feeding: Callable[..., Round]) -> None:
    shown = feeding([])
    assert not shown.dialog.write_button.isEnabled()


def test_the_button_says_how_many_feeds_will_be_written(feeding: Callable[..., Round]) -> None:
    shown = feeding()
    assert shown.dialog.write_button.text() == "Write 2 feeds"
    shown.dialog.lines[2].tick.click()
    assert shown.dialog.write_button.text() == "Write 3 feeds"


def test_what_was_fed_that_day_already_is_not_fed_again_unasked(feeding: Callable[..., Round]) -> None:
    shown = feeding([replace(ROWS[0], fed_before=1), ROWS[1]])
    assert "fed on this day already" in shown.dialog.lines[0].about.text()
    shown.press(Qt.Key.Key_F4)
    assert [e.owner.id for e in shown.dialog.entries()] == ["Skylight Round"]
    shown.dialog.lines[0].tick.click()
    assert len(shown.dialog.entries()) == 2


def test_another_day_shows_what_was_given_before_that_day(feeding: Callable[..., Round], qtbot: QtBot) -> None:
    shown = feeding()
    with qtbot.waitSignal(shown.dialog.day_chosen, check_params_cb=lambda day: day == date(2026, 3, 2)):
        shown.dialog.day_field.set_value(date(2026, 3, 2))
        shown.dialog.day_field.value_changed.emit()
    shown.dialog.show_rows([replace(ROWS[0], last=Feed(volume_l=0.7), last_day=date(2026, 3, 1))])
    shown.press(Qt.Key.Key_F4)
    assert shown.write()[0].volume_l == 0.7


def test_a_long_name_is_cut_and_leaves_the_fields_in_sight(feeding: Callable[..., Round]) -> None:
    name = "Crop & cultivar " * 6
    shown = feeding([row(name)])
    line = shown.dialog.lines[0]
    assert line.tick.text().endswith("…")
    assert "&&" in line.tick.text()
    assert (line.tick.toolTip(), line.tick.accessibleName()) == (name, name)
    assert shown.dialog.scroll_area.horizontalScrollBar().maximum() == 0


def test_a_line_says_its_plan_and_its_feed_carries_the_planned_strength(feeding: Callable[..., Round]) -> None:
    step = FeedStep("step", "Boxroom Gold", 40, "m2", 80.0, 2.0)
    planned = replace(row("Boxroom Gold"), planned=PlannedFeed(step, MIXES[1], 80.0, 2.0))
    opened = feeding([planned, row("Skylight Round")])
    about = opened.dialog.lines[0].about.text().replace("\u2009", " ")
    assert about.endswith("plan: Grow at 80 %, 2.0 L")
    opened.type("1.5")
    feeds = opened.write()
    assert [(f.mix_id, f.strength_percent) for f in feeds] == [("m2", 80.0), ("m2", None)]
    assert [f.volume_l for f in feeds] == [1.5, 1.5]


def test_an_empty_volume_is_that_of_the_plan_and_stands_there_before_it_is_written(
    feeding: Callable[..., Round],
) -> None:
    step = FeedStep("step", "Boxroom Gold", 40, "m2", 80.0, 2.0)
    planned = replace(row("Boxroom Gold"), planned=PlannedFeed(step, MIXES[1], 80.0, 2.0))
    opened = feeding([planned])
    field = opened.dialog.lines[0].fields["volume_l"]
    assert field.line.placeholderText() == "2.0"
    opened.dialog.mix_field.box.setCurrentIndex(opened.dialog.mix_field.box.findData("m1"))
    assert field.line.placeholderText() == ""  # the plan says nothing of another mix
    opened.dialog.mix_field.box.setCurrentIndex(opened.dialog.mix_field.box.findData("m2"))
    opened.dialog.for_all["ec_ms_per_cm"].line.setFocus()
    opened.type("1.8")
    assert [f.volume_l for f in opened.write()] == [2.0]
