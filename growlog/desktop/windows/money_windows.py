"""Opens what a crop cost and all its figures, reads them off the window's thread, and writes what is changed there."""

from collections.abc import Callable, Iterable
from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.background import Lane, Task
from growlog.desktop.desk import Desk
from growlog.desktop.figures.figures_dialog import FiguresDialog, NamedFigure
from growlog.desktop.messages import Messages
from growlog.desktop.money.money_dialog import MoneyDialog
from growlog.desktop.windows.chart_saving import ChartSaving
from growlog.desktop.windows.entry_windows import EntryWindows
from growlog.desktop.windows.placing import open_beside
from growlog.records.change import Change
from growlog.records.logbook import LogbookFacts
from growlog.records.problems import Problem
from growlog.records.purchase import Purchase
from growlog.records.tariff import Tariff
from growlog.services.energy.tariffs import remove_tariff, save_tariff
from growlog.services.facts.facts import facts_of
from growlog.services.facts.families import FAMILIES
from growlog.services.money.book import MoneyBook, money_book
from growlog.services.money.prices import save_prices
from growlog.services.money.purchases import remove_purchase, save_purchase
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.words import say


class MoneyWindows(QObject):
    """One dialog at a time; it follows what is written and what is undone."""

    def __init__(
        self, desk: Desk, window: QWidget, entries: EntryWindows, messages: Messages, charts: ChartSaving
    ) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._entries = entries
        self._messages = messages
        self._charts = charts
        self._crop_id = ""
        self._reading: Task | None = None
        self._figures_crop = ""
        self.dialog: MoneyDialog | None = None
        self.figures: FiguresDialog | None = None
        desk.written.connect(self._read_again)

    def open(self) -> None:
        """Opens the money of the chosen crop."""
        if self._is_open and self.dialog is not None:
            self.dialog.close()
        self._crop_id = self._desk.selection.crop_id or ""
        self.dialog = dialog = MoneyDialog(self._desk.log.writable, self._window)
        dialog.crop_wanted.connect(self._choose_crop)
        dialog.purchases.saved.connect(self._save_purchase)
        dialog.purchases.removed.connect(self._remove_purchase)
        dialog.prices.saved.connect(self._save_prices)
        dialog.power.saved.connect(self._save_tariff)
        dialog.power.removed.connect(self._remove_tariff)
        dialog.power.meter_wanted.connect(self._add_meter)
        self._charts.follow(dialog.crop_page.chart_menu)
        open_beside(dialog, self._window)
        self._read()

    def open_figures(self) -> None:
        """Opens all figures of the chosen crop."""
        if self.figures is not None and isValid(self.figures):
            self.figures.close()
        crops = [(summary.crop.id, summary.crop.name) for summary in self._desk.crops]
        self._figures_crop = self._desk.selection.crop_id or ""
        self.figures = FiguresDialog(crops, self._figures_crop, self._window)
        self.figures.crop_wanted.connect(self._choose_figures)
        open_beside(self.figures, self._window)
        self._work_out()

    def _choose_figures(self, crop_id: str) -> None:
        self._figures_crop = crop_id
        self._work_out()

    def _work_out(self) -> None:
        work = (named_figures, self._desk.log, self._figures_crop)
        self._desk.runner.run(*work, on_done=self._show_figures, on_failed=self._figures_failed, lane=Lane.DATABASE)

    def _show_figures(self, found: tuple[str, list[NamedFigure]]) -> None:
        crop_id, figures = found
        if self._has_figures and self.figures is not None and crop_id == self._figures_crop:
            self.figures.show_figures(figures)

    def _figures_failed(self, error: Exception) -> None:
        if not isinstance(error, LogbookProblem):
            raise error
        if self._has_figures and self.figures is not None:
            self.figures.say_problem(str(error))

    @property
    def _has_figures(self) -> bool:
        return self.figures is not None and isValid(self.figures) and self.figures.isVisible()

    @property
    def _is_open(self) -> bool:
        return self.dialog is not None and isValid(self.dialog) and self.dialog.isVisible()

    def _choose_crop(self, crop_id: str) -> None:
        self._crop_id = crop_id
        self._read()

    def _read_again(self, _change: object) -> None:
        if self._is_open:
            self._read()
        if self._has_figures:
            self._work_out()

    def _read(self) -> None:
        if self._reading is not None and isValid(self._reading):
            self._reading.cancel()
        work = (money_book, self._desk.log, self._crop_id)
        self._reading = self._desk.runner.run(*work, on_done=self._show, on_failed=self._failed, lane=Lane.DATABASE)

    def _show(self, book: MoneyBook) -> None:
        if self._is_open and self.dialog is not None:
            self.dialog.show_book(book)

    def _failed(self, error: Exception) -> None:
        if not isinstance(error, LogbookProblem):
            raise error
        if self._is_open and self.dialog is not None:
            self.dialog.say_problem(str(error))

    def _save_purchase(self, purchase: Purchase) -> None:
        if self.dialog is not None and self._write(save_purchase, purchase, self.dialog.purchases.show_problems):
            self.dialog.purchases.close_form()

    def _remove_purchase(self, purchase: Purchase) -> None:
        if self.dialog is not None and self._write(remove_purchase, purchase, self.dialog.purchases.show_problems):
            self.dialog.purchases.close_form()

    def _save_tariff(self, tariff: Tariff) -> None:
        if self.dialog is not None and self._write(save_tariff, tariff, self.dialog.power.show_problems):
            self.dialog.power.close_form()

    def _remove_tariff(self, tariff: Tariff) -> None:
        if self.dialog is not None and self._write(remove_tariff, tariff, self.dialog.power.show_problems):
            self.dialog.power.close_form()

    def _save_prices(self, facts: LogbookFacts) -> None:
        if self.dialog is not None:
            self._write(save_prices, facts, self.dialog.prices.show_problems)

    def _add_meter(self) -> None:
        self._entries.add("meter")

    def _write(self, service: Callable[..., Change], record: Any, shown: Callable[[Iterable[Problem]], None]) -> bool:
        change = self._desk.write(service, record, on_problems=shown)
        if change is None:
            return False
        self._messages.inform(say("Written: {what}.", what=change.title), say("Undo"), self._desk.undo)
        return True


def named_figures(log: OpenLogbook, crop_id: str) -> tuple[str, list[NamedFigure]]:
    """The crop and all its figures with their names; takes a few tenths of a second."""
    named = {key.key: (say(key.meaning), say(family.name)) for family in FAMILIES for key in family.keys}
    figures = facts_of(log, crop_id)
    return crop_id, [NamedFigure(*named.get(f.key, (f.key, "")), f) for f in figures]
