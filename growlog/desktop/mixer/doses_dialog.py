"""Doses for a target: which products may be used and how, or the strength for an EC; then what came out and why."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    DialogFrame,
    FormGrid,
    NumberField,
    SectionTitle,
    SegmentSwitch,
    TextLabel,
    check_all,
)
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.desktop.mixer.order_card import CautionLine
from growlog.desktop.mixer.wording import QuietNumberField, amount_text, content_text, unit_words
from growlog.records.problems import Problem
from growlog.services.mixer import DoseProposal, DoseWishes, MixerState, TargetOffer
from growlog.services.mixer.state import OwnTarget, Target
from growlog.words import say

ELEMENTS, EC = "elements", "ec"
FREE, LOCKED, OUT = "free", "locked", "out"


@dataclass(frozen=True)
class Candidate:
    """A product to choose from. measure: "mL" or "g"; in_mix: whether the mix has it already; label_max_per_l: the
    highest dose by its label, which is kept to anyway."""

    name: str
    measure: str
    in_mix: bool
    label_max_per_l: float | None = None


class CandidateLine(QObject):
    """A product's line: how it may be used, and its highest dose."""

    def __init__(self, candidate: Candidate, parent: QWidget) -> None:
        super().__init__(parent)
        self.candidate = candidate
        self.name_label = TextLabel(candidate.name, wraps=True)
        self.use_box = CalmComboBox()
        self.use_box.setObjectName(f"use.{candidate.name}")
        self.use_box.setAccessibleName(say("How {name} may be used", name=candidate.name))
        self.use_box.addItem(say("may be used"), FREE)
        if candidate.in_mix:
            self.use_box.addItem(say("keeps its dose"), LOCKED)
        self.use_box.addItem(say("left out"), OUT)
        self.use_box.setCurrentIndex(self.use_box.findData(FREE if candidate.in_mix else OUT))
        unit = f"{candidate.measure}/L"
        self.highest = QuietNumberField("", unit, 0, 1000, decimals=3, name=f"highest.{candidate.name}")
        self.highest.editor.setAccessibleName(say("Highest dose of {name}", name=candidate.name))
        most = candidate.label_max_per_l
        words = say("no limit") if most is None else say("label: {most}", most=amount_text(most))
        self.highest.line.setPlaceholderText(words)

    @property
    def use(self) -> str:
        """free, locked or out."""
        return str(self.use_box.currentData())

    def lay_into(self, grid: QGridLayout, row: int) -> None:
        """Takes a row of the grid."""
        grid.addWidget(self.name_label, row, 0)
        grid.addWidget(self.use_box, row, 1)
        grid.addWidget(self.highest, row, 2)


class DosesDialog(DialogFrame):
    """Announces what is wished; the proposal is shown here and taken over on demand."""

    wished = Signal(object, object)  # Target | None, DoseWishes
    ec_wished = Signal(float)
    taken = Signal(object)  # MixerState

    def __init__(
        self, state: MixerState, offers: Sequence[TargetOffer], candidates: Sequence[Candidate],
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(say("Doses for a target"), "", parent, 640)
        self.setObjectName("dosesForTarget")
        self._state = state
        self._found: MixerState | None = None
        self._offers: list[tuple[str, Target]] = [(o.label, o.target) for o in offers]
        if isinstance(state.target, OwnTarget):
            self._offers.insert(0, (state.target.name or say("grower's own"), state.target))
        known = next((str(n) for n, (_, target) in enumerate(self._offers) if target == state.target), None)
        self.way = SegmentSwitch(
            [(ELEMENTS, say("By elements")), (EC, say("By EC"))], ELEMENTS, say("What is aimed at")
        )
        self.target_field = ChoiceField(
            say("Target"), [(str(n), label) for n, (label, _) in enumerate(self._offers)], known, name="doses.target"
        )
        self.lines = [CandidateLine(c, self) for c in candidates]
        self._make_measures()
        self.leave_button = self.add_button(say("Cancel"), name="leave")
        self.take_button = self.add_button(say("Take these doses"), "primary", "takeDoses")
        self.take_button.setDefault(False)
        self.weights_place = self._weights_grid()
        self._fill()
        self._connect()
        self.target_field.setFocus()
        self._show_way()
        self._forget()

    def _make_measures(self) -> None:
        self.ml_field = NumberField(say("Syringe reads to"), "mL", 0, 100, decimals=3, name="smallest_ml")
        self.g_field = NumberField(say("Scale reads to"), "g", 0, 100, decimals=3, name="smallest_g")
        self.ml_field.set_value(0.1)
        self.g_field.set_value(0.1)
        self.weights: dict[str, NumberField] = {}
        self.ec_field = NumberField(say("EC wanted"), "mS/cm", 0, 20, decimals=2, name="doses.ec", required=True)
        self.result_card = Card(margin_px=12)
        self.result_card.setObjectName("doseResult")
        self._result_content: QWidget | None = None
        self.explain_button = ExplanationButton()
        self.find_button = Button(f"{say('Work it out')}  Ctrl \u23ce", "", name="findDoses")
        self.weights_button = Button(say("How much each element matters…"), "link", name="weights")

    def wishes(self) -> DoseWishes:
        """What the search keeps to, as it stands."""
        used = tuple(line.candidate.name for line in self.lines if line.use != OUT)
        highest = {line.candidate.name: v for line in self.lines if (v := line.highest.value()) is not None}
        weights = {key: float(v) for key, field in self.weights.items() if (v := field.value()) is not None}
        return DoseWishes(
            candidates=used,
            locked=frozenset(line.candidate.name for line in self.lines if line.use == LOCKED),
            excluded=frozenset(line.candidate.name for line in self.lines if line.use == OUT),
            highest_per_l=highest,
            weights=weights,
            smallest_ml=self.ml_field.value() or None,
            smallest_g=self.g_field.value() or None,
        )

    def target(self) -> Target | None:
        """The target that is chosen."""
        chosen = self.target_field.value()
        return None if chosen is None else self._offers[int(chosen)][1]

    def ask(self) -> None:
        """Announces what is wished where every field can be read."""
        self._forget()
        if self.way.value() == EC:
            ec = self.ec_field.value() if self.ec_field.check() else None
            if ec is not None:
                self.ec_wished.emit(float(ec))
            return
        fields = [self.target_field, self.ml_field, self.g_field, *self.weights.values()]
        if not check_all([*fields, *(line.highest for line in self.lines)]):
            return
        if not self.wishes().candidates:
            needed = say("Say of at least one product that it may be used.")
            self._show([TextLabel(needed if self.lines else _nothing_to_dose(), tone="problem", wraps=True)])
            return
        self.wished.emit(self.target(), self.wishes())

    def show_proposal(self, proposal: DoseProposal) -> None:
        """The doses that were found, and what they miss."""
        rows: list[QWidget] = [TextLabel(say("Doses at full strength"), "strong")]
        rows += [
            TextLabel(f"{d.product}  {amount_text(d.amount)}\u2009{unit_words(d.unit)}", wraps=True)
            for d in proposal.state.doses
        ]
        if proposal.unmet:
            rows.append(TextLabel(say("What cannot be met"), "strong"))
        for miss in proposal.unmet:
            words = say("{element}: {reached} instead of {target} mg/L. {reason}", element=miss.element,
                        reached=content_text(miss.reached_mg_per_l), target=content_text(miss.target_mg_per_l),
                        reason=miss.reason)  # fmt: skip
            rows.append(CautionLine(words))
        if not proposal.unmet:
            rows.append(TextLabel(say("Every element of the target is met."), wraps=True))
        self._found = proposal.state
        self._show(rows)
        self.explain_button.show_figures(proposal.figures)

    def show_strength(self, state: MixerState) -> None:
        """The strength that was found for the EC."""
        self._found = state
        words = say("At {percent} % strength this mix should read that EC.", percent=round(state.strength_percent, 1))
        self._show([TextLabel(words, "strong", wraps=True)])

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What stands against it, beside its field where there is one."""
        left = []
        for problem in problems:
            field = {"target": self.target_field, "ec_ms_per_cm": self.ec_field}.get(problem.field)
            if field is not None:
                field.show_problem(problem.sentence)
            else:
                left.append(problem.sentence)
        if left:
            self._show([TextLabel(" ".join(left), tone="problem", wraps=True)])

    def _product_grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(0, 1)
        if not self.lines:
            grid.addWidget(TextLabel(_nothing_to_dose(), "", "mute", wraps=True), 0, 0)
            return grid
        grid.addWidget(TextLabel(say("Highest dose"), "field-label"), 0, 2)
        for number, line in enumerate(self.lines, 1):
            line.lay_into(grid, number)
        return grid

    def _fill(self) -> None:
        self.elements_part, self.ec_part = QWidget(), QWidget()
        column = QVBoxLayout(self.elements_part)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(self.target_field)
        column.addWidget(SectionTitle(say("Products")))
        column.addLayout(self._product_grid())
        column.addWidget(SectionTitle(say("What can be measured out for the tank")))
        steps = FormGrid(2)
        steps.add(self.ml_field, self.g_field)
        column.addWidget(steps)
        column.addWidget(self.weights_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.weights_place)
        ec = QVBoxLayout(self.ec_part)
        ec.setContentsMargins(0, 0, 0, 0)
        ec.addWidget(TextLabel(say("The mix as it stands is made weaker or stronger."), "", "mute", wraps=True))
        ec.addWidget(self.ec_field)
        self.body.addWidget(self.way)
        self.body.addWidget(self.elements_part)
        self.body.addWidget(self.ec_part)
        self.body.addWidget(self.find_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addWidget(self.result_card)
        self.body.addWidget(self.explain_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.body.addStretch(1)

    def _weights_grid(self) -> QWidget:
        grid = FormGrid(4, 90)
        grid.hide()
        for key in ("N", "P", "K", "Ca", "Mg", "S", "Fe", "NH4-N"):
            field = NumberField(key, "", 0, 100, decimals=2, name=f"weight.{key}")
            field.line.setPlaceholderText("1")
            self.weights[key] = field
            grid.add(field)
        return grid

    def _connect(self) -> None:
        self.way.value_changed.connect(self._show_way)
        self.weights_button.clicked.connect(self._show_weights)
        self.find_button.clicked.connect(self.ask)
        self.take_button.clicked.connect(self._take)
        self.leave_button.clicked.connect(self.reject)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.ask)

    def _show_weights(self) -> None:
        self.weights_place.show()
        self.weights["N"].setFocus()

    def _show_way(self) -> None:
        self.elements_part.setVisible(self.way.value() == ELEMENTS)
        self.ec_part.setVisible(self.way.value() == EC)
        self._forget()

    def _forget(self) -> None:
        self._found = None
        self._show([])
        self.explain_button.show_figures([])

    def _show(self, rows: Sequence[QWidget]) -> None:
        if self._result_content is not None:
            self._result_content.hide()
            self._result_content.deleteLater()
            self._result_content = None
        self.result_card.setVisible(bool(rows))
        self.explain_button.setVisible(self._found is not None and self.way.value() == ELEMENTS)
        self.take_button.setEnabled(self._found is not None)
        if not rows:
            return
        self._result_content = QWidget()
        column = QVBoxLayout(self._result_content)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for row in rows:
            column.addWidget(row)
        self.result_card.body.addWidget(self._result_content)
        self._result_content.show()
        QTimer.singleShot(0, self, self._reveal)

    def _reveal(self) -> None:
        bar = self.scroll_area.verticalScrollBar()
        bar.setValue(bar.maximum())

    def _take(self) -> None:
        if self._found is not None:
            self.taken.emit(self._found)
            self.accept()


def _nothing_to_dose() -> str:
    return say("There is no product with an analysis yet: add one to the mix, or copy its label on the shelf.")
