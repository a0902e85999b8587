"""The dialog of tank care: top up and correct, pH, and what the plants took up, for one tank at a time."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import ChoiceField, DialogFrame, EmptyState, FormGrid, SegmentSwitch
from growlog.desktop.tank_care.ph_page import PhPage
from growlog.desktop.tank_care.top_up_page import TopUpPage
from growlog.desktop.tank_care.uptake_page import UptakePage
from growlog.records.problems import Problem
from growlog.words import say

TOP_UP, PH, UPTAKE = "top-up", "ph", "uptake"
_OF_MIXER = "of-mixer"


class TankCareDialog(DialogFrame):
    """Announces what is asked and what was done; its caller answers and writes."""

    tank_chosen = Signal(str)
    confirmed = Signal(object)  # Entry
    room_wanted = Signal()

    def __init__(
        self,
        today: date,
        tanks: Sequence[tuple[str, str]],
        mixes: Sequence[tuple[str, str]],
        products: Sequence[tuple[str, str, str]],
        units: str = "metric",
        parent: QWidget | None = None,
        *,
        from_mixer: bool = False,
    ) -> None:
        """tanks, mixes: id and name; products: name, id and measure. from_mixer: the mixer's doses can be taken."""
        super().__init__(say("Tank care"), "", parent, 660)
        self.setObjectName("tankCareDialog")
        choices = [(_OF_MIXER, say("as in the mixer")), *mixes] if from_mixer else list(mixes)
        self.tank_field = ChoiceField(say("Tank"), tanks, tanks[0][0] if tanks else None, name="care.tank")
        self.mix_field = ChoiceField(say("Mix"), choices, choices[0][0] if choices else None, name="care.mix")
        self.page_switch = SegmentSwitch(
            [(TOP_UP, say("Top up or correct")), (PH, say("pH")), (UPTAKE, say("What the plants took"))],
            TOP_UP, say("What is done"),
        )  # fmt: skip
        self.top_up = TopUpPage(today, units)
        self.ph = PhPage(today, units, products)
        self.uptake = UptakePage()
        self._has_tank = bool(tanks)
        self.empty = EmptyState(say("No tank is known yet. A tank belongs to the room."), say("To the room"))
        self._fill()
        self.leave_button = self.add_button(say("Close"), name="leave")
        self.write_button = self.add_button(f"{say('Write it')}  Ctrl \u23ce", "primary", "write")
        self.write_button.setDefault(False)
        self._connect()
        self.show_page(TOP_UP)

    @property
    def tank_id(self) -> str:
        """The tank that is chosen, "" where there is none."""
        return self.tank_field.value() or ""

    @property
    def mix_id(self) -> str | None:
        """The saved mix that is chosen; None for the doses of the mixer."""
        chosen = self.mix_field.value()
        return None if chosen == _OF_MIXER else chosen

    @property
    def uses_mixer(self) -> bool:
        """Whether the doses of the mixer are to be taken."""
        return self.mix_field.value() == _OF_MIXER

    def show_page(self, page: str) -> None:
        """Top up, pH or uptake."""
        self.page_switch.set_value(page)
        self._turn()

    def confirm(self) -> None:
        """Emits what was done, where it can be read."""
        page = self.page_switch.value()
        if not self._has_tank or page == UPTAKE:
            return
        entry = self.ph.entry(self.tank_id) if page == PH else self.top_up.entry(self.tank_id, self.mix_id)
        if entry is not None:
            self.confirmed.emit(entry)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What the logbook refused."""
        page = self.ph if self.page_switch.value() == PH else self.top_up
        page.record.show_problems(problems)

    def _fill(self) -> None:
        grid = FormGrid(2)
        grid.add(self.tank_field, self.mix_field)
        for widget in (grid, self.page_switch, self.top_up, self.ph, self.uptake):
            widget.setVisible(self._has_tank)
            self.body.addWidget(widget)
        self.empty.setVisible(not self._has_tank)
        self.body.addWidget(self.empty)
        self.body.addStretch(1)

    def _connect(self) -> None:
        self.page_switch.value_changed.connect(self._turn)
        self.tank_field.value_changed.connect(self._choose_tank)
        self.mix_field.value_changed.connect(self.top_up.ask_quietly)
        self.leave_button.clicked.connect(self.reject)
        self.write_button.clicked.connect(self.confirm)
        self.empty.chosen.connect(self.room_wanted)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _choose_tank(self) -> None:
        self.tank_chosen.emit(self.tank_id)

    def _turn(self) -> None:
        page = self.page_switch.value()
        for key, widget in ((TOP_UP, self.top_up), (PH, self.ph), (UPTAKE, self.uptake)):
            widget.setVisible(self._has_tank and key == page)
        self.mix_field.setVisible(page == TOP_UP)
        self.write_button.setVisible(self._has_tank and page != UPTAKE)
