"""What stands beside the board of an open logbook: everything that opens dialogs, made and joined in one place.

What few evenings ask for is imported when it is first asked for: to import all of it takes as long as the rest of the
window. It happens on the window's thread, where first imports are safe.
"""

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice
from growlog.desktop.logbook_page import LogbookPage
from growlog.desktop.messages import Messages
from growlog.desktop.settings import Settings
from growlog.desktop.windows.crop_windows import CropWindows
from growlog.desktop.windows.due_windows import DueWindows
from growlog.desktop.windows.entry_windows import EntryWindows
from growlog.desktop.windows.feeding_windows import FeedingWindows
from growlog.desktop.windows.photo_windows import PhotoWindows
from growlog.desktop.windows.quick_line_windows import QuickLineWindows
from growlog.desktop.windows.routine_windows import RoutineWindows
from growlog.desktop.windows.sheet_windows import SheetWindows
from growlog.desktop.windows.tag_windows import TagWindows
from growlog.desktop.windows.tally_windows import TallyWindows
from growlog.desktop.windows.yield_windows import YieldWindows

if TYPE_CHECKING:
    from growlog.desktop.windows.climate_windows import ClimateWindows
    from growlog.desktop.windows.money_windows import MoneyWindows
    from growlog.desktop.windows.nutrient_windows import NutrientWindows
    from growlog.desktop.windows.old_notes_windows import OldNotesWindows
    from growlog.desktop.windows.review_windows import ReviewWindows
    from growlog.desktop.windows.room_windows import RoomWindows
    from growlog.desktop.windows.share_windows import ShareWindows

_PUT_AWAY = ("old_notes", "tally", "yields", "rooms", "sharing")


class LogbookWindows(QObject):
    """One opener for each part of the trade. put_away() ends what they still do."""

    room_wanted = Signal()

    def __init__(
        self, desk: Desk, page: LogbookPage, settings: Settings, files: FileChoice, messages: Messages
    ) -> None:
        super().__init__(page)
        self._desk = desk
        self._page = page
        self._settings = settings
        self._files = files
        self._messages = messages
        self.entries = EntryWindows(desk, page, settings, messages)
        self.crops = CropWindows(desk, page, messages)
        self.photos = PhotoWindows(desk, page, files, messages)
        self.tally = TallyWindows(desk, page, settings, messages)
        self.quick_line = QuickLineWindows(desk, page)
        self.feeding = FeedingWindows(desk, page, settings)
        self.tags = TagWindows(desk, page, settings, self.entries)
        self.routines = RoutineWindows(desk, page, files, messages)
        self.due = DueWindows(desk, self.entries, self.photos, self.crops, messages)
        self.sheets = SheetWindows(desk, page, settings, files, messages)
        self.yields = YieldWindows(desk, page, page.board, files, messages)
        self._join(page)
        self._follow_sheet(page)

    @cached_property
    def old_notes(self) -> "OldNotesWindows":
        """Old notes from tables."""
        from growlog.desktop.windows.old_notes_windows import OldNotesWindows

        return OldNotesWindows(self._desk, self._page, self._files, self._messages)

    @cached_property
    def nutrients(self) -> "NutrientWindows":
        """Mixer, shelf, waters, feed plan and tank."""
        from growlog.desktop.windows.nutrient_windows import NutrientWindows

        made = NutrientWindows(self._desk, self._page, self._settings, self._files, self._messages)
        made.tanks.room_wanted.connect(self.room_wanted)
        return made

    @cached_property
    def rooms(self) -> "RoomWindows":
        """Room, light programme and logger."""
        from growlog.desktop.windows.room_windows import RoomWindows

        return RoomWindows(self._desk, self._page, self._files, self._messages)

    @cached_property
    def climate(self) -> "ClimateWindows":
        """The air of the room."""
        from growlog.desktop.windows.climate_windows import ClimateWindows

        return ClimateWindows(self._desk, self._page, self._settings, self.rooms.open_logger)

    @cached_property
    def money(self) -> "MoneyWindows":
        """What it cost, and all figures."""
        from growlog.desktop.windows.money_windows import MoneyWindows

        return MoneyWindows(self._desk, self._page, self.entries, self._messages, self.yields.charts)

    @cached_property
    def reviews(self) -> "ReviewWindows":
        """Review, decision and what-if."""
        from growlog.desktop.windows.review_windows import ReviewWindows

        made = ReviewWindows(self._desk, self._page, self._messages, self.yields.charts)
        self.sharing.follow(made)
        return made

    @cached_property
    def sharing(self) -> "ShareWindows":
        """Page, paper, film and open data."""
        from growlog.desktop.windows.share_windows import ShareWindows

        return ShareWindows(self._desk, self._page, self._settings, self._files, self._messages)

    def put_away(self) -> None:
        """Before the logbook is closed: what is unfinished is kept or given up, nothing runs on."""
        for name in _PUT_AWAY:
            if name in self.__dict__:
                getattr(self, name).put_away()

    def _join(self, page: LogbookPage) -> None:
        """What one part asks of another."""
        self.due.follow(page.crop_list.due)
        page.crop_list.due.routines_wanted.connect(self.routines.open)
        crops = page.crop_list
        crops.review_wanted.connect(self._review)
        crops.correct_wanted.connect(self.crops.correct)
        crops.clear_wanted.connect(self.crops.clear)
        crops.reopen_wanted.connect(self.crops.reopen)
        crops.remove_wanted.connect(self.crops.remove)

    def _follow_sheet(self, page: LogbookPage) -> None:
        """What the day sheet asks for."""
        sheet = page.day_sheet
        page.board.entry_chosen.connect(sheet.choose_entry)
        sheet.add_wanted.connect(self.entries.add)
        sheet.correct_wanted.connect(self.entries.correct)
        sheet.remove_wanted.connect(self.entries.remove)
        sheet.photo_opened.connect(self.photos.open_full)
        sheet.photo_chosen_to_lead.connect(self.photos.let_lead)
        sheet.photo_remove_wanted.connect(self.photos.remove)
        sheet.photo_move_wanted.connect(self.photos.move)
        sheet.compare_wanted.connect(self.photos.compare)

    def _review(self, crop_id: str) -> None:
        self.reviews.open(crop_id)
