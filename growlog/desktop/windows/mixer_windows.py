"""Opens the nutrient mixer and what belongs to it, and writes what they confirm."""

from dataclasses import replace
from datetime import date
from functools import partial

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.calculations.products import LIQUID, Product
from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.messages import Messages
from growlog.desktop.mixer.doses_dialog import Candidate, DosesDialog
from growlog.desktop.mixer.log_dialog import LogDialog
from growlog.desktop.mixer.mixer_dialog import MixerDialog
from growlog.desktop.mixer.save_mix_dialog import SaveMixDialog
from growlog.desktop.mixer.stock_dialog import StockDialog
from growlog.desktop.settings import Settings
from growlog.desktop.windows.placing import open_beside
from growlog.records.change import Change
from growlog.records.display import fixed
from growlog.records.feed_target import TargetRange
from growlog.records.problems import Problem, RecordRefused
from growlog.services.feed_targets import remove_target, save_target, targets_of
from growlog.services.feeding_round import round_rows
from growlog.services.mixer import (
    Bench,
    DoseWishes,
    FeedTo,
    Mixed,
    MixerState,
    Range,
    Target,
    bench_of,
    doses_for,
    file_of_state,
    keep_guests,
    mix_and_log,
    offers_at,
    save_state,
    starting_state,
    state_of_file,
    stock_tank_warnings,
    strength_for_ec,
)
from growlog.services.mixer.bench import on_shelf, product_of
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.words import say


class MixerWindows(QObject):
    """One mixer at a time, for the crop and day that were chosen when it was opened; it follows what is written."""

    shelf_wanted = Signal()
    waters_wanted = Signal()
    top_up_wanted = Signal(object)  # MixerState

    def __init__(self, desk: Desk, window: QWidget, settings: Settings, files: FileChoice, messages: Messages) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._settings = settings
        self._files = files
        self._messages = messages
        self._kept: MixerState | None = None
        self.dialog: MixerDialog | None = None
        self.doses: DosesDialog | None = None
        self.stock: StockDialog | None = None
        self.saving: SaveMixDialog | None = None
        self.logging: LogDialog | None = None
        desk.written.connect(self._follow)

    def open(self, state: MixerState | None = None) -> None:
        """Opens the mixer beside the board, as it was left for this crop and day, or as the plan or last feed says."""
        if self.dialog is not None and isValid(self.dialog):
            self.dialog.close()
        desk = self._desk
        state = state or self._as_left()
        bench = bench_of(desk.log, state)
        units = self._settings.text("units")
        self.dialog = MixerDialog(bench, state, offers_at(bench), self._about(bench), units, self._window)
        self._connect(self.dialog)
        for button in (self.dialog.log_button, self.dialog.save_button):
            button.setEnabled(desk.log.writable)
        open_beside(self.dialog, self._window)

    def _as_left(self) -> MixerState:
        log, chosen = self._desk.log, self._desk.selection
        crop_id, day = chosen.crop_id or None, min(chosen.day or log.today(), log.today())
        kept = self._kept
        if kept is not None and (kept.crop_id, kept.day) == (crop_id, day):
            return kept
        return starting_state(log, crop_id, None, day)

    def state(self) -> MixerState | None:
        """What stands in the open mixer."""
        return self.dialog.current_state() if self.dialog is not None and isValid(self.dialog) else None

    def _connect(self, dialog: MixerDialog) -> None:
        dialog.doses_wanted.connect(self._ask_doses)
        dialog.top_up_wanted.connect(self.top_up_wanted)
        dialog.save_wanted.connect(self._ask_save)
        dialog.log_wanted.connect(self._ask_log)
        dialog.open_file_wanted.connect(self.open_file)
        dialog.save_file_wanted.connect(self.save_file)
        dialog.shelf_wanted.connect(self.shelf_wanted)
        dialog.waters_wanted.connect(self.waters_wanted)
        dialog.put_away.connect(self._keep)
        dialog.stock_wanted.connect(self._ask_stock)
        dialog.keep_guests_wanted.connect(self._keep_guests)
        dialog.targets.keep_wanted.connect(self._keep_target)
        dialog.targets.remove_wanted.connect(self._remove_target)

    def _keep(self, state: MixerState) -> None:
        self._kept = state

    def _keep_guests(self, state: MixerState) -> None:
        kept: list[MixerState] = []

        def service(log: OpenLogbook) -> Change:
            now, change = keep_guests(log, state)
            if change is None:
                raise RecordRefused([Problem("guests", say("There is nothing to keep."))])
            kept.append(now)
            return change

        if self.dialog is not None and self._desk.write(service, on_problems=self.dialog.show_refusal) is not None:
            self.dialog.show_state(kept[0])

    def _keep_target(self, name: str, ranges: dict[str, Range]) -> None:
        stated = [TargetRange(key, r.low, r.high) for key, r in ranges.items()]
        if self._desk.log.writable and self.dialog is not None:
            self._desk.write(save_target, name, stated, on_problems=self.dialog.show_refusal)

    def _remove_target(self, name: str) -> None:
        for target in targets_of(self._desk.log):
            if target.name == name:
                self._desk.write(remove_target, target.id)

    def _about(self, bench: Bench) -> str:
        if bench.crop is not None:
            age = (bench.day - bench.crop.day_zero).days
            return say("for {name}, day {age}", name=bench.crop.name, age=age)
        return "" if bench.tank is None else say("for {name}", name=bench.tank.name)

    def _follow(self, _change: object = None) -> None:
        if self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible():
            bench = bench_of(self._desk.log, self.dialog.current_state())
            self.dialog.show_bench(bench, offers_at(bench))

    def _ask_doses(self, state: MixerState) -> None:
        bench = bench_of(self._desk.log, state)
        in_mix = {dose.product for dose in state.doses}
        found = [_in_mix(d.product, product_of(bench, state, d)[0]) for d in state.doses]
        found += [
            Candidate(i.product.name, i.product.measure, False, i.product.label_max_per_l)
            for i in on_shelf(bench)
            if i.product.name not in in_mix and i.product.analysis
        ]
        self.doses = DosesDialog(state, offers_at(bench), found, self.dialog)
        self.doses.wished.connect(self._find_doses)
        self.doses.ec_wished.connect(self._find_strength)
        self.doses.taken.connect(self._take)
        open_beside(self.doses, self._window)

    def _find_doses(self, target: Target | None, wishes: DoseWishes) -> None:
        state = self.state()
        if self.doses is None or state is None:
            return
        try:
            self.doses.show_proposal(doses_for(self._desk.log, replace(state, target=target), wishes))
        except RecordRefused as refusal:
            self.doses.show_problems(refusal.problems)
        except ValueError as error:
            self.doses.show_problems([Problem("", str(error))])

    def _find_strength(self, ec_ms_per_cm: float) -> None:
        state = self.state()
        if self.doses is None or state is None:
            return
        try:
            percent = strength_for_ec(self._desk.log, state, ec_ms_per_cm)
        except RecordRefused as refusal:
            self.doses.show_problems(refusal.problems)
        else:
            self.doses.show_strength(replace(state, strength_percent=percent))

    def _take(self, state: MixerState) -> None:
        if self.dialog is not None:
            self.dialog.show_state(state)

    def _ask_stock(self, state: MixerState) -> None:
        self.stock = StockDialog(partial(stock_tank_warnings, self._desk.log, state), self.dialog)
        self.stock.show()

    def _ask_save(self, state: MixerState) -> None:
        self.saving = SaveMixDialog(state.mix_name, self.dialog)
        self.saving.confirmed.connect(self._save)
        self.saving.show()

    def _save(self, name: str, note: str) -> None:
        state = self.state()
        if self.saving is None or state is None or self.dialog is None:
            return
        written = self._desk.write(_saved, state, name, note, on_problems=self.saving.show_problems)
        if written is not None:
            self.saving.accept()
            self.dialog.show_state(replace(state, mix_name=name))

    def _ask_log(self, state: MixerState) -> None:
        if not self._desk.log.writable or self.dialog is None:
            return
        if not state.tank_l:
            self.dialog.show_refusal([Problem("tank_l", say("Say first how much is mixed: the tank's volume."))])
            self.dialog.tank_field.setFocus()
            return
        day = state.day or self._desk.log.today()
        tank = bench_of(self._desk.log, state).tank
        into_tank = tank is not None and (tank.recirculates or not state.crop_id)
        chosen = [state.tank_id if into_tank else state.crop_id]
        rows = round_rows(self._desk.log, day)
        units = self._settings.text("units")
        expected = self._expected()
        self.logging = LogDialog(day, state.tank_l, rows, [c for c in chosen if c], expected, units, self.dialog)
        self.logging.confirmed.connect(self._log)
        open_beside(self.logging, self._window)

    def _expected(self) -> str:
        view = None if self.dialog is None else self.dialog.view
        if view is None or view.ec is None or view.unknown_products:
            return ""
        ec = view.ec
        if ec.your_meter is not None:
            return say("Your meter should read {ec}.", ec=fixed(ec.your_meter, 2, "mS/cm"))
        return say("By the estimate it should read {ec}.", ec=fixed(ec.estimate, 2, "mS/cm"))

    def _log(self, feeds: list[FeedTo], mixed: Mixed, day: date) -> None:
        state = self.state()
        if self.logging is None or state is None:
            return
        asked = replace(state, day=day)
        if self._desk.write(mix_and_log, asked, feeds, mixed, on_problems=self.logging.show_problems) is not None:
            self.logging.accept()
            self._messages.inform(say("The feed is written and the bottles are drawn down."), say("Undo"),
                                  self._desk.undo)  # fmt: skip

    def open_file(self) -> None:
        """Asks for a mix file and puts it into the mixer."""
        state = self.state()
        path = self._files.file_to_open(say("Open a mix file"), [f"{say('Mix files')} (*.toml)"])
        if path is None or state is None or self.dialog is None:
            return
        try:
            self.dialog.show_state(state_of_file(self._desk.log, path, state))
        except RecordRefused as refusal:
            self._messages.problem(str(refusal))
        except LogbookProblem as problem:
            self._messages.problem(str(problem))

    def save_file(self, state: MixerState) -> None:
        """Asks for a place and writes the mix there."""
        suggested = f"{state.mix_name or 'mix'}.toml"
        path = self._files.file_to_save(say("Save as a mix file"), suggested, [f"{say('Mix files')} (*.toml)"])
        if path is None:
            return
        try:
            file_of_state(self._desk.log, state, path)
        except (RecordRefused, LogbookProblem) as problem:
            self._messages.problem(str(problem))
        except OSError as error:
            self._messages.problem(say("{file} could not be written.", file=path), str(error))
        else:
            self._messages.inform(say("Mix written to {file}.", file=path.name))


def _saved(log: OpenLogbook, state: MixerState, name: str, note: str) -> Change:
    mix, change = save_state(log, state, name, note)
    if change is None:
        sentence = say("{name} has just these doses already; nothing had to be saved.", name=mix.name)
        raise RecordRefused([Problem("name", sentence)])
    return change


def _in_mix(name: str, product: Product) -> Candidate:
    return Candidate(name, "mL" if product.form == LIQUID else "g", True, product.label_max_per_l)
