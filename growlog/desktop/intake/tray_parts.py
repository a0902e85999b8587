"""The tray while nothing lies in it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Button, Card, TextLabel
from growlog.words import say


class EmptyTray(Card):
    """One sentence, and two ways to begin."""

    files_wanted = Signal()
    folder_wanted = Signal()

    def __init__(self) -> None:
        super().__init__(tone="soft")
        self.setObjectName("emptyTray")
        self.sentence_label = TextLabel(say("Drop photos or a folder here."), "subtitle", wraps=True)
        self.sentence_label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.files_button = Button(say("Choose files…"), "primary", "add-photos", name="chooseFiles")
        self.folder_button = Button(say("Choose a folder…"), "", "folder", name="chooseFolder")
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addStretch(1)
        row.addWidget(self.files_button)
        row.addWidget(self.folder_button)
        row.addStretch(1)
        column = self.body
        column.setSpacing(16)
        column.addStretch(1)
        column.addWidget(self.sentence_label)
        column.addLayout(row)
        column.addStretch(1)
        self.setMinimumHeight(current().px(160))
        self.files_button.clicked.connect(self._files)
        self.folder_button.clicked.connect(self._folder)

    def _files(self) -> None:
        self.files_wanted.emit()

    def _folder(self) -> None:
        self.folder_wanted.emit()
