"""The nutrient mixer: beside the board, live while it is typed; it reads nothing and announces what is wanted."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QMenu, QWidget

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.mixer.mixer_frame import MixerFrame
from growlog.desktop.mixer.wording import tell
from growlog.desktop.throttle import Throttle
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from growlog.services.mixer import Bench, MixerState, MixerView, TargetOffer, view_at
from growlog.services.mixer.bench import on_shelf, state_with_mix
from growlog.words import say

LIVE_MS = 90


class MixerDialog(MixerFrame):
    """Holds the state; each key changes it, and the view of it is worked out at the bench that was read before."""

    doses_wanted = Signal(object)  # MixerState
    top_up_wanted = Signal(object)  # MixerState
    save_wanted = Signal(object)  # MixerState
    log_wanted = Signal(object)  # MixerState
    open_file_wanted = Signal()
    save_file_wanted = Signal(object)  # MixerState
    stock_wanted = Signal(object)  # MixerState
    shelf_wanted = Signal()
    waters_wanted = Signal()
    keep_guests_wanted = Signal(object)  # MixerState
    put_away = Signal(object)  # MixerState

    def __init__(
        self,
        bench: Bench,
        state: MixerState,
        offers: Sequence[TargetOffer],
        about: str = "",
        units: str = "metric",
        parent: QWidget | None = None,
    ) -> None:
        """about: whose tank it is, in words."""
        super().__init__(about, units, parent)
        self.view: MixerView | None = None
        self._bench = bench
        self._offers = list(offers)
        self._state = state
        self._throttle = Throttle(self._work_out, LIVE_MS, self)
        self._connect()
        self.show_state(state)
        self.tank_field.setFocus()

    @property
    def state(self) -> MixerState:
        """What stands in the fields."""
        return self._state

    def show_state(self, state: MixerState) -> None:
        """Puts a state into all fields."""
        self._state = state
        bench = self._bench
        self.mix_field.set_choices(self._mix_choices(), self._mix_of(state))
        self.tank_field.set_value(state.tank_l)
        self.strength_field.set_value(state.strength_percent)
        self.ph_field.set_value(state.ph)
        waters = sorted((w for w in bench.waters.values() if w.removed_at is None), key=lambda w: w.name.casefold())
        self.water.show_waters(waters, state.waters, of_file=state.typed_water is not None)
        self.table.offer(sorted(on_shelf(bench), key=lambda i: i.product.name.casefold()))
        self.table.show_doses(state.doses)
        self.targets.show_offers(self._offers, state.target)
        self._work_out()

    def show_bench(self, bench: Bench, offers: Sequence[TargetOffer]) -> None:
        """The logbook has changed: the same state at a bench that was read anew."""
        self._throttle.flush()
        self._bench = bench
        self._offers = list(offers)
        self.show_state(self._state)

    def show_refusal(self, problems: Iterable[Problem]) -> None:
        """What the logbook refused, in the line above the buttons."""
        self.set_note(" ".join(p.sentence for p in problems))

    def done(self, code: int) -> None:
        """However it is closed: what was typed is handed over, to stand there again the next time."""
        self.put_away.emit(self.current_state())
        super().done(code)

    def current_state(self) -> MixerState:
        """The state with the last key in it."""
        self._throttle.flush()
        return self._state

    def _connect(self) -> None:
        self.mix_field.value_changed.connect(self._choose_mix)
        for field in (self.tank_field, self.strength_field, self.ph_field):
            field.value_changed.connect(self._typed)
            field.editing_finished.connect(self._show_problems)
        self.water.waters_changed.connect(self._typed)
        self.table.doses_changed.connect(self._typed)
        self.table.shelf_wanted.connect(self.shelf_wanted)
        self.targets.target_changed.connect(self._typed)
        self.guests.action_chosen.connect(self._ask_keep)
        self.doses_button.clicked.connect(self._ask_doses)
        self.top_up_button.clicked.connect(self._ask_top_up)
        self.save_button.clicked.connect(self._ask_save)
        self.log_button.clicked.connect(self._ask_log)
        self.more_button.setMenu(self._more_menu())
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self._ask_log)
        QShortcut(QKeySequence("Ctrl+S"), self).activated.connect(self._ask_save)
        QShortcut(QKeySequence("Ctrl+Shift+A"), self).activated.connect(self.table.add_button.click)

    def _more_menu(self) -> QMenu:
        menu = QMenu(self)
        menu.addAction(say("Open a mix file…")).triggered.connect(self.open_file_wanted)
        menu.addAction(say("Save as a mix file…")).triggered.connect(self._ask_file)
        menu.addAction(say("As one concentrate…")).triggered.connect(self._ask_stock)
        menu.addSeparator()
        menu.addAction(say("Shelf…")).triggered.connect(self.shelf_wanted)
        menu.addAction(say("Source waters…")).triggered.connect(self.waters_wanted)
        return menu

    def _typed(self) -> None:
        self._state = self._read()
        self._throttle.call()

    def _read(self) -> MixerState:
        of_file = self.water.is_of_file()
        return replace(
            self._state,
            tank_l=_kept(self.tank_field, self._state.tank_l),
            strength_percent=_kept(self.strength_field, self._state.strength_percent) or 0.0,
            ph=_kept(self.ph_field, self._state.ph),
            doses=self.table.doses(),
            waters=self.water.waters(),
            typed_water=self._state.typed_water if of_file or self.water.waters() else None,
            target=self.targets.target(),
        )

    def _work_out(self) -> None:
        self.view = view_at(self._bench, self._state)
        self.set_note("")
        self.show_view(self.view)
        self._show_guests()
        self._show_problems()

    def _show_problems(self) -> None:
        if self.view is None:
            return
        tell(self.tank_field, self.view.problems_of("tank_l"))
        tell(self.strength_field, self.view.problems_of("strength_percent"))
        tell(self.ph_field, self.view.problems_of("ph"))
        self.water.show_problems(self.view.problems_of("waters"))

    def _mix_choices(self) -> list[tuple[str, str]]:
        newest: dict[str, Mix] = {}
        for mix in sorted(self._bench.mixes.values(), key=lambda m: m.edition):
            if mix.removed_at is None:
                newest[mix.name.strip().casefold()] = mix
        return [(m.id, m.name) for m in sorted(newest.values(), key=lambda m: m.name.casefold())]

    def _mix_of(self, state: MixerState) -> str | None:
        named = [key for key, name in self._mix_choices() if name.casefold() == state.mix_name.strip().casefold()]
        return named[0] if named else None

    def _choose_mix(self) -> None:
        chosen = self.mix_field.value()
        if chosen is None:
            self.show_state(replace(self._state, doses=(), mix_name="", guests=()))
        else:
            self.show_state(state_with_mix(self._bench, self._bench.mixes[chosen], self._state))

    def _show_guests(self) -> None:
        """What came with a file is named, until it is kept."""
        came = [guest.name for guest in self._state.guests]
        came += [say("the water of the file")] if self._state.typed_water is not None else []
        sentence = say("Not in this logbook yet: {names}.", names=", ".join(came)) if came else ""
        if sentence != self.guests.sentence:
            self.guests.show_message(sentence, "asks", say("Keep them"))
        self.guests.setVisible(bool(came))

    def _ask_keep(self) -> None:
        self.keep_guests_wanted.emit(self.current_state())

    def _ask_doses(self) -> None:
        self.doses_wanted.emit(self.current_state())

    def _ask_top_up(self) -> None:
        self.top_up_wanted.emit(self.current_state())

    def _ask_save(self) -> None:
        if self._is_ready():
            self.save_wanted.emit(self.current_state())

    def _ask_file(self) -> None:
        if self._is_ready():
            self.save_file_wanted.emit(self.current_state())

    def _ask_stock(self) -> None:
        if self._is_ready():
            self.stock_wanted.emit(self.current_state())

    def _ask_log(self) -> None:
        if self._is_ready():
            self.log_wanted.emit(self.current_state())

    def _is_ready(self) -> bool:
        self._throttle.flush()
        if self.view is not None and self.view.ready and not self._unreadable():
            return True
        self.set_note(say("Put right first what is marked above."))
        self.focus_first_problem()
        return False

    def _unreadable(self) -> bool:
        fields = [self.tank_field, self.strength_field, self.ph_field, *(line.amount for line in self.table.lines)]
        return any(field.is_refused for field in fields)


def _kept(field: MeasureField, before: float | None) -> float | None:
    """What is typed; a figure that the mixer refused stays what it was, so that the sentence stays, too."""
    value = field.value()
    return before if value is None and field.is_refused and not field.is_empty() else value
