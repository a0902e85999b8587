"""What the picks say, as it stands in pictures."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from growlog.desktop.keep_or_clear.pictured import fill_example
from growlog.desktop.pictured.waiting import wait_until_idle

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow


def _yield_view(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.yields.open()


def _keep_or_clear(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.yields.open_keep()


def _keep_with_guess(window: "MainWindow") -> None:
    """Keep or clear with a value and a guess typed in."""
    if window.opened is not None:
        window.opened.yields.open_keep()
        wait_until_idle(window)
        dialog = window.opened.yields.keep_dialog
        if dialog is not None and dialog.form is not None:
            fill_example(dialog.form)


def _side_by_side(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.yields.open_beside()


def _side_by_side_photos(window: "MainWindow") -> None:
    _side_by_side_page(window, "photos")


def _side_by_side_facts(window: "MainWindow") -> None:
    _side_by_side_page(window, "facts")


def _side_by_side_page(window: "MainWindow", page: str) -> None:
    if window.opened is not None:
        window.opened.yields.open_beside()
        if window.opened.yields.beside_dialog is not None:
            window.opened.yields.beside_dialog.page.set_value(page)


def _side_by_side_empty(window: "MainWindow") -> None:
    """Before two crops are ticked."""
    if window.opened is not None:
        window.opened.yields.open_beside()
        dialog = window.opened.yields.beside_dialog
        for box in () if dialog is None else dialog.boxes.values():
            box.setChecked(False)


YIELDS_SCREENS: dict[str, Callable[["MainWindow"], None]] = {
    "yield-view": _yield_view,
    "keep-or-clear": _keep_or_clear,
    "keep-or-clear-guess": _keep_with_guess,
    "side-by-side": _side_by_side,
    "side-by-side-photos": _side_by_side_photos,
    "side-by-side-facts": _side_by_side_facts,
    "side-by-side-empty": _side_by_side_empty,
}
