"""The lines of totals in the window's head and foot."""

from pathlib import Path

from growlog.desktop.totals import totals_line
from growlog.records.entry import Pick
from growlog.services.board import board_of
from growlog.words import show_units
from tests.logbooks import TODAY, logbook, plant_crop, write


def test_the_mean_of_small_fruit_is_not_nothing_in_ounces(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, TODAY, Pick(12, 72.6))
        board = board_of(log, crop.id)
    assert "6\u2009g each" in totals_line(board)
    show_units("us")
    assert "0.2\u2009oz each" in totals_line(board)
