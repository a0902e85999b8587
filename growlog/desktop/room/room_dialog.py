"""The room's dialog: floor and time zone, lamps, tanks, and the usual caution about mains beside water."""

from dataclasses import replace
from zoneinfo import available_timezones

from PySide6.QtCore import Qt, QTimeZone, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.crop_form.word_field import WordField
from growlog.desktop.look.widgets import (
    Banner,
    Button,
    DialogFrame,
    Field,
    FormGrid,
    SectionTitle,
    TextField,
    check_all,
    limited_number_field,
)
from growlog.desktop.room.thing_cards import LampCard, TankCard
from growlog.records.room import Lamp, Room, Tank
from growlog.services.open_logbook import new_id
from growlog.services.rooms import RoomView
from growlog.words import say


class RoomDialog(DialogFrame):
    """For a new room, or a present one. Saving emits each record that is new or changed, the room first.

    A lamp or tank that was taken off is told by `removed`, also when saving; then the dialog closes.
    """

    saved = Signal(object)
    removed = Signal(object)

    def __init__(self, view: RoomView | None = None, parent: QWidget | None = None) -> None:
        super().__init__(say("Room") if view is None else view.room.name, "", parent, 700)
        self.setObjectName("roomDialog")
        self._is_new = view is None
        self._room = view.room if view is not None else Room(new_id(), "", zone=_system_zone())
        self._removed: list[Lamp | Tank] = []
        self.cards: list[LampCard | TankCard] = []
        self.name_field = TextField(say("Name"), self._room.name, required=True, name="name")
        self.floor_field = limited_number_field("floor_m2")
        self.floor_field.set_value(self._room.floor_m2)
        sentence = say("Choose a time zone from the list.")
        zones = sorted(available_timezones())
        self.zone_field = WordField(say("Time zone"), zones, self._room.zone, "zone", none_but_these=sentence)
        self.lamp_column, self.tank_column = QVBoxLayout(), QVBoxLayout()
        self.add_lamp_button = Button(say("Add a lamp"), "", "plus", "addLamp")
        self.add_tank_button = Button(say("Add a tank"), "", "plus", "addTank")
        self.leave_button = self.add_button(say("Leave as it was"), name="leave")
        self.save_button = self.add_button(f"{say('Save the room')}  Ctrl \u23ce", "primary", "save")
        self.save_button.setDefault(False)
        self._fill_body()
        self._connect()
        self._show_things(view)

    def room(self) -> Room:
        """What stands in the fields."""
        return replace(
            self._room,
            name=self.name_field.value(),
            floor_m2=self.floor_field.value(),
            zone=self.zone_field.value(),
        )

    def save(self) -> None:
        """Emits what is new, changed or taken off, and closes; goes to the first field that is refused."""
        fields: list[Field] = [self.name_field, self.floor_field, self.zone_field]
        for card in self.cards:
            fields += card.fields()
        if not check_all(fields):
            return
        if self._is_new or self.room() != self._room:
            self.saved.emit(self.room())
        for thing in self._removed:
            self.removed.emit(thing)
        for card in self.cards:
            if card.is_changed():
                self.saved.emit(card.thing())
        self.accept()

    def _fill_body(self) -> None:
        grid = FormGrid(3)
        grid.add(self.name_field, self.floor_field, self.zone_field)
        self.caution = Banner(_caution(), "asks", can_close=False)
        self.body.addWidget(grid)
        self.body.addSpacing(8)
        self.body.addWidget(SectionTitle(say("Lamps")))
        self.body.addLayout(self.lamp_column)
        self.body.addWidget(self.add_lamp_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addSpacing(8)
        self.body.addWidget(SectionTitle(say("Tanks")))
        self.body.addLayout(self.tank_column)
        self.body.addWidget(self.add_tank_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(self.caution)
        self.body.addStretch(1)
        for column in (self.lamp_column, self.tank_column):
            column.setSpacing(8)

    def _connect(self) -> None:
        self.add_lamp_button.clicked.connect(self._add_lamp)
        self.add_tank_button.clicked.connect(self._add_tank)
        self.leave_button.clicked.connect(self.reject)
        self.save_button.clicked.connect(self.save)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.save)

    def _show_things(self, view: RoomView | None) -> None:
        for lamp in view.lamps if view is not None else ():
            self._add_card(LampCard(lamp, is_new=False))
        for tank in view.tanks if view is not None else ():
            self._add_card(TankCard(tank, is_new=False))
        self.name_field.setFocus()

    def _add_lamp(self) -> None:
        self._add_card(LampCard(Lamp(new_id(), self._room.id, ""), is_new=True))

    def _add_tank(self) -> None:
        self._add_card(TankCard(Tank(new_id(), self._room.id, ""), is_new=True))

    def _add_card(self, card: LampCard | TankCard) -> None:
        column = self.lamp_column if isinstance(card, LampCard) else self.tank_column
        column.addWidget(card)
        self.cards.append(card)
        card.remove_wanted.connect(self._remove_card)
        card.name_field.setFocus()

    def _remove_card(self, card: LampCard | TankCard) -> None:
        self.cards.remove(card)
        if not card.is_new:
            self._removed.append(card.before)
        card.hide()
        card.deleteLater()


def _caution() -> str:
    return say(
        "Lamps, mains and water: supply the room through residual-current protection, hang cables in drip loops and "
        "keep plugs off the floor. Never run a discharge lamp whose outer bulb is broken. The lamp's label and local "
        "codes come first; wiring is a licensed electrician's work."
    )


def _system_zone() -> str:
    zone = bytes(QTimeZone.systemTimeZoneId().data()).decode()
    return zone if zone in available_timezones() else "UTC"
