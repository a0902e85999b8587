"""Frames, messages and the small things round the fields."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QTableWidget, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.look.theme import apply_theme
from growlog.desktop.look.widgets import (
    Banner,
    DialogFrame,
    ElidedLabel,
    EmptyState,
    FlowLayout,
    ProgressPanel,
    SectionTitle,
    SegmentSwitch,
    Sparkline,
    TextField,
    dress_table,
)


@pytest.fixture
def large(qapp: QApplication) -> Iterator[None]:
    """Text of 200 %."""
    apply_theme(qapp, "light", 200)
    yield
    apply_theme(qapp, "light", 100)


def filled_dialog(fields: int) -> DialogFrame:
    """A dialog with some fields and five buttons."""
    dialog = DialogFrame("Nutrient mixer", "for Boxroom Gold, day 64")
    for number in range(fields):
        dialog.body.addWidget(TextField(f"Field {number}"))
    for text in ("Doses for a target…", "Top up…", "Save mix"):
        dialog.add_button(text, left=True)
    dialog.add_button("Put away", name="away")
    dialog.add_button("Mix and log feed", "primary", "mix")
    return dialog


def assert_all_buttons_are_inside(dialog: DialogFrame) -> None:
    buttons = [dialog.buttons.itemAt(place).widget() for place in range(dialog.buttons.count())]
    assert len(buttons) == 5
    room = dialog.footer.rect()
    for button in buttons:
        assert button is not None
        assert room.contains(button.geometry()), button.text()


def test_a_short_dialog_needs_no_scrolling(qtbot: QtBot) -> None:
    dialog = filled_dialog(3)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.scroll_area.verticalScrollBar().maximum() == 0
    assert_all_buttons_are_inside(dialog)


def test_a_long_dialog_scrolls_and_stays_on_the_screen(qtbot: QtBot) -> None:
    dialog = filled_dialog(40)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.height() <= dialog.screen().availableGeometry().height()
    assert dialog.scroll_area.verticalScrollBar().maximum() > 0
    assert_all_buttons_are_inside(dialog)


def test_at_twice_the_text_all_buttons_stay_within_reach(large: None, qtbot: QtBot) -> None:
    dialog = filled_dialog(6)
    qtbot.addWidget(dialog)
    dialog.resize(640, 560)
    dialog.show()
    assert_all_buttons_are_inside(dialog)
    assert dialog.scroll_area.height() > 100
    assert dialog.scroll_area.horizontalScrollBar().maximum() == 0


def test_the_buttons_of_a_dialog_stand_left_and_right_in_their_order(qtbot: QtBot) -> None:
    dialog = filled_dialog(1)
    qtbot.addWidget(dialog)
    dialog.resize(1000, 400)
    dialog.show()
    buttons = [dialog.buttons.itemAt(place).widget() for place in range(5)]
    lefts = [button.x() for button in buttons if button is not None]
    assert lefts == sorted(lefts)
    last = buttons[-1]
    assert last is not None
    assert last.geometry().right() == dialog.footer.width() - 25


def test_a_gap_that_does_not_fit_breaks_into_a_second_row(qtbot: QtBot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    row = FlowLayout(holder)
    for _ in range(3):
        box = QWidget()
        box.setMinimumSize(100, 20)
        row.addWidget(box)
    assert row.heightForWidth(400) == row.heightForWidth(316)
    assert row.heightForWidth(250) == 2 * 20 + 8


def test_a_banner_says_its_sentence_and_hands_on_its_action(qtbot: QtBot) -> None:
    banner = Banner("Wrote 3 entries.", "inform", "Undo")
    qtbot.addWidget(banner)
    banner.show()
    assert banner.sentence_label.accessibleName() == "Wrote 3 entries."
    with qtbot.waitSignal(banner.action_chosen):
        qtbot.mouseClick(banner.action_button, Qt.MouseButton.LeftButton)
    with qtbot.waitSignal(banner.closed):
        qtbot.mouseClick(banner.close_button, Qt.MouseButton.LeftButton)
    banner.show_message("The disk is full.", "problem")
    assert banner.tone == "problem"
    assert not banner.action_button.isVisible()


def test_a_banner_of_an_unknown_tone_is_refused(qapp: QApplication) -> None:
    with pytest.raises(ValueError, match="loud"):
        Banner("Something", "loud")


def test_an_empty_state_offers_one_way_on(qtbot: QtBot) -> None:
    empty = EmptyState("No crop yet. Start with one that is growing.", "New crop…")
    qtbot.addWidget(empty)
    with qtbot.waitSignal(empty.chosen):
        qtbot.mouseClick(empty.button, Qt.MouseButton.LeftButton)
    empty.set_sentence("Nothing on this day.")
    assert empty.button.isHidden()


def test_progress_counts_and_can_be_stopped_once(qtbot: QtBot) -> None:
    panel = ProgressPanel()
    qtbot.addWidget(panel)
    assert panel.isHidden()
    panel.start("Reading photos")
    panel.show_progress(3, 10)
    assert panel.count_label.text() == "3 of 10"
    with qtbot.waitSignal(panel.stopped):
        qtbot.mouseClick(panel.stop_button, Qt.MouseButton.LeftButton)
    assert not panel.stop_button.isEnabled()
    panel.finish()
    assert panel.isHidden()


def test_a_switch_has_one_button_down_and_tells_the_other(qtbot: QtBot) -> None:
    switch = SegmentSwitch([("age", "plant age"), ("calendar", "calendar")])
    qtbot.addWidget(switch)
    assert switch.value() == "age"
    with qtbot.waitSignal(switch.value_changed) as told:
        qtbot.mouseClick(switch.button("calendar"), Qt.MouseButton.LeftButton)
    assert told.args == ["calendar"]
    assert not switch.button("age").isChecked()


def test_a_line_too_long_ends_in_an_ellipsis_and_is_whole_in_the_tool_tip(qtbot: QtBot) -> None:
    label = ElidedLabel("two old leaves removed from the lowest node")
    qtbot.addWidget(label)
    label.resize(80, 20)
    assert label.shown_text().endswith("…")
    assert label.toolTip() == "two old leaves removed from the lowest node"
    label.resize(800, 20)
    assert label.shown_text() == label.text()


def test_a_section_title_is_heard_as_it_was_written(qtbot: QtBot) -> None:
    title = SectionTitle("Growing")
    qtbot.addWidget(title)
    assert title.accessibleName() == "Growing"


def test_a_step_curve_never_falls_and_ends_at_the_last_day(qtbot: QtBot) -> None:
    line = Sparkline(100, 40)
    qtbot.addWidget(line)
    line.resize(100, 40)
    line.show_steps([(43, 86), (49, 171), (56, 300)], 112)
    curve = line.curve()
    points = [(curve.elementAt(i).x, curve.elementAt(i).y) for i in range(curve.elementCount())]
    assert len(points) == 8
    assert points[-1] == (99, pytest.approx(2.0))
    assert [y for _, y in points] == sorted((y for _, y in points), reverse=True)
    line.show_steps([], 10)
    assert line.curve().elementCount() == 2


def test_a_table_has_rows_as_high_as_the_text_asks(large: None, qtbot: QtBot) -> None:
    table = QTableWidget(2, 2)
    qtbot.addWidget(table)
    dress_table(table)
    assert table.rowHeight(0) == 64
    assert not table.showGrid()
