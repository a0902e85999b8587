"""Lamps, devices or tanks of a room: a card each, and a button for another."""

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, TextLabel
from growlog.desktop.room.thing_cards import ThingCard
from growlog.records.room import Device, Lamp, Tank

Thing = Lamp | Tank | Device


class ThingsSection(QWidget):
    """make_card is given a thing and whether it is new; make_new gives a new thing."""

    changed = Signal()

    def __init__(
        self,
        things: Sequence[Thing],
        make_card: Callable[[Any, bool], ThingCard[Any]],
        make_new: Callable[[], Thing],
        words: tuple[str, str],
        name: str,
        below: QWidget | None = None,
    ) -> None:
        """words: of the button that adds one, and of the place where there is none yet."""
        super().__init__()
        self._make_card, self._make_new = make_card, make_new
        self.cards: list[ThingCard[Any]] = []
        self.removed: list[Thing] = []
        self.none_label = TextLabel(words[1], "subtitle", wraps=True)
        self.add_button = Button(words[0], "", "plus", name)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self._column.addWidget(self.none_label)
        self._column.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        if below is not None:
            self._column.addWidget(below)
        self._column.addStretch(1)
        for thing in things:
            self._add(thing, is_new=False)
        self.add_button.clicked.connect(self.add)
        self._show_none()

    def add(self) -> None:
        """A card for a new one."""
        self._add(self._make_new(), is_new=True).name_field.setFocus()
        self._show_none()

    def changed_things(self) -> list[Thing]:
        """Those that are new or changed."""
        return [card.thing() for card in self.cards if card.is_changed()]

    def check(self) -> bool:
        """Whether all can be taken; goes to the first field that is refused."""
        for card in self.cards:
            card.check()
        refused = [field for card in self.cards for field in card.fields() if field.is_refused]
        if refused:
            refused[0].setFocus(Qt.FocusReason.OtherFocusReason)
        return not refused

    def _add(self, thing: Thing, *, is_new: bool) -> ThingCard[Any]:
        card = self._make_card(thing, is_new)
        self.cards.append(card)
        self._column.insertWidget(self._column.indexOf(self.add_button), card)
        card.remove_wanted.connect(self._remove)
        card.edited.connect(self.changed)
        return card

    def _remove(self, card: ThingCard[Any]) -> None:
        self.cards.remove(card)
        if not card.is_new:
            self.removed.append(card.before)
        card.hide()
        card.deleteLater()
        self._show_none()
        self.changed.emit()

    def _show_none(self) -> None:
        self.none_label.setVisible(not self.cards)
