"""All figures of a crop in one searchable table; the chosen one is explained beside it."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from growlog.calculations.explained_figure import Figure
from growlog.desktop.explanation import ExplanationPanel
from growlog.desktop.explanation.figure_words import range_text, sure_text, value_text
from growlog.desktop.look.widgets import (
    Banner,
    Card,
    ChoiceField,
    FlowLayout,
    FormGrid,
    SectionTitle,
    TextField,
    TextLabel,
)
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.desktop.tall_dialog import TallDialog
from growlog.words import say, say_count


@dataclass(frozen=True)
class NamedFigure:
    """A figure with its name and the name of its family, both as they are shown."""

    name: str
    family: str
    figure: Figure


class FiguresDialog(TallDialog):
    """Shows the figures once they were worked out."""

    crop_wanted = Signal(str)

    def __init__(self, crops: Sequence[tuple[str, str]], crop_id: str, parent: QWidget | None = None) -> None:
        """crops: id and name of those that can be chosen."""
        super().__init__(say("All figures"), "", parent, 1040)
        self.setObjectName("figures")
        self._figures: tuple[NamedFigure, ...] = ()
        self.search_field = TextField("", placeholder=say("Search"), name="search")
        self.search_field.line.setAccessibleName(say("Search the figures"))
        self.family_field = ChoiceField("", [], None, say("all sorts"), "family")
        self.crop_field = ChoiceField(say("Crop"), crops, crop_id, name="crop", beside=True)
        self.banner = Banner()
        self.waiting_label = TextLabel(say("Working them out…"), "subtitle")
        columns = [Column(say("Figure")), Column(say("Value"), True, 130)]
        self.table = PlainTable(columns, say("All figures"), "figures.table", 15)
        self.count_label = TextLabel("", "small")
        self.name_label = TextLabel("", "heading", wraps=True)
        self.panel = ExplanationPanel()
        self.panel_card = Card()
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self._fill_body()
        self._connect()
        self._show_parts()
        self.search_field.setFocus()

    def show_figures(self, figures: Sequence[NamedFigure]) -> None:
        """The figures of a crop; search and sort stay."""
        self._figures = tuple(figures)
        families = dict.fromkeys(f.family for f in figures)
        self.family_field.set_choices([(family, family) for family in families], self.family_field.value())
        self.banner.hide()
        self._filter()
        self._show_parts()

    def say_problem(self, sentence: str) -> None:
        """Why there are none."""
        self._figures = ()
        self.banner.show_message(sentence, "problem")
        self.banner.show()
        self._filter()
        self.waiting_label.hide()

    def shown(self) -> list[str]:
        """The keys of what the search leaves, from the top."""
        return [row.key for row in self.table.rows()]

    def _fill_body(self) -> None:
        row = FlowLayout()
        for widget in (self.search_field, self.family_field):
            row.addWidget(widget)
        row.add_gap()
        row.addWidget(self.crop_field)
        left, right = QWidget(), self.panel_card
        column = FormGrid(1, 300)
        both = FormGrid(2, 330)
        column.add(self.count_label, self.table)
        left = column
        right.body.addWidget(self.name_label)
        right.body.addWidget(SectionTitle(say("How this is worked out")))
        right.body.addWidget(self.panel)
        both.add(left, right)
        self.both = both
        self.body.addLayout(row)
        self.body.addWidget(self.banner)
        self.body.addWidget(self.waiting_label, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(both)
        self.body.addStretch(1)
        self.banner.hide()

    def _connect(self) -> None:
        self.search_field.value_changed.connect(self._filter)
        self.family_field.value_changed.connect(self._filter)
        self.crop_field.value_changed.connect(self._crop_chosen)
        self.table.row_chosen.connect(self._explain)
        self.close_button.clicked.connect(self.close)
        self.banner.closed.connect(self.banner.hide)

    def _filter(self) -> None:
        wanted, family = self.search_field.value().casefold().split(), self.family_field.value()
        found = [f for f in self._figures if _fits(f, wanted) and family in (None, f.family)]
        self.table.show_rows([_row(f) for f in found])
        self.count_label.setText(say_count("{n} figure", "{n} figures", len(found)))
        if found and not self.table.chosen_key():
            self.table.selectRow(0)
        self.panel_card.setVisible(bool(found))

    def _explain(self, key: str) -> None:
        named = next((f for f in self._figures if f.figure.key == key), None)
        if named is not None:
            self.name_label.setText(named.name)
            self.panel.show_figure(named.figure)

    def _show_parts(self) -> None:
        known = bool(self._figures)
        self.waiting_label.setVisible(not known)
        self.both.setVisible(known)

    def _crop_chosen(self) -> None:
        self.crop_wanted.emit(self.crop_field.value() or "")


def _fits(named: NamedFigure, wanted: Sequence[str]) -> bool:
    text = f"{named.name} {named.family} {named.figure.key} {named.figure.method}".casefold()
    return all(word in text for word in wanted)


def _row(named: NamedFigure) -> Row:
    figure = named.figure
    tip = ", ".join(part for part in (range_text(figure), sure_text(figure.sure)) if part)
    cells = (named.name, value_text(figure.value, figure.unit if figure.value is not None else ""))
    return Row(figure.key, cells, mute=figure.value is None, tip=tip)
