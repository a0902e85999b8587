"""Logger files at the screen: asked instead of guessed, refused with reasons, carried in whole or not at all."""

from collections.abc import Callable
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.logger.logger_dialog import LoggerDialog
from growlog.desktop.logger.work import LoggerServices
from growlog.services.climate.carry_in import remove_logger_file
from growlog.services.climate.of_crop import climate_of_room
from tests.desktop.fakes import FakeFileChoice
from tests.desktop.logger.conftest import Person

pytestmark = pytest.mark.slow

CLEAN = ("2026-01-10 08:00,21.5,60", "2026-01-10 08:10,21.7,61", "2026-01-10 14:00,23.0,55")


def test_a_clean_file_says_what_it_would_bring_and_is_carried_in(person: Person) -> None:
    person.read(*CLEAN)
    said = person.dialog.view.counts_label.text()
    assert said == "3 samples from 10 January 2026 08:00 to 10 January 2026 14:00"
    assert "1 gap of more than an hour without a sample; the longest is 5.8 h." in person.dialog.view.more_label.text()
    assert person.files == []  # nothing before it is confirmed
    QTest.keyClick(person.dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    person.wait()
    assert person.files == ["logger.csv"]
    assert [change.title for change in person.changes] == ["Read in logger.csv"]
    assert "3 samples are in." in person.dialog.banner.sentence
    assert [row.cells[0] for row in person.dialog.files_view.table.rows()] == ["logger.csv"]


def test_a_humidity_of_0_6_is_asked_about_and_not_guessed(person: Person) -> None:
    person.read("2026-01-10 08:00,21.5,0.6", "2026-01-10 08:10,21.6,0.61", heading="Time,Temp (°C),RH")
    dialog = person.dialog
    assert not dialog.in_button.isEnabled()
    assert dialog.questions.isVisible()
    assert dialog.view.counts_label.text() == "Answer the questions; then the rows are judged."
    person.answer("humidity", "fraction")
    assert dialog.questions.buttons["humidity", "fraction"].isChecked()
    assert dialog.in_button.isEnabled()
    dialog.confirm()
    person.wait()
    (day,) = climate_of_room(person.log, person.room.id)
    assert (day.day, day.humidity_max_percent) == (date(2026, 1, 10), pytest.approx(61))


def test_an_answer_may_be_changed_before_it_goes_in(person: Person) -> None:
    person.read("01/02/2026 08:00,70,60", heading="Date,Temp,RH (%)")
    person.answer("temperature-unit", "C")
    person.answer("date-order", "dmy")
    assert person.dialog.view.table.rows()[0].cells[1] == "The temperature is outside what a room can have."
    person.answer("temperature-unit", "F")
    assert person.dialog.view.counts_label.text().startswith("1 sample from 1 February 2026")
    person.answer("date-order", "mdy")
    assert person.dialog.view.counts_label.text().startswith("1 sample from 2 January 2026")


def test_rows_that_stay_out_are_listed_with_reasons_and_can_be_saved(person: Person) -> None:
    person.read(*CLEAN, "2026-01-10 14:10,err,55", "2026-01-10 14:20,212,55", "2026-01-10 14:30,22.0,155")
    dialog = person.dialog
    assert dialog.view.refused_title.text() == "2 rows stay out"
    target = person.folder / "left out.csv"
    person.choice.answers.append(target)
    dialog.save_button.click()
    person.wait()
    lines = target.read_text(encoding="utf-8").splitlines()
    assert lines[0] == "line,reason,text"
    assert [line.split(",")[0] for line in lines[1:]] == ["6", "7"]
    assert "2 rows saved with their reasons." in dialog.banner.sentence


def test_repeated_stamps_and_overlaps_are_counted(person: Person) -> None:
    person.read(*CLEAN)
    person.dialog.confirm()
    person.wait()
    person.read(*CLEAN[:2], CLEAN[1], name="again.csv")
    said = person.dialog.view.more_label.text()
    assert "1 row repeats another." in said
    assert "2 samples lie where another file tells already" in said


def test_the_same_file_is_not_taken_twice(person: Person) -> None:
    person.read(*CLEAN)
    person.dialog.confirm()
    person.wait()
    person.read(*CLEAN, name="copy.csv")
    assert person.dialog.banner.sentence == "This file is in the logbook already, as logger.csv."
    assert not person.dialog.in_button.isEnabled()


def test_a_clock_that_went_back_is_asked_about(person: Person) -> None:
    from dataclasses import replace

    from growlog.services.rooms import save_thing

    save_thing(person.log, replace(person.room, zone="Europe/Berlin"))
    # clocks went back at 03:00 on 26 October 2025 in this zone (tz database)
    person.read("2025-10-26 02:10,20,60", "2025-10-26 02:40,20,60", "2025-10-26 02:10,19,61", "2025-10-26 03:00,19,61")
    assert ("repeated-hour", "in-order") in person.dialog.questions.buttons
    person.answer("repeated-hour", "in-order")
    assert person.dialog.view.counts_label.text().startswith("4 samples")


def test_a_file_that_is_no_logger_file_is_a_sentence(person: Person) -> None:
    person.read("hello", "world", heading="a letter")
    assert person.dialog.banner.tone == "problem"
    assert "logger.csv" in person.dialog.banner.sentence
    assert person.dialog.plan is None


def test_a_file_is_removed_by_choosing_it(person: Person) -> None:
    person.read(*CLEAN)
    person.dialog.confirm()
    person.wait()
    wanted: list[str] = []
    person.dialog.remove_wanted.connect(wanted.append)
    person.dialog.files_view.table.selectRow(0)
    person.dialog.files_view.remove_button.click()
    remove_logger_file(person.log, wanted[0])
    person.dialog.show_files()
    assert person.files == []
    assert person.dialog.files_view.none_label.isVisible()


def test_stopping_brings_nothing_in(qtbot: QtBot, person: Person) -> None:
    lines = [f"2026-01-{day:02d} {hour:02d}:{minute:02d},21.5,60"
             for day in range(1, 29) for hour in range(24) for minute in range(60)]  # fmt: skip
    person.read(*lines)
    person.dialog.confirm()
    person.dialog.progress.stop_button.click()
    person.wait()
    assert person.files == []
    assert person.dialog.banner.sentence == "Stopped. Nothing was brought in."
    assert person.dialog.in_button.isEnabled()  # and it can be confirmed again


def test_putting_the_dialog_away_while_samples_are_written_keeps_nothing(qtbot: QtBot, person: Person) -> None:
    person.read(*CLEAN)
    person.dialog.confirm()
    person.dialog.close()
    qtbot.waitUntil(lambda: not person.dialog.isVisible())
    assert person.files in ([], ["logger.csv"])  # whole or not at all
    assert len(climate_of_room(person.log, person.room.id)) == len(person.files)


def test_without_a_room_the_room_is_opened_first(qtbot: QtBot, runner: TaskRunner) -> None:
    none: Callable[..., None] = lambda *_: None  # noqa: E731 - never called
    dialog = LoggerDialog(runner, LoggerServices(none, none, none, none, none), [], "", FakeFileChoice())  # type: ignore[arg-type]
    qtbot.addWidget(dialog)
    dialog.show()
    assert "There is none yet." in dialog.empty.sentence_label.text()
    with qtbot.waitSignal(dialog.room_wanted):
        dialog.empty.button.click()
