"""The dialog that tells what the picks of a crop say."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.calculations.explained_figure import Figure
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.milestones import PacketComparison
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_forecast import YieldForecast
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import Card, EmptyState, SectionTitle, TextLabel
from growlog.desktop.tall_dialog import TallDialog
from growlog.desktop.yield_view.figure_grid import FigureGrid
from growlog.desktop.yield_view.wording import fact_names, fruit_set_lines, milestone_lines, yield_lines
from growlog.services.yield_view.view import YieldView
from growlog.words import say, show_day


class YieldDialog(TallDialog):
    """Opened empty; show_view fills it once it is worked out."""

    def __init__(self, crop_name: str, as_of: date, parent: QWidget | None = None) -> None:
        title = say("{crop}, as of {day}", crop=crop_name, day=show_day(as_of))
        super().__init__(say("What the picks say"), title, parent, 680)
        self.setObjectName("yieldDialog")
        self.waiting = EmptyState(say("Working it out…"), name="waiting")
        self.coming = _Told(say("What is to come"), "coming")
        self.forecast = _Told(say("The season's curve"), "forecast")
        self.milestones = FigureGrid("milestones")
        self.maturity = TextLabel("", wraps=True)
        self.maturity.setObjectName("maturity")
        self.facts = FigureGrid("facts")
        self.fruit_set_words = TextLabel("", wraps=True)
        self.fruit_set = FigureGrid("fruitSet")
        self.notes = TextLabel("", "small", "mute", wraps=True)
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.reject)
        self._content = QWidget()
        self._lay_out()

    def show_view(self, view: YieldView) -> None:
        """All that is known."""
        self.waiting.hide()
        self._show_coming(view)
        self._show_forecast(view)
        self.milestones.show_lines(milestone_lines(view))
        packet = view.maturity.packet
        told = (
            say("Against the packet: {sentence}", sentence=packet.sentence)
            if isinstance(packet, PacketComparison) else packet.reason
        )  # fmt: skip
        self.maturity.setText("\n".join([told, *(u.sentence for u in view.maturity.usual)]))
        self.facts.show_lines(yield_lines(view))
        known = view.fruit_set
        words = known.sentences if isinstance(known, FruitSet) else (known.reason,)
        self.fruit_set_words.setText(" ".join(words))
        self.fruit_set.show_lines(fruit_set_lines(known.figures) if isinstance(known, FruitSet) else [])
        self.notes.setText("\n".join(view.notes))
        self.notes.setVisible(bool(view.notes))
        self._content.show()

    def show_failure(self) -> None:
        """It could not be worked out."""
        self.waiting.set_sentence(say("This could not be worked out. The reason is in the program's log."))

    def _show_coming(self, view: YieldView) -> None:
        coming = view.coming
        if isinstance(coming, NotYet):
            self.coming.tell("", [coming.reason], [])
        else:
            why = [coming.why_rate] if coming.why_rate else []
            self.coming.tell(coming.sentence, [coming.basis_sentence, *why], [coming.figure])

    def _show_forecast(self, view: YieldView) -> None:
        told = [f for f in (view.forecast_fruit, view.forecast_grams) if isinstance(f, YieldForecast)]
        if not told:
            reason = view.forecast_fruit.reason if isinstance(view.forecast_fruit, NotYet) else ""
            self.forecast.tell("", [reason], [])
            return
        head = " ".join(f.sentences[0] for f in told)
        missing = [f.reason for f in (view.forecast_fruit, view.forecast_grams) if isinstance(f, NotYet)]
        self.forecast.tell(head, [*told[0].sentences[1:], *missing], [f.figure for f in told])

    def _lay_out(self) -> None:
        self.body.addWidget(self.waiting)
        self.body.addWidget(self._content)
        self.body.addStretch(1)
        self._content.hide()
        column = QVBoxLayout(self._content)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(self.coming)
        column.addWidget(self.forecast)
        for title, parts in (
            (say("Milestones, in days of plant age"), (self.milestones, self.maturity)),
            (say("Yield"), (self.facts, self.notes)),
            (say("Fruit set"), (self.fruit_set_words, self.fruit_set)),
        ):
            column.addSpacing(8)
            column.addWidget(SectionTitle(title))
            for widget in parts:
                column.addWidget(widget)


class _Told(Card):
    """A card with a sentence in large, sentences below it, and the explanation."""

    def __init__(self, title: str, name: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self.head = TextLabel("", "heading", wraps=True)
        self.more = TextLabel("", wraps=True)
        self.explain = ExplanationButton()
        row = QHBoxLayout()
        row.addWidget(SectionTitle(title), 1)
        row.addWidget(self.explain)
        self.body.addLayout(row)
        self.body.addWidget(self.head)
        self.body.addWidget(self.more)

    def tell(self, head: str, more: Sequence[str], figures: Sequence[Figure]) -> None:
        """Other sentences; without figures there is nothing to explain."""
        self.head.setText(head)
        self.head.setVisible(bool(head))
        self.more.setText(" ".join(more))
        self.explain.show_figures(figures, fact_names())
        self.explain.setVisible(bool(figures))
