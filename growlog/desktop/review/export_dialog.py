"""The whole logbook as open data: with what, and where to."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QRadioButton, QWidget

from growlog.desktop.look.widgets import Banner, DialogFrame, TextLabel
from growlog.desktop.review.waiting import progress_above_buttons
from growlog.words import say


class ExportDialog(DialogFrame):
    """Announces what is wanted; shows how far it is."""

    wanted = Signal(bool)  # complete
    stopped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(say("Export"), say("the whole logbook as open data"), parent, 560)
        self.setObjectName("export")
        words = say(
            "A folder with a table for each kind of entry, a description of every column, and the photos beside. Any "
            "spreadsheet or statistics program reads it."
        )
        self.share_button = QRadioButton(say("To share: photos without places, owners and notes of the camera"))
        self.complete_button = QRadioButton(say("Complete: the original photos as they are"))
        self.share_button.setObjectName("toShare")
        self.complete_button.setObjectName("complete")
        self._group = QButtonGroup(self)
        caution = say(
            "A complete export keeps the places in the photos, which can tell where you live. It is the one that can "
            "be read into a new logbook without loss."
        )
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.progress = progress_above_buttons(self)
        self.body.addWidget(self.banner)
        self.body.addWidget(TextLabel(words, "", wraps=True))
        for button in (self.share_button, self.complete_button):
            self._group.addButton(button)
            self.body.addWidget(button)
        self.body.addWidget(TextLabel(caution, "small", wraps=True))
        self.body.addStretch(1)
        self.leave_button = self.add_button(say("Close"), name="leave")
        self.save_button = self.add_button(say("Choose a folder…"), "primary", "save")
        self.share_button.setChecked(True)
        self.leave_button.clicked.connect(self.reject)
        self.save_button.clicked.connect(self.confirm)
        self.progress.stopped.connect(self.stopped)

    def confirm(self) -> None:
        """Announces what is wanted."""
        self.wanted.emit(self.complete_button.isChecked())

    def start(self) -> None:
        """It is being written."""
        self.banner.hide()
        self.progress.start(say("Writing the logbook…"))
        self.save_button.setEnabled(False)

    def show_progress(self, progress: tuple[int, int]) -> None:
        """How far it is."""
        self.progress.show_progress(*progress)

    def end(self, problem: str = "") -> None:
        """It is over; a problem stays to be read."""
        self.progress.finish()
        self.save_button.setEnabled(True)
        if problem:
            self.banner.show_message(problem, "problem")
            self.banner.show()
