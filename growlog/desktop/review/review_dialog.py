"""The crop review beside the board: it is read in the background and follows what is written."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import Banner, TextLabel
from growlog.desktop.pictures import Pictures
from growlog.desktop.review.note_dialog import NoteDialog
from growlog.desktop.review.quality_fields import QualityFields
from growlog.desktop.review.review_page import ReviewPage
from growlog.desktop.tall_dialog import TallDialog
from growlog.services.review.model import CropReview
from growlog.words import say

_WISHES = ("day_wanted", "photos_wanted", "decide_wanted", "correct_wanted", "remove_wanted", "what_if_wanted")


class ReviewDialog(TallDialog):
    """Shows a review once it was read; says what is wanted, writes nothing."""

    day_wanted = Signal(object)  # date
    photos_wanted = Signal()
    chart_shown = Signal(object)  # ChartMenu
    decide_wanted = Signal()
    correct_wanted = Signal(str)
    remove_wanted = Signal(str)
    what_if_wanted = Signal()
    quality_saved = Signal(object)  # dict[str, str]
    share_wanted = Signal()
    print_wanted = Signal()
    time_lapse_wanted = Signal()
    read_again = Signal()

    def __init__(self, name: str, pictures: Pictures, writable: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(name, say("crop review"), parent, 1000)
        self.setObjectName("review")
        self._pictures = pictures
        self._writable = writable
        self.review: CropReview | None = None
        self.page: ReviewPage | None = None
        self.note: NoteDialog | None = None
        self.quality = QualityFields()
        self.quality.setEnabled(writable)
        self.quality.hide()
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.waiting_label = TextLabel(say("Putting the review together…"), "subtitle")
        self.body.addWidget(self.banner)
        self.body.addWidget(self.waiting_label)
        self.body.addWidget(self.quality)
        self.body.addStretch(1)
        self.time_lapse_button = self.add_button(say("Time-lapse…"), name="timeLapse", left=True)
        self.print_button = self.add_button(say("Print…"), name="print")
        self.share_button = self.add_button(say("Share…"), "", "share")
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self._connect()
        self._allow()

    def show_review(self, review: CropReview, words: dict[str, str]) -> None:
        """A review as read, and the words of its quality; what is being typed and how far it is scrolled stay."""
        place = self.scroll_area.verticalScrollBar().value()
        self.review = review
        self.set_title(review.name, review.about)
        self.quality.show_words(words)
        self._put_page(ReviewPage(review, self._pictures, self.quality, writable=self._writable))
        self.quality.show()
        self.waiting_label.hide()
        self.banner.hide()
        self._allow()
        self.body.activate()
        self.scroll_area.verticalScrollBar().setValue(place)

    def say_problem(self, sentence: str) -> None:
        """What kept it from being read, with a way to try again."""
        self.waiting_label.hide()
        self.banner.show_message(sentence, "problem", say("Read again"))
        self.banner.show()

    def ask_note(self, number: int) -> None:
        """Opens a note on how a figure is worked out."""
        if self.review is None:
            return
        if self.note is None:
            self.note = NoteDialog(self.review.notes, number, self)
            self.note.destroyed.connect(self._note_gone)
        self.note.show_note(number)
        self.note.show()
        self.note.raise_()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The short tables stand beside each other where there is room."""
        super().resizeEvent(event)
        self._fit()

    def _put_page(self, page: ReviewPage) -> None:
        if self.page is not None:
            self.page.hide()
            self.body.removeWidget(self.page)
            self.page.deleteLater()
        self.page = page
        self.chart_shown.emit(page.chart_menu)
        self.body.insertWidget(2, page)
        for wish in _WISHES:
            getattr(page, wish).connect(getattr(self, wish))
        page.note_asked.connect(self.ask_note)
        self._fit()

    def _fit(self) -> None:
        if self.page is not None:
            self.page.fit(self.scroll_area.viewport().width() - 48)

    def _connect(self) -> None:
        self.quality.saved.connect(self.quality_saved)
        self.banner.action_chosen.connect(self._try_again)
        self.time_lapse_button.clicked.connect(self.time_lapse_wanted)
        self.print_button.clicked.connect(self.print_wanted)
        self.share_button.clicked.connect(self.share_wanted)
        self.close_button.clicked.connect(self.close)

    def _allow(self) -> None:
        read = self.review is not None
        self.share_button.setEnabled(read)
        self.print_button.setEnabled(read)
        self.time_lapse_button.setEnabled(self.review is not None and bool(self.review.photos))

    def _try_again(self) -> None:
        self.banner.hide()
        self.waiting_label.setVisible(self.review is None)
        self.read_again.emit()

    def _note_gone(self) -> None:
        self.note = None
