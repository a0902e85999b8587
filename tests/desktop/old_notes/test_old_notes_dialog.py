"""The dialog that carries old notes in: what it shows, asks, refuses and writes."""

from datetime import date

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.old_notes.preview_model import BECOMES, DAY, LINE, REMARK
from growlog.desktop.old_notes.work import Work
from growlog.services.old_notes.old_table import Stopped
from growlog.services.undo import undo
from tests.desktop.old_notes.conftest import Desk
from tests.services.old_notes.carried import entries_of
from tests.sharing.old_notes.written_tables import write_text, write_xlsx

pytestmark = pytest.mark.slow

TABLE = "date,fruit,weight g,note\n2026-01-05,3,210,first\n2026-01-06,2,130,\nnever,1,,\n2026-01-08,1,60,a,b\n"


def test_an_empty_dialog_says_what_to_do(desk: Desk) -> None:
    assert "CSV, TSV, xlsx or ods" in desk.dialog.empty.sentence_label.text()
    assert not desk.dialog.in_button.isVisible()
    desk.choice.answers = [write_text(desk.folder / "n.csv", TABLE)]
    desk.dialog.empty.button.click()
    desk.wait()
    assert not desk.dialog.empty.isVisible()
    assert desk.dialog.file_label.text() == "n.csv · 4 rows"


def test_every_row_is_shown_as_what_it_becomes_or_with_its_reason(desk: Desk) -> None:
    desk.read(TABLE)
    assert desk.shown(LINE) == ["2", "3", "4", "5"]
    assert desk.shown(DAY)[:2] == ["5 January 2026", "6 January 2026"]
    assert desk.shown(BECOMES) == ["Picked 3, 210\u2009g", "Picked 2, 130\u2009g", "stays out", "stays out"]
    assert desk.shown(REMARK)[0] == "first"
    assert "not a date" in desk.shown(REMARK)[2]
    assert desk.dialog.counts_label.text() == "2 rows go in · 2 stay out"
    desk.dialog.preview.switch.set_value("out")
    assert desk.shown(LINE) == ["4", "5"]


def test_nothing_is_written_before_it_is_confirmed(desk: Desk) -> None:
    desk.read(TABLE)
    assert entries_of(desk.log) == []
    assert desk.dialog.in_button.text().startswith("Carry in 2 entries")
    desk.dialog.in_button.click()
    desk.wait()
    assert len(entries_of(desk.log)) == 2
    assert len(desk.changes) == 1
    assert desk.dialog.banner.sentence == "Carried in: 2 entries from notes.csv."


def test_one_undo_takes_it_out_again(desk: Desk) -> None:
    desk.read(TABLE)
    desk.dialog.confirm()
    desk.wait()
    undo(desk.log, desk.changes[0])
    assert entries_of(desk.log) == []


def test_what_is_in_the_logbook_already_is_pointed_out_and_left_out(desk: Desk) -> None:
    desk.read(TABLE)
    desk.dialog.confirm()
    desk.wait()
    assert desk.shown(BECOMES)[:2] == ["in the logbook already"] * 2
    assert not desk.dialog.in_button.isEnabled()
    desk.dialog.known_box.click()
    desk.wait()
    assert desk.dialog.in_button.text().startswith("Carry in 2 entries")


def test_the_order_of_day_and_month_is_answered_in_place(desk: Desk) -> None:
    desk.read("date,fruit\n01/02/2026,3\n02/03/2026,1\n")
    assert "cannot be told apart" in desk.dialog.questions.sentences[0]
    assert not desk.dialog.in_button.isEnabled()
    desk.dialog.questions.buttons["date_order", "dmy"].click()
    desk.wait()
    assert desk.dialog.questions.sentences == []
    assert desk.shown(DAY) == ["1 February 2026", "2 March 2026"]
    assert desk.dialog.in_button.isEnabled()


def test_a_day_a_year_off_is_mended_with_one_answer(desk: Desk) -> None:
    desk.read("date,fruit\n2026-01-05,3\n2025-01-06,2\n2026-01-07,4\n2026-01-08,1\n")
    assert desk.shown(BECOMES)[1] == "stays out"
    desk.dialog.questions.buttons["year_slips", "mend"].click()
    desk.wait()
    assert desk.shown(DAY)[1] == "6 January 2026"


def test_weights_alone_are_fruit_by_fruit_when_the_grower_says_so(desk: Desk) -> None:
    desk.read("date,weight g\n2026-01-05,65\n")
    desk.dialog.questions.buttons["weight", "pick.weight_g"].click()
    desk.wait()
    assert desk.shown(BECOMES) == ["Picked 1, 65\u2009g"]


def test_a_column_is_read_as_something_else(desk: Desk) -> None:
    desk.read("date,A\n2026-01-05,3\n2026-01-06,5\n2026-01-07,9\n")
    assert "say what they hold" in desk.dialog.questions.sentences[0].casefold()
    line = desk.dialog.columns.lines[1]
    line.field_box.setCurrentIndex(line.field_box.findData("pick.fruit_count"))
    desk.wait()
    assert desk.shown(BECOMES)[2] == "Picked 9, not weighed"
    line.sum_box.click()
    desk.wait()
    assert desk.shown(BECOMES) == ["Picked 3, not weighed", "Picked 2, not weighed", "Picked 4, not weighed"]


def test_a_unit_is_chosen_for_a_column(desk: Desk) -> None:
    desk.read("date,fruit,weight\n2026-01-05,3,0.2\n")
    box = desk.dialog.columns.lines[2].unit_box
    box.setCurrentIndex(box.findText("kg"))
    desk.wait()
    assert desk.shown(BECOMES) == ["Picked 3, 200\u2009g"]


def test_two_columns_are_never_read_as_the_same_field(desk: Desk) -> None:
    desk.read("date,fruit,A\n2026-01-05,3,4\n")
    line = desk.dialog.columns.lines[2]
    line.field_box.setCurrentIndex(line.field_box.findData("pick.fruit_count"))
    desk.wait()
    assert desk.dialog.columns.lines[1].field_box.currentData() == ""
    assert desk.shown(BECOMES) == ["Picked 4, not weighed"]


def test_another_crop_is_chosen(desk: Desk) -> None:
    desk.read(TABLE)
    box = desk.dialog.crop_field.box
    box.setCurrentIndex(box.findText("Porch Violet"))
    desk.wait()
    desk.dialog.confirm()
    desk.wait()
    assert {e.owner.id for e in entries_of(desk.log)} != {desk.gold.id}


def test_a_sheet_is_chosen_where_there_are_several(desk: Desk) -> None:
    rows = [["date", "fruit"], [date(2026, 1, 5), 3]]
    desk.dialog.read(write_xlsx(desk.folder / "n.xlsx", First=[["date", "EC"], [date(2026, 1, 5), 1.8]], Second=rows))
    desk.wait()
    assert desk.shown(BECOMES) == ["Feed, EC 1.80\u2009mS/cm"]
    box = desk.dialog.sheet_field.box
    assert box.isVisible()
    box.setCurrentIndex(1)
    desk.wait()
    assert desk.shown(BECOMES) == ["Picked 3, not weighed"]


def test_rows_that_stay_out_are_saved(desk: Desk) -> None:
    desk.read(TABLE)
    target = desk.folder / "left out.csv"
    desk.choice.answers = [target]
    desk.dialog.save_button.click()
    desk.wait()
    assert len(target.read_text(encoding="utf-8-sig").splitlines()) == 3
    assert desk.dialog.banner.sentence == "2 rows saved with their reasons."


def test_a_file_that_is_no_table_is_a_plain_sentence_and_the_last_one_stays(desk: Desk) -> None:
    desk.read(TABLE)
    (desk.folder / "bad.xlsx").write_bytes(b"no workbook")
    desk.dialog.read(desk.folder / "bad.xlsx")
    desk.wait()
    assert desk.dialog.banner.tone == "problem"
    assert "bad.xlsx" in desk.dialog.banner.sentence
    assert desk.dialog.file_label.text() == "notes.csv · 4 rows"
    assert len(desk.shown(LINE)) == 4


def test_the_use_of_columns_is_remembered(desk: Desk) -> None:
    desk.read("date,A\n2026-01-05,3\n")
    line = desk.dialog.columns.lines[1]
    line.field_box.setCurrentIndex(line.field_box.findData("pick.fruit_count"))
    desk.wait()
    desk.dialog.confirm()
    desk.wait()
    desk.read("date,A\n2026-01-06,4\n", "next.csv")
    assert desk.shown(BECOMES) == ["Picked 4, not weighed"]
    assert "last file of this shape" in desk.dialog.columns.hint_label.text()


def test_stopping_carries_nothing_in(desk: Desk) -> None:
    desk.read("date,fruit\n" + "\n".join(f"2026-01-{n % 28 + 1:02},{n % 9 + 1}" for n in range(2000)))
    desk.dialog.confirm()
    desk.dialog.progress.stop_button.click()
    desk.wait()
    assert entries_of(desk.log) == []
    assert desk.dialog.banner.sentence == "Stopped. Nothing was carried in."
    assert desk.changes == []


def test_a_look_that_was_stopped_leaves_nothing_to_confirm_until_it_is_done_again(desk: Desk) -> None:
    desk.read("date,fruit\n" + "\n".join(f"2026-01-{n % 28 + 1:02},{n % 9 + 1}" for n in range(3000)))
    desk.dialog._start_planning()
    desk.dialog.progress.stop_button.click()
    desk.wait()
    assert not desk.dialog.in_button.isEnabled()
    desk.dialog.banner.action_button.click()
    desk.wait()
    assert desk.dialog.in_button.isEnabled()


def test_putting_it_away_while_it_carries_in_stops_first(desk: Desk, qtbot: QtBot) -> None:
    desk.read("date,fruit\n" + "\n".join(f"2026-01-{n % 28 + 1:02},{n % 9 + 1}" for n in range(2000)))
    desk.dialog.confirm()
    desk.dialog.close()
    qtbot.waitUntil(lambda: not desk.dialog.isVisible(), timeout=20000)
    assert entries_of(desk.log) == []


def test_work_that_was_stopped_before_it_began_does_nothing() -> None:
    class Quiet:
        is_cancelled = False

        def report(self, progress: object) -> None:
            pytest.fail("it went on")

    work = Work()
    work.stop()
    outcome = work.run(lambda progress: pytest.fail("it was begun"), Quiet())  # type: ignore[arg-type]
    assert outcome.result is None
    assert issubclass(Stopped, Exception)
