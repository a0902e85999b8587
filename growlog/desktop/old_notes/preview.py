"""The preview: which rows become what, and which stay out with their reasons."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QHeaderView, QTableView, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import FlowLayout, SectionTitle, SegmentSwitch, TextLabel, dress_table
from growlog.desktop.old_notes import wording
from growlog.desktop.old_notes.preview_model import ALL, BECOMES, DAY, IN, LINE, OUT, REMARK, PreviewModel
from growlog.services.old_notes.import_plan import ImportPlan, RowOutcome
from growlog.words import say


class LowTable(QTableView):
    """Asks for no more height than it must have; what is left over is shared out."""

    def sizeHint(self) -> QSize:
        """Its least height."""
        return QSize(super().sizeHint().width(), self.minimumHeight())


class Preview(QWidget):
    """A switch between all rows, those that go in and those that stay out, over one table."""

    def __init__(self) -> None:
        super().__init__()
        self._plan: ImportPlan | None = None
        self.model = PreviewModel()
        self.table = LowTable()
        self.table.setObjectName("preview")
        self.table.setAccessibleName(say("What the rows become"))
        self.table.setModel(self.model)
        self.switch = SegmentSwitch(
            [(ALL, say("All rows")), (IN, say("Go in")), (OUT, say("Stay out"))], ALL, say("Rows shown")
        )
        self.chosen_label = TextLabel("", "small", wraps=True)
        self._place()
        self.switch.value_changed.connect(self._show)
        self.table.selectionModel().currentRowChanged.connect(self._show_chosen)

    def show_plan(self, plan: ImportPlan | None) -> None:
        """Another plan; the sort of rows shown stays."""
        self._plan = plan
        going_in = 0 if plan is None else plan.count(RowOutcome.GOES_IN)
        out = 0 if plan is None else len(plan.refused)
        rows = 0 if plan is None else len(plan.rows)
        for key, words, n in ((ALL, say("All rows"), rows), (IN, say("Go in"), going_in), (OUT, say("Stay out"), out)):
            self.switch.button(key).setText(f"{words}  {n}")
        self._show()

    def _place(self) -> None:
        dress_table(self.table)
        self.table.setMinimumHeight(current().px(120))
        self.table.setTextElideMode(Qt.TextElideMode.ElideRight)
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for column in (BECOMES, REMARK):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)
        for column, width in ((LINE, 56), (DAY, 170)):
            self.table.setColumnWidth(column, current().px(width))
        top = FlowLayout()
        top.addWidget(SectionTitle(say("What the rows become")))
        top.add_gap()
        top.addWidget(self.switch)
        column_layout = QVBoxLayout(self)
        column_layout.setContentsMargins(0, 0, 0, 0)
        column_layout.setSpacing(8)
        column_layout.addLayout(top)
        column_layout.addWidget(self.table, 1)
        column_layout.addWidget(self.chosen_label)
        self.chosen_label.hide()

    def _show(self, _which: str = "") -> None:
        self.model.show_plan(self._plan, self.switch.value())
        self._show_chosen()

    def _show_chosen(self, *_places: object) -> None:
        index = self.table.currentIndex()
        shown = index.isValid() and index.row() < self.model.rowCount()
        if shown:
            row = self.model.row_at(index.row())
            words = say("Line {line} as written: {cells}", line=row.line, cells=wording.as_written(row)[:400])
            self.chosen_label.setText(f"{words}\n{row.reason}" if row.reason else words)
        self.chosen_label.setVisible(shown)
