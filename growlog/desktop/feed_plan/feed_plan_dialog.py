"""The feed plan of a crop: its steps by plant age, the present one marked."""

from collections.abc import Iterable, Mapping, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.calculations.plant_age import day_at
from growlog.desktop.feed_plan.step_form import StepForm
from growlog.desktop.look.widgets import Button, DialogFrame, EmptyState, KeptRow, TextLabel, grow_to_fit
from growlog.desktop.look.widgets.emptied import empty_layout
from growlog.records.crop import Crop
from growlog.records.display import fixed, plain
from growlog.records.feed_plan import FeedStep
from growlog.records.money import decimals_of
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from growlog.services.feed_costs import FeedCost
from growlog.services.feed_plan import new_step
from growlog.words import say, show_day_of_year, show_number


class StepRow(KeptRow):
    """A step and what can be done with it."""

    def __init__(self, step: FeedStep, mix_name: str, when: str, is_present: bool, writable: bool) -> None:
        self.step = step
        strength = plain(step.strength_percent, "%")
        title = say("From day {age}: {mix} at {strength}", age=step.from_age, mix=mix_name, strength=strength)
        volume = "" if step.volume_l is None else fixed(step.volume_l, 1, "L")
        self.line_label = TextLabel(", ".join(t for t in (when, volume, step.note) if t), "small", wraps=True)
        self.present_label = TextLabel(say("now"), "strong", tone="accent")
        super().__init__(step, title, [self.line_label], writable, self.present_label)
        self.present_label.setVisible(is_present)
        self.setObjectName(f"step.{step.from_age}")


class FeedPlanDialog(DialogFrame):
    """Announces what is to be written; `show_plan` is called with what there is then."""

    saved = Signal(object)  # FeedStep
    removed = Signal(object)  # FeedStep
    mixer_wanted = Signal()

    def __init__(
        self, crop: Crop, age_now: int, units: str = "metric", writable: bool = True, parent: QWidget | None = None
    ) -> None:
        super().__init__(say("Feed plan"), say("for {name}", name=crop.name), parent, 620)
        self.setObjectName("feedPlanDialog")
        self._crop = crop
        self._age_now = age_now
        self._units = units
        self._writable = writable
        self._mixes: list[Mix] = []
        self._steps: list[FeedStep] = []
        self.rows: list[StepRow] = []
        self.form: StepForm | None = None
        self._list = QVBoxLayout()
        self._list.setContentsMargins(0, 0, 0, 0)
        self._list.setSpacing(8)
        self._list_place = QWidget()
        self._list_place.setLayout(self._list)
        self._below = QVBoxLayout()
        self.new_button = Button(say("New step"), "", "plus", "newStep")
        self.new_button.setEnabled(writable)
        self.body.addWidget(self._list_place)
        self.body.addLayout(self._below)
        self.body.addWidget(self.new_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.cost_label = TextLabel("", "", "mute", wraps=True)
        self.body.addWidget(self.cost_label)
        self.body.addStretch(1)
        self.set_note(
            say("The day's feed begins with what the plan says; a change of step is in the list of what is due.")
        )
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.close)
        self.new_button.clicked.connect(self.new)

    def show_plan(self, steps: Sequence[FeedStep], mixes: Sequence[Mix], all_names: Mapping[str, str]) -> None:
        """The steps; the mixes to choose from; the names of all mixes there ever were, by id."""
        self._put_form_away()
        empty_layout(self._list)
        self._mixes, self._steps = list(mixes), list(steps)
        present = [s for s in steps if s.from_age <= self._age_now]
        self.rows = []
        for step in steps:
            when = show_day_of_year(day_at(self._crop.day_zero, step.from_age))
            name = all_names.get(step.mix_id, say("a mix that is gone"))
            row = StepRow(step, name, when, bool(present) and step is present[-1], self._writable)
            row.change_wanted.connect(self.open_form)
            row.remove_wanted.connect(self.removed)
            self.rows.append(row)
            self._list.addWidget(row)
        if not mixes:
            empty = EmptyState(say("A plan is made of saved mixes. Save one in the mixer first."), say("To the mixer"))
            empty.chosen.connect(self.mixer_wanted)
            self._list.addWidget(empty)
        elif not steps:
            self._list.addWidget(EmptyState(say("No step yet: say which mix is given from which plant age."), ""))
        self.new_button.setVisible(bool(mixes))

    def show_cost(self, cost: FeedCost) -> None:
        """What the crop's feeds have cost so far; what has no price is named."""
        amount = f"{show_number(float(cost.amount), decimals_of(cost.currency))} {cost.currency}".strip()
        words = say("The feeds so far: {amount} for {litres}.", amount=amount, litres=fixed(cost.litres, 0, "L"))
        if cost.unpriced:
            words += " " + say("Without a price: {names}.", names=", ".join(cost.unpriced))
        self.cost_label.setText(words if cost.litres > 0 else "")

    def new(self) -> None:
        """Opens an empty step, from today on where the plan ends before."""
        taken = {step.from_age for step in self._steps}
        age = max(self._age_now, 0)
        while age in taken:
            age += 1
        self.open_form(new_step(self._crop.id, age, self._mixes[0].id if self._mixes else ""))

    def open_form(self, step: FeedStep) -> None:
        """Opens a step."""
        self._put_form_away()
        self.form = StepForm(step, self._mixes, self._units)
        self.form.confirmed.connect(self.saved)
        self.form.left.connect(self._put_form_away)
        self._below.addWidget(self.form)
        self.form.show()
        self._list_place.hide()  # the form stands in its place
        self.new_button.hide()
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
        self.new_button.show()
