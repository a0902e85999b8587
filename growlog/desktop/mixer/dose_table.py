"""The doses of the mixer, line by line, and the menu that adds a product."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QMenu, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Button, TextLabel
from growlog.desktop.mixer.dose_line import DoseLine
from growlog.services.mixer import DoseView, MixerDose, line_for
from growlog.services.shelf import ShelfItem, ready_products
from growlog.words import say

_NARROW_PX = 540


class DoseTable(QWidget):
    """Holds the dose lines. `doses_changed` comes with each key; the figures are put in by `show_views`."""

    doses_changed = Signal()
    shelf_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("doseTable")
        self.lines: list[DoseLine] = []
        self._made = 0
        self._narrow = False
        self._headings = [
            TextLabel(t, "field-label") for t in (say("Product"), say("Dose"), "", say("For the tank"), say("Left"))
        ]
        for heading in self._headings[3:]:
            heading.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.empty_label = TextLabel(say("No product yet: the tank holds only water."), "", "mute", wraps=True)
        self.add_menu = QMenu(self)
        self.add_menu.setToolTipsVisible(True)
        self.add_button = Button(say("Add a product…"), "link", name="addProduct")
        self.cost_label = TextLabel("", "", "mute", wraps=True)
        self.cost_label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._place()
        self.add_button.clicked.connect(self._open_menu)
        theme_signal().changed.connect(self._fit)

    def doses(self) -> tuple[MixerDose, ...]:
        """The doses as they stand."""
        return tuple(line.dose() for line in self.lines)

    def show_doses(self, doses: Sequence[MixerDose]) -> None:
        """Other lines in place of those there are."""
        for line in self.lines:
            _put_away(line)
        self.lines = [self._line(dose) for dose in doses]
        self._lay_out()

    def show_views(self, views: Sequence[DoseView], cost: str) -> None:
        """What the mixer found of each line, and what the tank costs."""
        for line, view in zip(self.lines, views, strict=False):
            line.show_view(view)
        self.cost_label.setText(cost)

    def offer(self, items: Sequence[ShelfItem]) -> None:
        """What can be added: the shelf, then the ready salts."""
        self.add_menu.clear()
        for item in items:
            self._offer(self.add_menu, item.product.name, line_for(item.product))
        salts = self.add_menu.addMenu(say("Ready salts, by their formula"))
        for ready in ready_products():
            if not ready.needs_strength:
                action = self._offer(salts, ready.product.name, MixerDose(ready.product.name, 0.0, "g/L"))
                action.setToolTip(ready.note)
        salts.setToolTipsVisible(True)
        self.add_menu.addSeparator()
        self.add_menu.addAction(say("To the shelf…")).triggered.connect(self.shelf_wanted)

    def add(self, dose: MixerDose) -> None:
        """Another line; the cursor goes into its dose."""
        self.lines.append(self._line(dose))
        self._lay_out()
        self.lines[-1].amount.setFocus()
        self.lines[-1].amount.line.selectAll()
        self.doses_changed.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Puts products above their figures where the lines would not fit."""
        super().resizeEvent(event)
        self._fit()

    def _place(self) -> None:
        self._place_widget = QWidget()
        self._grid = QGridLayout(self._place_widget)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(0, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.add_button)
        foot.addWidget(self.cost_label, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self._place_widget)
        column.addWidget(self.empty_label)
        column.addLayout(foot)
        self._lay_out()

    def _line(self, dose: MixerDose) -> DoseLine:
        line = DoseLine(dose, self._made, self._place_widget)
        self._made += 1
        line.changed.connect(self.doses_changed)
        line.removed.connect(self._take_out)
        return line

    def _take_out(self, line: DoseLine) -> None:
        self.lines.remove(line)
        _put_away(line)
        self._lay_out()
        self.add_button.setFocus()
        self.doses_changed.emit()

    def _lay_out(self) -> None:
        while self._grid.count():
            self._grid.takeAt(0)
        for column, heading in enumerate(self._headings):
            self._grid.addWidget(heading, 0, column)
            heading.setVisible(bool(self.lines) and not (self._narrow and column == 0))
        for number, line in enumerate(self.lines):
            line.lay_into(self._grid, 1 + number * 4, self._narrow)
            for widget in line.widgets():
                if widget is not line.message:
                    widget.show()
        self._place_widget.setVisible(bool(self.lines))
        self.empty_label.setVisible(not self.lines)
        before: QWidget | None = None
        for widget in [w for line in self.lines for w in (line.amount.line, line.unit_box, line.remove_button)]:
            if before is not None:
                QWidget.setTabOrder(before, widget)
            before = widget
        if before is not None:
            QWidget.setTabOrder(before, self.add_button)

    def _fit(self) -> None:
        narrow = self.width() < current().px(_NARROW_PX)
        if narrow != self._narrow:
            self._narrow = narrow
            self._lay_out()

    def _offer(self, menu: QMenu, name: str, dose: MixerDose) -> QAction:
        action = menu.addAction(name.replace("&", "&&"))
        action.setData(dose)
        action.triggered.connect(self._chosen)
        return action

    def _chosen(self) -> None:
        action = self.sender()
        if isinstance(action, QAction):
            self.add(action.data())

    def _open_menu(self) -> None:
        self.add_menu.popup(self.add_button.mapToGlobal(self.add_button.rect().bottomLeft()))


def _put_away(line: DoseLine) -> None:
    for widget in line.widgets():
        widget.hide()
        widget.deleteLater()
    line.deleteLater()
