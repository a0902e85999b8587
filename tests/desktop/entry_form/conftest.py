"""Forms to try: a crop, a tank and a room to belong to, one mix, and a pair of hands."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.entry_form import EntryForm
from growlog.records.entry import Detail, Entry, Owner, OwnerKind
from growlog.records.problems import Problem
from growlog.records.recipe import Mix, MixPart
from growlog.services.entries import Belongs, new_entry

DAY = date(2026, 1, 18)
CROP = Owner(OwnerKind.CROP, "crop-1")
ROOM = Owner(OwnerKind.ROOM, "room-1")
OWNERS = [Belongs(CROP, "Boxroom Gold"), Belongs(ROOM, "Box room")]
MIXES = [Mix("mix-2", "A and B", 2, (MixPart("A", 3.0), MixPart("B", 3.0)))]


def own_problems(entry: Entry) -> list[Problem]:
    return entry.problems()


class Hands:
    """Types into a form's fields and presses its keys."""

    def __init__(self, qtbot: QtBot, form: EntryForm) -> None:
        self.qtbot = qtbot
        self.form = form
        self.written: list[Entry] = []
        form.confirmed.connect(self.written.append)

    def line(self, name: str) -> QWidget:
        found = self.form.findChild(QWidget, f"{name}.line") or self.form.findChild(QWidget, f"{name}.editor")
        assert isinstance(found, QWidget), name
        return found

    def type(self, name: str, text: str) -> None:
        line = self.line(name)
        line.clear()  # type: ignore[attr-defined]
        self.qtbot.keyClicks(line, text)

    def says(self, name: str) -> str:
        """What stands below a field, "" if nothing is shown."""
        label = self.form.cell(name).field.message_label
        return "" if label.isHidden() else label.text()

    def answer(self, name: str) -> None:
        box = self.form.cell(name).answer_box
        assert not box.isHidden()
        box.click()

    def write(self) -> Entry | None:
        self.form.write()
        return self.written[-1] if self.written else None


@pytest.fixture
def hands(qtbot: QtBot) -> Callable[..., Hands]:
    """Makes a form of a kind, empty or with a detail, and gives hands to fill it in."""

    def make(kind: str, detail: Detail | None = None, **more: object) -> Hands:
        entry = new_entry(CROP, DAY, kind)
        if detail is not None:
            entry = replace(entry, detail=detail)
        check = more.pop("check", own_problems)
        form = EntryForm(entry, OWNERS, MIXES, check, **more)  # type: ignore[arg-type]
        qtbot.addWidget(form)
        return Hands(qtbot, form)

    return make
