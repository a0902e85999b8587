"""Paints the tray's cells, two lines each, and lets a day be typed and a crop be chosen in its cell."""

from collections import OrderedDict
from collections.abc import Sequence

from PySide6.QtCore import QAbstractItemModel, QEvent, QModelIndex, QObject, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPixmap
from PySide6.QtWidgets import QLineEdit, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from growlog.desktop.intake.tray_model import TrayRow
from growlog.desktop.intake.tray_table import CROP, FATE, PHOTO, TrayTable
from growlog.desktop.look.icons import icon
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.desktop.look.widgets.day_text import NotADay, day_text, parse_day
from growlog.desktop.pictures import Pictures
from growlog.records.crop import Crop
from growlog.services.photo_intake import Outcome

ROW_PX = 56
_PICTURE_PX = (64, 46)
_KEPT = 800
_SIGNS = {
    Outcome.NEW: ("check", "ink"),
    Outcome.QUESTIONED: ("help", "light"),
    Outcome.DUPLICATE: ("minus", "mute"),
    Outcome.WAITING: ("clock", "light"),
    Outcome.REFUSED: ("warning", "problem"),
}
Index = QModelIndex | QPersistentModelIndex


class RowPainter(QStyledItemDelegate):
    """Draws a small picture, a bold line and a quiet one; the quiet one may wrap."""

    def __init__(self, pictures: Pictures, crops: Sequence[Crop], parent: QObject) -> None:
        super().__init__(parent)
        self._pictures = pictures
        self._crops = crops
        self._scaled: OrderedDict[tuple[str, int], QPixmap] = OrderedDict()

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """All rows have one height."""
        return QSize(current().px(120), current().px(ROW_PX))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draws one cell."""
        model = index.model()
        if not isinstance(model, TrayTable):
            return
        row = model.row_at(index.row())
        painter.save()
        self._ground(painter, option)
        pad = current().px(8)
        area = option.rect.adjusted(pad, 0, -pad, -1)
        if index.column() == PHOTO:
            area = self._picture(painter, area, row)
        elif index.column() == FATE:
            area = self._sign(painter, area, row)
        elide = Qt.TextElideMode.ElideMiddle if index.column() == PHOTO else Qt.TextElideMode.ElideRight
        self._words(painter, area, str(index.data()), elide, _is_quiet(row))
        painter.restore()

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A line for a day, a list for a crop."""
        if index.column() == CROP:
            box = CalmComboBox()
            box.setParent(parent)
            for crop in self._crops:
                box.addItem(crop.name, crop.id)
            return box
        return QLineEdit(parent)

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """What stands there now."""
        value = index.data(Qt.ItemDataRole.EditRole)
        if isinstance(editor, QLineEdit):
            editor.setText(day_text(value))
            editor.selectAll()
        elif isinstance(editor, CalmComboBox):
            editor.setCurrentIndex(editor.findData(value))

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Takes what was typed; a text that is no day is told and changes nothing."""
        if isinstance(editor, CalmComboBox):
            model.setData(index, editor.currentData())
        elif isinstance(editor, QLineEdit) and isinstance(model, TrayTable):
            try:
                model.setData(index, parse_day(editor.text(), index.data(Qt.ItemDataRole.EditRole)))
            except NotADay as problem:
                model.refused_text.emit(str(problem))

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, index: Index) -> None:
        """One line high, in the middle of the cell."""
        height = min(option.rect.height(), editor.sizeHint().height())
        top = option.rect.top() + (option.rect.height() - height) // 2
        width = option.rect.width() - 4
        editor.setGeometry(QRect(option.rect.left() + 2, top, width, height))

    def editorEvent(self, event: QEvent, model: QAbstractItemModel, option: QStyleOptionViewItem, index: Index) -> bool:
        """Nothing in a cell is pressed but the cell."""
        return False

    def _ground(self, painter: QPainter, option: QStyleOptionViewItem) -> None:
        look = current()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, option.palette.brush(option.palette.ColorRole.Highlight))
        painter.setPen(look.colour("rule"))
        painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight())

    def _picture(self, painter: QPainter, area: QRect, row: TrayRow) -> QRect:
        look = current()
        width = min(look.px(_PICTURE_PX[0]), area.width() // 3)
        height = min(look.px(_PICTURE_PX[1]), width)
        frame = QRect(area.left(), area.top() + (area.height() - height) // 2, width, height)
        painter.fillRect(frame, look.colour("soft"))
        pixmap = self._pixmap(row.item.sha256, frame.size(), painter.device().devicePixelRatioF())
        if pixmap is None:
            side = look.px(18)
            place = QRect(frame.center().x() - side // 2, frame.center().y() - side // 2, side, side)
            icon("camera" if row.is_picture else "warning", "mute", 18).paint(painter, place)
        else:
            size = pixmap.deviceIndependentSize().toSize()
            left = frame.left() + (width - size.width()) // 2
            painter.drawPixmap(left, frame.top() + (height - size.height()) // 2, pixmap)
        return area.adjusted(width + look.px(10), 0, 0, 0)

    def _pixmap(self, sha256: str | None, room: QSize, density: float) -> QPixmap | None:
        if sha256 is None:
            return None
        key = (sha256, round(room.width() * density))
        if key in self._scaled:
            self._scaled.move_to_end(key)
            return self._scaled[key]
        image = self._pictures.small(sha256)
        if image is None:
            return None
        keep, smooth = Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation
        pixmap = QPixmap.fromImage(image.scaled(room * density, keep, smooth))
        pixmap.setDevicePixelRatio(density)
        self._scaled[key] = pixmap
        if len(self._scaled) > _KEPT:
            self._scaled.popitem(last=False)
        return pixmap

    def _sign(self, painter: QPainter, area: QRect, row: TrayRow) -> QRect:
        side = current().px(18)
        name, token = ("close", "mute") if row.left_out else _SIGNS[row.item.outcome]
        top = area.top() + current().px(8)
        icon(name, token, 18).paint(painter, QRect(area.left(), top, side, side))
        return area.adjusted(side + current().px(8), 0, 0, 0)

    def _words(self, painter: QPainter, area: QRect, text: str, elide: Qt.TextElideMode, quiet: bool) -> None:
        look = current()
        first, _, second = text.partition("\n")
        strong, small = look.font(13, QFont.Weight.DemiBold), look.font(12)
        top = area.top() + look.px(8)
        painter.setFont(strong)
        painter.setPen(look.colour("mute" if quiet else "ink"))
        metrics = QFontMetrics(strong)
        line = metrics.elidedText(first, elide, area.width())
        painter.drawText(QRect(area.left(), top, area.width(), metrics.height()), Qt.AlignmentFlag.AlignLeft, line)
        painter.setFont(small)
        painter.setPen(look.colour("mute"))
        below = top + metrics.height() - 1
        for words in two_lines(second, QFontMetrics(small), area.width()):
            painter.drawText(area.left(), below + QFontMetrics(small).ascent(), words)
            below += QFontMetrics(small).height() - 1


def two_lines(text: str, metrics: QFontMetrics, width: int) -> list[str]:
    """The text broken at blanks into at most two lines, the second shortened where it does not fit."""
    if metrics.horizontalAdvance(text) <= width:
        return [text]
    words = text.split(" ")
    taken = 1
    while taken < len(words) and metrics.horizontalAdvance(" ".join(words[: taken + 1])) <= width:
        taken += 1
    first, rest = " ".join(words[:taken]), " ".join(words[taken:])
    fits = metrics.horizontalAdvance(first) <= width
    shown = [first if fits else metrics.elidedText(first, Qt.TextElideMode.ElideRight, width)]
    return [*shown, metrics.elidedText(rest, Qt.TextElideMode.ElideRight, width)] if rest else shown


def _is_quiet(row: TrayRow) -> bool:
    return row.left_out or row.item.outcome is Outcome.DUPLICATE
