"""The fields of a crop and its packet; they become records, and the records' problems stand beside the fields."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.crop_form.place_fields import PlaceFields
from growlog.desktop.crop_form.word_field import species_field
from growlog.desktop.look.widgets import (
    Button,
    ChoiceField,
    DayField,
    Field,
    FormGrid,
    NoteField,
    SectionTitle,
    TextField,
    TextLabel,
    limited_number_field,
)
from growlog.desktop.money.money_field import MoneyField
from growlog.records.crop import Crop, Placement, StartedFrom
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.problems import Problem
from growlog.services.crops import usual_count, usual_habit
from growlog.services.rooms import RoomView
from growlog.words import say


class CropForm(QWidget):
    """For a new or a present crop. records() gives what stands there; show_problems() puts sentences beside fields."""

    changed = Signal()

    def __init__(
        self,
        crop: Crop,
        cultivar: Cultivar,
        today: date,
        rooms: Sequence[RoomView] = (),
        placement: Placement | None = None,
        currency: str = "",
    ) -> None:
        super().__init__()
        self._crop, self._cultivar, self._today, self._currency = crop, cultivar, today, currency
        self._is_new = not crop.name
        self._habit_chosen = self._count_chosen = not self._is_new
        self._touched: set[str] = set()
        self._make_plant_fields()
        self._make_date_fields()
        self._make_growing_fields()
        self._make_fruit_fields()
        self.place = PlaceFields(rooms, placement)
        self.more_button = Button(say("More: first flower, seed lot, shop price…"), "link", name="more")
        self.more_button.setCheckable(True)
        self.more = FormGrid(3)
        self._lay_out()
        self._connect()
        self._show_start()
        self.more_button.setChecked(any(_says(field) for field in self._more_fields()))

    def fields(self) -> dict[str, Field]:
        """The fields by the name of what they hold in the records."""
        return {
            "name": self.name_field,
            "species": self.species_field,
            "packet_days": self.packet_days_field,
            "container_l": self.container_field,
            "seed_lot": self.seed_lot_field,
            "seeds_sown": self.seeds_sown_field,
            "seeds_emerged": self.seeds_emerged_field,
            **self.fruit_words,
            **self.shop_prices,
            "floor_share": self.place.share_field,
            "room": self.place.room_field,
            **self.days,
        }

    def records(self) -> tuple[Crop, Cultivar, Placement | None]:
        """What stands in the fields; see check() for whether it can be taken."""
        cultivar = replace(
            self._cultivar,
            species=self.species_field.value(),
            name=self.cultivar_field.value() or self.name_field.value(),
            habit=FloweringHabit(self.habit_field.value() or self._cultivar.habit),
            packet_days=_whole(self.packet_days_field.value()),
            packet_counts_from=CountsFrom(self.count_field.value() or self._cultivar.packet_counts_from),
        )
        crop = replace(
            self._crop,
            name=self.name_field.value(),
            started_from=StartedFrom(self.start_field.value() or StartedFrom.SEED),
            medium=self.medium_field.value(),
            system=self.system_field.value(),
            container_l=self.container_field.value(),
            seed_lot=self.seed_lot_field.value(),
            seeds_sown=_whole(self.seeds_sown_field.value()),
            seeds_emerged=_whole(self.seeds_emerged_field.value()),
            trying=self.trying_field.value(),
            taste=self.fruit_words["taste"].value(),
            fruit_shape=self.fruit_words["fruit_shape"].value(),
            keeping=self.fruit_words["keeping"].value(),
            shop_price_minor_per_kg=self.shop_prices["shop_price_minor_per_kg"].minor(),
            shop_price_minor_per_fruit=self.shop_prices["shop_price_minor_per_fruit"].minor(),
            note=self.note_field.value(),
        )
        crop = self._with_days(crop)
        return crop, cultivar, self._placement_of(crop)

    def _with_days(self, crop: Crop) -> Crop:
        day = self.days
        return replace(
            crop,
            sown_on=day["sown_on"].value(),
            emerged_on=day["emerged_on"].value(),
            transplanted_on=day["transplanted_on"].value(),
            planned_clearing_on=day["planned_clearing_on"].value(),
            first_flower_on=day["first_flower_on"].value(),
            first_pick_on=day["first_pick_on"].value(),
        )

    def check(self) -> bool:
        """Judges all fields and goes to the first that is refused."""
        self._touched = set(self.fields())
        fits = [field.check() for field in self.fields().values()]
        self._show_record_problems()
        refused = [field for field in self.fields().values() if field.is_refused and not field.isHidden()]
        if refused:
            if any(field in self._more_fields() for field in refused):
                self.more_button.setChecked(True)
            refused[0].setFocus()
        return all(fits) and not refused

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Sentences beside their fields; the last resort for a field that is not here is the name."""
        fields = self.fields()
        for problem in problems:
            field = fields.get(problem.field, self.name_field)
            if problem.asks:
                field.show_question(problem.sentence)
            else:
                field.show_problem(problem.sentence)

    def _make_plant_fields(self) -> None:
        crop, cultivar = self._crop, self._cultivar
        self.name_field = TextField(say("Name of the crop"), crop.name, required=True, name="name")
        self.species_field = species_field(cultivar.species)
        own_name = cultivar.name if cultivar.name != crop.name else ""
        self.cultivar_field = TextField(say("Cultivar"), own_name, placeholder=say("as the crop"), name="cultivar")
        habits = [(habit.value, say(habit.label)) for habit in FloweringHabit]
        self.habit_field = ChoiceField(say("Flowers"), habits, cultivar.habit, name="habit")
        self.packet_days_field = limited_number_field("packet_days")
        self.packet_days_field.set_value(cultivar.packet_days)
        counts = [(count.value, say(count.label)) for count in CountsFrom]
        self.count_field = ChoiceField(say("Counted"), counts, cultivar.packet_counts_from, name="countsFrom")

    def _make_date_fields(self) -> None:
        starts = [
            (StartedFrom.SEED.value, say("from seed")),
            (StartedFrom.BOUGHT_PLANT.value, say("as a bought plant")),
        ]
        self.start_field = ChoiceField(say("Started"), starts, self._crop.started_from, name="startedFrom")
        labels = {
            "sown_on": say("Sown"),
            "emerged_on": say("Emerged"),
            "transplanted_on": say("Transplanted"),
            "planned_clearing_on": say("Clearing planned"),
            "first_flower_on": say("First flower"),
            "first_pick_on": say("First pick"),
        }
        self.days = {key: self._day_field(key, label) for key, label in labels.items()}

    def _day_field(self, key: str, label: str) -> DayField:
        latest = None if key == "planned_clearing_on" else self._today
        return DayField(label, getattr(self._crop, key), latest=latest, near=self._today, name=key)

    def _make_growing_fields(self) -> None:
        crop = self._crop
        self.medium_field = TextField(say("Medium"), crop.medium, placeholder=say("coir, soil…"), name="medium")
        self.system_field = TextField(say("System"), crop.system, placeholder=say("hand, drip…"), name="system")
        self.container_field = limited_number_field("container_l")
        self.container_field.set_value(crop.container_l)
        self.seed_lot_field = TextField(say("Seed lot"), crop.seed_lot, name="seedLot")
        self.seeds_sown_field = limited_number_field("seeds_sown")
        self.seeds_sown_field.set_value(crop.seeds_sown)
        self.seeds_emerged_field = limited_number_field("seeds_emerged", say("Seeds emerged"))
        self.seeds_emerged_field.set_value(crop.seeds_emerged)
        self.trying_field = TextField(say("What is being tried"), crop.trying, longest=500, name="trying")
        self.note_field = NoteField(say("Note"), crop.note, lines=2, name="note")

    def _make_fruit_fields(self) -> None:
        crop, currency = self._crop, self._currency
        self.fruit_words = {
            "taste": TextField(say("Taste"), crop.taste, name="taste"),
            "fruit_shape": TextField(say("Shape of the fruit"), crop.fruit_shape, name="fruitShape"),
            "keeping": TextField(say("How it keeps"), crop.keeping, name="keeping"),
        }
        kg, fruit = crop.shop_price_minor_per_kg, crop.shop_price_minor_per_fruit
        a_kg, a_fruit = say("Shop price of a kilogram"), say("Shop price of a fruit")
        self.shop_prices = {
            "shop_price_minor_per_kg": MoneyField(a_kg, currency, kg, "shopPriceKg", per=say("kg")),
            "shop_price_minor_per_fruit": MoneyField(a_fruit, currency, fruit, "shopPriceFruit", per=say("fruit")),
        }

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        plant = FormGrid(3)
        plant.add(self.name_field, self.species_field, self.cultivar_field)
        plant.add(self.packet_days_field, self.count_field)
        plant.add(self.habit_field, span=2)
        dates = FormGrid(3)
        dates.add(self.start_field, *(self.days[key] for key in _DATES))
        growing = FormGrid(3)
        growing.add(self.medium_field, self.system_field, self.container_field)
        self.more.add(*self._more_fields())
        words = say("First flower and first pick are read from the entries; type them only to correct that.")
        self.more.add(TextLabel(words, "small", wraps=True), span=3)
        column.addWidget(plant)
        for title, grid in ((say("Days"), dates), (say("Growing"), growing)):
            column.addSpacing(8)
            column.addWidget(SectionTitle(title))
            column.addWidget(grid)
        column.addSpacing(8)
        column.addWidget(self.place)
        for field in (self.trying_field, self.note_field, self.more_button, self.more):
            column.addWidget(field)
        column.addStretch(1)

    def _more_fields(self) -> list[Field]:
        return [self.fields()[key] for key in _MORE]

    def _connect(self) -> None:
        for key, field in self.fields().items():
            field.setProperty("record_field", key)
            field.value_changed.connect(self._typed)
            field.editing_finished.connect(self._left)
        self.species_field.value_changed.connect(self._species_changed)
        self.habit_field.value_changed.connect(self._habit_was_chosen)
        self.count_field.value_changed.connect(self._count_was_chosen)
        self.start_field.value_changed.connect(self._start_changed)
        self.more_button.toggled.connect(self.more.setVisible)
        self.more.setVisible(self.more_button.isChecked())

    def _typed(self) -> None:
        self._show_record_problems()
        self.changed.emit()

    def _left(self) -> None:
        field = self.sender()
        if isinstance(field, Field):
            self._touched.add(str(field.property("record_field")))
            self._show_record_problems()

    def _show_record_problems(self) -> None:
        """What the records say of fields that have been filled in; what a field says of itself comes first."""
        crop, cultivar, placement = self.records()
        problems = crop.problems() + cultivar.problems() + (placement.problems() if placement else [])
        by_field = {problem.field: problem for problem in problems}
        for key, field in self.fields().items():
            problem = by_field.get(key)
            wants = problem is not None and (key in self._touched or _says(field))
            if problem is not None and wants and not field.is_refused:
                self.show_problems([problem])
            elif problem is None and field.is_refused and field.property("said") == field.refusal:
                field.clear_message()
            field.setProperty("said", field.refusal if problem is not None else "")

    def _species_changed(self) -> None:
        species = self.species_field.value()
        if not self._habit_chosen:
            self.habit_field.set_value(usual_habit(species))
        if not self._count_chosen:
            self.count_field.set_value(usual_count(species))

    def _habit_was_chosen(self) -> None:
        self._habit_chosen = True

    def _count_was_chosen(self) -> None:
        self._count_chosen = True

    def _start_changed(self) -> None:
        self._show_start()
        self._typed()

    def _show_start(self) -> None:
        from_seed = self.start_field.value() == StartedFrom.SEED
        for field in (self.days["sown_on"], self.days["emerged_on"], self.seeds_sown_field, self.seeds_emerged_field):
            field.setVisible(from_seed)

    def _placement_of(self, crop: Crop) -> Placement | None:
        day = crop.sown_on if crop.started_from is StartedFrom.SEED else crop.transplanted_on
        return self.place.placement(crop.id, day if self._is_new and day else self._today)


_DATES = ("sown_on", "emerged_on", "transplanted_on", "planned_clearing_on")
_MORE = (
    "first_flower_on", "first_pick_on", "seed_lot", "seeds_sown", "seeds_emerged", "shop_price_minor_per_kg",
    "shop_price_minor_per_fruit", "taste", "fruit_shape", "keeping",
)  # fmt: skip


def _says(field: Field) -> bool:
    """Whether anything acceptable stands in a field."""
    value = getattr(field, "value", None)
    return value is not None and value() not in (None, "")


def _whole(value: float | None) -> int | None:
    return None if value is None else int(value)
