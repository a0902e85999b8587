"""The whole review below each other: lead, photos, curve, tables, what happened, quality, decision."""

from collections.abc import Iterator

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.charts import ChartMenu
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Button, FlowLayout, Rule, TextLabel
from growlog.desktop.pictures import Pictures
from growlog.desktop.review.curve_view import CurveView
from growlog.desktop.review.decision_card import DecisionCard
from growlog.desktop.review.happened_part import HappenedPart
from growlog.desktop.review.line_table import LineTable
from growlog.desktop.review.quality_fields import QualityFields
from growlog.desktop.review.story_tile import StoryTile
from growlog.desktop.review.tile_grid import TileGrid
from growlog.desktop.review.wording import beside_line, earlier_title
from growlog.services.review.model import CropReview, StoryPhoto
from growlog.words import say

_FIRST_TABLES = ("gave", "took")
_NARROW_PX = 700
_LEAD_PX = 16


class LeadText(TextLabel):
    """The sentences after the first: as large as reads well, but not bold."""

    def __init__(self, text: str) -> None:
        super().__init__(text, wraps=True)
        self.setObjectName("lead")
        self._dress()
        theme_signal().changed.connect(self._dress)

    def _dress(self) -> None:
        self.setFont(current().font(_LEAD_PX))


class ReviewPage(QWidget):
    """Built anew for each review; says what is wanted."""

    day_wanted = Signal(object)  # date
    photos_wanted = Signal()
    note_asked = Signal(int)
    decide_wanted = Signal()
    correct_wanted = Signal(str)
    remove_wanted = Signal(str)
    what_if_wanted = Signal()

    def __init__(self, review: CropReview, pictures: Pictures, quality: QualityFields, *, writable: bool) -> None:
        """quality: kept by the caller, so that words which are being typed outlive a new reading."""
        super().__init__()
        self.setObjectName("reviewPage")
        self.review = review
        self._pictures = pictures
        self._writable = writable
        self.tables: dict[str, LineTable] = {}
        self.tiles = TileGrid()
        self.curve = CurveView()
        self.chart_menu = ChartMenu(self.curve.data)
        self.decision = DecisionCard(review.decisions, growing=review.growing, writable=writable)
        self.happened = HappenedPart(say("What happened"), review.happened, say("Nothing out of the ordinary."))
        self.remarks = HappenedPart(say("Notes"), review.remarks, say("Nothing was noted."))
        self.photos_button = Button(say("Choose photos…"), "link", name="choosePhotos")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(20)
        self._pair = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._fill(quality)
        self._connect()

    def fit(self, width: int) -> None:
        """The two short tables stand beside each other where there is room."""
        wide = width >= current().px(_NARROW_PX)
        self._pair.setDirection(QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom)

    def _fill(self, quality: QualityFields) -> None:
        self._column.addLayout(self._lead())
        self._column.addLayout(self._story())
        self._column.addLayout(self._yield())
        self._column.addLayout(self._pair)
        self._pair.setSpacing(32)
        for key in _FIRST_TABLES:
            self._pair.addWidget(self._table(key, 1), 1, Qt.AlignmentFlag.AlignTop)
        self._column.addWidget(self.happened)
        self._column.addWidget(self.decision)
        self._column.addWidget(Rule())
        for part in self._sections():
            self._column.addWidget(part)
        self._column.addWidget(quality)
        self._column.addWidget(self._trying())
        self._column.addWidget(self.remarks)

    def _lead(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(4)
        lead = list(self.review.lead) or [say("Nothing was written of this crop yet.")]
        column.addWidget(TextLabel(lead[0], "figure", wraps=True))
        if lead[1:]:
            column.addWidget(LeadText(" ".join(lead[1:])))
        return column

    def _story(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(6)
        tiles = [StoryTile(photo, self._pictures) for photo in self.review.photos]
        for tile in tiles:
            tile.chosen.connect(self._photo_chosen)
        self.tiles.show_tiles(tiles)
        column.addWidget(self.tiles)
        row = FlowLayout()
        note = TextLabel(self.review.photo_note, "", "mute")
        note.setVisible(bool(self.review.photo_note))
        row.addWidget(note)
        row.addWidget(self.photos_button)
        self.photos_button.setVisible(bool(self.review.photos))
        self.photos_button.setEnabled(self._writable)
        column.addLayout(row)
        return column

    def _yield(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(6)
        row = QHBoxLayout()
        row.setSpacing(16)
        row.addWidget(TextLabel(say("Cumulative marketable yield by plant age"), "heading", wraps=True), 1)
        beside = TextLabel(beside_line(self.review), "small", wraps=True)
        beside.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(beside, 1)
        row.addWidget(self.chart_menu)
        self.curve.show_review(self.review)
        column.addLayout(row)
        column.addWidget(self.curve)
        return column

    def _table(self, key: str, beside: int | None = None) -> LineTable:
        section = self.review.section(key)
        names = [earlier_title(crop) for crop in self.review.earlier[:beside]]
        packet = any(line.packet for line in section.lines)
        table = LineTable(section, names, packet=packet)
        table.note_asked.connect(self.note_asked)
        self.tables[key] = table
        return table

    def _sections(self) -> Iterator[QWidget]:
        for section in self.review.sections:
            if section.key not in _FIRST_TABLES:
                yield self._table(section.key)

    def _trying(self) -> QWidget:
        part = QWidget()
        column = QVBoxLayout(part)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(TextLabel(say("What was being tried"), "heading"))
        tried = self.review.trying
        words = tried or say("Nothing was said of it. It stands in the form of the crop.")
        column.addWidget(TextLabel(words, "", "" if tried else "mute", wraps=True))
        return part

    def _connect(self) -> None:
        self.photos_button.clicked.connect(self.photos_wanted)
        self.happened.day_wanted.connect(self.day_wanted)
        self.remarks.day_wanted.connect(self.day_wanted)
        self.decision.decide_wanted.connect(self.decide_wanted)
        self.decision.correct_wanted.connect(self.correct_wanted)
        self.decision.remove_wanted.connect(self.remove_wanted)
        self.decision.what_if_wanted.connect(self.what_if_wanted)

    def _photo_chosen(self, photo: StoryPhoto) -> None:
        self.day_wanted.emit(photo.day)
