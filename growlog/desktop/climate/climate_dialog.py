"""The climate of a crop: day by day, humid nights above a chosen humidity, dew, and degree days."""

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QWidget

from growlog.calculations.degree_days import DegreeDayMethod
from growlog.desktop.cautions_box import CautionsBox
from growlog.desktop.climate.day_rows import climate_columns, climate_rows
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.explanation import ExplanationButton
from growlog.desktop.look.widgets import (
    Banner,
    Card,
    ChoiceField,
    EmptyState,
    FlowLayout,
    FormGrid,
    NumberField,
    SectionTitle,
    TextLabel,
)
from growlog.desktop.plain_table import PlainTable
from growlog.desktop.tall_dialog import TallDialog
from growlog.records.display import THIN, fixed
from growlog.services.cautions import CautionTopic
from growlog.services.climate.book import ClimateBook, DegreeDayWay, warned_ages
from growlog.words import say, say_count, show_number

_TYPED_MS = 300


class ClimateDialog(TallDialog):
    """Asks for a book whenever the crop, the humidity watched or the way of counting changes."""

    wanted = Signal(str, float, object)  # crop, humidity watched in %, DegreeDayWay | None
    logger_wanted = Signal()

    def __init__(
        self,
        crops: Sequence[tuple[str, str]],
        crop_id: str,
        humid_above_percent: float,
        units: str = "metric",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(say("Climate"), "", parent, 920)
        self.setObjectName("climate")
        self._book: ClimateBook | None = None
        self._own_way = False
        self.crop_field = ChoiceField(say("Crop"), crops, crop_id, name="crop", beside=True)
        self.humid_field = NumberField(say("Night is humid above"), "%", 1, 100, 0, name="humidAbove", beside=True)
        self.humid_field.set_value(humid_above_percent)
        self.banner = Banner("", "asks", can_close=False)
        self.table = PlainTable(climate_columns(), say("Climate day by day"), "climateDays", 9)
        sentence = say("Nothing is known of the air yet. Enter readings, or bring a logger's file in.")
        self.empty = EmptyState(sentence, say("Logger readings in…"), name="emptyClimate")
        methods = [(m.value, _method_words(m)) for m in DegreeDayMethod]
        self.method_field = ChoiceField(say("Method"), methods, DegreeDayMethod.SIMPLE_AVERAGE, name="method")
        self.base_field = MeasureField("air_temperature_c", say("Base"), units, "base")
        self.ceiling_field = MeasureField("air_temperature_c", say("Ceiling"), units, "ceiling")
        self.sum_label = TextLabel("", "figure")
        self.days_label = TextLabel("", "small", wraps=True)
        self.button = ExplanationButton()
        self.degree_card = Card()
        self.close_button = self.add_button(say("Put away"), name="putAway")
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._fill_body()
        self._connect()
        self._show_parts()

    def show_book(self, book: ClimateBook) -> None:
        """What was asked for."""
        self._book = book
        self.table.show_rows(climate_rows(book.climate))
        self._show_warnings(book)
        if not self._own_way:
            self._show_way(book)
        self._show_degree_days(book)
        self._show_parts()

    def ask(self) -> None:
        """Announces what is wanted as it stands in the fields."""
        humid = self.humid_field.value()
        if humid is not None:
            self.wanted.emit(self.crop_field.value() or "", float(humid), self._way() if self._own_way else None)

    def _fill_body(self) -> None:
        row = FlowLayout()
        row.addWidget(self.humid_field)
        row.add_gap()
        row.addWidget(self.crop_field)
        grid = FormGrid(3, 150)
        grid.add(self.method_field, self.base_field, self.ceiling_field)
        sums = FlowLayout()
        sums.addWidget(self.sum_label)
        sums.addWidget(self.button)
        self.degree_card.body.addWidget(SectionTitle(say("Degree days")))
        self.degree_card.body.addWidget(grid)
        self.degree_card.body.addLayout(sums)
        self.degree_card.body.addWidget(self.days_label)
        self.body.addLayout(row)
        for widget in (self.banner, self.table, self.empty, self.degree_card):
            self.body.addWidget(widget)
        self.body.addStretch(1)
        self.body.addWidget(CautionsBox([CautionTopic.MOULD]))

    def _connect(self) -> None:
        self._timer.timeout.connect(self.ask)
        self.crop_field.value_changed.connect(self._crop_chosen)
        self.humid_field.value_changed.connect(self._typed)
        for field in (self.method_field, self.base_field, self.ceiling_field):
            field.value_changed.connect(self._way_typed)
        self.empty.chosen.connect(self.logger_wanted)
        self.close_button.clicked.connect(self.close)

    def _crop_chosen(self) -> None:
        self._own_way = False
        self.ask()

    def _typed(self) -> None:
        self._timer.start(_TYPED_MS)

    def _way_typed(self) -> None:
        self._own_way = True
        self._typed()

    def _way(self) -> DegreeDayWay | None:
        base = self.base_field.value()
        if base is None:
            return None
        return DegreeDayWay(DegreeDayMethod(self.method_field.value() or ""), base, self.ceiling_field.value())

    def _show_way(self, book: ClimateBook) -> None:
        way = book.way
        self.method_field.set_value(DegreeDayMethod.SIMPLE_AVERAGE if way is None else way.method)
        self.base_field.set_value(None if way is None else way.base_c)
        self.ceiling_field.set_value(None if way is None else way.ceiling_c)

    def _show_degree_days(self, book: ClimateBook) -> None:
        found = book.degree_days
        self.ceiling_field.show_problem(book.problem)
        value = None if found is None else found.figure.value
        known = isinstance(value, (int, float))
        text = fixed(float(value), 0, "°C·d") if isinstance(value, (int, float)) else say("none yet")
        self.sum_label.setText(text)
        self.button.show_figures(found.figure if found is not None and known else ())
        self.days_label.setText(_days_words(book))

    def _show_warnings(self, book: ClimateBook) -> None:
        humid, dew = warned_ages(book.climate, "humid-night"), warned_ages(book.climate, "condensation")
        parts = []
        if humid:
            limit = f"{show_number(book.climate.humid_above_percent, 0)}{THIN}%"
            one, many = "{n} night above {limit}.", "{n} nights above {limit}."
            parts.append(say_count(one, many, len(humid), limit=limit))
        if dew:
            one = "On {n} day the dew point reached the coolest reading: surfaces as cool turned wet."
            many = "On {n} days the dew point reached the coolest reading: surfaces as cool turned wet."
            parts.append(say_count(one, many, len(dew)))
        self.banner.show_message(" ".join(parts), "asks")

    def _show_parts(self) -> None:
        known = self._book is not None and bool(self._book.climate.days)
        self.table.setVisible(known)
        self.degree_card.setVisible(known)
        self.empty.setVisible(self._book is not None and not known)
        self.banner.setVisible(bool(self.banner.sentence))


def _days_words(book: ClimateBook) -> str:
    found, parts = book.degree_days, []
    if found is not None:
        parts.append(say_count("Over {n} day with both temperatures", "Over {n} days with both temperatures",
                               found.days_counted))  # fmt: skip
        parts.append(say_count("{n} day is missing.", "{n} days are missing.", found.days_missing))
    source = ""
    if book.base is not None:
        source = say("Base known for the species: {source}.", source=say(book.base.source))
    words = "; ".join(parts)
    return " ".join(part for part in (words, source) if part)


def _method_words(method: DegreeDayMethod) -> str:
    words = {
        DegreeDayMethod.SIMPLE_AVERAGE: say("simple average"),
        DegreeDayMethod.SUBSTITUTION: say("substitution"),
        DegreeDayMethod.MAXIMUM_MIRRORED: say("maximum, mirrored at the ceiling"),
        DegreeDayMethod.PIECEWISE: say("piecewise"),
        DegreeDayMethod.SINGLE_SINE: say("single sine"),
    }
    return words[method]
