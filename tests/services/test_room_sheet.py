"""The room sheet as a PDF, read again by another library."""

from datetime import date
from pathlib import Path

import pypdf
import pytest

from growlog.services.crops import clear_crop
from growlog.services.open_logbook import OpenLogbook
from growlog.services.paper import Paper
from growlog.services.room_sheet import week_of, write_room_sheet
from tests.logbooks import SOWN, logbook, plant_crop

MONDAY = date(2026, 3, 2)
MM = 72 / 25.4  # points in a millimetre


def text_of(path: Path) -> str:
    """All words of a PDF on one line."""
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(path).pages).split())


def sheet_of(log: OpenLogbook, tmp_path: Path, first_day: date = MONDAY, paper: Paper = Paper.A4) -> Path:
    """A written sheet."""
    path = tmp_path / "sheet.pdf"
    write_room_sheet(log, path, first_day, paper)
    return path


def test_a_week_begins_on_monday_as_iso_8601_has_it() -> None:
    assert week_of(date(2026, 3, 7)) == MONDAY
    assert week_of(MONDAY) == MONDAY


def test_each_growing_crop_has_its_columns_and_each_day_its_row(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        plant_crop(log)
        words = text_of(sheet_of(log, tmp_path))
    assert "Boxroom Gold" in words
    for day in ("Monday", "2 March", "Sunday", "8 March"):
        assert day in words
    for column in ("Feed L", "EC", "pH", "Flowers pollinated", "Picks, g each", "Notes"):
        assert column in words


def test_a_crop_that_was_cleared_before_the_week_is_not_on_it(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        plant_crop(log)
        gone = plant_crop(log, "Skylight Round")
        clear_crop(log, gone.id, date(2026, 3, 1))
        words = text_of(sheet_of(log, tmp_path))
    assert "Boxroom Gold" in words
    assert "Skylight Round" not in words


def test_a_crop_that_is_sown_after_the_week_is_not_on_it(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        plant_crop(log)
        assert "Boxroom Gold" not in text_of(sheet_of(log, tmp_path, week_of(SOWN.replace(month=10))))


def test_two_crops_stand_on_a_page(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        for name in ("Boxroom Gold", "Skylight Round", "Landing Light"):
            plant_crop(log, name)
        pages = pypdf.PdfReader(sheet_of(log, tmp_path)).pages
    assert len(pages) == 2


@pytest.mark.parametrize(("paper", "millimetres"), [(Paper.A4, (297, 210)), (Paper.LETTER, (279.4, 215.9))])
def test_the_paper_has_its_size_by_iso_216_or_ansi(
    tmp_path: Path, paper: Paper, millimetres: tuple[float, float]
) -> None:
    with logbook(tmp_path) as log:
        page = pypdf.PdfReader(sheet_of(log, tmp_path, paper=paper)).pages[0]
    box = (float(page.mediabox.width), float(page.mediabox.height))
    assert box == pytest.approx((millimetres[0] * MM, millimetres[1] * MM), abs=0.6)


def test_a_name_full_of_markup_is_printed_as_it_stands(tmp_path: Path) -> None:
    name = '#panic("x") *bold* $x$ <a> & "q"'
    with logbook(tmp_path) as log:
        plant_crop(log, name)
        assert '#panic("x") *bold* $x$' in text_of(sheet_of(log, tmp_path))


def test_a_room_without_crops_gets_a_sheet_with_an_unnamed_one(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        assert "Crop:" in text_of(sheet_of(log, tmp_path))


def test_a_folder_that_is_not_there_is_named_and_nothing_is_left(tmp_path: Path) -> None:
    with logbook(tmp_path) as log, pytest.raises(OSError, match="nowhere"):
        write_room_sheet(log, tmp_path / "nowhere" / "sheet.pdf", MONDAY)
    assert not list(tmp_path.glob("**/*.unfinished"))
