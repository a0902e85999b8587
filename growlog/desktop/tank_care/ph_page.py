"""The pH of a tank: what was learned from the grower's own steps, and the record of one more; never a blind dose."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.crop_form.word_field import WordField
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import ChoiceField, FormGrid, NumberField, SectionTitle, TextLabel
from growlog.desktop.mixer.order_card import CautionLine
from growlog.desktop.tank_care.record_part import RecordPart
from growlog.records.entry import Entry, TankCare, TankDose, TankWork
from growlog.services.tank_care import PhLearnedView
from growlog.words import say


class PhPage(QWidget):
    """Shows what was learned and asks for what was added."""

    def __init__(self, today: date, units: str, products: Sequence[tuple[str, str, str]]) -> None:
        """products: name, id and measure of those on the shelf."""
        super().__init__()
        self.setObjectName("phPage")
        self._ids = {name: (product_id, measure) for name, product_id, measure in products}
        self.product_field = WordField(say("What was added"), list(self._ids), name="ph.product")
        self.amount_field = NumberField(say("How much"), "", 0, 100_000, decimals=2, name="ph.amount", required=True)
        self.unit_field = ChoiceField(say("Unit"), [("mL", "mL"), ("g", "g")], "mL", name="ph.unit")
        self.record = RecordPart(today, units, "phRecord", ("volume_before_l", "ph_before", "ph_after"))
        self._learned = QVBoxLayout()
        self._learned.setSpacing(4)
        self._content: QWidget | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(SectionTitle(say("Learned from your own steps")))
        column.addLayout(self._learned)
        column.addWidget(
            CautionLine(say("Acid into water, never water into acid; never bring acids together with bleach."))
        )
        column.addWidget(CautionLine(say("pH-raisers are caustic. Gloves and eye cover; the label rules.")))
        small = say("Go in small steps, stir, and measure again after ten minutes. What it took is written here.")
        column.addWidget(TextLabel(small, "", "mute", wraps=True))
        column.addWidget(SectionTitle(say("What was done")))
        grid = FormGrid(4, 110)
        grid.add(self.product_field, span=2)
        grid.add(self.amount_field, self.unit_field)
        column.addWidget(grid)
        column.addWidget(self.record)
        self.product_field.value_changed.connect(self._chosen)
        self.show_learned([])

    def show_learned(self, learned: Sequence[PhLearnedView]) -> None:
        """A line for each product and direction, each with how it is worked out."""
        if self._content is not None:
            self._content.hide()
            self._content.deleteLater()
        self._content = QWidget()
        column = QVBoxLayout(self._content)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for view in learned:
            column.addWidget(TextLabel(view.words, wraps=True))
            column.addWidget(ExplanationButton(view.figure), 0, Qt.AlignmentFlag.AlignLeft)
        if not learned:
            nothing = say("Nothing yet. After three steps with one product its effect on this tank stands here.")
            column.addWidget(TextLabel(nothing, "", "mute", wraps=True))
        self._learned.addWidget(self._content)

    def entry(self, tank_id: str) -> Entry | None:
        """What was done; None where a field cannot be read."""
        name, amount = self.product_field.value(), self.amount_field.value()
        if not name:
            self.product_field.show_problem(say("Say what was added."))
            self.product_field.setFocus()
            return None
        if not self.amount_field.check() or amount is None:
            self.amount_field.setFocus()
            return None
        product_id = self._ids.get(name, (None, ""))[0]
        self.record.show_doses(())
        entry = self.record.entry(tank_id, TankWork.PH)
        if entry is None:
            return None
        dose = TankDose(name, float(amount), self.unit_field.value() or "mL", product_id)
        assert isinstance(entry.detail, TankCare)
        return replace(entry, detail=replace(entry.detail, doses=(dose,)))

    def _chosen(self) -> None:
        known = self._ids.get(self.product_field.value())
        if known is not None:
            self.unit_field.set_value(known[1])
