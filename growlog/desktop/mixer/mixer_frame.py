"""The fields and panels of the mixer as they stand on the paper, and how a view is written into them."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.calculations.conductivity import ChargeBalance
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import (
    Banner,
    ChoiceField,
    DialogFrame,
    FormGrid,
    SegmentSwitch,
    TextLabel,
)
from growlog.desktop.mixer.dose_table import DoseTable
from growlog.desktop.mixer.ec_card import EcCard
from growlog.desktop.mixer.element_list import MG, UNITS, ElementList
from growlog.desktop.mixer.order_card import OrderCard
from growlog.desktop.mixer.target_choice import TargetChoice
from growlog.desktop.mixer.water_choice import WaterChoice
from growlog.desktop.mixer.wording import amount_text
from growlog.services.mixer import BatchCost, MixerView
from growlog.words import say, show_number


class MixerFrame(DialogFrame):
    """Places what the mixer shows; `show_view` writes it."""

    def __init__(self, about: str, units: str, parent: QWidget | None) -> None:
        super().__init__(say("Nutrient mixer"), about, parent, 664)
        self.setObjectName("nutrientMixer")
        self.mix_field = ChoiceField(say("Mix"), [], None, say("a new mix"), "mixer.mix")
        self.tank_field = MeasureField("tank_l", say("Tank"), units, "mixer.tank")
        self.strength_field = MeasureField("strength_percent", name="mixer.strength")
        self.ph_field = MeasureField("ph", say("pH in the tank"), name="mixer.ph")
        self.water = WaterChoice(self)
        self.table = DoseTable()
        self.ec_card = EcCard()
        self.targets = TargetChoice(self)
        self.unit_switch = SegmentSwitch([(u, u) for u in UNITS], MG, say("Unit of the elements"))
        self.elements = ElementList()
        self.guests = Banner("", "asks", say("Keep them"), can_close=False)
        self.guests.hide()
        self.unknown_label = TextLabel("", tone="problem", wraps=True)
        self.ratio_label = TextLabel("", "", "mute", wraps=True)
        self.balance_label = TextLabel("", "", "mute", wraps=True)
        self.explain_button = ExplanationButton()
        self.order = OrderCard()
        self.log_button = self.add_button(say("Mix and log feed…"), "primary", "mixAndLog")
        self.log_button.setDefault(False)
        self.doses_button = self.add_button(say("Doses for a target…"), name="dosesForTarget", left=True)
        self.top_up_button = self.add_button(say("Top up…"), name="topUp", left=True)
        self.save_button = self.add_button(say("Save mix…"), name="saveMix", left=True)
        self.more_button = self.add_button(say("More"), name="more", left=True)
        self._fill()
        self.unit_switch.value_changed.connect(self.elements.show_unit)

    def show_view(self, view: MixerView) -> None:
        """Writes a view into everything but the fields."""
        self.table.show_views(view.lines, cost_words(view.cost))
        self.ec_card.show_ec(view.ec, view.unknown_products)
        self.targets.show_view(view.target, view.problems_of("target"))
        if view.ready:
            nothing = say("Nothing in it: rain or reverse osmosis.")
        else:
            nothing = say("Not worked out yet: put right first what is marked above.")
        self.elements.show_lines(view.elements, nothing)
        unknown = ", ".join(view.unknown_products)
        self.unknown_label.setText(say("Not in these sums, since the label is not known: {names}", names=unknown))
        self.unknown_label.setVisible(bool(unknown))
        self._show_ratios(view)
        self._show_figures(view)
        self.order.show_order(view.order, view.warnings, view.cautions)

    def show_elements(self) -> None:
        """Scrolls to what the tank holds, once all is laid out."""
        QTimer.singleShot(0, self, self._scroll_to_elements)

    def _scroll_to_elements(self) -> None:
        self.scroll_area.verticalScrollBar().setValue(self.elements.y() - current().px(96))

    def focus_first_problem(self) -> None:
        """Goes to the first field that is refused."""
        fields = [self.tank_field, self.strength_field, self.ph_field, *(line.amount for line in self.table.lines)]
        for field in fields:
            if field.is_refused:
                field.setFocus(Qt.FocusReason.OtherFocusReason)
                return

    def _fill(self) -> None:
        grid = FormGrid(6, 80)
        grid.add(self.mix_field, self.water.field, span=3)
        grid.add(self.tank_field, self.strength_field, self.ph_field, span=2)
        self.body.setSpacing(14)
        self.body.addWidget(grid)
        self.body.addWidget(self.water.blend)
        self.body.addWidget(self.guests)
        self.body.addWidget(self.table)
        self.body.addWidget(self.ec_card)
        self.body.addLayout(self._head_of_elements())
        self.body.addWidget(self.targets.note_label)
        self.body.addWidget(self.elements)
        self.body.addWidget(self.unknown_label)
        self.body.addWidget(self.ratio_label)
        foot = QHBoxLayout()
        foot.addWidget(self.balance_label, 1)
        foot.addWidget(self.explain_button, 0, Qt.AlignmentFlag.AlignTop)
        self.body.addLayout(foot)
        self.body.addWidget(self.order)
        self.body.addStretch(1)

    def _head_of_elements(self) -> QVBoxLayout:
        head = QHBoxLayout()
        head.addWidget(TextLabel(say("In the tank"), "heading"), 1)
        head.addWidget(self.unit_switch)
        against = QHBoxLayout()
        against.setSpacing(10)
        against.addWidget(TextLabel(say("against"), "", "mute"))
        against.addWidget(self.targets.field, 1)
        against.addWidget(self.targets.own_button)
        both = QVBoxLayout()
        both.setSpacing(8)
        both.addLayout(head)
        both.addLayout(against)
        return both

    def _show_ratios(self, view: MixerView) -> None:
        ratios = view.ratios
        words = (ratios.n_p_k_words, ratios.k_ca_mg_words, ratios.ammonium_words) if ratios else ()
        self.ratio_label.setText("  ·  ".join(w for w in words if w))
        self.ratio_label.setVisible(any(words))
        known = view.charges is not None and bool(view.elements)
        self.balance_label.setText(balance_words(view.charges) if known and view.charges is not None else "")

    def _show_figures(self, view: MixerView) -> None:
        figures = [] if view.ec is None else [view.ec.figure, view.ec.offset_figure]
        figures += [line.figure for line in view.elements]
        own = {} if view.ec is None else {view.ec.offset_figure.key: say("Your meter")}
        names = {"ec": say("EC at 25 °C"), **own, **{line.figure.key: line.label for line in view.elements}}
        self.explain_button.show_figures(figures, names)


def balance_words(charges: ChargeBalance) -> str:
    """Cations against anions."""
    return say(
        "Cations {cations}, anions {anions} meq/L, difference {difference} %",
        cations=show_number(charges.cations_meq_per_l, 1),
        anions=show_number(charges.anions_meq_per_l, 1),
        difference=show_number(round(charges.difference_percent) + 0.0, 0),
    )


def cost_words(cost: BatchCost) -> str:
    """What the tank costs, and a litre of it; what has no price is named."""
    if cost.per_l is None:
        return say("No price on the shelf yet.") if cost.unpriced else ""
    unit = f" {cost.currency}" if cost.currency else ""
    per_l = f"{amount_text(float(cost.per_l))}{unit}"
    if cost.money is not None:
        tank = f"{show_number(float(cost.money.amount), 2)}{unit}"
        words = say("{tank} a tank, {per_l} a litre", tank=tank, per_l=per_l)
    else:
        words = say("{per_l} a litre", per_l=per_l)
    if cost.unpriced:
        return say("{words}, without {names}", words=words, names=", ".join(cost.unpriced))
    return words
