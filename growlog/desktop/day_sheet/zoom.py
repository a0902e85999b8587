"""Where a picture lies in an area: fitted, or enlarged about a point and moved within bounds."""

from PySide6.QtCore import QPointF, QRectF

_LARGEST = 8.0  # screen pixels to a pixel of the picture


class Zoom:
    """Keeps how much larger than fitted the picture is, and which part of it stands in the middle."""

    def __init__(self) -> None:
        self.factor = 1.0
        self._middle = QPointF(0.5, 0.5)

    @property
    def is_fitted(self) -> bool:
        """Whether the whole picture is seen."""
        return self.factor <= 1.0

    def fit(self) -> None:
        """Shows the whole picture."""
        self.factor = 1.0
        self._middle = QPointF(0.5, 0.5)

    def target(self, area: QRectF, size: tuple[int, int]) -> QRectF:
        """Where the picture lies in the area; size: its width and height in pixels."""
        scale = fitting_scale(area, size) * self.factor
        width, height = size[0] * scale, size[1] * scale
        left = area.center().x() - self._middle.x() * width
        top = area.center().y() - self._middle.y() * height
        return QRectF(left, top, width, height)

    def by(self, factor: float, point: QPointF, area: QRectF, size: tuple[int, int]) -> None:
        """Enlarges by a factor; what lies under the point stays there as long as the picture fills the area."""
        before = self.target(area, size)
        fitted = fitting_scale(area, size)
        self.factor = min(max(1.0, self.factor * factor), max(1.0, _LARGEST / fitted))
        share = QPointF((point.x() - before.x()) / before.width(), (point.y() - before.y()) / before.height())
        width, height = size[0] * fitted * self.factor, size[1] * fitted * self.factor
        away = area.center() - point
        self._middle = QPointF(share.x() + away.x() / width, share.y() + away.y() / height)
        self._keep_within(area, size)

    def move(self, by: QPointF, area: QRectF, size: tuple[int, int]) -> None:
        """Moves the picture by pixels of the screen."""
        rect = self.target(area, size)
        self._middle -= QPointF(by.x() / rect.width(), by.y() / rect.height())
        self._keep_within(area, size)

    def toggle(self, point: QPointF, area: QRectF, size: tuple[int, int]) -> None:
        """From fitted to one pixel for one, about a point, and back."""
        if self.is_fitted:
            self.by(max(1.0 / fitting_scale(area, size), 1.5), point, area, size)
        else:
            self.fit()

    def _keep_within(self, area: QRectF, size: tuple[int, int]) -> None:
        scale = fitting_scale(area, size) * self.factor
        self._middle = QPointF(
            _bounded(self._middle.x(), area.width() / (size[0] * scale)),
            _bounded(self._middle.y(), area.height() / (size[1] * scale)),
        )


def fitting_scale(area: QRectF, size: tuple[int, int]) -> float:
    """Screen pixels to a pixel of the picture so that all of it is seen."""
    return min(area.width() / max(1, size[0]), area.height() / max(1, size[1]))


def _bounded(middle: float, seen: float) -> float:
    """The middle such that no ground shows beside the picture; seen: the share of the picture that fits."""
    if seen >= 1:
        return 0.5
    return min(1 - seen / 2, max(seen / 2, middle))
