"""What the rows of the table of actions do in the main window."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, QObject
from PySide6.QtGui import QGuiApplication

from growlog.desktop.pasted import pasted_files
from growlog.desktop.preferences.preferences_dialog import PreferencesDialog
from growlog.desktop.windows.placing import open_beside
from growlog.services.logbooks import keep_copy
from growlog.services.open_logbook import LogbookProblem
from growlog.words import say

if TYPE_CHECKING:
    from growlog.desktop.main_window import MainWindow
    from growlog.desktop.windows.logbook_windows import LogbookWindows


class WindowCommands(QObject):
    """One method per action; what needs an open logbook does nothing without one."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window = window

    @property
    def _opened(self) -> "LogbookWindows | None":
        return self._window.opened

    def handlers(self) -> dict[str, Callable[[], None]]:
        """What each row of the table of actions does."""
        return {
            "new_logbook": self.new_logbook,
            "open_logbook": self.open_logbook,
            "undo": self.undo,
            "redo": self.redo,
            "room": self.room,
            "light_plan": self.light_plan,
            "logger": self.logger,
            "room_sheet": self.room_sheet,
            "routines": self.routines,
            "calendar_file": self.calendar_file,
            "due_list": self.due_list,
            "old_notes": self.old_notes,
            "back_up": self.back_up,
            "preferences": self.preferences,
            "quit": self.quit,
            "new_crop": self.new_crop,
            "change_crop": self.change_crop,
            "clear_crop": self.clear_crop,
            "reopen_crop": self.reopen_crop,
            "feeding_round": self.feeding_round,
            "mixer": self.mixer,
            "feed_plan": self.feed_plan,
            "tank_care": self.tank_care,
            "shelf": self.shelf,
            "waters": self.waters,
            "climate": self.climate,
            "money": self.money,
            "figures": self.figures,
            "review": self.review,
            "decide": self.decide,
            "what_if": self.what_if,
            "share_review": self.share_review,
            "time_lapse": self.time_lapse,
            "print_review": self.print_review,
            "export": self.export,
            "yield_view": self.yield_view,
            "keep_or_clear": self.keep_or_clear,
            "side_by_side": self.side_by_side,
            "flower_tags": self.flower_tags,
            "add_photos": self.add_photos,
            "paste_photos": self.paste,
            "session_tally": self.session_tally,
            "quick_line": self.quick_line,
            "quick_line_help": self.quick_line_help,
            "previous_day": self.day_before,
            "next_day": self.day_after,
            "compare": self.compare,
            "open_photo": self.open_photo,
            "axis_age": self.axis_age,
            "axis_calendar": self.axis_calendar,
            "theme": self.other_theme,
        }

    def new_logbook(self) -> None:
        """Asks for an empty folder."""
        folder = self._window.files.folder(say("Choose a new or an empty folder for the logbook"))
        if folder is not None:
            self._window.new_wanted.emit(folder)

    def open_logbook(self) -> None:
        """Asks for the folder of a logbook."""
        folder = self._window.files.folder(say("Choose the folder of a logbook"))
        if folder is not None:
            self._window.open_wanted.emit(folder)

    def undo(self) -> None:
        """Takes the last change back."""
        if self._window.desk is not None:
            self._window.desk.undo()

    def redo(self) -> None:
        """Does the last undone change again."""
        if self._window.desk is not None:
            self._window.desk.redo()

    def room(self) -> None:
        """Opens the room beside the board."""
        if self._opened is not None:
            self._opened.rooms.open_room()

    def light_plan(self) -> None:
        """Opens the light programme of the room beside the board."""
        if self._opened is not None:
            self._opened.rooms.open_light_plan()

    def logger(self) -> None:
        """Opens what brings the readings of a logger in."""
        if self._opened is not None:
            self._opened.rooms.open_logger()

    def climate(self) -> None:
        """Opens the climate of the chosen crop."""
        if self._opened is not None:
            self._opened.climate.open()

    def money(self) -> None:
        """Opens what the chosen crop cost."""
        if self._opened is not None:
            self._opened.money.open()

    def figures(self) -> None:
        """Opens all figures of the chosen crop."""
        if self._opened is not None:
            self._opened.money.open_figures()

    def room_sheet(self) -> None:
        """Asks for which week the room sheet is, and saves it."""
        if self._opened is not None:
            self._opened.sheets.open()

    def routines(self) -> None:
        """Opens the routines beside the board."""
        if self._opened is not None:
            self._opened.routines.open()

    def calendar_file(self) -> None:
        """Asks for a file and writes what is due into it."""
        if self._opened is not None:
            self._opened.routines.write_calendar()

    def due_list(self) -> None:
        """The keys go to what is due today."""
        if self._window.page is not None:
            self._window.page.crop_list.due.focus_first()

    def old_notes(self) -> None:
        """Opens what carries notes kept elsewhere in."""
        if self._opened is not None:
            self._opened.old_notes.open()

    def back_up(self) -> None:
        """Keeps a dated copy of the database."""
        if self._window.desk is not None and self._window.page is not None:
            try:
                copy = keep_copy(self._window.desk.log)
            except LogbookProblem as problem:
                self._window.messages.problem(str(problem))
            else:
                self._window.page.show_kept(say("Copy kept: {name}", name=copy.name))

    def preferences(self) -> None:
        """Opens the preferences beside the board."""
        self._window.preferences = PreferencesDialog(self._window.settings, parent=self._window)
        open_beside(self._window.preferences, self._window)

    def quit(self) -> None:
        """Closes the window."""
        self._window.close()

    def new_crop(self) -> None:
        """Opens the form of a new crop."""
        if self._opened is not None:
            self._opened.crops.new()

    def change_crop(self) -> None:
        """Opens the form of the chosen crop."""
        if self._opened is not None:
            self._opened.crops.correct()

    def clear_crop(self) -> None:
        """Asks for the day on which the chosen crop was cleared."""
        if self._opened is not None:
            self._opened.crops.clear()

    def reopen_crop(self) -> None:
        """Lets a cleared crop grow on."""
        if self._opened is not None:
            self._opened.crops.reopen()

    def feeding_round(self) -> None:
        """Opens one feed for several crops."""
        if self._opened is not None:
            self._opened.feeding.open()

    def mixer(self) -> None:
        """Opens the nutrient mixer beside the board."""
        if self._opened is not None:
            self._opened.nutrients.mixer.open()

    def feed_plan(self) -> None:
        """Opens the feed plan of the chosen crop."""
        if self._opened is not None:
            self._opened.nutrients.tanks.open_plan()

    def tank_care(self) -> None:
        """Opens topping up, pH and uptake of a tank."""
        if self._opened is not None:
            self._opened.nutrients.tanks.open_care()

    def shelf(self) -> None:
        """Opens the products and what is left of them."""
        if self._opened is not None:
            self._opened.nutrients.shelf.open_shelf()

    def waters(self) -> None:
        """Opens the source waters."""
        if self._opened is not None:
            self._opened.nutrients.shelf.open_waters()

    def review(self) -> None:
        """Opens the review of the chosen crop."""
        if self._opened is not None:
            self._opened.reviews.open()

    def decide(self) -> None:
        """Asks whether the chosen crop is grown again."""
        if self._opened is not None:
            self._opened.reviews.decide()

    def what_if(self) -> None:
        """Opens the partial budget of growing the chosen crop in another way."""
        if self._opened is not None:
            self._opened.reviews.what_if.open()

    def share_review(self) -> None:
        """Asks how the review of the chosen crop is written to a file."""
        if self._opened is not None:
            self._opened.sharing.open_share()

    def time_lapse(self) -> None:
        """Asks what the time-lapse of the chosen crop shows."""
        if self._opened is not None:
            self._opened.sharing.open_time_lapse()

    def print_review(self) -> None:
        """Prints the review of the chosen crop through the system's dialog."""
        if self._opened is not None:
            self._opened.sharing.print_review()

    def export(self) -> None:
        """Asks how the whole logbook is written as open data."""
        if self._opened is not None:
            self._opened.sharing.open_export()

    def yield_view(self) -> None:
        """Tells what the picks of the chosen crop say."""
        if self._opened is not None:
            self._opened.yields.open()

    def keep_or_clear(self) -> None:
        """Weighs another week of the chosen crop up against what would stand there instead."""
        if self._opened is not None:
            self._opened.yields.open_keep()

    def side_by_side(self) -> None:
        """Lays the chosen crop beside others."""
        if self._opened is not None:
            self._opened.yields.open_beside()

    def flower_tags(self) -> None:
        """Opens the tagged flowers of the chosen crop."""
        if self._opened is not None:
            self._opened.tags.open()

    def add_photos(self) -> None:
        """Opens the intake tray."""
        if self._opened is not None:
            self._opened.photos.open_tray()

    def session_tally(self) -> None:
        """Opens the session tally beside the board."""
        if self._opened is not None:
            self._opened.tally.open()

    def paste(self) -> None:
        """Takes copied files or a copied picture to the intake tray."""
        if self._opened is not None:
            held: QMimeData | None = QGuiApplication.clipboard().mimeData()  # none where nothing was ever copied
            files = pasted_files(held) if held is not None else []
            if files:
                self._opened.photos.open_tray(files)
            else:
                self._window.messages.inform(say("There are no photos to paste: copy files or a picture first."))

    def quick_line(self) -> None:
        """Puts the cursor into the quick line of the day."""
        if self._opened is not None:
            self._opened.quick_line.start()

    def quick_line_help(self) -> None:
        """Shows the words that the quick line understands."""
        if self._opened is not None:
            self._opened.quick_line.open_help()

    def day_before(self) -> None:
        """Moves the day line a day back."""
        if self._window.desk is not None:
            self._window.desk.step_day(-1)

    def day_after(self) -> None:
        """Moves the day line a day on."""
        if self._window.desk is not None:
            self._window.desk.step_day(1)

    def compare(self) -> None:
        """Lays a photo of another day beside the one shown."""
        if self._opened is not None:
            self._opened.photos.compare()

    def open_photo(self) -> None:
        """Shows the photo in the whole window."""
        if self._opened is not None:
            self._opened.photos.open_full()

    def axis_age(self) -> None:
        """Shows the board by plant age."""
        self._set_axis("age")

    def axis_calendar(self) -> None:
        """Shows the board by calendar dates."""
        self._set_axis("calendar")

    def _set_axis(self, mode: str) -> None:
        if self._window.page is not None:
            self._window.page.board.set_axis_mode(mode)
            self._window.settings.set("axis_mode", mode)

    def other_theme(self) -> None:
        """Changes between light and dark."""
        self._window.settings.set("theme", "light" if self._window.settings.text("theme") == "dark" else "dark")
