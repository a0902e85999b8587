"""Topping up and correcting: the tank as it is and as wanted, then what to do, then what was done."""

from collections.abc import Iterable, Sequence
from datetime import date

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import Button, ChoiceField, Field, FormGrid, SectionTitle, TextLabel, check_all
from growlog.desktop.mixer.order_card import OrderCard
from growlog.desktop.tank_care.record_part import RecordPart
from growlog.records.entry import Entry, TankDose, TankWork
from growlog.records.problems import Problem
from growlog.services.tank_care import TopUpAsked, TopUpProposal
from growlog.words import say, show_number

_TYPED_MS = 250  # after the last key stroke

_LIMITS = {
    "volume_now_l": "volume_before_l", "ec_now_ms_per_cm": "ec_before_ms_per_cm", "volume_wanted_l": "tank_l",
    "ec_wanted_ms_per_cm": "ec_after_ms_per_cm", "water_ec_ms_per_cm": "ec_ms_per_cm",
}  # fmt: skip


class TopUpPage(QWidget):
    """Asks for a proposal as soon as the figures stand, and emits the care as it was really done."""

    asked = Signal(object)  # TopUpAsked
    confirmed = Signal(object)  # TankWork

    def __init__(self, today: date, units: str) -> None:
        super().__init__()
        self.setObjectName("topUpPage")
        labels = {
            "volume_now_l": say("In the tank now"), "ec_now_ms_per_cm": say("EC now"),
            "volume_wanted_l": say("Wanted"), "ec_wanted_ms_per_cm": say("EC wanted"),
            "water_ec_ms_per_cm": say("EC of the water"),
        }  # fmt: skip
        self.fields = {key: MeasureField(_LIMITS[key], labels[key], units, f"topUp.{key}") for key in _LIMITS}
        self.fields["water_ec_ms_per_cm"].line.setPlaceholderText(say("as estimated"))
        self.message = TextLabel("", tone="problem", wraps=True)
        self.find_button = Button(say("Work it out"), name="findTopUp")
        self.order = OrderCard()
        self.explain_button = ExplanationButton()
        self.record_title = SectionTitle(say("What was done"))
        works = [(w.value, say(w.label)) for w in (TankWork.TOP_UP, TankWork.CORRECTION, TankWork.RENEWAL)]
        self.work_field = ChoiceField(say("Work"), works, TankWork.TOP_UP.value, name="topUp.work")
        self.record = RecordPart(today, units, "topUpRecord")
        self._typing = QTimer(self)
        self._typing.setSingleShot(True)
        self._typing.setInterval(_TYPED_MS)
        self._typing.timeout.connect(self._ask_as_typed)
        self._place()
        self.find_button.clicked.connect(self.ask)
        for field in self.fields.values():
            field.editing_finished.connect(self.ask_quietly)
            field.value_changed.connect(self._typing.start)
        self.show_proposal(None)

    def start(self, volume_l: float | None, ec_wanted: float | None) -> None:
        """What is usual: the tank full again, at the EC of its mix."""
        self.fields["volume_wanted_l"].set_value(volume_l)
        self.fields["ec_wanted_ms_per_cm"].set_value(None if ec_wanted is None else round(ec_wanted, 2))

    def ask(self) -> None:
        """Announces the tank as it stands, where it can be read."""
        needed = [field for key, field in self.fields.items() if key != "water_ec_ms_per_cm"]
        for field in needed:
            field.required = True
        fields: list[Field] = [*self.fields.values()]
        if not check_all(fields):
            return
        self._emit()

    def show_proposal(self, proposal: TopUpProposal | None) -> None:
        """What is to be done, which also fills the record in."""
        self.explain_button.setVisible(proposal is not None)
        for field in self.fields.values():
            field.check()
        self._say("")
        if proposal is None:
            self.order.hide()
            return
        cautions = (say("Gloves and eye cover; concentrates never meet undiluted. The label rules."),)
        self.order.show_order(proposal.steps, (), cautions if proposal.doses else ())
        names = {f.key: name for f, name in zip(proposal.figures, _figure_names(), strict=False)}
        self.explain_button.show_figures(proposal.figures, names)
        self.record.show_doses(
            [TankDose(p.product.name, p.amount or 0.0, p.measure, p.product_id) for p in proposal.doses]
        )
        self.work_field.set_value(TankWork.CORRECTION if proposal.drain_l > 0 else TankWork.TOP_UP)
        typed = {key: field.value() for key, field in self.fields.items()}
        fields = self.record.fields
        fields["volume_before_l"].set_value(typed["volume_now_l"])
        fields["ec_before_ms_per_cm"].set_value(typed["ec_now_ms_per_cm"])
        fields["water_added_l"].set_value(round(proposal.water_l, 2) or None)
        fields["drained_l"].set_value(round(proposal.drain_l, 2) or None)
        water = show_number(proposal.water_ec_ms_per_cm, 2)
        self.fields["water_ec_ms_per_cm"].line.setPlaceholderText(say("{ec} as estimated", ec=water))

    def entry(self, tank_id: str, mix_id: str | None) -> Entry | None:
        """What was done; None where a field cannot be read."""
        return self.record.entry(tank_id, TankWork(self.work_field.value() or "top-up"), mix_id)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What stands against the proposal, beside its field."""
        self.order.hide()
        self.explain_button.hide()
        left = []
        for problem in problems:
            field = self.fields.get(problem.field)
            if field is None:
                left.append(problem.sentence)
            elif problem.asks:
                field.show_question(problem.sentence)
            else:
                field.show_problem(problem.sentence)
        self._say(" ".join(left))

    def _place(self) -> None:
        grid = FormGrid(3, 150)
        grid.add(*self.fields.values())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(grid)
        column.addWidget(self.message)
        column.addWidget(self.find_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.order)
        column.addWidget(self.explain_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.record_title)
        column.addWidget(self.work_field)
        column.addWidget(self.record)

    def ask_quietly(self) -> None:
        """Works it out as soon as all figures are there; says nothing of empty fields."""
        self._typing.stop()
        readable = all(f.check() for f in self.fields.values())
        if readable and self._has_all():
            self._emit()

    def _ask_as_typed(self) -> None:
        """The same while a figure is typed; what was found for other figures does not stay beside half of a new one."""
        if self._has_all() and not any(f.is_refused for f in self.fields.values()):
            self._emit()
        else:
            self.order.hide()
            self.explain_button.hide()

    def _has_all(self) -> bool:
        return all(f.value() is not None for key, f in self.fields.items() if key != "water_ec_ms_per_cm")

    def _emit(self) -> None:
        value = {key: field.value() for key, field in self.fields.items()}
        self.asked.emit(
            TopUpAsked(
                float(value["volume_now_l"] or 0.0), float(value["ec_now_ms_per_cm"] or 0.0),
                float(value["volume_wanted_l"] or 0.0), float(value["ec_wanted_ms_per_cm"] or 0.0),
                value["water_ec_ms_per_cm"],
            )
        )  # fmt: skip

    def _say(self, sentence: str) -> None:
        self.message.setText(sentence)
        self.message.setVisible(bool(sentence))


def _figure_names() -> Sequence[str]:
    return (say("To let out"), say("Water"), say("Full-strength mix"))
