"""Gives a table the look of rows on paper."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QTableView

from growlog.desktop.look.theme import current


def dress_table(table: QTableView, plain: bool = False) -> None:
    """Hairlines between rows, whole rows chosen, rows as high as the text asks; plain: without ground and outline."""
    if plain:
        table.setProperty("role", "plain")
    table.setShowGrid(False)
    table.setWordWrap(False)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    table.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    table.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(current().px(32))
    header = table.horizontalHeader()
    header.setHighlightSections(False)
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
