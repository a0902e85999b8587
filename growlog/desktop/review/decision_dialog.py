"""Whether a crop is grown again, why, and what is to change; the figures that will be quoted stand beside it."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QButtonGroup, QRadioButton, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Banner, Card, DialogFrame, NoteField, SectionTitle, TextLabel
from growlog.records.decision import Decision, QuotedFigure, Verdict
from growlog.records.problems import Problem
from growlog.words import say, show_day


class DecisionDialog(DialogFrame):
    """For a decision of today, or for other words of one that was made. Stays open until it was written."""

    confirmed = Signal(object)  # Decision

    def __init__(self, crop_name: str, decision: Decision, *, is_new: bool, parent: QWidget | None = None) -> None:
        title = say("Grow it again?") if is_new else say("Correct the decision")
        super().__init__(title, crop_name, parent, 620)
        self.setObjectName("decisionDialog")
        self._before = decision
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.verdicts = {v: QRadioButton(_sentence_case(say(v.label))) for v in Verdict}
        self._group = QButtonGroup(self)
        self.reasons_field = NoteField(say("Reasons"), decision.reasons, 3, name="reasons")
        self.changes_field = NoteField(say("What to change next time"), decision.changes, 3, name="changes")
        self._fill(is_new)
        self.leave_button = self.add_button(say("Leave as it was"), name="leave")
        words = say("Decide") if is_new else say("Save")
        self.confirm_button = self.add_button(f"{words}  Ctrl \u23ce", "primary", "confirm")
        self.confirm_button.setDefault(False)
        self._connect()
        if not is_new:
            self.verdicts[decision.verdict].setChecked(True)
        self._verdict_chosen()
        self.verdicts[decision.verdict].setFocus()

    def verdict(self) -> Verdict | None:
        """The verdict that is chosen, none before one is."""
        return next((v for v, button in self.verdicts.items() if button.isChecked()), None)

    def decision(self) -> Decision:
        """The decision as it stands in the fields."""
        before = self._before
        return Decision(
            before.id, before.crop_id, before.decided_on, self.verdict() or before.verdict, self.reasons_field.value(),
            self.changes_field.value(), before.figures, before.version, before.removed_at,
        )  # fmt: skip

    def confirm(self) -> None:
        """Announces the decision if nothing is wrong with it."""
        problems = self.decision().problems()
        if self.verdict() is None:
            problems.append(Problem("verdict", say("Say first whether it is grown again.")))
        if problems:
            self.show_problems(problems)
        elif self.reasons_field.check() and self.changes_field.check():
            self.confirmed.emit(self.decision())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Each beside its field, the rest above."""
        fields = {"reasons": self.reasons_field, "changes": self.changes_field}
        elsewhere, first = [], None
        for problem in problems:
            field = fields.get(problem.field)
            if field is None:
                elsewhere.append(problem.sentence)
            else:
                field.show_problem(problem.sentence)
                first = first or field
        if first is not None:
            first.setFocus(Qt.FocusReason.OtherFocusReason)
        self.banner.setVisible(bool(elsewhere))
        if elsewhere:
            self.banner.show_message(" ".join(elsewhere), "problem")

    def _fill(self, is_new: bool) -> None:
        self.body.addWidget(self.banner)
        for verdict, button in self.verdicts.items():
            button.setObjectName(verdict.value)
            self._group.addButton(button)
            self.body.addWidget(button)
        self.body.addWidget(self.reasons_field)
        self.body.addWidget(self.changes_field)
        self.body.addWidget(_quoted(self._before, is_new))
        self.body.addStretch(1)

    def _connect(self) -> None:
        self.leave_button.clicked.connect(self.reject)
        self.confirm_button.clicked.connect(self.confirm)
        self._group.buttonClicked.connect(self._verdict_chosen)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _verdict_chosen(self, _button: object = None) -> None:
        asked = self.verdict() is Verdict.REGROW_WITH_CHANGES
        self.changes_field.setVisible(asked or not self.changes_field.is_empty())
        self.changes_field.clear_message()


def _quoted(decision: Decision, is_new: bool) -> Card:
    card = Card(tone="soft")
    day = show_day(decision.decided_on)
    title = say("Quoted with it, as of today, {day}", day=day) if is_new else say("Quoted as of {day}", day=day)
    card.body.addWidget(SectionTitle(title))
    if decision.figures:
        card.body.addWidget(_figures(decision.figures))
    else:
        card.body.addWidget(TextLabel(say("There are no figures of this crop to quote."), "", "mute", wraps=True))
    if not is_new:
        words = say("The figures and the day stay as they were; only the words change.")
        card.body.addWidget(TextLabel(words, "small", wraps=True))
    return card


def _figures(figures: Sequence[QuotedFigure]) -> QWidget:
    part = QWidget()
    column = QVBoxLayout(part)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    for figure in figures:
        column.addWidget(TextLabel(f"{figure.label}: {figure.value_text}", wraps=True))
    return part


def _sentence_case(text: str) -> str:
    return text[:1].upper() + text[1:]
