"""Two days of a crop compared by their photos: side by side, or as a swipe."""

from collections.abc import Callable, Sequence
from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.day_sheet.age_field import AgeField
from growlog.desktop.day_sheet.compare_panes import SIDE_BY_SIDE, SWIPE, ComparePanes
from growlog.desktop.day_sheet.day_words import age_and_day
from growlog.desktop.day_sheet.shown_picture import ShownPicture
from growlog.desktop.look.widgets import Button, ElidedLabel, Ground, SegmentSwitch
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.pictures import Pictures
from growlog.services.photo_uses import DayPhoto
from growlog.words import say


class CompareView(QDialog):
    """Stands beside the board. ages: those with a photo; photo_of_age and date_of look one of them up."""

    def __init__(
        self,
        pictures: Pictures,
        photo_of_age: Callable[[int], DayPhoto | None],
        ages: Sequence[int],
        date_of: Callable[[int], date],
        left_age: int,
        right_age: int,
        crop_name: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setObjectName("compareView")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(say("Compare days"))
        self._photo_of_age = photo_of_age
        self._date_of = date_of
        self.left = ShownPicture(pictures, self)
        self.right = ShownPicture(pictures, self)
        self.panes = ComparePanes(self.left, self.right)
        modes = [(SIDE_BY_SIDE, say("side by side")), (SWIPE, say("swipe"))]
        self.mode_switch = SegmentSwitch(modes, SIDE_BY_SIDE, say("How the photos are laid"))
        self.left_field = AgeField(ages, left_age, say("Day at the left"))
        self.right_field = AgeField(ages, right_age, say("Day at the right"))
        self.left_title = ElidedLabel("", "heading")
        self.right_title = ElidedLabel("", "heading")
        self.close_button = Button(say("Close"), name="close")
        self.crop_label = ElidedLabel(crop_name, "subtitle")
        self._place()
        self._connect()
        self._show_left(left_age)
        self._show_right(right_age)
        self.panes.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_ages(self, left_age: int, right_age: int) -> None:
        """Other days on both sides."""
        self.left_field.setValue(left_age)
        self.right_field.setValue(right_age)

    def _place(self) -> None:
        header = Ground("header-bar")
        head = QHBoxLayout(header)
        head.setContentsMargins(24, 12, 24, 12)
        head.setSpacing(12)
        head.addWidget(TextLabel(say("Compare days"), "page-title"))
        head.addWidget(self.crop_label, 1)
        head.addWidget(self.mode_switch)
        head.addWidget(self.close_button)
        body = QVBoxLayout()
        body.setContentsMargins(24, 16, 24, 20)
        body.setSpacing(12)
        body.addLayout(self._title_row())
        body.addWidget(self.panes, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(header)
        column.addLayout(body, 1)

    def _title_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(12)
        for field, title in ((self.left_field, self.left_title), (self.right_field, self.right_title)):
            half = QHBoxLayout()
            half.setSpacing(10)
            half.addWidget(title, 1)
            half.addWidget(field)
            row.addLayout(half, 1)
        return row

    def _connect(self) -> None:
        self.left_field.age_chosen.connect(self._show_left)
        self.right_field.age_chosen.connect(self._show_right)
        self.mode_switch.value_changed.connect(self.panes.set_mode)
        self.close_button.clicked.connect(self.close)

    def _show_left(self, age: int) -> None:
        self.left_title.setText(age_and_day(age, self._date_of(age)))
        self.left.follow(self._photo_of_age(age))

    def _show_right(self, age: int) -> None:
        self.right_title.setText(age_and_day(age, self._date_of(age)))
        self.right.follow(self._photo_of_age(age))
