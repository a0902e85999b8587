"""What an entry form offers to do again."""

from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.entry_form.dialog import EntryDialog
from growlog.desktop.entry_form.form import EntryForm
from growlog.records.entry import Entry, Feed, Owner, OwnerKind
from growlog.records.recipe import Mix
from growlog.services.entries import Belongs

OWNER = Owner(OwnerKind.CROP, "crop")
EARLIER = Entry("a", OWNER, date(2026, 3, 5), Feed("m1", None, 1.2, 1.9, 5.9), note="by hand")


def opened(qtbot: QtBot, earlier: Entry | None) -> EntryDialog:
    entry = Entry("b", OWNER, date(2026, 3, 6), Feed(mix_id="m1"))
    form = EntryForm(entry, [Belongs(OWNER, "Boxroom Gold")], [Mix("m1", "Bloom", 1, ())], Entry.problems)
    dialog = EntryDialog(form, "", None, earlier)
    qtbot.addWidget(dialog)
    with qtbot.waitActive(dialog):
        dialog.show()
    return dialog


def test_a_key_fills_in_the_last_feed_but_not_its_note_or_day(qtbot: QtBot) -> None:
    dialog = opened(qtbot, EARLIER)
    QTest.keyClick(dialog, Qt.Key.Key_F4)
    entry = dialog.form.value()
    assert entry is not None
    assert (entry.detail, entry.day, entry.note) == (EARLIER.detail, date(2026, 3, 6), "")


def test_the_button_names_the_day_it_repeats(qtbot: QtBot) -> None:
    dialog = opened(qtbot, EARLIER)
    assert dialog.repeat_button is not None
    assert dialog.repeat_button.text() == "As on 5 March  F4"


def test_where_nothing_went_before_nothing_is_offered(qtbot: QtBot) -> None:
    assert opened(qtbot, None).repeat_button is None


def test_ticking_water_only_takes_the_mix_out_and_unticking_brings_it_back(qtbot: QtBot) -> None:
    dialog = opened(qtbot, None)
    form = dialog.form
    form.cell("volume_l").set_value(1.0)
    box = form.cell("water_only").field.editor
    QTest.keyClick(box, Qt.Key.Key_Space)
    first = form.value()
    QTest.keyClick(box, Qt.Key.Key_Space)
    second = form.value()
    assert first is not None and first.detail == Feed(water_only=True, volume_l=1.0)  # noqa: PT018
    assert second is not None and second.detail == Feed("m1", volume_l=1.0)  # noqa: PT018
