"""A product as its label states it."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout

from growlog.desktop.look.widgets import (
    Button,
    Card,
    ChoiceField,
    Field,
    FormGrid,
    NoteField,
    NumberField,
    SectionTitle,
    TextField,
    TextLabel,
    check_all,
)
from growlog.desktop.mixer.wording import unit_choices
from growlog.desktop.shelf.analysis_rows import AnalysisRows
from growlog.records.money import decimals_of, money_of
from growlog.records.problems import Problem
from growlog.records.product import LabelBasis, ProductForm, ShelfProduct
from growlog.services.shelf import density_from_weight
from growlog.words import say

Check = Callable[[ShelfProduct], list[Problem]]


class ProductFormCard(Card):
    """Emits the product, and what is in its bottle now where that was typed; stays until it is put away."""

    confirmed = Signal(object, object)  # ShelfProduct, float | None
    left = Signal()

    def __init__(self, product: ShelfProduct, currency: str, check: Check, is_new: bool) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("productForm")
        self._product = product
        self._check = check
        self._currency = currency
        self._is_new = is_new
        self._make_label_fields(product)
        self._make_pack_fields(product)
        self.message = TextLabel("", tone="problem", wraps=True)
        self.leave_button = Button(say("Cancel"), name="leaveForm")
        self.write_button = Button(f"{say('Keep this label')}  Ctrl \u23ce", "primary", name="writeForm")
        self._fill()
        self._show(product)
        self._connect()
        self._form_changed()

    def _make_label_fields(self, product: ShelfProduct) -> None:
        self.name_field = TextField(say("Name"), product.name, required=True, longest=120, name="product_name")
        self.form_field = ChoiceField(
            say("Form"), [("liquid", say("liquid")), ("solid", say("solid"))], product.form.value, name="product_form"
        )
        bases = [
            (LabelBasis.IN_VOLUME.value, say("g in 100 mL (w/v)")),
            (LabelBasis.BY_WEIGHT.value, say("by weight (w/w)")),
        ]
        asked = self._is_new and not product.analysis  # the label is asked, never guessed
        self.basis_field = ChoiceField(
            say("Per cent are"), bases, None if asked else product.basis.value, name="product_basis"
        )
        self.density_field = NumberField(say("Density"), "g/mL", decimals=4, name="density")
        self.weighed_ml = NumberField(say("or weighed: volume"), "mL", decimals=1, name="weighed_ml")
        self.weighed_g = NumberField(say("its weight"), "g", decimals=2, name="weighed_g")
        self.analysis = AnalysisRows(product.analysis)
        chelates = [(c, c) for c in ("EDTA", "DTPA", "EDDHA", "HEDTA", "EDDHMA")]
        self.chelate_field = ChoiceField(say("Iron is held by"), chelates, product.chelate or None, say("not stated"),
                                         "chelate")  # fmt: skip

    def _make_pack_fields(self, product: ShelfProduct) -> None:
        self.dose_field = NumberField(say("Maker's dose"), "", decimals=4, name="maker_dose")
        self.dose_unit = ChoiceField(say("its unit"), unit_choices(product.maker_dose_unit or "mL/L"),
                                     product.maker_dose_unit or "mL/L", name="maker_dose_unit")  # fmt: skip
        self.most_field = NumberField(say("Highest dose"), "mL/L", decimals=3, name="label_max_per_l")
        self.pack_field = NumberField(say("Pack"), "mL", decimals=1, name="pack_amount")
        self.price_field = NumberField(
            say("Price of a pack"), self._currency, 0, decimals=decimals_of(self._currency), name="pack_price"
        )
        self.level_field = NumberField(say("In the bottle now"), "mL", 0, decimals=1, name="level")
        self.note_field = NoteField(say("Note"), product.note, lines=2, name="product_note")

    def product(self) -> ShelfProduct:
        """The label as it stands in the fields."""
        solid = self.form_field.value() == ProductForm.SOLID.value
        price = self.price_field.value()
        return replace(
            self._product,
            name=self.name_field.value(),
            form=ProductForm(self.form_field.value() or "liquid"),
            basis=LabelBasis.BY_WEIGHT if solid else LabelBasis(self.basis_field.value() or "w/w"),
            density_g_per_ml=self.density_field.value(),
            analysis=self.analysis.shares(),
            chelate=self.chelate_field.value() or "",
            maker_dose=self.dose_field.value(),
            maker_dose_unit=self.dose_unit.value() or "mL/L",
            label_max_per_l=self.most_field.value(),
            pack_amount=self.pack_field.value(),
            pack_price_minor=None if price is None else money_of(Decimal(repr(price)), self._currency).minor,
            note=self.note_field.value(),
        )

    def confirm(self) -> None:
        """Emits it where nothing stands against it; goes to the first field that is refused."""
        fields = [f for f in self._fields() if f is not self.basis_field or self._basis_matters()]
        if not (self.analysis.check() & check_all(fields)):
            return
        problems = self._check(self.product())
        self.show_problems(problems)
        if not any(not p.asks for p in problems):
            self.confirmed.emit(self.product(), self.level_field.value())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Each beside its field; what belongs to the analysis in its rows."""
        fields: dict[str, Field] = {
            "name": self.name_field, "basis": self.basis_field, "density_g_per_ml": self.density_field,
            "maker_dose": self.dose_field, "maker_dose_unit": self.dose_unit, "label_max_per_l": self.most_field,
            "pack_amount": self.pack_field, "pack_price_minor": self.price_field, "amount": self.level_field,
        }  # fmt: skip
        words = {row.nutrient.value() for row in self.analysis.rows}
        of_analysis, left = [], []
        for problem in problems:
            if problem.field in fields:
                show = fields[problem.field].show_question if problem.asks else fields[problem.field].show_problem
                show(problem.sentence)
            elif problem.field == "analysis" or problem.field in words:
                of_analysis.append(problem)
            else:
                left.append(problem.sentence)
        self.analysis.show_problems(of_analysis)
        self.message.setText(" ".join(left))
        self.message.setVisible(bool(left))

    def begin(self) -> None:
        """Puts the cursor into the first field."""
        self.name_field.setFocus()
        self.name_field.line.selectAll()

    def _basis_matters(self) -> bool:
        return self.form_field.value() == ProductForm.LIQUID.value and bool(self.analysis.shares())

    def _fields(self) -> list[Field]:
        return [self.name_field, self.form_field, self.basis_field, self.density_field, self.weighed_ml,
                self.weighed_g, self.dose_field, self.dose_unit, self.most_field, self.pack_field, self.price_field,
                self.level_field, self.note_field]  # fmt: skip

    def _fill(self) -> None:
        top = FormGrid(6, 90)
        top.add(self.name_field, span=4)
        top.add(self.form_field, span=2)
        top.add(self.basis_field, span=3)
        top.add(self.density_field, span=3)
        self.weighed = FormGrid(2, 150)
        self.weighed.add(self.weighed_ml, self.weighed_g)
        doses = FormGrid(3, 150)
        doses.add(self.dose_field, self.dose_unit, self.most_field, self.pack_field, self.price_field, self.level_field)
        self.level_field.setVisible(self._is_new)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.leave_button)
        buttons.addWidget(self.write_button)
        self.body.setSpacing(12)
        self.body.addWidget(top)
        self.body.addWidget(self.weighed)
        self.body.addWidget(SectionTitle(say("Guaranteed analysis")))
        without = say("Without an analysis a product counts for stock and cost; what it brings stays unknown.")
        self.body.addWidget(TextLabel(without, "small", wraps=True))
        self.body.addWidget(self.analysis)
        self.body.addWidget(self.chelate_field)
        self.body.addWidget(SectionTitle(say("Dose and pack")))
        self.body.addWidget(doses)
        self.body.addWidget(self.note_field)
        self.body.addWidget(self.message)
        self.body.addLayout(buttons)
        self.message.hide()

    def _show(self, product: ShelfProduct) -> None:
        self.density_field.set_value(product.density_g_per_ml)
        self.dose_field.set_value(product.maker_dose)
        self.most_field.set_value(product.label_max_per_l)
        self.pack_field.set_value(product.pack_amount)
        if product.pack_price_minor is not None:
            self.price_field.set_value(float(Decimal(product.pack_price_minor).scaleb(-decimals_of(self._currency))))

    def _connect(self) -> None:
        self.form_field.value_changed.connect(self._form_changed)
        self.basis_field.value_changed.connect(self._form_changed)
        self.analysis.changed.connect(self._analysis_changed)
        for field in (self.weighed_ml, self.weighed_g):
            field.value_changed.connect(self._weigh)
        self.leave_button.clicked.connect(self.left)
        self.write_button.clicked.connect(self.confirm)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)

    def _form_changed(self) -> None:
        """A solid is labelled by weight; a liquid says which, and by weight needs a density."""
        solid = self.form_field.value() == ProductForm.SOLID.value
        by_weight = self.basis_field.value() == LabelBasis.BY_WEIGHT.value
        self.basis_field.setVisible(not solid)
        self.weighed.setVisible(not solid and by_weight)
        label = say("Heaped density, for spoons") if solid else say("Density")
        self.density_field.set_label(label)
        self.density_field.setVisible(solid or by_weight)
        unit = "g" if solid else "mL"
        self.most_field.set_unit(f"{unit}/L")
        for field in (self.pack_field, self.level_field):
            field.set_unit(unit)
        self._analysis_has_iron()
        unit_now = self.dose_unit.value()
        if self._is_new and self.dose_field.is_empty() and unit_now in ("mL/L", "g/L"):
            self.dose_unit.set_value(f"{unit}/L")

    def _analysis_changed(self) -> None:
        self.show_problems([])
        self._analysis_has_iron()

    def _analysis_has_iron(self) -> None:
        words = {row.nutrient.value() for row in self.analysis.rows}
        self.chelate_field.setVisible(bool(words & {"fe", "fe2o3"}) or bool(self.chelate_field.value()))

    def _weigh(self) -> None:
        volume, weight = self.weighed_ml.value(), self.weighed_g.value()
        if volume and weight and volume > 0 and weight > 0:
            self.density_field.set_value(round(density_from_weight(weight, volume), 4))
