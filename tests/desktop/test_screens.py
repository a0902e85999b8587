"""Every screen can be drawn without a display, at a small size and in the dark."""

from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from growlog.desktop.screens import SCREENS, render
from growlog.records.entry import KINDS
from growlog.services.requests import Folders, PictureRequest
from tests.logbooks import logbook, plant_crop, still_clock

pytestmark = pytest.mark.slow


def request_for(folder: Path, screen: str, crop: str | None = "Boxroom Gold") -> PictureRequest:
    """A picture of a screen at the smallest size that is promised."""
    return PictureRequest(folder / "room", screen, crop, 10, 1024, 640, "dark", 100, folder / "picture.png")


def drawn(folder: Path, request: PictureRequest) -> int:
    """The exit code of drawing it."""
    return render(request, still_clock(), Folders(folder / "cache", folder / "data", folder / "sample"))


@pytest.fixture(scope="module")
def room(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a logbook of one crop, closed."""
    folder = tmp_path_factory.mktemp("screens")
    with logbook(folder) as log:
        plant_crop(log)
    return folder


@pytest.mark.parametrize("screen", SCREENS)
def test_a_screen_is_drawn_at_the_size_that_was_asked(qapp: QApplication, room: Path, screen: str) -> None:
    request = request_for(room, screen)
    assert drawn(room, request) == 0
    picture = QImage(str(request.to))
    assert (picture.width(), picture.height()) == (1024, 640)
    colours = {picture.pixelColor(x, y).rgb() for x in range(0, 1024, 16) for y in range(0, 640, 16)}
    assert len(colours) > 3


def test_each_kind_of_entry_has_its_form_among_the_screens() -> None:
    assert {f"form-{kind}" for kind in KINDS} <= set(SCREENS)


def test_an_unknown_screen_or_crop_is_a_sentence_and_wrong_use(
    qapp: QApplication, room: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert drawn(room, request_for(room, "ballroom")) == 2
    assert "no screen ballroom" in capsys.readouterr().err
    assert drawn(room, request_for(room, "board", crop="Nobody")) == 2
    assert "no crop Nobody" in capsys.readouterr().err


def test_a_folder_that_is_no_logbook_gives_no_picture(
    qapp: QApplication, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert drawn(tmp_path, request_for(tmp_path, "board")) == 1
    assert "is not a logbook" in capsys.readouterr().err
    assert not (tmp_path / "picture.png").exists()
