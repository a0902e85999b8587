"""Where a crop stands in the room: from when to when, its share of the floor, and of the energy by hand."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, Card, ChoiceField, DayField, Field, FormGrid, TextLabel
from growlog.desktop.room.percent_field import PercentField
from growlog.records.crop import Crop, Placement
from growlog.records.problems import Problem
from growlog.records.room import Tank
from growlog.words import say, show_day


class PlaceCard(Card):
    """One placement of a crop; a new one lets the crop be chosen."""

    remove_wanted = Signal(object)
    edited = Signal()

    def __init__(
        self, placement: Placement, is_new: bool, crops: Sequence[Crop], tanks: Sequence[Tank], today: date
    ) -> None:
        super().__init__(margin_px=12)
        self.before, self.is_new = placement, is_new
        self._crops = {crop.id: crop for crop in crops}
        crop = self._crops.get(placement.crop_id)
        self.title_label = TextLabel("" if crop is None else _title(crop), "strong")
        self.crop_field = ChoiceField(say("Crop"), [(c.id, c.name) for c in crops], placement.crop_id, name="crop")
        self.from_field = DayField(say("From"), placement.from_day, near=today, required=True, name="from_day")
        self.until_field = DayField(say("Until, with that day"), placement.until_day, near=today, name="until_day")
        self.floor_field = PercentField(say("Share of the floor"), placement.floor_share, "floor_share")
        self.energy_field = PercentField(say("Share of the energy"), placement.energy_share, "energy_share")
        named = [(tank.id, tank.name) for tank in tanks]
        self.tank_field = ChoiceField(say("Tank"), named, placement.tank_id, say("none"), "tank_id")
        self.beside_label = TextLabel("", "message", wraps=True)
        self.beside_label.setProperty("state", "problem")
        self.remove_button = Button(say("Remove"), "link", "bin", "remove")
        self.grid = FormGrid(3, 130)
        self._place()
        for field in self.fields():
            field.value_changed.connect(self._edited)
        self.remove_button.clicked.connect(self._remove)

    @property
    def is_over(self) -> bool:
        """Whether a kept placement has ended: it has a last day, or its crop was cleared."""
        crop = self._crops.get(self.before.crop_id)
        return not self.is_new and (self.before.until_day is not None or (crop is not None and not crop.growing))

    def placement(self) -> Placement:
        """What stands in the fields."""
        return replace(
            self.before,
            crop_id=self.crop_field.value() or self.before.crop_id,
            from_day=self.from_field.value() or self.before.from_day,
            until_day=self.until_field.value(),
            floor_share=self.floor_field.share(),
            energy_share=self.energy_field.share(),
            tank_id=self.tank_field.value(),
        )

    def is_changed(self) -> bool:
        """Whether there is anything to save."""
        return self.is_new or self.placement() != self.before

    def fields(self) -> list[Field]:
        """All fields."""
        return self.grid.fields()

    def show_by_hand(self, by_hand: bool) -> None:
        """The share of the energy is asked for only where it is given by hand."""
        self.energy_field.setVisible(by_hand)

    def check(self) -> bool:
        """Lets every field and then the record judge."""
        fits = not [field for field in self.fields() if not field.check()]
        if fits:
            self.show_problems(self.placement().problems())
        return not any(field.is_refused for field in self.fields())

    def first_refused(self) -> QWidget | None:
        """Where to go for what is wrong, None where all is well."""
        found = [field for field in self.fields() if field.is_refused]
        return found[0] if found else self.from_field if self.beside_label.text() else None

    def show_problems(self, problems: Sequence[Problem]) -> None:
        """Sentences beside their fields."""
        by_name = {field.objectName(): field for field in self.fields()}
        for problem in problems:
            by_name.get(problem.field, self.from_field).show_problem(problem.sentence)

    def show_shares(self, problems: Sequence[Problem]) -> None:
        """What is wrong with it beside the others; what a field says of itself stays."""
        sentences = {p.field: p.sentence for p in problems}
        self.floor_field.show_beside(sentences.pop("floor_share", ""))
        self.energy_field.show_beside(sentences.pop("energy_share", ""))
        self.beside_label.setText(" ".join(sentences.values()))
        self.beside_label.setVisible(bool(sentences))

    def _place(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.title_label, 1)
        head.addWidget(self.remove_button)
        self.body.addLayout(head)
        if self.is_new:
            self.grid.add(self.crop_field)
        self.grid.add(self.from_field, self.until_field, self.floor_field, self.energy_field, self.tank_field)
        self.tank_field.setVisible(bool(self.tank_field.box.count() > 1))
        self.body.addWidget(self.grid)
        self.body.addWidget(self.beside_label)

    def _edited(self) -> None:
        self.edited.emit()

    def _remove(self) -> None:
        self.remove_wanted.emit(self)


def _title(crop: Crop) -> str:
    return (
        crop.name
        if crop.cleared_on is None
        else say("{crop}, cleared on {day}", crop=crop.name, day=show_day(crop.cleared_on))
    )
