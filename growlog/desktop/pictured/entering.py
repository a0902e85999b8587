"""What makes entering quick, as it stands in pictures."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from growlog.desktop.old_notes.pictured import written_example

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow


def _room_sheet(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.sheets.open()


def _flower_tags(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.tags.open()


def _feeding_round(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.feeding.open()


def _quick_line(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.quick_line.start()
        line = "12 fruit 1.1 kg, 5 females pollinated with brush, feed 1.2 L EC 1.9 pH 5.9"
        window.opened.quick_line.panel.set_line(line)


def _quick_line_refused(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.quick_line.start()
        window.opened.quick_line.panel.set_line("feed 1.2 L EC 1.9, 86 93 78, humidity 0.6")
        window.opened.quick_line.panel.field.confirmed.emit()


def _quick_line_help(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.quick_line.open_help()


def _routines(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.routines.open()


def _no_routines(window: "MainWindow") -> None:
    """The set that is offered where there is none yet."""
    if window.opened is not None:
        window.opened.routines.open()
        window.opened.routines.show_offered()


def _routine_form(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.routines.open()
        if window.opened.routines.dialog is not None:
            window.opened.routines.dialog.new()


def _due_question(window: "MainWindow") -> None:
    """The first thing that is due, asked why it is left out."""
    if window.page is not None:
        window.page.crop_list.due.ask_first_reason()


def _old_notes(window: "MainWindow") -> None:
    _show_old_notes(window, troubled=False)


def _old_notes_refused(window: "MainWindow") -> None:
    _show_old_notes(window, troubled=True)


def _old_notes_empty(window: "MainWindow") -> None:
    if window.opened is not None:
        window.opened.old_notes.open()


def _show_old_notes(window: "MainWindow", *, troubled: bool) -> None:
    if window.opened is not None and window.desk is not None and window.desk.board is not None:
        folder = window.settings.file.parent
        window.opened.old_notes.open(written_example(folder, window.desk.board.day_zero, troubled))
        if troubled and window.opened.old_notes.dialog is not None:
            window.opened.old_notes.dialog.preview.switch.set_value("out")


ENTERING_SCREENS: dict[str, Callable[["MainWindow"], None]] = {
    "old-notes": _old_notes,
    "old-notes-empty": _old_notes_empty,
    "old-notes-refused": _old_notes_refused,
    "routines": _routines,
    "routines-empty": _no_routines,
    "routine-form": _routine_form,
    "due-left-out": _due_question,
    "room-sheet": _room_sheet,
    "feeding-round": _feeding_round,
    "flower-tags": _flower_tags,
    "quick-line": _quick_line,
    "quick-line-refused": _quick_line_refused,
    "quick-line-help": _quick_line_help,
}
