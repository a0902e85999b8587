"""Opens logbooks for the window: an existing one, a new one, the sample season."""

from pathlib import Path

from PySide6.QtCore import QObject

from growlog.desktop.background import Lane
from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from growlog.services.logbooks import clock_as_of, load_tools, new_logbook, open_log
from growlog.services.open_logbook import Clock, LogbookInUse, LogbookProblem
from growlog.services.requests import Folders
from growlog.services.sample import SAMPLE_NAME, build_sample, holds_logbook, sample_last_day
from growlog.words import say


class Opening(QObject):
    """Answers what the window asks for; a refusal is shown, and what was open stays open."""

    def __init__(self, window: MainWindow, settings: Settings, clock: Clock, folders: Folders) -> None:
        super().__init__(window)
        self._window = window
        self._settings = settings
        self._clock = clock
        self._folders = folders
        window.open_wanted.connect(self.open)
        window.new_wanted.connect(self.make)
        window.sample_wanted.connect(self.open_sample)

    def start(self, folder: Path | None, *, read_only: bool = False) -> None:
        """Opens the named logbook, or the last one if it is still there, or stays at the welcome."""
        if folder is not None:
            self.open(folder, read_only=read_only)
            return
        last = self._settings.text("last_logbook")
        if last and Path(last).is_dir():
            self.open(Path(last))

    def open(self, folder: Path, *, read_only: bool = False, clock: Clock | None = None) -> None:
        """Opens a logbook; one that is in use elsewhere is opened for reading."""
        chosen = clock or self._clock_for(folder)
        try:
            log = open_log(folder, chosen, self._folders.cache, read_only=read_only)
        except LogbookInUse:
            self.open(folder, read_only=True, clock=chosen)
            return
        except LogbookProblem as problem:
            self._settings.forget_logbook(folder)
            self._window.show_refusal(str(problem))
            return
        self._window.show_logbook(log)

    def _clock_for(self, folder: Path) -> Clock:
        """The sample season stays at its own last day, unless another day was asked for."""
        is_sample = folder.resolve() == (self._folders.data / SAMPLE_NAME).resolve()
        asked = self._clock.today() != clock_as_of().today()
        return clock_as_of(sample_last_day(self._folders.sample)) if is_sample and not asked else self._clock

    def make(self, folder: Path) -> None:
        """Makes a new logbook and opens it."""
        try:
            new_logbook(folder, self._clock)
        except LogbookProblem as problem:
            self._window.show_refusal(str(problem))
            return
        self.open(folder)

    def open_sample(self) -> None:
        """Opens the sample season as of its last day; builds it first, in the background, if it is not there."""
        target = self._folders.data / SAMPLE_NAME
        if holds_logbook(target):
            self._sample_built(None)
            return
        self._window.messages.inform(say("Building the sample season…"))
        load_tools()
        self._window.runner.run(
            build_sample,
            self._folders.sample,
            target,
            self._clock,
            on_done=self._sample_built,
            on_failed=self._sample_failed,
            lane=Lane.DATABASE,
        )

    def _sample_built(self, _nothing: None) -> None:
        self._window.messages.clear()
        self.open(self._folders.data / SAMPLE_NAME, clock=clock_as_of(sample_last_day(self._folders.sample)))

    def _sample_failed(self, error: Exception) -> None:
        self._window.show_refusal(str(error))
