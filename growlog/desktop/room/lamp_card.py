"""Lamps of one kind as a card of fields, with what they draw and how long their bulbs have burned."""

from dataclasses import replace
from datetime import date

from growlog.calculations.lamp_light import LAMP_FACTORS, WHITE_LED
from growlog.desktop.look.widgets import ChoiceField, DayField, NumberField, TextLabel, limited_number_field
from growlog.desktop.money.money_field import MoneyField
from growlog.desktop.room.thing_cards import ThingCard
from growlog.records.display import fixed, plain
from growlog.records.room import Lamp
from growlog.services.light.bulbs import BulbHours
from growlog.services.light.lamps import lamp_watts
from growlog.words import say, show_day

_OF_THE_SKY = ("sunlight", "blue-sky")


def lamp_kinds(kept: str = "", *, with_sky: bool = False) -> list[tuple[str, str]]:
    """The kinds of lamp by their names; one that is kept and not among them goes by its key."""
    kinds = [(WHITE_LED, say("white LEDs"))]
    kinds += [(f.key, say(f.name)) for f in LAMP_FACTORS if with_sky or f.key not in _OF_THE_SKY]
    return kinds if not kept or kept in dict(kinds) else [*kinds, (kept, kept)]


class LampCard(ThingCard[Lamp]):
    """Lamps of one kind; measured watts at the wall go before rated watts with the loss of a ballast."""

    def __init__(self, lamp: Lamp, is_new: bool, currency: str, today: date, bulb: BulbHours | None = None) -> None:
        super().__init__(lamp, is_new, say("Remove the lamp"))
        self.kind_field = ChoiceField(say("Kind"), lamp_kinds(lamp.kind), lamp.kind or None, say("not stated"), "kind")
        self.count_field = limited_number_field("lamp_count", say("How many"))
        self.count_field.required = True
        self.count_field.set_value(lamp.lamp_count)
        self.numbers = {
            "rated_w": self._number("rated_w", say("Rated, each")),
            "wall_w": self._number("wall_w", say("Measured at the wall, each")),
            "ballast_loss_percent": self._number("ballast_loss_percent", say("Loss in the ballast")),
            "efficacy_umol_per_j": self._number("efficacy_umol_per_j", say("Photon efficacy")),
            "rated_life_h": self._number("rated_life_h", say("Rated life")),
        }
        self.rated_field, self.wall_field = self.numbers["rated_w"], self.numbers["wall_w"]
        self.price_field = MoneyField(say("Price, each"), currency, lamp.price_minor, "price_minor")
        self.bulb_field = DayField(say("Present bulb from"), lamp.bulb_from_day, near=today, name="bulb_from_day")
        self.from_field = DayField(say("Hangs from"), lamp.from_day, near=today, name="from_day")
        self.until_field = DayField(say("Until"), lamp.until_day, near=today, name="until_day")
        self.grid.add(self.kind_field, self.count_field, *self.numbers.values(), self.bulb_field, self.price_field)
        self.grid.add(self.from_field, self.until_field)
        self.watts_label = TextLabel("", "small", wraps=True)
        self.bulb_label = TextLabel(_bulb_words(bulb), "small", wraps=True)
        self.bulb_label.setVisible(bulb is not None)
        self.body.insertWidget(1, self.watts_label)
        self.body.insertWidget(2, self.bulb_label)
        for field in self.fields():
            field.value_changed.connect(self._show_watts)
        self._show_watts()

    def thing(self) -> Lamp:
        """The lamp in the fields."""
        return replace(
            self.before,
            name=self.name_field.value(),
            kind=self.kind_field.value() or "",
            lamp_count=int(self.count_field.value() or 1),
            rated_w=self.rated_field.value(),
            wall_w=self.wall_field.value(),
            ballast_loss_percent=self.numbers["ballast_loss_percent"].value(),
            efficacy_umol_per_j=self.numbers["efficacy_umol_per_j"].value(),
            rated_life_h=self.numbers["rated_life_h"].value(),
            bulb_from_day=self.bulb_field.value(),
            price_minor=self.price_field.minor(),
            from_day=self.from_field.value(),
            until_day=self.until_field.value(),
        )

    def check(self) -> bool:
        """Also that it does not end before it begins."""
        fits = super().check()
        begins, ends = self.from_field.value(), self.until_field.value()
        if begins is not None and ends is not None and ends < begins:
            self.until_field.show_problem(say("It ends before it begins."))
            return False
        return fits

    def _number(self, key: str, label: str) -> NumberField:
        field = limited_number_field(key, label)
        field.set_value(getattr(self.before, key))
        return field

    def _show_watts(self) -> None:
        self.watts_label.setText(_watts_words(self.thing()))
        self._edited()


def _watts_words(lamp: Lamp) -> str:
    if any(p.field != "name" and not p.asks for p in lamp.problems()):
        return ""  # said beside its field once typing has ended
    watts = lamp_watts(lamp)
    if watts is None:
        return say("Without watts, neither light nor electricity can be worked out.")
    value = fixed(watts.wall_w, 0, "W")
    if watts.measured:
        return say("All together {watts} at the wall, as measured.", watts=value)
    if watts.low is not None and watts.high is not None:
        return say(
            "All together about {watts} at the wall, {low} to {high}, as ballasts of this kind take.",
            watts=value, low=fixed(watts.low, 0, "W"), high=fixed(watts.high, 0, "W"),
        )  # fmt: skip
    if lamp.ballast_loss_percent is not None:
        return say("All together {watts} at the wall, with the loss in the ballast.", watts=value)
    return say("All together {watts}, as rated; at the wall it may be more.", watts=value)


def _bulb_words(bulb: BulbHours | None) -> str:
    if bulb is None:
        return ""
    burned = fixed(bulb.hours_so_far, 0, "h")
    if bulb.rated_life_h is None:
        return say("The present bulb has burned {hours} by the light programme.", hours=burned)
    life = plain(bulb.rated_life_h, "h")
    if bulb.due_on is None:
        return say("The present bulb has burned {hours} of {life}.", hours=burned, life=life)
    day = show_day(bulb.due_on)
    return say("The present bulb has burned {hours} of {life}; the next is due on {day}.",
               hours=burned, life=life, day=day)  # fmt: skip
