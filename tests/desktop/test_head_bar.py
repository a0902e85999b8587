"""The bar above the logbook: its buttons keep their words as long as there is room, and are named without them."""

import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.head_bar import HeadBar
from growlog.desktop.look.widgets import Button, TextLabel

pytestmark = pytest.mark.usefixtures("qapp")


def test_words_go_one_button_after_the_other_and_come_back(qtbot: QtBot) -> None:
    room, tally = Button("Room", icon="room"), Button("Session tally", icon="tally")
    bar = HeadBar(TextLabel("Box room"), QWidget(), [tally, room], [room, tally])
    holder = QWidget()
    qtbot.addWidget(holder)
    bar.setParent(holder)
    holder.show()
    bar.resize(600, 50)
    assert (tally.text(), room.text()) == ("Session tally", "Room")
    full = sum(b.sizeHint().width() for b in (room, tally))
    bar.resize(full + 100, 50)
    assert (tally.text(), room.text()) == ("Session tally", "")
    assert (room.toolTip(), room.accessibleName()) == ("Room", "Room")
    bar.resize(120, 50)
    assert (tally.text(), room.text()) == ("", "")
    bar.resize(600, 50)
    assert (tally.text(), room.text(), room.toolTip()) == ("Session tally", "Room", "")
