"""Fields for words and for a choice."""

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from growlog.desktop.look.widgets import ChoiceField, FormGrid, NoteField, TextField, check_all

CHOICES = [("tap", "tap water"), ("rain", "rain water")]


def test_blanks_at_the_ends_do_not_count(qtbot: QtBot) -> None:
    field = TextField("Name")
    qtbot.addWidget(field)
    qtbot.keyClicks(field.line, "  Boxroom Gold ")
    assert field.value() == "Boxroom Gold"


def test_a_needed_text_is_asked_for_and_typing_takes_the_message_away(qtbot: QtBot) -> None:
    field = TextField("Name", required=True)
    qtbot.addWidget(field)
    assert not field.check()
    assert field.refusal == "This cannot be left empty."
    qtbot.keyClicks(field.line, "B")
    assert field.check()


def test_a_note_keeps_its_lines_and_refuses_what_is_too_long(qtbot: QtBot) -> None:
    field = NoteField("Note", longest=12)
    qtbot.addWidget(field)
    qtbot.keyClicks(field.box, "one")
    qtbot.keyClick(field.box, Qt.Key.Key_Return)
    qtbot.keyClicks(field.box, "two")
    assert field.value() == "one\ntwo"
    assert field.check()
    field.set_value("x" * 14)
    assert not field.check()
    assert field.refusal == "2 characters too long."


def test_setting_a_note_tells_nobody(qtbot: QtBot) -> None:
    field = NoteField("Note")
    qtbot.addWidget(field)
    with qtbot.assertNotEmitted(field.value_changed):
        field.set_value("two old leaves removed")
    assert field.value() == "two old leaves removed"


def test_a_choice_is_kept_by_its_key_and_told(qtbot: QtBot) -> None:
    field = ChoiceField("Water", CHOICES, "tap")
    qtbot.addWidget(field)
    assert field.value() == "tap"
    with qtbot.waitSignal(field.value_changed):
        field.box.setCurrentIndex(1)
    assert field.value() == "rain"


def test_no_choice_is_refused_unless_there_are_words_for_it(qtbot: QtBot) -> None:
    field = ChoiceField("Water", CHOICES)
    free = ChoiceField("Water", CHOICES, none="not stated")
    for one in (field, free):
        qtbot.addWidget(one)
        assert one.value() is None
    assert not field.check()
    assert free.check()


def test_an_unknown_key_leaves_the_field_without_a_choice(qtbot: QtBot) -> None:
    field = ChoiceField("Water", CHOICES, "sea")
    qtbot.addWidget(field)
    assert field.value() is None


def test_the_wheel_does_not_change_a_choice(qtbot: QtBot) -> None:
    field = ChoiceField("Water", CHOICES, "tap")
    qtbot.addWidget(field)
    turn = QWheelEvent(
        QPointF(5, 5),
        QPointF(5, 5),
        QPoint(0, 0),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(field.box, turn)
    assert field.value() == "tap"


def test_a_form_falls_to_fewer_columns_where_it_is_narrow(qtbot: QtBot) -> None:
    form = FormGrid(3)
    qtbot.addWidget(form)
    fields = [TextField(f"Field {number}") for number in range(3)]
    form.add(*fields)
    form.resize(700, 300)
    form.show()
    assert len({field.y() for field in fields}) == 1
    form.resize(200, 300)
    qtbot.waitUntil(lambda: len({field.y() for field in fields}) == 3)


def test_checking_a_form_goes_to_the_first_field_that_is_refused(qtbot: QtBot) -> None:
    form = FormGrid(2)
    qtbot.addWidget(form)
    good, bad = TextField("Name", "Boxroom Gold", required=True), TextField("Cultivar", required=True)
    form.add(good, bad)
    form.show()
    form.activateWindow()
    assert not check_all(form.fields())
    assert form.focusWidget() is bad.line
    bad.set_value("bush pattypan")
    assert check_all(form.fields())
