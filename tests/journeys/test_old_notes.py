"""Notes kept elsewhere: the file is chosen, looked at, carried in, and taken out again with one undo."""

from collections.abc import Callable

import pytest

from growlog.services.crops import add_crop, new_crop
from tests.journeys.conftest import Person
from tests.logbooks import SOWN
from tests.sharing.old_notes.written_tables import write_text

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def test_a_season_on_paper_comes_onto_the_board_and_goes_again(person: Callable[..., Person]) -> None:
    someone = person()
    someone.new_logbook()
    window = someone.window
    assert window.desk is not None
    crop, cultivar = new_crop("Boxroom Gold", "pattypan", SOWN)
    window.desk.write(add_crop, crop, cultivar)
    rows = [f"{day:02}/01/2026;{day % 4};{day % 4 * 70}" for day in range(1, 31)]
    someone.files.answers = [write_text(someone.home / "season.csv", "Date;fruit;weight g\n" + "\n".join(rows))]

    window.actions_table.by_name["old_notes"].trigger()
    assert window.opened is not None
    dialog = window.opened.old_notes.dialog
    assert dialog is not None
    dialog.empty.button.click()
    someone.qtbot.waitUntil(lambda: dialog.is_at_rest and dialog.in_button.isEnabled())
    dialog.in_button.click()
    someone.qtbot.waitUntil(lambda: dialog.is_at_rest and not dialog.in_button.isEnabled())

    assert window.desk.crops[0].total.fruit_count == sum(day % 4 for day in range(1, 31))
    assert window.desk.undo_stack.undo_title == "23 entries from season.csv"
    dialog.close()
    window.actions_table.by_name["undo"].trigger()
    assert window.desk.crops[0].entry_count == 0


def test_closing_the_window_while_notes_are_carried_in_leaves_none_of_them(person: Callable[..., Person]) -> None:
    someone = person()
    someone.new_logbook()
    window = someone.window
    assert window.desk is not None
    crop, cultivar = new_crop("Boxroom Gold", "pattypan", SOWN)
    window.desk.write(add_crop, crop, cultivar)
    assert window.opened is not None
    lines = "\n".join(f"2026-01-{n % 28 + 1:02},{n % 9 + 1}" for n in range(3000))
    window.opened.old_notes.open(write_text(someone.home / "season.csv", f"date,fruit\n{lines}"))
    dialog = window.opened.old_notes.dialog
    assert dialog is not None
    someone.qtbot.waitUntil(lambda: dialog.is_at_rest and dialog.in_button.isEnabled())
    dialog.confirm()
    someone.close()
    someone.start()
    someone.opening.open(someone.home / "room")
    assert someone.window.desk is not None
    assert someone.window.desk.crops[0].entry_count == 0
