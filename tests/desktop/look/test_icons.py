"""The icons that come with the program."""

import re
from collections.abc import Iterator
from xml.etree import ElementTree

import pytest
from PySide6.QtGui import QAction, QIcon
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from growlog.desktop.look.icons import IconButton, icon, icon_names, keep_icon, svg_pixmap
from growlog.desktop.look.theme import apply_theme
from growlog.desktop.resources import resource_text

NAMES = icon_names()


@pytest.fixture
def app(qapp: QApplication) -> Iterator[QApplication]:
    """The application, given back in its usual look."""
    yield qapp
    apply_theme(qapp, "light", 100)


def inked_pixels(name: str) -> int:
    """How many pixels of an icon are not empty."""
    image = svg_pixmap(name, "#000000", 20).toImage()
    return sum(image.pixelColor(x, y).alpha() > 60 for x in range(20) for y in range(20))


def test_there_are_icons() -> None:
    assert len(NAMES) >= 40
    assert {"undo", "redo", "bin", "settings", "tally", "mixer", "drag-handle"} <= set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_an_icon_is_drawn_on_the_grid_in_the_colour_it_is_given(name: str, qapp: object) -> None:
    text = resource_text("icons", f"{name}.svg")
    root = ElementTree.fromstring(text)
    assert root.get("viewBox") == "0 0 20 20"
    assert re.findall("#[0-9a-fA-F]{3,6}", text) == []
    assert "currentColor" in text
    assert inked_pixels(name) > 10


@pytest.mark.parametrize("name", [name for name in NAMES if name not in ("more", "drag-handle")])
def test_every_icon_has_the_one_stroke_weight(name: str) -> None:
    assert set(re.findall(r'stroke-width="([\d.]+)"', resource_text("icons", f"{name}.svg"))) == {"1.5"}


def test_no_two_icons_are_the_same_drawing() -> None:
    texts = {resource_text("icons", f"{name}.svg") for name in NAMES}
    # The zoom lens and the search lens differ in the sign inside.
    assert len(texts) == len(NAMES)


def test_a_button_keeps_its_icon_in_the_colours_of_the_theme(app: QApplication, qtbot: QtBot) -> None:
    button = IconButton("check", "Done")
    qtbot.addWidget(button)
    before = button.icon().cacheKey()
    apply_theme(app, "dark", 100)
    assert button.icon().cacheKey() != before
    assert button.accessibleName() == "Done"


def test_an_icon_changed_twice_is_kept_by_one_keeper(qtbot: QtBot) -> None:
    button = QPushButton()
    qtbot.addWidget(button)
    assert keep_icon(button, "undo") is keep_icon(button, "redo")
    assert button.icon().cacheKey() == icon("redo").cacheKey()


def test_an_action_can_have_an_icon(qapp: object) -> None:
    action = QAction("Undo")
    keep_icon(action, "undo")
    assert not action.icon().pixmap(20, 20, QIcon.Mode.Disabled).isNull()
