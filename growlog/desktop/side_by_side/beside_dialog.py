"""The dialog that lays crops side by side."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QSlider, QStackedWidget, QVBoxLayout, QWidget

from growlog.calculations.explained_figure import Figure
from growlog.desktop.charts import ChartData, ChartMenu, ChartView
from growlog.desktop.explanation import show_explanation
from growlog.desktop.look.widgets import EmptyState, FlowLayout, SectionTitle, SegmentSwitch, TextLabel
from growlog.desktop.pictures import Pictures
from growlog.desktop.side_by_side.beside_chart import MOST_CROPS, beside_chart
from growlog.desktop.side_by_side.facts_view import FactsView
from growlog.desktop.side_by_side.photos_row import PhotosRow
from growlog.desktop.tall_dialog import TallDialog
from growlog.services.side_by_side.beside import CropBeside, not_a_trial
from growlog.services.side_by_side.facts_table import facts_csv, facts_table
from growlog.services.side_by_side.series import Aligned, Counted, Per
from growlog.words import say

_SHORTLY_MS = 60


class BesideDialog(TallDialog):
    """Emits which crops are wanted, and is told by show_crops. choices: id and name of all crops."""

    crops_wanted = Signal(list)
    table_wanted = Signal(str)  # CSV text to save

    def __init__(
        self, choices: Sequence[tuple[str, str]], chosen: Sequence[str], pictures: Pictures,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(say("Side by side"), "", parent, 900)
        self.setObjectName("besideDialog")
        self.crops: list[CropBeside] = []
        self.boxes = {crop_id: QCheckBox(name) for crop_id, name in choices}
        for crop_id, box in self.boxes.items():
            box.setChecked(crop_id in chosen)
        self.page = SegmentSwitch(
            [("curves", say("Curves")), ("photos", say("Photos")), ("facts", say("All facts"))], "curves",
            say("What is laid side by side"),
        )  # fmt: skip
        self.counted = SegmentSwitch(
            [("weight", say("weight")), ("fruit", say("count")), ("cost", say("cost per kg"))], "weight",
            say("The curves show"),
        )  # fmt: skip
        self.per = SegmentSwitch(
            [("crop", say("the crop")), ("plant", say("a plant")), ("floor", say("a m²"))], "crop", say("Held against")
        )
        self.aligned = SegmentSwitch(
            [("age", say("day 0")), ("first-pick", say("first pick"))], "age", say("Aligned by")
        )
        self.chart = ChartView("besideChart", 230)
        self.chart_menu = ChartMenu(self._chart_data)
        self.notes = TextLabel("", "small", "mute", wraps=True)
        self.photos = PhotosRow(pictures)
        self.age = QSlider(Qt.Orientation.Horizontal)
        self.age_label = TextLabel("", "strong")
        self.facts = FactsView()
        self.empty = EmptyState(say("Choose two crops or more."), name="noCrops")
        self.save_button = self.add_button(say("Save the table…"), name="saveTable", left=True)
        self.close_button = self.add_button(say("Close"), name="close")
        self.set_note(not_a_trial())
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_SHORTLY_MS)
        self._lay_out()
        self._connect()
        self._limit_boxes()

    def chosen(self) -> list[str]:
        """The ids of the crops that are ticked."""
        return [crop_id for crop_id, box in self.boxes.items() if box.isChecked()]

    def show_crops(self, crops: Sequence[CropBeside]) -> None:
        """What was read of the ticked crops."""
        self.crops = list(crops)
        enough = len(self.crops) >= 2
        self.empty.setVisible(not enough)
        self._parts.setVisible(enough)
        self.save_button.setEnabled(enough)
        if not enough:
            return
        last = max(c.last_age for c in self.crops)
        self.age.blockSignals(True)
        self.age.setRange(0, last)
        with_photo = [a for c in self.crops for a in c.photos]
        if not self.age.value() and with_photo:
            self.age.setValue(min(c.last_age for c in self.crops))
        self.age.blockSignals(False)
        self.photos.show_crops(self.crops, self.age.value())
        self._show_age(self.age.value())
        self.facts.show_rows([c.crop.name for c in self.crops], facts_table(self.crops))
        self._show_chart()

    def show_waiting(self) -> None:
        """The crops are being read."""
        self.empty.set_sentence(say("Choose two crops or more.") if len(self.chosen()) < 2 else say("Working it out…"))

    def show_failure(self) -> None:
        """They could not be read."""
        self.empty.set_sentence(say("This could not be worked out. The reason is in the program's log."))
        self.empty.show()

    def _chart_data(self) -> ChartData | None:
        if len(self.crops) < 2:
            return None
        return beside_chart(
            self.crops, Counted(self.counted.value()), Per(self.per.value()), Aligned(self.aligned.value())
        )

    def _show_chart(self) -> None:
        self.per.setEnabled(self.counted.value() != "cost")
        data = self._chart_data()
        self.chart.show_chart(data, say("None of these crops has a curve of this kind yet."))
        self.notes.setText("\n".join(data.notes[:-1]) if data is not None else "")
        self.notes.setVisible(bool(self.notes.text()))

    def _turn_page(self, page: str) -> None:
        self._pages.setCurrentIndex(("curves", "photos", "facts").index(page))
        self.chart_menu.setVisible(page == "curves")

    def _switched(self, _value: str) -> None:
        self._show_chart()

    def _show_age(self, age: int) -> None:
        self.age_label.setText(say("day {age}", age=age))
        self.photos.show_age(age)

    def _ticked(self, _on: bool) -> None:
        self._limit_boxes()
        self.show_waiting()
        self._timer.start()

    def _ask(self) -> None:
        self.crops_wanted.emit(self.chosen())

    def _limit_boxes(self) -> None:
        """As many crops as can be told apart."""
        full = len(self.chosen()) >= MOST_CROPS
        for box in self.boxes.values():
            box.setEnabled(box.isChecked() or not full)

    def _save_table(self) -> None:
        self.table_wanted.emit(facts_csv(self.crops, facts_table(self.crops)))

    def _explain(self, figures: list[Figure], names: list[str]) -> None:
        if figures:
            keyed = [_named(figure, number) for number, figure in enumerate(figures)]
            show_explanation(keyed, self, {f.key: name for f, name in zip(keyed, names, strict=True)})

    def _lay_out(self) -> None:
        ticks = FlowLayout()
        for box in self.boxes.values():
            ticks.addWidget(box)
        self.body.addWidget(SectionTitle(say("Crops")))
        self.body.addLayout(ticks)
        self.body.addWidget(self.empty)
        self._parts = QWidget()
        self.body.addWidget(self._parts, 1)
        column = _column(self._parts)
        top = QHBoxLayout()
        top.addWidget(self.page)
        top.addStretch(1)
        top.addWidget(self.chart_menu)
        column.addLayout(top)
        self._pages = QStackedWidget()
        for page in (self._curves_page(), self._photos_page(), self._facts_page()):
            self._pages.addWidget(page)
        column.addWidget(self._pages, 1)
        self._parts.hide()

    def _curves_page(self) -> QWidget:
        page = QWidget()
        column = _column(page)
        switches = FlowLayout()
        for words, switch in ((say("show"), self.counted), (say("of"), self.per), (say("from"), self.aligned)):
            switches.addWidget(_captioned(words, switch))
        column.addLayout(switches)
        column.addWidget(self.chart, 1)
        column.addWidget(self.notes)
        return page

    def _photos_page(self) -> QWidget:
        page = QWidget()
        column = _column(page)
        row = QHBoxLayout()
        row.addWidget(TextLabel(say("Photos of the same plant age"), "small", "mute"))
        self.age.setObjectName("plantAge")
        self.age.setAccessibleName(say("Plant age of the photos"))
        row.addWidget(self.age, 1)
        row.addWidget(self.age_label)
        column.addLayout(row)
        column.addWidget(self.photos, 1)
        return page

    def _facts_page(self) -> QWidget:
        page = QWidget()
        column = _column(page)
        words = say("★ marks the best where one way is better. A click on a title sorts; Enter explains a row.")
        column.addWidget(TextLabel(words, "small", "mute", wraps=True))
        column.addWidget(self.facts, 1)
        return page

    def _connect(self) -> None:
        for box in self.boxes.values():
            box.toggled.connect(self._ticked)
        self._timer.timeout.connect(self._ask)
        self.page.value_changed.connect(self._turn_page)
        for switch in (self.counted, self.per, self.aligned):
            switch.value_changed.connect(self._switched)
        self.age.valueChanged.connect(self._show_age)
        self.facts.explain_wanted.connect(self._explain)
        self.save_button.clicked.connect(self._save_table)
        self.close_button.clicked.connect(self.reject)


def _column(page: QWidget) -> QVBoxLayout:
    column = QVBoxLayout(page)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(10)
    return column


def _captioned(words: str, switch: SegmentSwitch) -> QWidget:
    part = QWidget()
    row = QHBoxLayout(part)
    row.setContentsMargins(0, 0, 16, 0)
    row.setSpacing(8)
    row.addWidget(TextLabel(words, "small", "mute"))
    row.addWidget(switch)
    return part


def _named(figure: Figure, number: int) -> Figure:
    """Figures of one kind are told apart by their crops."""
    return replace(figure, key=f"{figure.key} {number}")
