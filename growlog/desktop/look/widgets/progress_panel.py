"""Work that takes a while: what is being done, how far it is, and a way to stop it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QVBoxLayout, QWidget

from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.words import say


class ProgressPanel(QWidget):
    """A sentence, a bar and a button; hidden while there is nothing to wait for."""

    stopped = Signal()

    def __init__(self, can_stop: bool = True, name: str = "progress") -> None:
        super().__init__()
        self.setObjectName(name)
        self.sentence_label = TextLabel("", "", wraps=True)
        self.count_label = TextLabel("", "unit")
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.stop_button = Button(say("Stop"), name="stop")
        self.stop_button.setVisible(can_stop)
        words = QHBoxLayout()
        words.addWidget(self.sentence_label, 1)
        words.addWidget(self.count_label)
        left = QVBoxLayout()
        left.setSpacing(6)
        left.addLayout(words)
        left.addWidget(self.bar)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(16)
        row.addLayout(left, 1)
        row.addWidget(self.stop_button)
        self.stop_button.clicked.connect(self._stop)
        self.hide()

    def start(self, sentence: str) -> None:
        """Appears, without yet knowing how much there is to do."""
        self.sentence_label.setText(sentence)
        self.bar.setAccessibleName(sentence)
        self.count_label.setText("")
        self.bar.setRange(0, 0)
        self.stop_button.setEnabled(True)
        self.show()

    def show_progress(self, done: int, total: int) -> None:
        """How far the work is."""
        self.bar.setRange(0, max(1, total))
        self.bar.setValue(done)
        self.count_label.setText(say("{done} of {total}", done=done, total=total))

    def finish(self) -> None:
        """Goes away."""
        self.bar.setRange(0, 1)
        self.hide()

    def _stop(self) -> None:
        self.stop_button.setEnabled(False)
        self.sentence_label.setText(say("Stopping…"))
        self.stopped.emit()
