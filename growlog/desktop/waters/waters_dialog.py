"""The source waters' dialog: the waters there are, and in their place the form that is open."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, DialogFrame, EmptyState, KeptRow, TextLabel, grow_to_fit
from growlog.desktop.look.widgets.emptied import empty_layout
from growlog.desktop.waters.water_form import Check, WaterForm
from growlog.records.display import fixed
from growlog.records.problems import Problem
from growlog.records.source_water import WATER_ELEMENTS, SourceWater
from growlog.services.waters import new_water
from growlog.words import say, show_day


class WaterRow(KeptRow):
    """A water and what can be done with it."""

    def __init__(self, water: SourceWater, writable: bool) -> None:
        self.water = water
        self.line_label = TextLabel(water_line(water), "small", wraps=True)
        super().__init__(water, water.name, [self.line_label], writable)
        self.setObjectName(f"water.{water.name}")


class WatersDialog(DialogFrame):
    """Announces what is to be written; `show_waters` is called with what there is then."""

    saved = Signal(object)  # SourceWater
    removed = Signal(object)  # SourceWater

    def __init__(self, today: date, check: Check, writable: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(say("Source waters"), say("as analysed"), parent, 620)
        self.setObjectName("watersDialog")
        self._today = today
        self._check = check
        self._writable = writable
        self.rows: list[WaterRow] = []
        self.form: WaterForm | None = None
        self._list = QVBoxLayout()
        self._list.setContentsMargins(0, 0, 0, 0)
        self._list.setSpacing(8)
        self._list_place = QWidget()
        self._list_place.setLayout(self._list)
        self._below = QVBoxLayout()
        self.new_button = Button(say("New water"), "", "plus", "newWater")
        self.rain_button = Button(say("Rain or reverse osmosis"), "", "plus", "newRain")
        self._add_row = QWidget()
        row = QHBoxLayout(self._add_row)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.new_button)
        row.addWidget(self.rain_button)
        row.addStretch(1)
        for button in (self.new_button, self.rain_button):
            button.setEnabled(writable)
        self.body.addWidget(self._list_place)
        self.body.addLayout(self._below)
        self.body.addWidget(self._add_row)
        self.body.addStretch(1)
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.close)
        self.new_button.clicked.connect(self.new)
        self.rain_button.clicked.connect(self.new_rain)

    def show_waters(self, waters: Sequence[SourceWater]) -> None:
        """All waters; a form that was open is done with."""
        self._put_form_away()
        empty_layout(self._list)
        self.rows = [WaterRow(water, self._writable) for water in waters]
        for row in self.rows:
            row.change_wanted.connect(self.open_form)
            row.remove_wanted.connect(self.removed)
            self._list.addWidget(row)
        if not waters:
            sentence = say("No water is known yet. The waterworks publish an analysis; its figures belong here.")
            self._list.addWidget(EmptyState(sentence, ""))

    def new(self) -> None:
        """Opens an empty analysis."""
        self.open_form(new_water())

    def new_rain(self) -> None:
        """Opens a water with nothing in it, so that it can be part of a blend."""
        self.open_form(new_water(say("rain")))

    def open_form(self, water: SourceWater) -> None:
        """Opens a water's analysis."""
        self._put_form_away()
        self.form = WaterForm(water, self._today, self._check)
        self.form.confirmed.connect(self.saved)
        self.form.left.connect(self._put_form_away)
        self._below.addWidget(self.form)
        self.form.show()
        self._list_place.hide()
        self._add_row.hide()
        self.form.begin()
        grow_to_fit(self)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What was refused, beside its field."""
        if self.form is not None:
            self.form.show_problems(problems)

    def _put_form_away(self) -> None:
        self.form = None
        empty_layout(self._below)
        self._list_place.show()
        self._add_row.show()


def water_line(water: SourceWater) -> str:
    """An analysis in one line; rain where nothing is in it."""
    parts = [] if water.ec_ms_per_cm is None else [f"EC {fixed(water.ec_ms_per_cm, 2, 'mS/cm')}"]
    if water.ph is not None:
        parts.append(f"pH {fixed(water.ph, 1, '')}")
    if water.alkalinity_mg_per_l_caco3 is not None:
        parts.append(say("alkalinity {value} mg/L", value=fixed(water.alkalinity_mg_per_l_caco3, 0, "")))
    measured = sum(getattr(water, f"{key}_mg_per_l") is not None for key in WATER_ELEMENTS)
    if not parts and not measured:
        return say("nothing in it: rain or reverse osmosis")
    if water.ca_mg_per_l is not None:
        parts.append(f"Ca {fixed(water.ca_mg_per_l, 0, 'mg/L')}")
    if water.analysed_on is not None:
        parts.append(show_day(water.analysed_on))
    return ", ".join(parts)
