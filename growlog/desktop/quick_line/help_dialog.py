"""Shows the words of the quick line beside the board: plain examples, each with what it becomes."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from growlog.desktop.look.widgets import DialogFrame, Rule, SectionTitle
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.quick_line.help_page import Section, help_sections
from growlog.words import say


class QuickLineHelp(DialogFrame):
    """Closes with Escape or its button; nothing in it changes anything."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(say("Words of the quick line"), "", parent, 640)
        self.setObjectName("quickLineHelp")
        for section in help_sections():
            self._add(section)
        self.close_button = self.add_button(say("Close"), "primary", "close")
        self.close_button.clicked.connect(self.close)

    def _add(self, section: Section) -> None:
        self.body.addWidget(SectionTitle(say(section.title)))
        for sentence in section.sentences:
            self.body.addWidget(TextLabel(say(sentence), wraps=True))
        if section.examples:
            self.body.addLayout(_table(section))


def _table(section: Section) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(20)
    grid.setVerticalSpacing(6)
    grid.setColumnStretch(0, 1)
    grid.setColumnStretch(1, 1)
    for number, example in enumerate(section.examples):
        line = TextLabel(example.line, "strong", wraps=True)
        line.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        becomes = TextLabel("\n".join(example.becomes), tone="mute", wraps=True)
        grid.addWidget(line, 2 * number, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(becomes, 2 * number, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(Rule(), 2 * number + 1, 0, 1, 2)
    return grid
