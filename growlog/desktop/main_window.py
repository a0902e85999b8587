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
from growlog.desktop.windows.logbook_windows import LogbookWindows
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
        self.opened: LogbookWindows | None = None
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
        self.opened = LogbookWindows(desk, page, self.settings, self.files, self.messages)
        self.opened.room_wanted.connect(self.commands.room)
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
        self.opened.tally.remind()

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
        if self.opened is not None:
            self.opened.put_away()
        self._stack.setCurrentWidget(self.welcome)
        self._stack.removeWidget(self.page)
        self.page.deleteLater()
        log = self.desk.log
        self.desk.deleteLater()
        self.desk = self.page = self.opened = None
        log.close()
        self.welcome.show_recent(self._recent())
        self._allow()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Lets go of the logbook and ends what runs in the background; photos being copied are finished first."""
        if self.opened is not None and not self.opened.tally.put_away():
            event.ignore()
            return
        tray = None if self.opened is None else self.opened.photos.open_tray_window()
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
        page.add_photos_wanted.connect(self.commands.add_photos)
        page.new_crop_wanted.connect(self.commands.new_crop)
        page.room_wanted.connect(self.commands.room)
        page.tally_wanted.connect(self.commands.session_tally)
        page.mixer_wanted.connect(self.commands.mixer)
        desk.refused.connect(self.messages.problem)
        desk.told.connect(self.messages.inform)
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
        if self.opened is not None:
            self.opened.photos.open_tray(pasted_files(dropped))
