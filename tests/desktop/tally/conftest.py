"""The session tally on invented crops, with a clock that the test moves, and hands that press real keys."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import isValid

from growlog.calculations.yield_curve import YieldSoFar
from growlog.desktop.tally import SessionTally
from growlog.records.cultivar import FloweringHabit
from growlog.services.open_logbook import new_id
from growlog.services.tally import Stopwatch, Tally, TallyCrop
from growlog.services.tally.fitting import counters_for

DAY = date(2026, 1, 18)
SHIFT, CONTROL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


def crop_row(crop_id: str, name: str, species: str, habit: FloweringHabit, **more: object) -> TallyCrop:
    so_far = YieldSoFar(14, 0, 1200.0, 0.0, 85.7, 0)
    counters = counters_for(species, habit)
    row = TallyCrop(crop_id, name, species, 64, so_far, counters, habit is FloweringHabit.SEPARATE)
    return replace(row, **more)  # type: ignore[arg-type]


def three_crops() -> list[TallyCrop]:
    return [
        crop_row("gold", "Boxroom Gold", "pattypan", FloweringHabit.SEPARATE),
        crop_row("light", "Landing Light", "chilli", FloweringHabit.PERFECT),
        crop_row("violet", "Porch Violet", "aubergine", FloweringHabit.PERFECT),
    ]


def empty_tally(**more: object) -> Tally:
    made = Tally(new_id(), datetime.combine(DAY, time(8, 5)), DAY, chosen="gold")
    return replace(made, **more)  # type: ignore[arg-type]


@dataclass
class Hands:
    """Presses keys and clicks, counts both, and remembers what the dialog asked for."""

    qtbot: QtBot
    dialog: SessionTally
    kept: list[Tally]
    written: list[Tally] = field(default_factory=list)
    keys: int = 0

    def __post_init__(self) -> None:
        self.dialog.write_wanted.connect(self.written.append)

    def type(self, text: str) -> None:
        """Types at the scale, one key a sign; a capital is pressed with shift."""
        for sign in text:
            if sign == "\n":
                self.key(Qt.Key.Key_Return)
            elif sign.isupper():
                self.press(sign, SHIFT)
            else:
                self.press(sign)

    def press(self, sign: str, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        """One key that writes a sign, where the focus is."""
        self.keys += 1 if modifier == Qt.KeyboardModifier.NoModifier else 2
        self.qtbot.keyClick(self.focus, sign, modifier)

    def key(self, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        """Any other key, where the focus is."""
        self.keys += 1 if modifier == Qt.KeyboardModifier.NoModifier else 2
        self.qtbot.keyClick(self.focus, key, modifier)

    def write(self) -> None:
        """Ctrl and Enter."""
        self.key(Qt.Key.Key_Return, CONTROL)

    def click(self, name: str) -> None:
        """A click on a button by its name."""
        button = self.dialog.findChild(QPushButton, name)
        assert button is not None, name
        assert button.isVisible(), name
        assert button.isEnabled(), name
        self.qtbot.mouseClick(button, Qt.MouseButton.LeftButton)

    def step(self, counter: str, button: str) -> None:
        """A click on less or more of a counter."""
        stepper = self.dialog.findChild(QWidget, f"counter.{counter}")
        found = stepper.findChild(QPushButton, button)
        assert found.isVisible()
        self.qtbot.mouseClick(found, Qt.MouseButton.LeftButton)

    @property
    def focus(self) -> QWidget:
        found = self.dialog.focusWidget()
        assert found is not None
        return found

    @property
    def tally(self) -> Tally:
        return self.dialog.model.tally

    @property
    def said(self) -> str:
        """What the dialog said last, wherever it stands."""
        return f"{self.dialog.pick.said_label.text()} {self.dialog.note_label.text()}".strip()

    @property
    def questions(self) -> list[str]:
        return [banner.sentence for banner in self.dialog.questions.banners]


class Clock:
    """A clock that the test sets."""

    def __init__(self) -> None:
        self.moment = datetime(2026, 1, 18, 8, 5, tzinfo=UTC)

    def __call__(self) -> datetime:
        return self.moment


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def hands(qtbot: QtBot, clock: Clock) -> Iterator[Callable[..., Hands]]:
    """Opens a tally. crops: other rows than the three; keep: what keeping answers."""

    opened: list[SessionTally] = []

    def make(tally: Tally | None = None, crops: list[TallyCrop] | None = None, **more: object) -> Hands:
        rows = three_crops() if crops is None else crops
        kept: list[Tally] = []
        answer = more.pop("keep", "")

        def keep(one: Tally) -> str:
            kept.append(one)
            return str(answer)

        dialog = SessionTally(
            tally or empty_tally(),
            lambda _day, _also: rows,
            clock,
            keep,
            today=DAY,
            keep_ms=0,
            **more,  # type: ignore[arg-type]
        )
        opened.append(dialog)
        with qtbot.waitActive(dialog):
            dialog.show()
            dialog.activateWindow()
        return Hands(qtbot, dialog, kept)

    yield make
    for dialog in opened:
        while isValid(dialog) and dialog.isVisible():  # one that could not be kept is held back once
            dialog.close()


def running(since: datetime) -> Tally:
    """A tally whose stopwatch runs."""
    return empty_tally(stopwatch=Stopwatch(0, since))
