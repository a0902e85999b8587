"""The page before a logbook is open: what this is, three ways to begin, the logbooks of late."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Banner, Button, ElidedLabel, FlowLayout, SectionTitle, TextLabel
from growlog.words import say

_COLUMN_PX = 560


class Welcome(QScrollArea):
    """Says what the person wants; a folder that could not be opened is told in a banner."""

    new_wanted = Signal()
    open_wanted = Signal()
    sample_wanted = Signal()
    recent_chosen = Signal(object)
    forget_wanted = Signal(object)

    def __init__(self, recent: Sequence[Path] = ()) -> None:
        super().__init__()
        self.setObjectName("welcome")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.banner = Banner()
        self.banner.hide()
        self.title_label = TextLabel(say("Growing-room Logbook"), "page-title", wraps=True)
        self.words_label = TextLabel(_words(), "", wraps=True)
        self.new_button = Button(say("New logbook…"), "primary", "plant", name="newLogbook")
        self.open_button = Button(say("Open a logbook…"), "", "folder", name="openLogbook")
        self.sample_button = Button(say("Look at the sample season"), "", "star", name="sampleSeason")
        self.recent_title = SectionTitle(say("Opened lately"))
        self._recent = QVBoxLayout()
        self._place()
        self.new_button.clicked.connect(self._new)
        self.open_button.clicked.connect(self._open)
        self.sample_button.clicked.connect(self._sample)
        self.banner.closed.connect(self.banner.hide)
        self.show_recent(recent)
        self.new_button.setFocus()

    def show_recent(self, folders: Sequence[Path]) -> None:
        """The logbooks opened lately, the latest first."""
        while self._recent.count():
            item = self._recent.takeAt(0)
            widget = item.widget() if item is not None else None
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.recent_title.setVisible(bool(folders))
        for folder in folders:
            line = RecentLine(folder)
            line.chosen.connect(self.recent_chosen)
            line.forget_wanted.connect(self.forget_wanted)
            self._recent.addWidget(line)

    def show_problem(self, sentence: str) -> None:
        """Why a folder could not be opened, and the way on."""
        self.banner.show_message(sentence, "problem")
        self.banner.show()

    def clear_problem(self) -> None:
        """Takes the sentence away."""
        self.banner.hide()

    def _place(self) -> None:
        page = QWidget()
        page.setObjectName("paper")
        inner = QWidget()
        inner.setMaximumWidth(current().px(_COLUMN_PX))
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(16)
        column.addWidget(self.banner)
        column.addWidget(self.title_label)
        column.addWidget(self.words_label)
        buttons = FlowLayout()
        for button in (self.new_button, self.open_button, self.sample_button):
            buttons.addWidget(button)
        column.addLayout(buttons)
        column.addSpacing(8)
        column.addWidget(self.recent_title)
        self._recent.setSpacing(2)
        column.addLayout(self._recent)
        across = QHBoxLayout()
        across.addStretch(1)
        across.addWidget(inner, 100)
        across.addStretch(1)
        whole = QVBoxLayout(page)
        whole.setContentsMargins(24, 32, 24, 32)
        whole.addStretch(1)
        whole.addLayout(across)
        whole.addStretch(2)
        self.setWidget(page)

    def _new(self) -> None:
        self.new_wanted.emit()

    def _open(self) -> None:
        self.open_wanted.emit()

    def _sample(self) -> None:
        self.sample_wanted.emit()


class RecentLine(QWidget):
    """One logbook of late: its name opens it; one that is gone can be taken off the list."""

    chosen = Signal(object)
    forget_wanted = Signal(object)

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.open_button = Button(folder.name, "link", name=f"recent.{folder.name}")
        self.open_button.setAccessibleName(say("Open {name}", name=str(folder)))
        self.place_label = ElidedLabel(str(folder.parent), "small")
        self.forget_button = Button(say("Take off the list"), "link", name="forget")
        is_there = folder.is_dir()
        self.open_button.setEnabled(is_there)
        self.forget_button.setVisible(not is_there)
        if not is_there:
            self.place_label.setText(say("not found: {place}", place=str(folder.parent)))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        row.addWidget(self.open_button)
        row.addWidget(self.place_label, 1)
        row.addWidget(self.forget_button)
        self.open_button.clicked.connect(partial(self.chosen.emit, folder))
        self.forget_button.clicked.connect(partial(self.forget_wanted.emit, folder))


def _words() -> str:
    return say(
        "A season under lamps on one axis of plant age: daily photos, feeds, pollination and picks, and the yield "
        "growing below them. A logbook is a folder of your own; your photos stay in it as they came."
    )
