"""Who stands on how much of the room's floor, from when to when, and how its energy is shared out."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, ChoiceField, TextLabel
from growlog.desktop.room.place_card import PlaceCard
from growlog.records.crop import Crop, Placement
from growlog.records.room import EnergySharing, Room, Tank
from growlog.services.light.statements import stands
from growlog.services.open_logbook import new_id
from growlog.services.room_changes import share_problems
from growlog.words import say, say_count


class PlacesSection(QWidget):
    """The placements of a room as cards; shares over the whole are said beside their fields while one types."""

    changed = Signal()

    def __init__(
        self, room: Room, placements: Sequence[Placement], crops: Sequence[Crop], tanks: Sequence[Tank], today: date
    ) -> None:
        super().__init__()
        self._room, self._crops, self._tanks, self._today = room, tuple(crops), tuple(tanks), today
        self.removed: list[Placement] = []
        ways = [(way.value, say(way.label)) for way in EnergySharing]
        self.sharing_field = ChoiceField(say("The room's energy is shared out"), ways, room.energy_sharing,
                                         name="energySharing")  # fmt: skip
        self.sum_label = TextLabel("", "small", wraps=True)
        self.add_button = Button(say("Add a crop to the room"), "", "plus", "addPlace")
        self.over_button = Button("", "link", name="earlierPlaces")
        self.over_button.setCheckable(True)
        self.cards: list[PlaceCard] = [self._card(p, is_new=False) for p in placements]
        self._column = QVBoxLayout(self)
        self._place()
        self.add_button.clicked.connect(self.add)
        self.over_button.toggled.connect(self._show_over)
        self.sharing_field.value_changed.connect(self._judge)
        self._show_over(False)
        self._judge()

    def sharing(self) -> EnergySharing:
        """How the energy is shared out."""
        return EnergySharing(self.sharing_field.value() or EnergySharing.BY_FLOOR)

    def changed_placements(self) -> list[Placement]:
        """Those that are new or changed."""
        return [card.placement() for card in self.cards if card.is_changed()]

    def check(self) -> bool:
        """Whether all can be taken; goes to the first field that is refused."""
        for card in self.cards:
            card.check()
        self._judge()
        refused = [card for card in self.cards if card.first_refused() is not None]
        if any(card.isHidden() for card in refused):
            self.over_button.setChecked(True)
        for card in refused[:1]:
            (card.first_refused() or card).setFocus(Qt.FocusReason.OtherFocusReason)
        return not refused

    def add(self) -> PlaceCard:
        """A card for another crop, the first that grows and stands nowhere in this room."""
        here = {card.placement().crop_id for card in self.cards}
        free = [c for c in self._crops if c.growing and c.id not in here] or list(self._crops)
        placement = Placement(new_id(), free[0].id, self._room.id, self._today)
        card = self._card(placement, is_new=True)
        self.cards.append(card)
        self._column.insertWidget(self._column.indexOf(self.add_button), card)
        card.crop_field.setFocus()
        self._judge()
        return card

    def _card(self, placement: Placement, *, is_new: bool) -> PlaceCard:
        card = PlaceCard(placement, is_new, self._crops, self._tanks, self._today)
        card.edited.connect(self._judge)
        card.remove_wanted.connect(self._remove)
        return card

    def _place(self) -> None:
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self._column.addWidget(self.sharing_field)
        self._column.addWidget(self.sum_label)
        for card in sorted(self.cards, key=lambda c: c.is_over):
            self._column.addWidget(card)
        self._column.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        self._column.addWidget(self.over_button, 0, Qt.AlignmentFlag.AlignLeft)
        self._column.addStretch(1)
        self.add_button.setEnabled(bool(self._crops))

    def _show_over(self, shown: bool) -> None:
        over = [card for card in self.cards if card.is_over]
        for card in over:
            card.setVisible(shown)
        text = say_count("Show {n} that has ended", "Show {n} that have ended", len(over))
        self.over_button.setText(say("Hide what has ended") if shown else text)
        self.over_button.setVisible(bool(over))

    def _judge(self) -> None:
        placements = [card.placement() for card in self.cards]
        found = share_problems(placements, self._crops)
        by_hand = self.sharing() is EnergySharing.BY_HAND
        for card in self.cards:
            card.show_by_hand(by_hand)
            card.show_shares(found.get(card.before.id, []))
        self.sum_label.setText(self._sums(placements, by_hand))
        self.changed.emit()

    def _sums(self, placements: Sequence[Placement], by_hand: bool) -> str:
        known = {crop.id: crop for crop in self._crops}
        now = [p for p in placements if p.crop_id in known and stands(known[p.crop_id], p, self._today)]
        if not now:
            return say("No crop stands here today.")
        floor = round(100 * sum(p.floor_share or 0 for p in now))
        words = say("Today {share} % of the floor is given to crops.", share=floor)
        if by_hand:
            energy = round(100 * sum(p.energy_share or 0 for p in now))
            words += " " + say("Of the energy {share} % is given by hand; the rest is no crop's.", share=energy)
        return words

    def _remove(self, card: PlaceCard) -> None:
        self.cards.remove(card)
        if not card.is_new:
            self.removed.append(card.before)
        card.hide()
        card.deleteLater()
        self._judge()
