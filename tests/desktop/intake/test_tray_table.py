"""The tray's table: Qt's own rules for models, and thousands of rows."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtTest import QAbstractItemModelTester

from growlog.desktop.intake.row_paint import two_lines
from growlog.desktop.intake.tray_model import Tray
from growlog.desktop.intake.tray_table import CROP, DAY, FATE, TrayTable
from growlog.desktop.look.theme import current
from tests.desktop.intake.made_items import item, refused


def test_the_table_keeps_the_rules_of_item_models(qapp: object) -> None:
    table = TrayTable(Tray(), [])
    tester = QAbstractItemModelTester(table, QAbstractItemModelTester.FailureReportingMode.Fatal)
    table.add([item("a.jpg"), refused("b.txt")])
    sent = table.tray.going_in()
    table.take_result(sent, [row.item for row in sent], 1)
    assert table.rowCount() == 1
    tester.deleteLater()


def test_only_day_and_crop_of_a_picture_can_be_edited(qapp: object) -> None:
    table = TrayTable(Tray(), [])
    table.add([item("a.jpg"), refused("b.txt")])
    editable = [
        [bool(table.flags(table.index(row, column)) & Qt.ItemFlag.ItemIsEditable) for column in (DAY, CROP, FATE)]
        for row in (0, 1)
    ]
    assert editable == [[True, True, False], [False, False, False]]


def test_files_are_told_apart_among_thousands(qapp: object) -> None:
    table = TrayTable(Tray(), [])
    table.add([item(f"{n}.jpg") for n in range(4000)])
    assert table.add([item("3999.jpg"), item("4000.jpg")]) == 1
    assert table.rowCount() == 4001
    assert table.data(table.index(4000, 0), Qt.ItemDataRole.ToolTipRole) == str(Path("phone") / "4000.jpg")


def test_a_long_sentence_breaks_at_a_blank_and_is_shortened_in_the_second_line(qapp: object) -> None:
    metrics = QFontMetrics(current().font(12))
    width = metrics.horizontalAdvance("The day is the file's own")
    first, second = two_lines("The day is the file's own time, which may be the day it was copied.", metrics, width)
    assert first == "The day is the file's own"
    assert second.startswith("time, which")
    assert second.endswith("…")
