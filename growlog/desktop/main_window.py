"""The main window: places the welcome or the open logbook, wires dialogs and actions, and takes dropped photos."""

from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from growlog.desktop.actions import Actions
from growlog.desktop.background import TaskRunner
from growlog.desktop.desk import Desk
from growlog.desktop.file_choice import FileChoice, NativeFileChoice
from growlog.desktop.garbage import GarbageOnWindowThread
from growlog.desktop.logbook_page import LogbookPage
from growlog.desktop.messages import Messages, MessageStrip, WindowMessages
from growlog.desktop.pasted import pasted_files
from growlog.desktop.preferences.preferences_dialog import PreferencesDialog
from growlog.desktop.preload import preload
from growlog.desktop.settings import Settings
from growlog.desktop.welcome.welcome import Welcome
from growlog.desktop.window_commands import WindowCommands
from growlog.desktop.windows.climate_windows import ClimateWindows
from growlog.desktop.windows.crop_windows import CropWindows
from growlog.desktop.windows.due_windows import DueWindows
from growlog.desktop.windows.entry_windows import EntryWindows
from growlog.desktop.windows.feeding_windows import FeedingWindows
from growlog.desktop.windows.money_windows import MoneyWindows
from growlog.desktop.windows.nutrient_windows import NutrientWindows
from growlog.desktop.windows.old_notes_windows import OldNotesWindows
from growlog.desktop.windows.photo_windows import PhotoWindows
from growlog.desktop.windows.quick_line_windows import QuickLineWindows
from growlog.desktop.windows.review_windows import ReviewWindows
from growlog.desktop.windows.room_windows import RoomWindows
from growlog.desktop.windows.routine_windows import RoutineWindows
from growlog.desktop.windows.share_windows import ShareWindows
from growlog.desktop.windows.sheet_windows import SheetWindows
from growlog.desktop.windows.tag_windows import TagWindows
from growlog.desktop.windows.tally_windows import TallyWindows
from growlog.desktop.windows.yield_windows import YieldWindows
from growlog.services.logbooks import facts_of
from growlog.services.open_logbook import OpenLogbook
from growlog.words import say, show_units


class MainWindow(QMainWindow):
    """The window. It opens no logbook itself: it asks, and is handed one by `show_logbook`."""

    open_wanted = Signal(object)  # Path
    new_wanted = Signal(object)  # Path
    sample_wanted = Signal()

    def __init__(self, settings: Settings, messages: Messages | None = None, files: FileChoice | None = None) -> None:
        super().__init__()
        self.setWindowTitle(say("Growing-room Logbook"))
        self.setAcceptDrops(True)
        self.settings = settings
        show_units(settings.text("units"))
        settings.changed.connect(self._setting_changed)
        preload()
        self.garbage = GarbageOnWindowThread(self)
        self.runner = TaskRunner(self)
        self.strip = MessageStrip(self)
        self.messages: Messages = messages or WindowMessages(self, self.strip)
        self.files: FileChoice = files or NativeFileChoice(self, settings)
        self.desk: Desk | None = None
        self.page: LogbookPage | None = None
        self.entries: EntryWindows | None = None
        self.crops: CropWindows | None = None
        self.rooms: RoomWindows | None = None
        self.money: MoneyWindows | None = None
        self.climate: ClimateWindows | None = None
        self.photos: PhotoWindows | None = None
        self.reviews: ReviewWindows | None = None
        self.sharing: ShareWindows | None = None
        self.tally: TallyWindows | None = None
        self.sheets: SheetWindows | None = None
        self.feeding: FeedingWindows | None = None
        self.nutrients: NutrientWindows | None = None
        self.tags: TagWindows | None = None
        self.yields: YieldWindows | None = None
        self.quick_line: QuickLineWindows | None = None
        self.due: DueWindows | None = None
        self.routines: RoutineWindows | None = None
        self.old_notes: OldNotesWindows | None = None
        self.preferences: PreferencesDialog | None = None
        self.welcome = Welcome(self._recent())
        self._stack = QStackedWidget()
        self._stack.addWidget(self.welcome)
        self._place()
        self.commands = WindowCommands(self)
        self.actions_table = Actions(self, self.commands.handlers())
        self.actions_table.fill(self.menuBar())
        self._connect_welcome()
        self._allow()
        self._restore()

    def show_logbook(self, log: OpenLogbook) -> None:
        """Puts an open logbook on the desk in place of what was there."""
        self.put_away()
        self.desk = desk = Desk(log, self.runner, self)
        self.page = page = LogbookPage(desk, self.settings)
        self.entries = EntryWindows(desk, page, self.settings, self.messages)
        self.crops = CropWindows(desk, page, self.messages)
        self.money = MoneyWindows(desk, page, self.entries, self.messages)
        self.rooms = RoomWindows(desk, page, self.files, self.messages)
        self.climate = ClimateWindows(desk, page, self.settings, self.rooms.open_logger)
        self.photos = PhotoWindows(desk, page, self.files, self.messages)
        self.tally = TallyWindows(desk, page, self.settings, self.messages)
        self.sheets = SheetWindows(desk, page, self.settings, self.files, self.messages)
        self.feeding = FeedingWindows(desk, page, self.settings)
        self.nutrients = NutrientWindows(desk, page, self.settings, self.files, self.messages)
        self.nutrients.tanks.room_wanted.connect(self.commands.room)
        self.old_notes = OldNotesWindows(desk, page, self.files, self.messages)
        self.quick_line = QuickLineWindows(desk, page)
        self.tags = TagWindows(desk, page, self.settings, self.entries)
        self.yields = YieldWindows(desk, page, page.board, self.files, self.messages)
        self.reviews = ReviewWindows(desk, page, self.messages)
        self.sharing = ShareWindows(desk, page, self.settings, self.files, self.messages)
        self.sharing.follow(self.reviews)
        page.crop_list.review_wanted.connect(self.reviews.open)
        self.routines = RoutineWindows(desk, page, self.files, self.messages)
        self.due = DueWindows(desk, self.entries, self.photos, self.crops, self.messages)
        self.due.follow(page.crop_list.due)
        page.crop_list.due.routines_wanted.connect(self.routines.open)
        self._stack.addWidget(page)
        self._stack.setCurrentWidget(page)
        self._connect_page(desk, page)
        self.settings.remember_logbook(log.folder)
        reading = "" if log.writable else f" · {say('for reading only')}"
        self.setWindowTitle(f"{facts_of(log).name}{reading} · {say('Growing-room Logbook')}")
        desk.open_first()
        page.board.setFocus()
        self._allow()
        if not log.writable:
            self.messages.inform(say("This logbook is open in another window, so here it can only be read."))
        self.tally.remind()

    def show_refusal(self, sentence: str) -> None:
        """Says on the welcome why a folder was not opened."""
        if self.page is None:
            self.welcome.show_problem(sentence)
        else:
            self.messages.problem(sentence)

    def put_away(self) -> None:
        """Closes the logbook on the desk and goes back to the welcome."""
        if self.page is None or self.desk is None:
            return
        self.page.remember()
        if self.old_notes is not None:
            self.old_notes.put_away()
            self.old_notes = None
        if self.tally is not None:
            self.tally.put_away()
        self._stack.setCurrentWidget(self.welcome)
        self._stack.removeWidget(self.page)
        self.page.deleteLater()
        log = self.desk.log
        self.desk.deleteLater()
        self.due = self.routines = None
        if self.yields is not None:
            self.yields.put_away()
            self.yields = None
        if self.rooms is not None:
            self.rooms.put_away()
        self.rooms = self.money = self.climate = None
        self.nutrients = None
        self.quick_line = None
        if self.sharing is not None:
            self.sharing.put_away()
        self.reviews = self.sharing = None
        self.tally = None
        self.desk = self.page = self.entries = self.crops = self.photos = self.sheets = self.feeding = self.tags = None
        log.close()
        self.welcome.show_recent(self._recent())
        self._allow()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Lets go of the logbook and ends what runs in the background; photos being copied are finished first."""
        if self.tally is not None and not self.tally.put_away():
            event.ignore()
            return
        tray = None if self.photos is None else self.photos.open_tray_window()
        if tray is not None:
            tray.put_away.connect(self.close, Qt.ConnectionType.QueuedConnection)
            tray.close()
            if tray.isVisible():
                event.ignore()
                return
            tray.put_away.disconnect(self.close)
        if not self.isMaximized():
            box = self.geometry()
            self.settings.set("window_geometry", [box.x(), box.y(), box.width(), box.height()])
        self.settings.set("window_maximised", self.isMaximized())
        self.put_away()
        self.runner.close()
        self.garbage.stop()
        event.accept()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and folders may be dropped anywhere on the window."""
        if self.desk is not None and event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Dropped photos go to the intake tray."""
        self._take_files(event.mimeData())
        event.acceptProposedAction()

    def _setting_changed(self, key: str) -> None:
        if key == "units":
            show_units(self.settings.text("units"))
            if self.desk is not None:
                self.desk.refresh()

    def _place(self) -> None:
        middle = QWidget()
        column = QVBoxLayout(middle)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.strip)
        column.addWidget(self._stack, 1)
        self.setCentralWidget(middle)

    def _restore(self) -> None:
        self.setMinimumSize(880, 560)
        box = self.settings.numbers("window_geometry")
        if len(box) == 4:
            self.setGeometry(*box)
        else:
            self.resize(1440, 900)

    def _connect_welcome(self) -> None:
        self.welcome.new_wanted.connect(self.commands.new_logbook)
        self.welcome.open_wanted.connect(self.commands.open_logbook)
        self.welcome.sample_wanted.connect(self.sample_wanted)
        self.welcome.recent_chosen.connect(self.open_wanted)
        self.welcome.forget_wanted.connect(self._forget)

    def _connect_page(self, desk: Desk, page: LogbookPage) -> None:
        assert self.entries is not None
        assert self.crops is not None
        assert self.photos is not None
        sheet, crops = page.day_sheet, page.crop_list
        page.add_photos_wanted.connect(self.commands.add_photos)
        page.new_crop_wanted.connect(self.crops.new)
        page.room_wanted.connect(self.commands.room)
        page.tally_wanted.connect(self.commands.session_tally)
        page.mixer_wanted.connect(self.commands.mixer)
        crops.correct_wanted.connect(self.crops.correct)
        crops.clear_wanted.connect(self.crops.clear)
        crops.reopen_wanted.connect(self.crops.reopen)
        crops.remove_wanted.connect(self.crops.remove)
        page.board.entry_chosen.connect(sheet.choose_entry)
        sheet.add_wanted.connect(self.entries.add)
        sheet.correct_wanted.connect(self.entries.correct)
        sheet.remove_wanted.connect(self.entries.remove)
        sheet.photo_opened.connect(self.photos.open_full)
        sheet.photo_chosen_to_lead.connect(self.photos.let_lead)
        sheet.photo_remove_wanted.connect(self.photos.remove)
        sheet.photo_move_wanted.connect(self.photos.move)
        sheet.compare_wanted.connect(self.photos.compare)
        desk.refused.connect(self.messages.problem)
        desk.written.connect(self._show_written)
        desk.undo_stack.changed.connect(self._allow)
        desk.board_changed.connect(self._allow)

    def _allow(self, _: object = None) -> None:
        desk = self.desk
        self.actions_table.allow(
            is_open=desk is not None,
            writable=desk is not None and desk.log.writable,
            has_crop=desk is not None and desk.board is not None,
        )
        for name, title in (("undo", "undo_title"), ("redo", "redo_title")):
            action = self.actions_table.by_name[name]
            what = "" if desk is None else getattr(desk.undo_stack, title)
            word = say("Undo") if name == "undo" else say("Redo")
            action.setText(f"{word}: {what}" if what else word)
            action.setEnabled(bool(what))

    def _show_written(self, _change: object) -> None:
        if self.desk is not None:
            self.strip.withdraw(self.desk.undo)  # it spoke of the change before
        if self.page is not None:
            self.page.show_kept(say("Saved {time}", time=datetime.now().astimezone().strftime("%H:%M")))

    def _recent(self) -> list[Path]:
        return [Path(folder) for folder in self.settings.texts("recent_logbooks")]

    def _forget(self, folder: Path) -> None:
        self.settings.forget_logbook(folder)
        self.welcome.show_recent(self._recent())

    def _take_files(self, dropped: QMimeData) -> None:
        if self.photos is not None:
            self.photos.open_tray(pasted_files(dropped))
