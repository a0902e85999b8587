"""What keep or clear is weighed by: the value of a fruit, running costs, labour, and what would stand there instead."""

from decimal import Decimal

from PySide6.QtCore import QLocale, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QVBoxLayout, QWidget

from growlog.calculations.pick_intervals import Measure
from growlog.desktop.look.widgets import FormGrid, NumberField, SectionTitle, SegmentSwitch, TextLabel
from growlog.records.display import THIN
from growlog.services.yield_view.keep import USUAL_TURN_ROUND_DAYS, Guess, KeepAsk, net_value, value_of_one
from growlog.services.yield_view.keep_grounds import KeepGrounds
from growlog.words import say, show_number

KILOGRAM, FRUIT = "kg", "fruit"
OWN, GUESS = "own", "guess"
_MEASURES = {KILOGRAM: Measure.GRAMS, FRUIT: Measure.FRUIT}


class InputsForm(QWidget):
    """Shows what the logbook says; whatever is typed takes its place."""

    changed = Signal()

    def __init__(self, grounds: KeepGrounds) -> None:
        super().__init__()
        self.setObjectName("keepInputs")
        self._grounds = grounds
        self.measure = SegmentSwitch(
            [(KILOGRAM, say("by weight")), (FRUIT, say("by count"))], self._first_measure(), say("The yield counts by")
        )
        money, decimals = grounds.currency, grounds.decimals
        self.value_field = NumberField("", "", 0, 100_000, decimals, name="valueOfOne")
        self.running_field = NumberField(say("Running costs a day"), money, 0, 100_000, max(decimals, 2),
                                         name="runningCosts")  # fmt: skip
        self.labour_box = QCheckBox(say("Count my labour"))
        self.labour_box.setObjectName("withLabour")
        self.labour_field = NumberField(say("An hour is worth"), money, 0, 100_000, decimals, name="labourRate")
        self.instead = SegmentSwitch(
            [(OWN, say("my cleared crops")), (GUESS, say("a guess"))],
            OWN if grounds.finished else GUESS, say("What would stand there instead"),
        )  # fmt: skip
        self.turn_round_field = NumberField(say("Turn-round"), "d", 0, 365, name="turnRound")
        self.net_field = NumberField(say("Brings in all, after costs"), money, -100_000, 100_000, decimals,
                                     name="guessNet")  # fmt: skip
        self.days_field = NumberField(say("In so many days"), "d", 1, 730, name="guessDays")
        self.crop_boxes = {f.crop_id: QCheckBox() for f in grounds.finished}
        self.value_source = TextLabel("", "small", "mute", wraps=True)
        self.running_source = TextLabel("", "small", "mute", wraps=True)
        self.labour_source = TextLabel("", "small", "mute", wraps=True)
        self._fill()
        self._place()
        self._connect()
        self._show_parts()

    def ask(self) -> KeepAsk | None:
        """What is asked; None while a number is refused or a guess is not whole."""
        fields = (self.value_field, self.running_field, self.labour_field, self.turn_round_field, self.net_field,
                  self.days_field)  # fmt: skip
        if not all(field.check() for field in fields):
            return None
        guess = None
        if self.instead.value() == GUESS:
            net, days = self.net_field.value(), self.days_field.value()
            if net is None or days is None:
                return None
            guess = Guess(Decimal(str(net)), int(days))
        chosen = tuple(crop_id for crop_id, box in self.crop_boxes.items() if box.isChecked())
        turn_round = self.turn_round_field.value()
        return KeepAsk(
            _MEASURES[self.measure.value()],
            _decimal(self.value_field),
            self._running(),
            self.labour_box.isChecked(),
            _decimal(self.labour_field),
            guess,
            chosen,
            USUAL_TURN_ROUND_DAYS if turn_round is None else int(turn_round),
        )

    def _running(self) -> Decimal | None:
        """What is typed; None where the logbook's own amount stands there, which is known more exactly than shown."""
        typed, own = _decimal(self.running_field), self._grounds.running_per_day
        shown = round(float(own), max(self._grounds.decimals, 2))
        return None if typed is not None and float(typed) == shown else typed

    def _first_measure(self) -> str:
        measure, _ = value_of_one(self._grounds, KeepAsk())
        return KILOGRAM if measure is Measure.GRAMS else FRUIT

    def _fill(self) -> None:
        grounds = self._grounds
        self._show_value()
        _show_amount(self.running_field, grounds.running_per_day, max(grounds.decimals, 2))
        self.running_source.setText(say("Electricity, nutrients and water of the last two weeks, as the logbook has "
                                        "them."))  # fmt: skip
        rate = grounds.labour_rate_per_h
        _show_amount(self.labour_field, rate, grounds.decimals)
        minutes = show_number(grounds.labour_minutes_per_day, 0)
        self.labour_source.setText(say("{minutes} minutes a day in the last two weeks.", minutes=minutes))
        self.turn_round_field.set_value(USUAL_TURN_ROUND_DAYS)
        self._name_crops()

    def _show_value(self) -> None:
        """The shop price of what is counted."""
        by_weight = self.measure.value() == KILOGRAM
        shop = self._grounds.per_kg if by_weight else self._grounds.per_fruit
        label = say("A kg is worth") if by_weight else say("A fruit is worth")
        self.value_field.label.setText(label)
        self.value_field.label.show()
        self.value_field.editor.setAccessibleName(label)
        self.value_field.unit_label.setText(self._grounds.currency)
        self.value_field.unit_label.setVisible(bool(self._grounds.currency))
        _show_amount(self.value_field, shop, self._grounds.decimals)
        stated = say("The shop price stated with the crop.")
        self.value_source.setText(say("No shop price is stated with the crop.") if shop is None else stated)

    def _name_crops(self) -> None:
        """Each cleared crop with what a day of it brought, at the value that stands in the form."""
        measure, value = _MEASURES[self.measure.value()], _decimal(self.value_field)
        turn_round = int(self.turn_round_field.value() or 0)
        for finished in self._grounds.finished:
            box = self.crop_boxes[finished.crop_id]
            net = net_value(finished, measure, value, Decimal(0))
            had = box.isEnabled()
            box.setEnabled(net is not None)
            if net is None:
                box.setText(say("{crop}: its fruit has no stated value", crop=finished.name))
                box.setChecked(False)
                continue
            box.setChecked(box.isChecked() or not had or not box.text())
            a_day = show_number(float(net) / (finished.days + turn_round), self._grounds.decimals + 1)
            money = f"{a_day}{THIN}{self._grounds.currency}" if self._grounds.currency else a_day
            box.setText(say("{crop}: {days} days, {value} a day", crop=finished.name, days=finished.days, value=money))

    def _place(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(SectionTitle(say("This crop")))
        column.addWidget(self.measure)
        values = FormGrid(2, 200)
        values.add(_with_source(self.value_field, self.value_source),
                   _with_source(self.running_field, self.running_source))  # fmt: skip
        column.addWidget(values)
        column.addWidget(self.labour_box)
        self.labour_part = _with_source(self.labour_field, self.labour_source)
        column.addWidget(self.labour_part)
        column.addSpacing(4)
        column.addWidget(SectionTitle(say("What would stand there instead")))
        row = QHBoxLayout()
        row.addWidget(self.instead)
        row.addStretch(1)
        column.addLayout(row)
        self.own_part = QWidget()
        own = QVBoxLayout(self.own_part)
        own.setContentsMargins(0, 0, 0, 0)
        self.no_own = TextLabel(say("No crop was cleared yet: take a guess."), "", "mute", wraps=True)
        self.no_own.setVisible(not self.crop_boxes)
        own.addWidget(self.no_own)
        for box in self.crop_boxes.values():
            own.addWidget(box)
        column.addWidget(self.own_part)
        self.guess_part = FormGrid(2, 160)
        self.guess_part.add(self.net_field, self.days_field)
        column.addWidget(self.guess_part)
        column.addWidget(self.turn_round_field)

    def _connect(self) -> None:
        self.measure.value_changed.connect(self._measure_changed)
        self.instead.value_changed.connect(self._part_changed)
        self.labour_box.toggled.connect(self._part_changed)
        for field in (self.value_field, self.turn_round_field):
            field.value_changed.connect(self._worth_changed)
        for field in (self.running_field, self.labour_field, self.net_field, self.days_field):
            field.value_changed.connect(self.changed)
        for box in self.crop_boxes.values():
            box.toggled.connect(self.changed)

    def _measure_changed(self, _measure: str) -> None:
        self._show_value()
        self._worth_changed()

    def _worth_changed(self) -> None:
        for box in self.crop_boxes.values():
            box.blockSignals(True)
        self._name_crops()
        for box in self.crop_boxes.values():
            box.blockSignals(False)
        self.changed.emit()

    def _part_changed(self, _value: object) -> None:
        self._show_parts()
        self.changed.emit()

    def _show_parts(self) -> None:
        own = self.instead.value() == OWN
        self.own_part.setVisible(own)
        self.guess_part.setVisible(not own)
        self.labour_part.setVisible(self.labour_box.isChecked())


def _with_source(field: NumberField, source: TextLabel) -> QWidget:
    part = QWidget()
    column = QVBoxLayout(part)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(2)
    column.addWidget(field)
    column.addWidget(source)
    return part


def _show_amount(field: NumberField, amount: Decimal | None, decimals: int) -> None:
    """With all its decimals, as money is written."""
    field.set_value(None if amount is None else round(float(amount), decimals))
    if amount is not None and decimals:
        field.line.setText(f"{amount:.{decimals}f}".replace(".", QLocale().decimalPoint()))


def _decimal(field: NumberField) -> Decimal | None:
    value = field.value()
    return None if value is None else Decimal(str(value))
