"""What lies over lanes and chart: the day line with its label, its point on the curve, and the hover box."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from growlog.desktop.board.placing import best_place
from growlog.desktop.look.theme import current
from growlog.desktop.look.tokens import blend


class Overlay(QWidget):
    """Paints the day line; when it moves only the strips it left and entered are painted anew."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._x: float | None = None
        self._label = ""
        self._bottom = 0.0
        self._point: QPointF | None = None
        self._words = ""
        self._words_at = QRectF()
        self._drop_y: float | None = None
        self._focused = False

    def set_line(self, x: float | None, label: str, bottom: float) -> None:
        """Where the line stands (None: out of view), what it says, how far down it goes."""
        self._touch()
        self._x, self._label, self._bottom = x, label, bottom
        self._touch()

    def set_point(
        self,
        point: QPointF | None,
        words: str,
        taken: Sequence[QRectF] = (),
        chart: QRectF | None = None,
        also_covers: Callable[[QRectF], float] | None = None,
    ) -> None:
        """The point on the curve with its box, which keeps off what is taken and inside the chart."""
        self._touch()
        self._point, self._words = point, words
        self._words_at = self._free_place(taken, chart or QRectF(self.rect()), also_covers)
        self._touch()

    def words_box(self) -> QRectF:
        """Where the box at the curve stands; empty without one."""
        return QRectF() if self._x is None else self._words_at

    def set_drop(self, y: float | None) -> None:
        """Where a dragged lane would come to stand."""
        if y != self._drop_y:
            self._drop_y = y
            self.update()

    def set_focused(self, focused: bool) -> None:
        """The label is in the action colour while keys move the line."""
        self._focused = focused
        self._touch()

    def line_x(self) -> float | None:
        """Where the line stands."""
        return self._x

    def point_words(self) -> str:
        """What the box at the curve says."""
        return self._words if self._point is not None and self._x is not None else ""

    def paintEvent(self, event: QPaintEvent) -> None:
        """The line, the label, the point and its box."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._x is not None:
            self._paint_line(painter, self._x)
        if self._drop_y is not None:
            painter.fillRect(QRectF(0, self._drop_y - 1, self.width(), 2), current().colour("accent"))
        painter.end()

    def _paint_line(self, painter: QPainter, x: float) -> None:
        look = current()
        label = self._label_box(x)
        painter.setPen(QPen(look.colour("ink"), 1.4))
        middle = round(x) + 0.5
        painter.drawLine(QPointF(middle, label.center().y()), QPointF(middle, self._bottom))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.colour("accent" if self._focused else "ink"))
        painter.drawRoundedRect(label, 3, 3)
        painter.setFont(_bold())
        painter.setPen(look.colour("on_accent" if self._focused else "paper"))
        painter.drawText(label, Qt.AlignmentFlag.AlignCenter, self._label)
        if self._point is not None:
            self._paint_point(painter, self._point)

    def _paint_point(self, painter: QPainter, point: QPointF) -> None:
        look = current()
        painter.setPen(QPen(look.colour("pick"), 1.8 * look.scale))
        painter.setBrush(look.colour("paper"))
        painter.drawEllipse(QPointF(round(point.x()) + 0.5, point.y()), look.px(4.5), look.px(4.5))
        box = self._words_at
        painter.setPen(QPen(look.colour("rule"), 1))
        painter.setBrush(look.colour("card"))
        painter.drawRoundedRect(box, 3, 3)
        painter.setFont(_bold())
        painter.setPen(look.colour("ink"))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self._words)

    def _label_box(self, x: float) -> QRectF:
        look = current()
        width = QFontMetricsF(_bold()).horizontalAdvance(self._label) + look.px(14)
        left = min(max(x - width / 2, 0.0), self.width() - width)
        return QRectF(round(left), 0, round(width), look.px(18))

    def _free_place(
        self, taken: Sequence[QRectF], chart: QRectF, also_covers: Callable[[QRectF], float] | None
    ) -> QRectF:
        """Beside the point, below it before above, right before left, then ever farther away."""
        if self._point is None:
            return QRectF()
        look, point = current(), self._point
        width = QFontMetricsF(_bold()).horizontalAdvance(self._words) + look.px(12)
        height, off = look.px(20), look.px(9)
        below = point.y() + off
        tops = [below, point.y() - off - height]
        tops += [
            top for n in range(1, round(2 * chart.height() / off)) for top in (below - n * off / 2, below + n * off / 2)
        ]
        sides = [(point.x() + off + shift, point.x() - off - width - shift) for shift in (0, 4 * off, 8 * off)]
        places = (QRectF(left, top, width, height) for lefts in sides for top in tops for left in lefts)
        place = best_place(places, taken, chart.adjusted(0, 0, 0, -2), also_covers)
        return QRectF(round(place.left()) + 0.5, round(place.top()) + 0.5, round(width), height)

    def _touch(self) -> None:
        if self._x is None:
            return
        x = round(self._x)
        self.update(QRect(x - 2, 0, 5, round(self._bottom) + 2))
        self.update(self._label_box(self._x).toAlignedRect().adjusted(-1, -1, 1, 1))
        if self._point is not None:
            reach = current().px(7)
            self.update(QRect(x - reach, round(self._point.y()) - reach, 2 * reach, 2 * reach))
            self.update(self._words_at.toAlignedRect().adjusted(-1, -1, 1, 1))


class HoverBox(QWidget):
    """Says what is under the pointer."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._lines: list[str] = []
        self.hide()

    def lines(self) -> list[str]:
        """What it says."""
        return list(self._lines)

    def tell(self, lines: Sequence[str], pointer: QPoint) -> None:
        """Stands beside the pointer; hides where there is nothing to say."""
        parent = self.parentWidget()
        if not lines or parent is None:
            self.hide()
            return
        self._lines = list(lines)
        width, height = self._size(parent.width())
        left, top = pointer.x() + 14, pointer.y() + 18
        if left + width > parent.width():
            left = max(pointer.x() - width - 10, 0)
        if top + height > parent.height():
            top = max(pointer.y() - height - 8, 0)
        self.setGeometry(left, top, width, height)
        self.show()
        self.raise_()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """A card with lines of text, the first one bold."""
        look = current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(look.colour("edge"), 1))
        painter.setBrush(QColor(blend(look.palette.card, look.palette.soft, 0.3)))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        painter.setPen(look.colour("ink"))
        row = QRectF(look.px(8), look.px(5), self.width() - look.px(16), look.px(16))
        for number, line in enumerate(self._lines):
            font = _bold() if number == 0 else look.font(11)
            painter.setFont(font)
            shown = QFontMetricsF(font).elidedText(line, Qt.TextElideMode.ElideRight, row.width() + 1)
            painter.drawText(row, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)
            row.translate(0, look.px(16))
        painter.end()

    def _size(self, most: int) -> tuple[int, int]:
        look = current()
        first, rest = QFontMetricsF(_bold()), QFontMetricsF(look.font(11))
        widths = [first.horizontalAdvance(self._lines[0])] + [rest.horizontalAdvance(t) for t in self._lines[1:]]
        return min(round(max(widths)) + look.px(17), most), look.px(16) * len(self._lines) + look.px(10)


def _bold() -> QFont:
    return current().font(11, QFont.Weight.DemiBold)
