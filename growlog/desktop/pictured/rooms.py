"""The room, its light and air, and money, as they stand in pictures."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from growlog.desktop.logger.pictured import written_logger_file
from growlog.desktop.money.power_page import PowerPage
from growlog.desktop.money.purchases_page import PurchasesPage
from growlog.desktop.pictured.waiting import wait_until_idle

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow


def _room(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.rooms.open_room()


def _another_room(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.rooms.open_room()
        if window.opened.rooms.room is not None:
            window.opened.rooms.room.add_room()


class _RoomScreen:
    """One part of the room."""

    def __init__(self, part: str) -> None:
        self._part = part

    def __call__(self, window: "MainWindow") -> None:
        if window.opened is not None:
            window.opened.rooms.open_room()
            if window.opened.rooms.room is not None:
                window.opened.rooms.room.page.show_part(self._part)


class _MoneyScreen:
    """One part of what a crop cost; open: with an empty form."""

    def __init__(self, part: str, *, form: bool = False) -> None:
        self._part, self._form = part, form

    def __call__(self, window: "MainWindow") -> None:
        if window.opened is None:
            return
        window.opened.money.open()
        wait_until_idle(window)
        dialog = window.opened.money.dialog
        if dialog is not None:
            dialog.show_part(self._part)
            page = dialog.pages[self._part]
            if self._form and isinstance(page, (PurchasesPage, PowerPage)):
                page.add()


def _climate(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.climate.open()


def _figures(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.money.open_figures()


def _figures_searched(window: "MainWindow") -> None:
    _figures(window)
    wait_until_idle(window)
    if window.opened is not None and window.opened.money.figures is not None:
        window.opened.money.figures.search_field.line.setText("cost")
        window.opened.money.figures.search_field.value_changed.emit()


def _light_plan(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.rooms.open_light_plan()


def _light_step(window: "MainWindow") -> None:
    _light_plan(window)
    wait_until_idle(window)
    if window.opened is not None and window.opened.rooms.light_plan is not None:
        window.opened.rooms.light_plan.add()


def _logger_empty(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.rooms.open_logger()


def _logger(window: "MainWindow") -> None:
    _show_logger(window, troubled=False)


def _logger_refused(window: "MainWindow") -> None:
    _show_logger(window, troubled=True)


def _show_logger(window: "MainWindow", *, troubled: bool) -> None:
    if window.opened is not None and window.desk is not None and window.desk.board is not None:
        folder = window.settings.file.parent
        path = written_logger_file(folder, window.desk.board.day_zero, troubled)
        window.opened.rooms.open_logger(path=path)


ROOMS_SCREENS: dict[str, Callable[["MainWindow"], None]] = {
    "room": _room,
    "room-new": _another_room,
    "room-devices": _RoomScreen("devices"),
    "room-crops": _RoomScreen("crops"),
    "room-cautions": _RoomScreen("cautions"),
    "light-plan": _light_plan,
    "light-step": _light_step,
    "logger": _logger,
    "logger-empty": _logger_empty,
    "logger-refused": _logger_refused,
    "climate": _climate,
    "figures": _figures,
    "figures-searched": _figures_searched,
    "money": _MoneyScreen("crop"),
    "money-labour": _MoneyScreen("labour"),
    "money-purchases": _MoneyScreen("purchases"),
    "money-purchase": _MoneyScreen("purchases", form=True),
    "money-electricity": _MoneyScreen("power"),
    "money-tariff": _MoneyScreen("power", form=True),
    "money-prices": _MoneyScreen("prices"),
}
