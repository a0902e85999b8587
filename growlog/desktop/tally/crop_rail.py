"""The rail of growing crops: one large row each, chosen by its key or a click; below, what was tallied so far."""

from functools import partial

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QPushButton, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from growlog.desktop.look.marks import paint_mark
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import ElidedLabel, Ground, SectionTitle, TextLabel
from growlog.desktop.tally.keys import crop_key
from growlog.desktop.tally.tally_model import TallyModel
from growlog.services.tally import TallyCrop, entries_of
from growlog.services.tally.wording import crop_line
from growlog.words import say

_WIDTH_PX = 204
_MARK_PX, _GAP_PX = 11, 4


class DoneMarks(QWidget):
    """The marks of the kinds of entries that a crop will get."""

    def __init__(self) -> None:
        super().__init__()
        self.kinds: list[str] = []
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_kinds(self, kinds: list[str]) -> None:
        """Other kinds."""
        self.kinds = kinds
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """One after the other."""
        side = current().px(_MARK_PX)
        return QSize((side + _GAP_PX) * len(self.kinds), side)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws them."""
        look, painter = current(), QPainter(self)
        side = look.px(_MARK_PX)
        for place, kind in enumerate(self.kinds):
            middle = QPointF(_GAP_PX + side / 2 + place * (side + _GAP_PX), self.height() / 2)
            paint_mark(painter, kind, middle, side, look.palette)
        painter.end()


class CropRow(QPushButton):
    """Name, kind and plant age, its key, and the marks of what was tallied at it."""

    def __init__(self, row: TallyCrop, key: str) -> None:
        super().__init__()
        self.crop_id = row.crop_id
        self.setObjectName(f"crop.{row.name}")
        self.setProperty("role", "rail-row")
        self.setCheckable(True)
        self.setAutoDefault(False)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.name_label = ElidedLabel(row.name, "heading")
        self.key_label = TextLabel(key, "key")
        self._about = row.cannot or say("{species}, day {age}", species=row.species, age=row.age_days)
        self.about_label = ElidedLabel(self._about, "small")
        self.marks = DoneMarks()
        self._spoken = ", ".join(part for part in (row.name, self._about, key) if part)
        grid = self._grid = QGridLayout(self)
        grid.setContentsMargins(12, 8, 10, 8)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(0, 1)
        grid.addWidget(self.name_label, 0, 0)
        grid.addWidget(self.key_label, 0, 1, Qt.AlignmentFlag.AlignRight)
        grid.addWidget(self.about_label, 1, 0)
        grid.addWidget(self.marks, 1, 1, Qt.AlignmentFlag.AlignRight)
        for label in (self.name_label, self.key_label, self.about_label, self.marks):
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def show_state(self, chosen: bool, done: str, kinds: list[str], open_question: bool) -> None:
        """Whether it is in hand, what was tallied, and whether something of it waits for an answer."""
        self.setChecked(chosen)
        self.marks.show_kinds(kinds)
        waits = say("a question is open") if open_question else ""
        self.about_label.setText(waits or self._about)
        self.about_label.set_tone("problem" if waits else "")
        self.setAccessibleName(". ".join(part for part in (self._spoken, done, waits) if part))

    def sizeHint(self) -> QSize:
        """As high as its two lines."""
        return QSize(current().px(_WIDTH_PX), self._grid.sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """As high as asked, as narrow as the rail is."""
        return QSize(44, self.sizeHint().height())


class CropRail(Ground):
    """The rows, and below them a line for each touched crop."""

    crop_chosen = Signal(str)

    def __init__(self, model: TallyModel) -> None:
        super().__init__("rail")
        self.setObjectName("cropRail")
        self._model = model
        self.rows: list[CropRow] = []
        self._made_for: list[TallyCrop] = []
        inner = QWidget()
        inner.setObjectName("scrolled")
        self._column = QVBoxLayout(inner)
        self._column.setContentsMargins(10, 12, 10, 12)
        self._column.setSpacing(6)
        self._title = SectionTitle(say("So far"))
        self._summary = TextLabel("", "small", wraps=True)
        self._column.addSpacing(8)
        self._column.addWidget(self._title)
        self._column.addWidget(self._summary)
        self._column.addStretch(1)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(inner)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(scroll)
        self._scroll = scroll
        model.changed.connect(self.show_tally)
        theme_signal().changed.connect(self._fit)
        self._fit()
        self.show_tally()

    def show_tally(self) -> None:
        """Draws what the model holds."""
        model = self._model
        entries = entries_of(model.tally)
        if self._made_for != model.crops:
            self._make_rows()
        summary = []
        for row in self.rows:
            done = crop_line(model.tally.of(row.crop_id))
            waits = any(p.asks for p in model.problems(row.crop_id))
            kinds = list(dict.fromkeys(e.kind for e in entries if e.owner.id == row.crop_id))
            row.show_state(row.crop_id == model.tally.chosen, done, kinds, waits)
            if done:
                summary.append(f"{model.name_of(row.crop_id)}\n{done}")
            if row.isChecked():
                self._scroll.ensureWidgetVisible(row, 0, 8)
        self._title.setVisible(bool(summary))
        self._summary.setText("\n\n".join(summary))

    def _make_rows(self) -> None:
        for row in self.rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self._made_for = list(self._model.crops)
        self.rows = [CropRow(row, crop_key(place)) for place, row in enumerate(self._made_for)]
        for place, row in enumerate(self.rows):
            row.clicked.connect(partial(self._clicked, row.crop_id))
            self._column.insertWidget(place, row)

    def _clicked(self, crop_id: str, _checked: bool = False) -> None:
        self.crop_chosen.emit(crop_id)
        self.show_tally()  # a choice that was held back leaves the row up

    def _fit(self) -> None:
        look = current()
        self.setFixedWidth(min(look.px(_WIDTH_PX + 20), 300))
