"""The water of the tank: one that is saved, rain, or a blend typed in shares."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import ChoiceField, FormGrid
from growlog.desktop.mixer.wording import QuietNumberField, tell
from growlog.records.problems import Problem
from growlog.records.recipe import WaterShare
from growlog.records.source_water import SourceWater
from growlog.services.waters import blend_name
from growlog.words import say

_BLEND, _OF_FILE = "blend", "of-file"


class WaterChoice(QObject):
    """The field among the others, and below them the shares of a blend while one is chosen."""

    waters_changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.field = ChoiceField(say("Water"), [], None, say("rain or reverse osmosis"), "mixer.water")
        self.blend = QWidget()
        self._waters: Mapping[str, SourceWater] = {}
        self._shares: dict[str, QuietNumberField] = {}
        self._column = QVBoxLayout(self.blend)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._grid: FormGrid | None = None
        self.blend.hide()
        self.field.value_changed.connect(self._chosen)

    def show_waters(self, waters: Sequence[SourceWater], shares: Sequence[WaterShare], *, of_file: bool) -> None:
        """What can be chosen, and what is. of_file: a water came typed with a file."""
        self._waters = {w.id: w for w in waters}
        choices = [(w.id, w.name) for w in waters]
        if len(waters) > 1 or len(shares) > 1:
            choices.append((_BLEND, say("a blend")))
        if of_file:
            choices.append((_OF_FILE, say("as in the file")))
        chosen = shares[0].water_id if len(shares) == 1 else _BLEND if shares else _OF_FILE if of_file else None
        self.field.set_choices(choices, chosen)
        self._make_fields({s.water_id: s.water_share for s in shares})
        self._show_blend()

    def is_of_file(self) -> bool:
        """Whether the water typed in a file is chosen."""
        return self.field.value() == _OF_FILE

    def waters(self) -> tuple[WaterShare, ...]:
        """The shares as they stand; none of them is rain or reverse osmosis."""
        chosen = self.field.value()
        if chosen in (None, _OF_FILE):
            return ()
        if chosen != _BLEND:
            return (WaterShare(str(chosen), 1.0),)
        typed = {key: field.typed() or 0.0 for key, field in self._shares.items()}
        return tuple(WaterShare(key, percent / 100) for key, percent in typed.items() if percent > 0)

    def show_problems(self, problems: Sequence[Problem]) -> None:
        """What is wrong with it, and what blend it is."""
        tell(self.field, problems)
        named = blend_name(self._waters, self.waters()) if self.field.value() == _BLEND else ""
        self.field.box.setToolTip(named)

    def _make_fields(self, shares: Mapping[str, float]) -> None:
        if self._grid is not None:
            self._grid.hide()
            self._grid.deleteLater()
        self._shares, self._grid = {}, FormGrid(3, 140)
        for water in self._waters.values():
            field = QuietNumberField(water.name, "%", 0, 100, decimals=1, name=f"share.{water.name}")
            share = shares.get(water.id)
            if share is not None:
                field.show_exact(100 * share, 1)
            field.value_changed.connect(self.waters_changed)
            self._shares[water.id] = field
            self._grid.add(field)
        self._column.addWidget(self._grid)

    def _chosen(self) -> None:
        if self.field.value() == _BLEND and not any(f.typed() for f in self._shares.values()):
            even = round(100 / max(1, len(self._shares)), 1)
            for number, field in enumerate(self._shares.values()):
                field.set_value(even if number else round(100 - even * (len(self._shares) - 1), 1))
        self._show_blend()
        self.waters_changed.emit()

    def _show_blend(self) -> None:
        self.blend.setVisible(self.field.value() == _BLEND)
