"""Pictures of the real program's screens, drawn without a display: for the guide, and for anyone who looks."""

import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEventLoop, QPoint, QRect, QTimer
from PySide6.QtGui import QPainter, QPen, QPixmap
from PySide6.QtWidgets import QDialog, QWidget

from growlog.desktop.keep_or_clear.pictured import fill_example
from growlog.desktop.logger.pictured import written_logger_file
from growlog.desktop.look.theme import current
from growlog.desktop.main_window import MainWindow
from growlog.desktop.mixer.pictured import MIXER_SCREENS
from growlog.desktop.money.power_page import PowerPage
from growlog.desktop.money.purchases_page import PurchasesPage
from growlog.desktop.old_notes.pictured import written_example
from growlog.desktop.review.pictured import without_data
from growlog.desktop.review.quality_fields import KEYS as QUALITY_KEYS
from growlog.desktop.settings import Settings
from growlog.desktop.tally.pictured import empty_tally, full_tally, tally_with_question
from growlog.records.entry import KINDS
from growlog.services.logbooks import open_log
from growlog.services.open_logbook import Clock, LogbookProblem, OpenLogbook
from growlog.services.photo_uses import original_path
from growlog.services.requests import Folders, PictureRequest
from growlog.words import say

_IDLE_MS = 30
_AT_MOST_MS = 30_000


def render(request: PictureRequest, clock: Clock, folders: Folders) -> int:
    """Draws the screen and writes the PNG; 0 when done, 2 for an unknown screen or crop, 1 if it cannot be."""
    if request.screen not in SCREENS:
        return _refuse(
            say("There is no screen {name}. There are: {names}.", name=request.screen, names=", ".join(SCREENS))
        )
    with tempfile.TemporaryDirectory() as own:
        return _render(request, clock, folders, MainWindow(Settings(Path(own) / "settings.ini")))


def _render(request: PictureRequest, clock: Clock, folders: Folders, window: MainWindow) -> int:
    window.resize(request.width_px, request.height_px)
    try:
        if request.screen != "welcome":
            log = open_log(request.folder, clock, folders.cache, read_only=True)
            window.show_logbook(_as_writable(log))
            window.strip.clear()
        window.show()
        if not _choose(window, request):
            return _refuse(say("There is no crop {name} in this logbook.", name=request.crop))
        _wait_until_idle(window)
        SCREENS[request.screen](window)
        _wait_until_idle(window)
        saved = _drawn(window).save(str(request.to), "PNG")
    except LogbookProblem as problem:
        return _refuse(str(problem), 1)
    finally:
        _close(window)
    return 0 if saved else _refuse(say("{file} could not be written.", file=request.to), 1)


def _board(_window: MainWindow) -> None:
    return None


def _calendar(window: MainWindow) -> None:
    if window.page is not None:
        window.page.board.set_axis_mode("calendar")


def _board_with_all(window: MainWindow) -> None:
    """Every lane that has something, those too that are hidden at first."""
    if window.page is not None:
        window.page.board.set_hidden_lanes([])
        window.page.board.hidden_lanes_changed.emit([])


def _underlay(window: MainWindow) -> None:
    if window.page is not None and window.desk is not None:
        others = [c for c in window.desk.crops if c.crop.id != window.desk.selection.crop_id and c.curve]
        if others:
            window.page.board.show_underlay(window.desk.other_curve(others[-1].crop.id))


def _intake(window: MainWindow) -> None:
    """The tray with some of the crop's own originals: they are known, so it shows what a second drop looks like."""
    if window.opened is not None and window.desk is not None and window.desk.days is not None:
        shown = window.desk.days.photos[:12]
        window.opened.photos.open_tray([original_path(window.desk.log, p.photo) for p in shown])


def _empty_intake(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.photos.open_tray()


def _photo(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.photos.open_full()


def _compare(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.photos.compare()


def _new_crop(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.crops.new()


def _correct_crop(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.crops.correct()


def _clear(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.crops.clear()


def _room_sheet(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.sheets.open()


def _yield_view(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.yields.open()


def _keep_or_clear(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.yields.open_keep()


def _keep_with_guess(window: MainWindow) -> None:
    """Keep or clear with a value and a guess typed in."""
    if window.opened is not None:
        window.opened.yields.open_keep()
        _wait_until_idle(window)
        dialog = window.opened.yields.keep_dialog
        if dialog is not None and dialog.form is not None:
            fill_example(dialog.form)


def _side_by_side(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.yields.open_beside()


def _side_by_side_photos(window: MainWindow) -> None:
    _side_by_side_page(window, "photos")


def _side_by_side_facts(window: MainWindow) -> None:
    _side_by_side_page(window, "facts")


def _side_by_side_page(window: MainWindow, page: str) -> None:
    if window.opened is not None:
        window.opened.yields.open_beside()
        if window.opened.yields.beside_dialog is not None:
            window.opened.yields.beside_dialog.page.set_value(page)


def _side_by_side_empty(window: MainWindow) -> None:
    """Before two crops are ticked."""
    if window.opened is not None:
        window.opened.yields.open_beside()
        dialog = window.opened.yields.beside_dialog
        for box in () if dialog is None else dialog.boxes.values():
            box.setChecked(False)


def _flower_tags(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.tags.open()


def _feeding_round(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.feeding.open()


def _quick_line(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.quick_line.start()
        line = "12 fruit 1.1 kg, 5 females pollinated with brush, feed 1.2 L EC 1.9 pH 5.9"
        window.opened.quick_line.panel.set_line(line)


def _quick_line_refused(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.quick_line.start()
        window.opened.quick_line.panel.set_line("feed 1.2 L EC 1.9, 86 93 78, humidity 0.6")
        window.opened.quick_line.panel.field.confirmed.emit()


def _quick_line_help(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.quick_line.open_help()


def _routines(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.routines.open()


def _no_routines(window: MainWindow) -> None:
    """The set that is offered where there is none yet."""
    if window.opened is not None:
        window.opened.routines.open()
        window.opened.routines.show_offered()


def _routine_form(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.routines.open()
        if window.opened.routines.dialog is not None:
            window.opened.routines.dialog.new()


def _due_question(window: MainWindow) -> None:
    """The first thing that is due, asked why it is left out."""
    if window.page is not None:
        window.page.crop_list.due.ask_first_reason()


def _old_notes(window: MainWindow) -> None:
    _show_old_notes(window, troubled=False)


def _old_notes_refused(window: MainWindow) -> None:
    _show_old_notes(window, troubled=True)


def _old_notes_empty(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.old_notes.open()


def _show_old_notes(window: MainWindow, *, troubled: bool) -> None:
    if window.opened is not None and window.desk is not None and window.desk.board is not None:
        folder = window.settings.file.parent
        window.opened.old_notes.open(written_example(folder, window.desk.board.day_zero, troubled))
        if troubled and window.opened.old_notes.dialog is not None:
            window.opened.old_notes.dialog.preview.switch.set_value("out")


def _room(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.rooms.open_room()


def _another_room(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.rooms.open_room()
        if window.opened.rooms.room is not None:
            window.opened.rooms.room.add_room()


class _RoomScreen:
    """One part of the room."""

    def __init__(self, part: str) -> None:
        self._part = part

    def __call__(self, window: MainWindow) -> None:
        if window.opened is not None:
            window.opened.rooms.open_room()
            if window.opened.rooms.room is not None:
                window.opened.rooms.room.page.show_part(self._part)


class _MoneyScreen:
    """One part of what a crop cost; open: with an empty form."""

    def __init__(self, part: str, *, form: bool = False) -> None:
        self._part, self._form = part, form

    def __call__(self, window: MainWindow) -> None:
        if window.opened is None:
            return
        window.opened.money.open()
        _wait_until_idle(window)
        dialog = window.opened.money.dialog
        if dialog is not None:
            dialog.show_part(self._part)
            page = dialog.pages[self._part]
            if self._form and isinstance(page, (PurchasesPage, PowerPage)):
                page.add()


def _climate(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.climate.open()


def _figures(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.money.open_figures()


def _figures_searched(window: MainWindow) -> None:
    _figures(window)
    _wait_until_idle(window)
    if window.opened is not None and window.opened.money.figures is not None:
        window.opened.money.figures.search_field.line.setText("cost")
        window.opened.money.figures.search_field.value_changed.emit()


def _light_plan(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.rooms.open_light_plan()


def _light_step(window: MainWindow) -> None:
    _light_plan(window)
    _wait_until_idle(window)
    if window.opened is not None and window.opened.rooms.light_plan is not None:
        window.opened.rooms.light_plan.add()


def _logger_empty(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.rooms.open_logger()


def _logger(window: MainWindow) -> None:
    _show_logger(window, troubled=False)


def _logger_refused(window: MainWindow) -> None:
    _show_logger(window, troubled=True)


def _show_logger(window: MainWindow, *, troubled: bool) -> None:
    if window.opened is not None and window.desk is not None and window.desk.board is not None:
        folder = window.settings.file.parent
        path = written_logger_file(folder, window.desk.board.day_zero, troubled)
        window.opened.rooms.open_logger(path=path)


def _review(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.reviews.open()


def _empty_review(window: MainWindow) -> None:
    """The review of a crop of which nothing was written."""
    _review(window)
    _wait_until_idle(window)
    dialog = None if window.opened is None else window.opened.reviews.dialog
    if dialog is not None and dialog.review is not None:
        dialog.show_review(without_data(dialog.review), dict.fromkeys(QUALITY_KEYS, ""))


def _review_problem(window: MainWindow) -> None:
    _review(window)
    _wait_until_idle(window)
    if window.opened is not None and window.opened.reviews.dialog is not None:
        window.opened.reviews.dialog.say_problem(say("This crop has not begun yet."))


def _review_photos(window: MainWindow) -> None:
    _review(window)
    _wait_until_idle(window)
    if window.opened is not None:
        window.opened.reviews.open_photos()


def _decision(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.reviews.decide()


def _empty_what_if(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.reviews.what_if.open()


def _what_if(window: MainWindow) -> None:
    """Other lamps and hours, without a yield change that is expected."""
    _empty_what_if(window)
    _wait_until_idle(window)
    dialog = None if window.opened is None else window.opened.reviews.what_if.dialog
    if dialog is not None and dialog.form is not None:
        dialog.form.lamp_w.set_value(150)
        dialog.form.photoperiod_h.set_value(13)
        dialog.ask()


def _share(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.sharing.open_share()


def _time_lapse(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.sharing.open_time_lapse()


def _export(window: MainWindow) -> None:
    if window.opened is not None:
        window.opened.sharing.open_export()


def _preferences(window: MainWindow) -> None:
    window.actions_table.by_name["preferences"].trigger()


def _problem(window: MainWindow) -> None:
    window.show_refusal(say("{folder} is not a logbook. It was left as it is.", folder="my-pictures"))


class _FormScreen:
    """The form of one kind of entry."""

    def __init__(self, kind: str) -> None:
        self._kind = kind

    def __call__(self, window: MainWindow) -> None:
        if window.opened is not None:
            window.opened.entries.add(self._kind)


SCREENS: dict[str, Callable[[MainWindow], None]] = {
    "welcome": _board,
    "welcome-problem": _problem,
    "board": _board,
    "board-calendar": _calendar,
    "board-all-lanes": _board_with_all,
    "board-two-curves": _underlay,
    "photo": _photo,
    "compare": _compare,
    "intake": _intake,
    "intake-empty": _empty_intake,
    "crop-new": _new_crop,
    "crop": _correct_crop,
    "crop-clear": _clear,
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
    "yield-view": _yield_view,
    "keep-or-clear": _keep_or_clear,
    "keep-or-clear-guess": _keep_with_guess,
    "side-by-side": _side_by_side,
    "side-by-side-photos": _side_by_side_photos,
    "side-by-side-facts": _side_by_side_facts,
    "side-by-side-empty": _side_by_side_empty,
    **MIXER_SCREENS,
    "quick-line": _quick_line,
    "quick-line-refused": _quick_line_refused,
    "quick-line-help": _quick_line_help,
    "review": _review,
    "review-empty": _empty_review,
    "review-problem": _review_problem,
    "review-photos": _review_photos,
    "decision": _decision,
    "what-if": _what_if,
    "what-if-empty": _empty_what_if,
    "share": _share,
    "time-lapse": _time_lapse,
    "export": _export,
    "preferences": _preferences,
    "tally": empty_tally,
    "tally-full": full_tally,
    "tally-question": tally_with_question,
    "problem": _problem,
    **{f"form-{kind}": _FormScreen(kind) for kind in KINDS},
}


def _choose(window: MainWindow, request: PictureRequest) -> bool:
    desk = window.desk
    if desk is None:
        return True
    if request.crop is not None:
        named = [c.crop.id for c in desk.crops if c.crop.name.casefold() == request.crop.casefold()]
        if not named:
            return False
        desk.selection.choose_crop(named[0])
    if request.day is not None:
        desk.choose_age(request.day)
    return True


def _as_writable(log: OpenLogbook) -> OpenLogbook:
    """A picture shows the screen as the grower has it; what is opened for reading still refuses every write."""
    log.shown_writable = True
    return log


def _wait_until_idle(window: MainWindow) -> None:
    loop, waited = QEventLoop(), _Waited(window)
    timer = QTimer()
    timer.setInterval(_IDLE_MS)
    waited.loop = loop
    timer.timeout.connect(waited.look)
    timer.start()
    loop.exec()
    timer.stop()


class _Waited:
    """Ends the loop once nothing runs in the background, twice in a row."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._quiet = 0
        self._looks = 0
        self.loop: QEventLoop | None = None

    def look(self) -> None:
        """One look; called by the timer."""
        self._looks += 1
        self._quiet = 0 if self._window.runner.is_busy else self._quiet + 1
        if self.loop is not None and (self._quiet >= 3 or self._looks * _IDLE_MS > _AT_MOST_MS):
            self.loop.quit()


def _drawn(window: MainWindow) -> QPixmap:
    """The window with its open dialogs where they stand, each with a hairline round it."""
    picture = window.grab()
    painter = QPainter(picture)
    for dialog in window.findChildren(QDialog):
        if dialog.isVisible():
            _draw_dialog(painter, window, dialog)
    painter.end()
    return picture


def _draw_dialog(painter: QPainter, window: QWidget, dialog: QDialog) -> None:
    at = dialog.pos() - window.pos()
    at = QPoint(
        max(8, min(at.x(), window.width() - dialog.width() - 8)),
        max(8, min(at.y(), window.height() - dialog.height() - 8)),
    )
    painter.drawPixmap(at, dialog.grab())
    painter.setPen(QPen(current().colour("mute")))
    painter.drawRect(QRect(at, dialog.size()).adjusted(-1, -1, 0, 0))


def _close(window: MainWindow) -> None:
    for dialog in window.findChildren(QDialog):
        dialog.close()
    window.close()


def _refuse(sentence: str, code: int = 2) -> int:
    sys.stderr.write(sentence + "\n")
    return code
