"""Opens the feed plan and tank care, and writes what they confirm."""

from dataclasses import replace
from datetime import date

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.desk import Desk
from growlog.desktop.feed_plan.feed_plan_dialog import FeedPlanDialog
from growlog.desktop.messages import Messages
from growlog.desktop.settings import Settings
from growlog.desktop.tank_care.tank_care_dialog import TankCareDialog
from growlog.desktop.windows.placing import open_beside
from growlog.records.display import fixed
from growlog.records.entry import Entry, Owner, OwnerKind
from growlog.records.feed_plan import FeedStep
from growlog.records.problems import RecordRefused
from growlog.services.feed_costs import crop_feed_cost
from growlog.services.feed_plan import remove_step, save_step, steps_of
from growlog.services.mixer import Bench, MixerState, bench_of, starting_state, state_of_mix, view_at
from growlog.services.mixer.bench import on_shelf
from growlog.services.mixes import mixes_of
from growlog.services.repeats import newest_edition
from growlog.services.rooms import rooms_of
from growlog.services.tank_care import (
    Tank,
    TankReading,
    TopUpAsked,
    log_tank_care,
    ph_learned,
    tank_readings,
    top_up_proposal,
    uptake_between,
)
from growlog.words import say, show_day_of_year


class TankWindows(QObject):
    """One dialog of each at a time; they follow what is written."""

    mixer_wanted = Signal()
    room_wanted = Signal()

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._messages = messages
        self._mixer_state: MixerState | None = None
        self.plan: FeedPlanDialog | None = None
        self.care: TankCareDialog | None = None
        desk.written.connect(self._follow)

    def open_plan(self) -> None:
        """Opens the feed plan of the chosen crop."""
        board = self._desk.board
        if board is None:
            return
        if self.plan is not None and isValid(self.plan):
            self.plan.close()
        log = self._desk.log
        age = (log.today() - board.day_zero).days
        self.plan = FeedPlanDialog(board.crop, age, self._settings.text("units"), log.writable, self._window)
        self._plan_crop = board.crop.id
        self.plan.saved.connect(self._save_step)
        self.plan.removed.connect(self._remove_step)
        self.plan.mixer_wanted.connect(self.mixer_wanted)
        self._show_plan()
        open_beside(self.plan, self._window)

    def open_care(self, state: MixerState | None = None) -> None:
        """Opens the care of a tank. state: of the mixer it was opened from, whose doses can be taken."""
        if self.care is not None and isValid(self.care):
            self.care.close()
        log = self._desk.log
        self._mixer_state = state
        tanks = [(tank.id, tank.name) for room in rooms_of(log) for tank in room.tanks]
        mixes = [(m.id, m.name) for m in mixes_of(log)]
        bench = bench_of(log, state or MixerState())
        products = [(i.product.name, i.product.id, i.product.measure) for i in on_shelf(bench)]
        units = self._settings.text("units")
        has_doses = state is not None and bool(state.doses)
        self.care = TankCareDialog(log.today(), tanks, mixes, products, units, self._window, from_mixer=has_doses)
        if state is not None and state.tank_id:
            self.care.tank_field.set_value(state.tank_id)
        self.care.tank_chosen.connect(self._show_tank)
        self.care.top_up.asked.connect(self._propose)
        self.care.uptake.asked.connect(self._show_uptake)
        self.care.confirmed.connect(self._write_care)
        self.care.room_wanted.connect(self.room_wanted)
        self.care.write_button.setEnabled(log.writable)
        self._show_tank(self.care.tank_id, begin=True)
        open_beside(self.care, self._window)

    def _follow(self, _change: object = None) -> None:
        if self.plan is not None and isValid(self.plan) and self.plan.isVisible():
            self._show_plan()
        if self.care is not None and isValid(self.care) and self.care.isVisible():
            self._show_tank(self.care.tank_id)

    def _show_plan(self) -> None:
        if self.plan is None:
            return
        log = self._desk.log
        steps = [replace(s, mix_id=newest_edition(log, s.mix_id) or s.mix_id) for s in steps_of(log, self._plan_crop)]
        names = {m.id: m.name for m in bench_of(log, MixerState()).mixes.values()}
        self.plan.show_plan(steps, mixes_of(log), names)
        self.plan.show_cost(crop_feed_cost(log, self._plan_crop))

    def _save_step(self, step: FeedStep) -> None:
        if self.plan is not None:
            self._desk.write(save_step, step, on_problems=self.plan.show_problems)

    def _remove_step(self, step: FeedStep) -> None:
        if self._desk.write(remove_step, step.id) is not None:
            self._messages.inform(say("The step was removed."), say("Undo"), self._desk.undo)

    def _show_tank(self, tank_id: str, *, begin: bool = False) -> None:
        if self.care is None or not tank_id:
            return
        log = self._desk.log
        state = starting_state(log, None, tank_id, log.today())
        bench = bench_of(log, state)
        self.care.ph.show_learned(ph_learned(log, Owner(OwnerKind.TANK, tank_id)))
        self.care.uptake.show_readings([_reading_words(r) for r in tank_readings(bench, tank_id)])
        if begin and not self.care.uses_mixer:
            known = newest_edition(log, bench_mix(bench, state)) if bench_mix(bench, state) else None
            if known is not None:
                self.care.mix_field.set_value(known)
        volume = None if bench.tank is None else bench.tank.tank_l
        self.care.top_up.start(volume, self._usual_ec(bench))

    def _usual_ec(self, bench: Bench) -> float | None:
        """What the chosen mix should read."""
        state = self._state_of_choice()
        if state is None:
            return None
        ec = view_at(bench, state).ec
        return None if ec is None else ec.your_meter or ec.estimate

    def _state_of_choice(self) -> MixerState | None:
        if self.care is None:
            return None
        if self.care.uses_mixer:
            return self._mixer_state
        log = self._desk.log
        state = replace(starting_state(log, None, self.care.tank_id or None, log.today()), strength_percent=100.0)
        return state if self.care.mix_id is None else state_of_mix(log, self.care.mix_id, state)

    def _propose(self, asked: TopUpAsked) -> None:
        state = self._state_of_choice()
        if self.care is None or state is None:
            return
        try:
            proposal = top_up_proposal(self._desk.log, state, asked)
        except RecordRefused as refusal:
            self.care.top_up.show_problems(refusal.problems)
        else:
            self.care.top_up.show_proposal(proposal)

    def _show_uptake(self, earlier_id: str, later_id: str) -> None:
        if self.care is None:
            return
        try:
            self.care.uptake.show_uptake(uptake_between(self._desk.log, earlier_id, later_id))
        except ValueError:  # the later one was chosen as the earlier, or the figures do not fit each other
            self.care.uptake.show_uptake(None)

    def _write_care(self, entry: Entry) -> None:
        if self.care is not None and self._desk.write(log_tank_care, entry, on_problems=self.care.show_problems):
            self._messages.inform(say("Tank care is written."), say("Undo"), self._desk.undo)
            self.care.accept()


def bench_mix(bench: Bench, state: MixerState) -> str:
    """The id of the mix that a state is named after, "" where it is none."""
    named = [m for m in bench.mixes.values() if m.name == state.mix_name]
    return max(named, key=lambda m: m.edition).id if named else ""


def _reading_words(reading: TankReading) -> tuple[str, str, str]:
    """Its id, how the tank was left and how it was found, in words; "" where that was not measured."""
    return reading.entry_id, _tank_words(reading.day, reading.as_left), _tank_words(reading.day, reading.as_found)


def _tank_words(day: date, tank: Tank | None) -> str:
    if tank is None:
        return ""
    return f"{show_day_of_year(day)}: {fixed(tank.volume_l, 1, 'L')}, {fixed(tank.ec_ms_per_cm, 2, 'mS/cm')}"
