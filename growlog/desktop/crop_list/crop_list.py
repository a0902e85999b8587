"""The rail at the left: growing crops, cleared ones, what is due, and a way to a new crop."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QLayout, QMenu, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from growlog.desktop.crop_list.crop_card import CropCard
from growlog.desktop.crop_list.due_list import DueList
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Button, EmptyState, Ground, SectionTitle
from growlog.desktop.look.widgets.emptied import empty_layout
from growlog.services.crops import CropSummary
from growlog.words import say

_WIDTH_PX = 220
_NARROW_PX = 180


class CropList(Ground):
    """Shows the crops and says which one is wanted, and what for."""

    crop_chosen = Signal(str)
    new_crop_wanted = Signal()
    correct_wanted = Signal(str)
    clear_wanted = Signal(str)
    reopen_wanted = Signal(str)
    remove_wanted = Signal(str)
    review_wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__("rail")
        self.setObjectName("cropList")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        self._cards: list[CropCard] = []
        self._chosen_id = ""
        self.menu: QMenu | None = None
        self._writable = True
        self.empty = EmptyState(say("No crop yet. Start with one that is growing."), say("New crop…"))
        self._content = QWidget()
        self._content.setObjectName("scrolled")
        self._column = QVBoxLayout(self._content)
        self.due = DueList()
        self.new_button = Button(say("New crop…"), name="newCrop")
        self._place()
        self.new_button.clicked.connect(self._new_crop)
        self.empty.chosen.connect(self._new_crop)
        self.due.height_changed.connect(self._fit_due)

    def set_writable(self, is_writable: bool) -> None:
        """Whether crops can be added and changed; where not, no form is offered that could only be refused."""
        self._writable = is_writable
        self.new_button.setEnabled(is_writable)
        self.empty.button.setEnabled(is_writable)

    def show_crops(self, crops: Sequence[CropSummary], chosen_id: str) -> None:
        """The crops in their order, and the one on the board."""
        focused = next((card.crop_id for card in self._cards if card.hasFocus()), None)
        empty_layout(self._column)
        self._chosen_id = chosen_id
        self._cards = [CropCard(summary, summary.crop.id == chosen_id) for summary in crops]
        self._add_section(say("Growing"), [card for card in self._cards if card.summary.crop.growing])
        self._add_section(say("Cleared"), [card for card in self._cards if not card.summary.crop.growing])
        self._column.addStretch(1)
        self.due.setVisible(any(summary.crop.growing for summary in crops))
        self.empty.setVisible(not crops)
        self._scroll.setVisible(bool(crops))
        self.new_button.setVisible(bool(crops))
        self._focus(focused)

    def show_chosen(self, crop_id: str) -> None:
        """Another crop is on the board."""
        self._chosen_id = crop_id
        for card in self._cards:
            card.set_chosen(card.crop_id == crop_id)

    def cards(self) -> list[CropCard]:
        """The cards from top to bottom."""
        growing = [card for card in self._cards if card.summary.crop.growing]
        return growing + [card for card in self._cards if not card.summary.crop.growing]

    def sizeHint(self) -> QSize:
        """As wide as its words want, within reason."""
        return QSize(self._wanted_width(), 400)

    def minimumSizeHint(self) -> QSize:
        """It can be made narrower; long names then end in an ellipsis."""
        return QSize(max(_NARROW_PX, current().px(130)), 200)

    def _wanted_width(self) -> int:
        return min(current().px(_WIDTH_PX), 340)

    def _place(self) -> None:
        self._column.setContentsMargins(0, 0, 8, 0)
        self._column.setSpacing(4)
        self._column.setSizeConstraint(QLayout.SizeConstraint.SetMinAndMaxSize)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.setWidget(self._content)
        foot = QVBoxLayout()
        foot.setContentsMargins(6, 0, 8, 0)
        foot.setSpacing(8)
        foot.addWidget(self.due)
        foot.addWidget(self.new_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(4, 16, 0, 12)
        column.setSpacing(12)
        column.addWidget(self._scroll, 1)
        column.addWidget(self.empty, 1)
        column.addLayout(foot)

    def _add_section(self, title: str, cards: Sequence[CropCard]) -> None:
        if not cards:
            return
        label = SectionTitle(title)
        label.setContentsMargins(16, 4, 0, 4)
        self._column.addWidget(label)
        for card in cards:
            card.pressed.connect(self._choose)
            card.step_wanted.connect(self._step)
            card.menu_wanted.connect(self._open_menu)
            self._column.addWidget(card)
        self._column.addSpacing(8)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What is due takes half of the rail at most; the rest of it is scrolled."""
        super().resizeEvent(event)
        self._fit_due()

    def _fit_due(self) -> None:
        self.due.setFixedHeight(min(self.due.natural_height(), max(self.height() // 2, 120)))

    def _focus(self, crop_id: str | None) -> None:
        for card in self._cards:
            if card.crop_id == crop_id:
                card.setFocus()

    def _choose(self, crop_id: str) -> None:
        self.show_chosen(crop_id)
        self._focus(crop_id)
        self.crop_chosen.emit(crop_id)

    def _step(self, crop_id: str, step: int) -> None:
        cards = self.cards()
        place = next(i for i, card in enumerate(cards) if card.crop_id == crop_id) + step
        if 0 <= place < len(cards):
            cards[place].setFocus()
            self._scroll.ensureWidgetVisible(cards[place])
            self._choose(cards[place].crop_id)

    def _open_menu(self, crop_id: str, place: QPoint) -> None:
        card = next(card for card in self._cards if card.crop_id == crop_id)
        self.menu = QMenu(self)
        self.menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._add_action(say("Crop review…"), "review", partial(self.review_wanted.emit, crop_id))
        self._add_action(say("Correct…"), "correct", partial(self.correct_wanted.emit, crop_id))
        if card.summary.crop.growing:
            self._add_action(say("Clear…"), "clear", partial(self.clear_wanted.emit, crop_id))
        else:
            self._add_action(say("Grow it on"), "reopen", partial(self.reopen_wanted.emit, crop_id))
        self.menu.addSeparator()
        self._add_action(say("Remove…"), "remove", partial(self.remove_wanted.emit, crop_id))
        self.menu.popup(place)

    def _add_action(self, words: str, name: str, slot: Callable[[], None]) -> None:
        if self.menu is not None:
            action = self.menu.addAction(words)
            action.setObjectName(name)
            action.setEnabled(self._writable or name == "review")
            action.triggered.connect(slot)

    def _new_crop(self) -> None:
        self.new_crop_wanted.emit()
