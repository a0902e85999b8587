"""The commands that share a crop."""

from pathlib import Path

import av
import html5lib
import pypdf
import pytest

from tests.command_line.commands import PHOTOS, Terminal

pytestmark = pytest.mark.slow

CROP = ("--crop", "Boxroom Gold")
AS_OF = ("--as-of", "2020-01-02")


@pytest.fixture
def with_photos(terminal: Terminal, room: Path) -> Path:
    """The logbook with three photos on its crop."""
    photos = sorted(PHOTOS.glob("plant-a*.jpg"))[:3]
    assert terminal(*AS_OF, "add-photos", room, *CROP, *photos) == 0, terminal.err
    return room


def test_a_review_is_written_as_a_page_or_on_paper_by_the_ending(terminal: Terminal, with_photos: Path) -> None:
    page, paper = terminal.folder / "review.html", terminal.folder / "review.pdf"
    assert terminal(*AS_OF, "review", with_photos, *CROP, "--to", page, "--no-money", "--no-notes") == 0
    assert "The review of Boxroom Gold is in" in terminal.out
    html5lib.HTMLParser(strict=True).parse(page.read_text(encoding="utf-8"))
    assert terminal(*AS_OF, "review", with_photos, *CROP, "--to", paper, "--paper", "letter") == 0
    assert float(pypdf.PdfReader(paper).pages[0].mediabox.width) == pytest.approx(612, abs=1)


def test_a_missing_original_is_said_at_the_end_too(terminal: Terminal, with_photos: Path) -> None:
    next((with_photos / "photos").rglob("*.jpg")).unlink()
    assert terminal(*AS_OF, "review", with_photos, *CROP, "--to", terminal.folder / "review.html") == 0
    assert "1 photo is missing or damaged" in terminal.out


def test_a_time_lapse_is_written_with_its_size(terminal: Terminal, with_photos: Path) -> None:
    target = terminal.folder / "film.mp4"
    code = terminal(*AS_OF, "time-lapse", with_photos, *CROP, "--to", target, "--size", "128x100", "--speed", "12")
    assert code == 0
    assert "Boxroom Gold: " in terminal.out
    with av.open(str(target)) as film:
        assert (film.streams.video[0].width, film.streams.video[0].height) == (128, 100)


@pytest.mark.parametrize("command", ["review", "time-lapse"])
def test_a_file_that_is_there_is_written_over_only_when_asked(
    terminal: Terminal, with_photos: Path, command: str
) -> None:
    target = terminal.folder / ("mine.html" if command == "review" else "mine.mp4")
    target.write_bytes(b"mine")
    assert terminal(*AS_OF, command, with_photos, *CROP, "--to", target) == 1
    assert "--replace" in terminal.err
    assert target.read_bytes() == b"mine"
    size = () if command == "review" else ("--size", "128x100")
    assert terminal(*AS_OF, command, with_photos, *CROP, "--to", target, "--replace", *size) == 0
    assert target.read_bytes() != b"mine"


def test_a_crop_that_is_not_there_is_named(terminal: Terminal, room: Path) -> None:
    assert terminal("review", room, "--crop", "Another", "--to", terminal.folder / "review.pdf") == 1
    assert "There is no crop Another" in terminal.err


def test_a_film_of_a_crop_without_photos_is_refused_in_a_sentence(terminal: Terminal, room: Path) -> None:
    assert terminal("time-lapse", room, *CROP, "--to", terminal.folder / "film.mp4") == 1
    assert "Boxroom Gold has no photos of these days." in terminal.err


def test_a_wrong_choice_is_refused_in_a_sentence(terminal: Terminal, with_photos: Path) -> None:
    film = terminal.folder / "film.mp4"
    assert terminal(*AS_OF, "time-lapse", with_photos, *CROP, "--to", film, "--speed", "500") == 1
    assert "The speed is 0.2 to 24 days a second." in terminal.err
    assert not film.exists()
