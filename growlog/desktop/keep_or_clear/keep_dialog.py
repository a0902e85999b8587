"""The dialog of keep or clear: its inputs, three sentences and both curves. It advises and leaves it at that."""

from datetime import date

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.calculations.keep_or_clear import KeepOrClear
from growlog.calculations.not_yet import NotYet
from growlog.desktop.charts import ChartData, ChartMenu, ChartView
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.keep_or_clear.inputs_form import InputsForm
from growlog.desktop.keep_or_clear.keep_chart import keep_chart
from growlog.desktop.look.widgets import Card, EmptyState, SectionTitle, TextLabel
from growlog.desktop.tall_dialog import TallDialog
from growlog.records.crop import Crop
from growlog.services.yield_view.keep import KeepAsk, KeepView
from growlog.services.yield_view.keep_grounds import KeepGrounds
from growlog.words import say, show_day

_SHORTLY_MS = 40


class KeepDialog(TallDialog):
    """Opened empty; show_grounds fills it. Emits what is to be weighed up, and is told by show_view."""

    asked = Signal(object)  # KeepAsk

    def __init__(self, crop: Crop, as_of: date, parent: QWidget | None = None) -> None:
        title = say("{crop}, as of {day}", crop=crop.name, day=show_day(as_of))
        super().__init__(say("Keep or clear"), title, parent, 760)
        self.setObjectName("keepDialog")
        self._crop = crop
        self.form: InputsForm | None = None
        self.view: KeepView | None = None
        self.waiting = EmptyState(say("Working it out…"), name="waiting")
        self.sentences = TextLabel("", wraps=True)
        self.sentences.setObjectName("sentences")
        self.notes = TextLabel("", "small", "mute", wraps=True)
        self.explain = ExplanationButton()
        self.chart = ChartView("keepChart", 200)
        self.chart_menu = ChartMenu(self._chart_data)
        self.answer = Card()
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.reject)
        self.set_note(say("This is advice from your own figures. Whether you like the plant is not among them."))
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_SHORTLY_MS)
        self._timer.timeout.connect(self.weigh)
        self._lay_out()

    def show_grounds(self, grounds: KeepGrounds) -> None:
        """What was found in the logbook; asks for the first answer."""
        self.waiting.hide()
        self.form = InputsForm(grounds)
        self._column.insertWidget(1, self.form)
        self.form.changed.connect(self._timer.start)
        self.answer.show()
        self.weigh()

    def show_view(self, view: KeepView) -> None:
        """The answer, or why there is none."""
        self.view = view
        told = view.result
        self.sentences.setText("\n".join(told.sentences) if isinstance(told, KeepOrClear) else told.reason)
        self.notes.setText("\n".join(view.notes))
        self.notes.setVisible(bool(view.notes))
        self.explain.show_figures(told.figure if isinstance(told, KeepOrClear) else ())
        self.explain.setVisible(isinstance(told, KeepOrClear))
        self._show_chart(told.reason if isinstance(told, NotYet) else "")

    def show_failure(self) -> None:
        """It could not be worked out."""
        self.waiting.set_sentence(say("This could not be worked out. The reason is in the program's log."))

    def weigh(self) -> None:
        """Asks for an answer to what the form says now."""
        if self.form is None:
            return
        ask: KeepAsk | None = self.form.ask()
        if ask is not None:
            self.asked.emit(ask)
            return
        self.view = None
        self.sentences.setText(
            say("Say what another crop would bring and in how many days, and this will be weighed up.")
        )
        self.explain.hide()
        self._show_chart("")

    def _chart_data(self) -> ChartData | None:
        return None if self.view is None else keep_chart(self._crop, self.view)

    def _show_chart(self, empty: str) -> None:
        data = self._chart_data()
        self.chart.show_chart(data, empty)
        self.chart.setVisible(data is not None)
        self.chart_menu.setVisible(data is not None)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(SectionTitle(say("What the figures say")), 1)
        head.addWidget(self.explain)
        head.addWidget(self.chart_menu)
        self.answer.body.addLayout(head)
        for widget in (self.sentences, self.chart, self.notes):
            self.answer.body.addWidget(widget)
        self.answer.hide()
        self._column = QVBoxLayout()
        self._column.setSpacing(16)
        self._column.addWidget(self.answer)
        self.body.addWidget(self.waiting)
        self.body.addLayout(self._column)
        self.body.addStretch(1)
