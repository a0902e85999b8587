"""A tank, a lamp or a device as a card of fields: what they share, and the tank."""

from dataclasses import replace
from typing import Generic, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout

from growlog.desktop.look.widgets import Button, Card, Field, FormGrid, TextField, limited_number_field
from growlog.records.problems import Problem
from growlog.records.room import Device, Lamp, Tank
from growlog.words import say

Thing = TypeVar("Thing", Lamp, Tank, Device)


class ThingCard(Card, Generic[Thing]):
    """What they share: a name, fields, and a way to take the thing off."""

    remove_wanted = Signal(object)
    edited = Signal()

    def __init__(self, thing: Thing, is_new: bool, remove_words: str) -> None:
        super().__init__()
        self.before: Thing = thing
        self.is_new = is_new
        self.name_field = TextField(say("Name"), thing.name, required=True, name="name")
        self.grid = FormGrid(3, 130)
        self.grid.add(self.name_field)
        self.remove_button = Button(remove_words, "link", "bin", "remove")
        self.foot = QHBoxLayout()
        self.foot.addStretch(1)
        self.foot.addWidget(self.remove_button)
        self.body.addWidget(self.grid)
        self.body.addLayout(self.foot)
        self.remove_button.clicked.connect(self._remove)

    def thing(self) -> Thing:
        """What stands in the fields."""
        raise NotImplementedError

    def is_changed(self) -> bool:
        """Whether there is anything to save."""
        return self.is_new or self.thing() != self.before

    def fields(self) -> list[Field]:
        """All fields of the card."""
        return self.grid.fields()

    def check(self) -> bool:
        """Lets every field and then the record judge; sentences stand beside the fields."""
        fits = not [field for field in self.fields() if not field.check()]
        if fits:
            self.show_problems([p for p in self.thing().problems() if not p.asks])
        return not any(field.is_refused for field in self.fields())

    def show_problems(self, problems: list[Problem]) -> None:
        """Sentences beside their fields."""
        by_name = {field.objectName(): field for field in self.fields()}
        for problem in problems:
            by_name.get(problem.field, self.name_field).show_problem(problem.sentence)

    def _remove(self) -> None:
        self.remove_wanted.emit(self)

    def _edited(self) -> None:
        self.edited.emit()


class TankCard(ThingCard[Tank]):
    """One tank."""

    def __init__(self, tank: Tank, is_new: bool) -> None:
        super().__init__(tank, is_new, say("Remove the tank"))
        self.volume_field = limited_number_field("tank_l", say("Volume"))
        self.volume_field.set_value(tank.tank_l)
        self.recirculates_box = QCheckBox(say("The drain comes back to it"))
        self.recirculates_box.setObjectName("recirculates")
        self.recirculates_box.setChecked(tank.recirculates)
        self.grid.add(self.volume_field)
        self.foot.insertWidget(0, self.recirculates_box)

    def thing(self) -> Tank:
        """The tank in the fields."""
        return replace(
            self.before,
            name=self.name_field.value(),
            tank_l=self.volume_field.value(),
            recirculates=self.recirculates_box.isChecked(),
        )
