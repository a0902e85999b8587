"""What would be done otherwise: one field for each input that can be changed."""

from collections.abc import Iterable
from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Card, Field, FormGrid, NumberField, SectionTitle, TextField, TextLabel
from growlog.desktop.look.widgets.number_text import number_text
from growlog.desktop.money.money_field import MoneyField
from growlog.records.money import decimals_of, money_of
from growlog.records.problems import Problem
from growlog.services.what_if import OtherCost, WhatIf, WhatIfStart
from growlog.words import say

_COLUMNS, _NARROWEST_PX = 2, 150


class WhatIfForm(QWidget):
    """An empty field stays as it was; what it was stands in the field in grey."""

    changed = Signal()

    def __init__(self, start: WhatIfStart) -> None:
        super().__init__()
        self.setObjectName("whatIfForm")
        self._currency = start.currency
        self._start = start
        self.lamp_w = NumberField(say("Lamps at the wall"), "W", 0, 100_000, 1, name="lamp_w")
        self.photoperiod_h = NumberField(say("Hours of light"), "h", 0, 24, 2, name="photoperiod_h")
        self.price_per_kwh = NumberField(say("Price of a kWh"), start.currency, 0, 1000, 4, name="price_per_kwh")
        self.lamp_price = MoneyField(say("New lamps cost"), start.currency, name="lamp_price_minor")
        self.lamp_life = NumberField(say("borne over so many crops"), "", 1, 1000, name="lamp_life_crops")
        self.feed = NumberField(say("Feed strength, of what it was"), "%", 0, 500, 1, name="feed_strength_percent")
        self.cultivar = TextField(say("Another cultivar"), name="cultivar", placeholder=start.cultivar)
        self.sets_alone = QCheckBox(say("It sets without pollination"))
        self.system = TextField(say("Another system"), name="system", placeholder=start.system)
        self.plants = NumberField(say("Plants"), "", 1, 1000, name="plants")
        self.minutes = NumberField(say("Work, more or less"), "min", -1_000_000, 1_000_000, name="minutes_change")
        self.other_label = TextField(say("Something else"), name="other_costs", placeholder=say("such as a net"))
        decimals = decimals_of(start.currency)
        words = say("costs so much more a crop, below 0 less")
        self.other_amount = NumberField(words, start.currency, -10_000_000, 10_000_000, decimals, name="other_amount")
        self.yield_change = NumberField(say("Change of the yield"), "%", -100, 1000, 1, name="yield_change_percent")
        self._place()
        self._fill_in_grey()
        self._connect()

    def change(self) -> WhatIf:
        """What is changed."""
        price = self.price_per_kwh.value()
        return WhatIf(
            lamp_w=self.lamp_w.value(),
            lamp_price_minor=self.lamp_price.minor(),
            lamp_life_crops=int(self.lamp_life.value() or 1),
            photoperiod_h=self.photoperiod_h.value(),
            price_per_kwh=None if price is None else Decimal(str(price)),
            feed_strength_percent=self.feed.value(),
            sets_alone=self.sets_alone.isChecked(),
            cultivar=self.cultivar.value(),
            system=self.system.value(),
            plants=_whole(self.plants.value()),
            minutes_change=int(self.minutes.value() or 0),
            other_costs=self._other(),
            yield_change_percent=self.yield_change.value(),
        )

    def is_refused(self) -> bool:
        """Whether something stands in a field that cannot be taken."""
        return any(field.is_refused for field in self.fields())

    def fields(self) -> list[Field]:
        """All fields."""
        return [f for f in vars(self).values() if isinstance(f, Field)]

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Each beside its field."""
        by_name = {field.objectName(): field for field in self.fields()}
        for problem in problems:
            if problem.field in by_name:
                by_name[problem.field].show_problem(problem.sentence)

    def ask_for_yield(self, asked: bool) -> None:
        """Says that the change brings another yield, or that the field may stay empty."""
        self.yield_hint.setText(
            say("This changes the yield too. By how much, do you expect? Empty means that you do not know.")
            if asked
            else say("If you expect another yield, say by how much. 0 means that it stays as it was.")
        )

    def _other(self) -> tuple[OtherCost, ...]:
        amount = self.other_amount.value()
        if amount is None:
            return ()
        return (OtherCost(self.other_label.value(), money_of(Decimal(str(amount)), self._currency).minor),)

    def _place(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(TextLabel(say("Fill in only what would be otherwise."), "", "mute", wraps=True))
        for title, fields in self._groups():
            column.addWidget(SectionTitle(title))
            grid = FormGrid(_COLUMNS, _NARROWEST_PX)
            grid.add(*fields)
            column.addWidget(grid)
        self.yield_card = card = Card(tone="soft")
        self.yield_hint = TextLabel("", "small", wraps=True)
        card.body.addWidget(SectionTitle(say("The yield that you expect")))
        card.body.addWidget(self.yield_hint)
        card.body.addWidget(self.yield_change)
        column.addStretch(1)
        self.sets_alone.setObjectName("sets_alone")
        self.ask_for_yield(False)

    def _groups(self) -> list[tuple[str, list[QWidget]]]:
        return [
            (say("Light"), [self.lamp_w, self.photoperiod_h, self.price_per_kwh, self.lamp_price, self.lamp_life]),
            (say("Plants and feed"), [self.plants, self.feed, self.cultivar, self.system, self.sets_alone]),
            (say("Work and other costs"), [self.minutes, self.other_label, self.other_amount]),
        ]

    def _fill_in_grey(self) -> None:
        start = self._start
        price = None if start.price_per_kwh is None else float(start.price_per_kwh)
        for field, value, decimals in (
            (self.lamp_w, start.lamp_w, 1), (self.photoperiod_h, start.photoperiod_h, 2),
            (self.price_per_kwh, price, 4), (self.plants, float(start.plants), 0), (self.feed, 100.0, 0),
            (self.lamp_life, 1.0, 0),
        ):  # fmt: skip
            if value is not None:
                field.line.setPlaceholderText(number_text(value, decimals).removesuffix(".0").removesuffix(",0"))
        self.yield_change.line.setPlaceholderText(say("not known"))

    def _connect(self) -> None:
        for field in self.fields():
            field.value_changed.connect(self.changed)
        self.sets_alone.toggled.connect(self._toggled)

    def _toggled(self, _on: bool) -> None:
        self.changed.emit()


def _whole(value: float | None) -> int | None:
    return None if value is None else int(value)
