"""The keystroke-level model: hands that drive the real dialogs and count what they do.

Card, S. K., Moran, T. P. and Newell, A. (1980) The keystroke-level model for user performance time with interactive
systems, Communications of the ACM 23 (7). The operator times are those of its table for an average typist who is no
secretary. A key held with another (Ctrl, Shift) counts as a key of its own, a click as one, a drag as two.

Where thinking is counted, for the program and for what it is measured against alike: before each command that is begun
(a run of the same command counts once) and before each value that is read off and typed; not before the Tab or Enter
that ends a value, nor before the key that ends the whole.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

KEY_S, POINT_S, HAND_S, THINK_S = 0.28, 1.10, 0.40, 1.35
SHIFT, CONTROL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


@dataclass
class Effort:
    """What was done: keys (K), pointing (P), hands moved between keyboard and mouse (H), thinking (M)."""

    keys: int = 0
    points: int = 0
    hands: int = 0
    thoughts: int = 0
    on_mouse: bool = False

    @property
    def seconds(self) -> float:
        """The time that the model foretells."""
        return self.keys * KEY_S + self.points * POINT_S + self.hands * HAND_S + self.thoughts * THINK_S

    def key(self, count: int = 1) -> None:
        """Keys on the keyboard."""
        self._hand(mouse=False)
        self.keys += count

    def button(self, count: int = 1) -> None:
        """Buttons of the mouse, after pointing."""
        self._hand(mouse=True)
        self.points += 1
        self.keys += count

    def drag(self) -> None:
        """From one place to another with the button held."""
        self._hand(mouse=True)
        self.points += 2
        self.keys += 2

    def think(self) -> None:
        """A moment before a command or a value."""
        self.thoughts += 1

    def _hand(self, *, mouse: bool) -> None:
        if mouse != self.on_mouse:
            self.hands += 1
            self.on_mouse = mouse


@dataclass
class Hands:
    """Sends events to the real window and counts them. What is asserted of a task is what the program did with them."""

    window: QWidget
    effort: Effort = field(default_factory=Effort)

    def think(self) -> None:
        """A moment before a command or a value."""
        self.effort.think()

    def press(self, key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        """A key, with others held."""
        held_keys = sum(bool(held & one) for one in (SHIFT, CONTROL, Qt.KeyboardModifier.AltModifier))
        self.effort.key(1 + held_keys)
        QTest.keyClick(self._focus(), key, held)

    def type(self, text: str) -> None:
        """Letters and figures."""
        for letter in text:
            self.effort.key(2 if letter.isupper() else 1)
            QTest.keyClicks(self._focus(), letter)

    def click(
        self, widget: QWidget, at: QPoint | None = None, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier
    ) -> None:
        """Points and clicks; a key held the while counts."""
        self.effort.button(1)
        self.effort.keys += 1 if held else 0
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton, held, at or widget.rect().center())

    def drop(self, onto: Callable[[], None]) -> None:
        """Drags what is chosen elsewhere onto the window."""
        self.effort.drag()
        onto()

    def _focus(self) -> QWidget:
        return QApplication.focusWidget() or QApplication.activeWindow() or self.window
