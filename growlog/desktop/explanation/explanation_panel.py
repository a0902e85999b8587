"""One figure explained: the formula in words, what went in with its day, the source, and how sure it is."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.calculations.explained_figure import Figure, Input
from growlog.desktop.explanation.figure_words import range_text, sure_text, value_text
from growlog.desktop.look.widgets import Rule, SectionTitle, TextLabel
from growlog.words import say, show_day


class ExplanationPanel(QWidget):
    """Shows a figure; the panel may stand in a dialog or anywhere in a page."""

    def __init__(self, figure: Figure | None = None) -> None:
        super().__init__()
        self.setObjectName("explanationPanel")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self._content: QWidget | None = None
        self.figure: Figure | None = None
        if figure is not None:
            self.show_figure(figure)

    def show_figure(self, figure: Figure) -> None:
        """Another figure in place of the one shown."""
        self.figure = figure
        if self._content is not None:
            self._content.hide()
            self._content.deleteLater()
        self._content = _content_of(figure)
        self._column.addWidget(self._content)

    def texts(self) -> list[str]:
        """All that is said, line by line."""
        labels = [] if self._content is None else self._content.findChildren(TextLabel)
        return [label.text() for label in labels if label.text()]


def _content_of(figure: Figure) -> QWidget:
    content = QWidget()
    column = QVBoxLayout(content)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(6)
    column.addWidget(TextLabel(value_text(figure.value, figure.unit), "figure"))
    known = [range_text(figure), "" if figure.as_of is None else say("up to {day}", day=show_day(figure.as_of))]
    if any(known):
        column.addWidget(TextLabel(", ".join(k for k in known if k), "", "mute", wraps=True))
    _part(column, say("The way"), say(figure.method))
    if figure.inputs:
        column.addSpacing(6)
        column.addWidget(SectionTitle(say("What went in")))
        column.addWidget(_inputs(figure.inputs))
    _part(column, say("Source"), say(figure.source))
    _part(column, say("How sure"), sure_text(figure.sure))
    return content


def _part(column: QVBoxLayout, title: str, text: str) -> None:
    column.addSpacing(6)
    column.addWidget(SectionTitle(title))
    label = TextLabel(text, wraps=True)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    column.addWidget(label)


def _inputs(inputs: tuple[Input, ...]) -> QWidget:
    table = QWidget()
    grid = QGridLayout(table)
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(16)
    grid.setVerticalSpacing(4)
    grid.setColumnStretch(0, 1)
    for number, entry in enumerate(inputs):
        grid.addWidget(TextLabel(say(entry.name), wraps=True), 2 * number, 0)
        grid.addWidget(TextLabel("" if entry.date is None else show_day(entry.date), "", "mute"), 2 * number, 1)
        is_its_day = entry.date is not None and entry.value == entry.date.isoformat()  # said beside it already
        value = TextLabel("" if is_its_day else value_text(entry.value, entry.unit), "strong")
        grid.addWidget(value, 2 * number, 2, Qt.AlignmentFlag.AlignRight)
        if number < len(inputs) - 1:
            grid.addWidget(Rule(), 2 * number + 1, 0, 1, 3)
    return table
