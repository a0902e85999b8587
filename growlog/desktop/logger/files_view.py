"""The logger files that a room has already, each with a way to take it out."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.logger.plan_view import moment_words
from growlog.desktop.look.widgets import Button, SectionTitle, TextLabel
from growlog.desktop.plain_table import Column, PlainTable, Row
from growlog.records.logger_file import LoggerFile
from growlog.services.climate.wall_clock import zone_of
from growlog.words import say, show_number


class FilesView(QWidget):
    """Choosing a file lets it be removed."""

    remove_wanted = Signal(str)

    def __init__(self, writable: bool) -> None:
        super().__init__()
        self._writable = writable
        columns = [Column(say("File")), Column(say("From"), width_px=190), Column(say("To"), width_px=190),
                   Column(say("Samples"), True, 90)]  # fmt: skip
        self.table = PlainTable(columns, say("Files already in"), "loggerFiles", 6)
        self.none_label = TextLabel(say("No file of a logger is in for this room yet."), "small")
        self.remove_button = Button(say("Remove the chosen file"), "link", "bin", "removeFile")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(SectionTitle(say("Files already in")))
        column.addWidget(self.table)
        column.addWidget(self.none_label)
        column.addWidget(self.remove_button, 0, Qt.AlignmentFlag.AlignRight)
        self.table.row_chosen.connect(self._chosen)
        self.remove_button.clicked.connect(self._remove)

    def show_files(self, files: Sequence[LoggerFile], zone_name: str) -> None:
        """The files of a room."""
        zone = zone_of(zone_name)
        self.table.show_rows([
            Row(f.id, (f.name, moment_words(f.first_at, zone), moment_words(f.last_at, zone),
                       show_number(f.sample_count, 0)))
            for f in files
        ])  # fmt: skip
        self.table.setVisible(bool(files))
        self.none_label.setVisible(not files)
        self._chosen()

    def _chosen(self, _key: str = "") -> None:
        self.remove_button.setVisible(bool(self.table.rows()) and self._writable)
        self.remove_button.setEnabled(bool(self.table.chosen_key()))

    def _remove(self) -> None:
        self.remove_wanted.emit(self.table.chosen_key())
