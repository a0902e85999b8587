"""The mixer in the real window: mixed and logged by keys, the bottles drawn down, and all of it taken back."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from growlog.desktop.windows.mixer_windows import MixerWindows
from growlog.services.mixer import Range, save_state
from growlog.services.mixes import mixes_of
from growlog.services.shelf import shelf
from tests.desktop.fakes import FakeFileChoice, FakeMessages
from tests.desktop.mixer.conftest import retype
from tests.logbooks import TODAY, logbook, plant_crop
from tests.services.mixer.bottles import make_shelf

pytestmark = pytest.mark.slow

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path) -> Iterator[MainWindow]:
    made = MainWindow(Settings(tmp_path / "settings.ini"), FakeMessages(), FakeFileChoice())
    qtbot.addWidget(made)
    with logbook(tmp_path) as log:
        bottles = make_shelf(log, plant_crop(log))
        save_state(log, bottles.state, "Everyday")
        made.show_logbook(log)
        with qtbot.waitActive(made):
            made.show()
        yield made
        made.close()


@pytest.fixture
def mixer(window: MainWindow) -> MixerWindows:
    """Opened by its key, with the saved mix chosen."""
    assert window.opened is not None
    QTest.keySequence(window, window.actions_table.by_name["mixer"].shortcut())
    opened = window.opened.nutrients.mixer
    assert opened.dialog is not None
    opened.dialog.mix_field.box.setCurrentIndex(opened.dialog.mix_field.box.findText("Everyday"))
    return opened


def levels(window: MainWindow) -> dict[str, float | None]:
    assert window.desk is not None
    return {item.product.name: item.level for item in shelf(window.desk.log)}


def test_the_mixer_opens_with_the_tank_that_the_crop_stands_in(mixer: MixerWindows) -> None:
    assert mixer.dialog is not None
    assert mixer.dialog.subtitle_label.text() == "for Boxroom Gold, day 112"
    assert mixer.dialog.current_state().tank_l == 20.0
    assert len(mixer.dialog.table.lines) == 3


def test_mixed_and_logged_the_bottles_are_drawn_down_and_one_undo_brings_all_back(
    window: MainWindow, mixer: MixerWindows, qtbot: QtBot
) -> None:
    assert window.desk is not None
    assert mixer.dialog is not None
    retype(mixer.dialog, mixer.dialog.tank_field.line, "10")
    QTest.keyClick(mixer.dialog, Key.Key_Return, Control)
    assert mixer.logging is not None
    QTest.keyClicks(mixer.logging.ec_field.line, "1.9")
    mixer.logging.activateWindow()
    qtbot.waitUntil(mixer.logging.isActiveWindow)
    QTest.keyClick(mixer.logging, Key.Key_Return, Control)
    assert levels(window) == {"Concentrate A": 970.0, "Concentrate B": 970.0, "Magnesium sulfate": 998.5}
    assert window.page is not None
    titles = [row.title_label.text().replace("\u2009", " ") for row in window.page.day_sheet.rows]
    assert titles == ["Feed 10.0 L, Everyday"]
    # The open mixer follows at once: what is left, and the last reading.
    assert "day 112" in mixer.dialog.ec_card.last_label.text()
    window.desk.undo()
    assert levels(window) == {"Concentrate A": 1000.0, "Concentrate B": 1000.0, "Magnesium sulfate": 1000.0}
    assert window.page.day_sheet.rows == []


def test_without_a_volume_the_log_is_refused_in_words(mixer: MixerWindows) -> None:
    assert mixer.dialog is not None
    retype(mixer.dialog, mixer.dialog.tank_field.line, "")
    mixer.dialog.log_button.click()
    assert mixer.logging is None
    assert mixer.dialog.note_label.text() == "Say first how much is mixed: the tank's volume."


def test_a_changed_mix_is_saved_as_its_next_edition_and_an_unchanged_one_says_so(
    window: MainWindow, mixer: MixerWindows
) -> None:
    assert window.desk is not None
    assert mixer.dialog is not None
    mixer.dialog.save_button.click()
    assert mixer.saving is not None
    mixer.saving.write_button.click()
    assert "has just these doses already" in mixer.saving.name_field.refusal
    mixer.saving.reject()
    retype(mixer.dialog, mixer.dialog.table.lines[0].amount.line, "3.5")
    QTest.keyClick(mixer.dialog, Key.Key_S, Control)
    mixer.saving.write_button.click()
    assert [(m.name, m.edition) for m in mixes_of(window.desk.log)] == [("Everyday", 2)]


def test_what_was_typed_stands_there_again_when_the_mixer_is_opened_anew(
    window: MainWindow, mixer: MixerWindows
) -> None:
    assert mixer.dialog is not None
    retype(mixer.dialog, mixer.dialog.tank_field.line, "7.5")
    QTest.keyClick(mixer.dialog, Key.Key_Escape)
    assert not mixer.dialog.isVisible()
    mixer.open()
    assert mixer.dialog.current_state().tank_l == 7.5


def test_a_mix_goes_into_a_file_and_comes_back(window: MainWindow, mixer: MixerWindows, tmp_path: Path) -> None:
    assert isinstance(window.files, FakeFileChoice)
    assert mixer.dialog is not None
    path = tmp_path / "everyday.toml"
    window.files.answers = [path, path]
    before = mixer.dialog.current_state().doses
    mixer.save_file(mixer.dialog.current_state())
    assert path.exists()
    mixer.dialog.mix_field.box.setCurrentIndex(0)
    assert mixer.dialog.current_state().doses == ()
    mixer.open_file()
    after = mixer.dialog.current_state().doses
    assert [(d.product, d.amount, d.unit) for d in after] == [(d.product, d.amount, d.unit) for d in before]


def test_a_file_that_is_no_mix_is_refused_by_its_name(window: MainWindow, mixer: MixerWindows, tmp_path: Path) -> None:
    assert isinstance(window.files, FakeFileChoice)
    assert isinstance(window.messages, FakeMessages)
    path = tmp_path / "shopping.toml"
    path.write_text("milk = [", encoding="utf-8")
    window.files.answers = [path]
    mixer.open_file()
    assert any("shopping.toml" in said for said in window.messages.problems)


def test_doses_for_a_target_come_back_into_the_mixer(mixer: MixerWindows) -> None:
    assert mixer.dialog is not None
    calcium = next(line for line in mixer.dialog.view.elements if line.key == "Ca")  # type: ignore[union-attr]
    mixer.dialog.targets.take_own("", {"Ca": Range(calcium.mg_per_l * 2, calcium.mg_per_l * 2)})
    mixer.dialog.doses_button.click()
    assert mixer.doses is not None
    mixer.doses.find_button.click()
    mixer.doses.take_button.click()
    assert mixer.dialog.current_state().doses[0].amount == pytest.approx(6.0, rel=0.02)


def test_own_ranges_with_a_name_are_kept_and_offered_on_other_days(window: MainWindow, mixer: MixerWindows) -> None:
    from growlog.services.feed_targets import targets_of

    assert window.desk is not None
    assert mixer.dialog is not None
    mixer.dialog.targets.own_button.click()
    own = mixer.dialog.targets.dialog
    assert own is not None
    QTest.keyClicks(own.name_field.line, "squash in fruit")
    QTest.keyClicks(own.fields["K"][0].line, "210")
    own.take_button.click()
    assert [t.name for t in targets_of(window.desk.log)] == ["squash in fruit"]
    assert mixer.dialog.targets.field.box.currentText() == "squash in fruit"


def test_the_shelf_is_opened_from_the_mixer_and_what_is_added_can_be_dosed_at_once(
    window: MainWindow, mixer: MixerWindows
) -> None:
    from growlog.services.shelf import add_product
    from tests.services.mixer.bottles import bottle

    assert window.desk is not None
    assert mixer.dialog is not None
    mixer.dialog.shelf_wanted.emit()
    assert window.opened is not None
    assert window.opened.nutrients.shelf.shelf is not None
    assert len(window.opened.nutrients.shelf.shelf.rows) == 3
    window.desk.write(add_product, bottle("Zinc drops", zn=1.0))
    assert [row.item.product.name for row in window.opened.nutrients.shelf.shelf.rows][-1] == "Zinc drops"
    assert "Zinc drops" in [action.text() for action in mixer.dialog.table.add_menu.actions()]


def test_today_is_the_day_of_a_mixer_opened_on_the_last_day(mixer: MixerWindows) -> None:
    assert mixer.dialog is not None
    assert mixer.dialog.current_state().day == TODAY
