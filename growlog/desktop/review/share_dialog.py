"""How the review is written for others: as a page or on paper, and what is left out."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QWidget

from growlog.desktop.look.widgets import Banner, ChoiceField, DialogFrame, SegmentSwitch, TextLabel
from growlog.desktop.review.waiting import progress_above_buttons
from growlog.services.paper import Paper
from growlog.services.review.model import ReviewOptions
from growlog.words import say

HTML, PDF = "html", "pdf"


class ShareDialog(DialogFrame):
    """Announces what is wanted; shows how far it is, and closes once its caller says that it is written."""

    wanted = Signal(str, object, object)  # ending, ReviewOptions, Paper
    stopped = Signal()

    def __init__(self, crop_name: str, paper: str = "", parent: QWidget | None = None) -> None:
        super().__init__(say("Share the review"), crop_name, parent, 560)
        self.setObjectName("shareReview")
        self.form = SegmentSwitch([(HTML, say("Web page")), (PDF, say("Paper (PDF)"))], HTML, say("Form"))
        self.form_label = TextLabel("", "small", wraps=True)
        sizes = [(Paper.A4.value, say("A4")), (Paper.LETTER.value, say("US Letter"))]
        self.paper_field = ChoiceField(say("Paper"), sizes, paper or Paper.A4.value, name="paper")
        self.money_box = _box(say("With money: costs, prices, cost of a fruit"), "money", on=True)
        self.notes_box = _box(say("With notes and reasons in your words"), "notes", on=True)
        self.places_box = _box(say("With places and camera data in the photos"), "places", on=False)
        words = say("Photos can tell where you live. Places and camera data are left out unless you ask for them.")
        self.places_label = TextLabel(words, "small", wraps=True)
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.progress = progress_above_buttons(self)
        self._parts = [self.form, self.paper_field, self.money_box, self.notes_box, self.places_box]
        for part in (self.banner, self.form, self.form_label, self.paper_field, self.money_box, self.notes_box,
                     self.places_box, self.places_label):  # fmt: skip
            self.body.addWidget(part)
        self.body.addStretch(1)
        self.leave_button = self.add_button(say("Close"), name="leave")
        self.save_button = self.add_button(say("Save…"), "primary", "save")
        self._connect()
        self._form_chosen(HTML)

    def options(self) -> ReviewOptions:
        """What is left out."""
        return ReviewOptions(
            money=self.money_box.isChecked(), notes=self.notes_box.isChecked(), places=self.places_box.isChecked()
        )

    def confirm(self) -> None:
        """Announces what is wanted."""
        paper = Paper(self.paper_field.value() or Paper.A4)
        self.wanted.emit(self.form.value(), self.options(), paper)

    def start(self) -> None:
        """It is being written."""
        self.banner.hide()
        self.progress.start(say("Putting the review together…"))
        self._allow(False)

    def show_progress(self, progress: tuple[int, int]) -> None:
        """How far it is."""
        self.progress.show_progress(*progress)

    def end(self, problem: str = "") -> None:
        """It is over; a problem stays to be read."""
        self.progress.finish()
        self._allow(True)
        if problem:
            self.banner.show_message(problem, "problem")
            self.banner.show()

    def _connect(self) -> None:
        self.form.value_changed.connect(self._form_chosen)
        self.progress.stopped.connect(self.stopped)
        self.leave_button.clicked.connect(self.reject)
        self.save_button.clicked.connect(self.confirm)

    def _form_chosen(self, form: str) -> None:
        words = {
            HTML: say("One file with photos and charts inside. It opens in any browser, on a phone too."),
            PDF: say("Two to four pages to read, to send or to print."),
        }
        self.form_label.setText(words[form])
        self.paper_field.setVisible(form == PDF)

    def _allow(self, allowed: bool) -> None:
        for part in self._parts:
            part.setEnabled(allowed)
        self.save_button.setEnabled(allowed)


def _box(words: str, name: str, *, on: bool) -> QCheckBox:
    box = QCheckBox(words)
    box.setObjectName(name)
    box.setChecked(on)
    return box
