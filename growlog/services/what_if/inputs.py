"""What is changed, as the grower states it; what is left out stays as it was."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, time
from decimal import Decimal

from growlog.records.problems import Problem
from growlog.records.tariff import Tariff, TariffBand
from growlog.words import mark, say, show_number


@dataclass(frozen=True)
class OtherCost:
    """Something else that the change costs a crop, in minor units; below 0 it saves."""

    label: str
    minor: int


@dataclass(frozen=True)
class ChangedInput:
    """A changed input in words. now: "" where it is not known."""

    label: str
    now: str
    then: str


@dataclass(frozen=True)
class WhatIf:
    """A crop grown again in another way. None or "" stays as it was.

    lamp_w: watts at the wall of all lamps in its room. lamp_price_minor: what new lamps cost, borne over
    lamp_life_crops crops. on_at: when they go on, which counts where power has prices by the time of day.
    price_per_kwh: in the main unit, all day; tariff_bands: prices by the time of day instead. feed_strength_percent:
    of what was given. sets_alone: a cultivar that needs no pollination. plants: in the whole crop. minutes_change: of
    work in the whole crop. yield_change_percent: what the grower expects of the whole yield; None is not known, which
    is not nought.
    """

    lamp_w: float | None = None
    lamp_price_minor: int | None = None
    lamp_life_crops: int = 1
    photoperiod_h: float | None = None
    on_at: time | None = None
    price_per_kwh: Decimal | None = None
    tariff_bands: tuple[TariffBand, ...] = ()
    feed_strength_percent: float | None = None
    sets_alone: bool = False
    cultivar: str = ""
    system: str = ""
    plants: int | None = None
    minutes_change: int = 0
    other_costs: tuple[OtherCost, ...] = ()
    yield_change_percent: float | None = None

    @property
    def changes_light(self) -> bool:
        """Whether lamps or hours are others."""
        return self.lamp_w is not None or self.photoperiod_h is not None

    @property
    def changes_power(self) -> bool:
        """Whether the cost of electricity will be another."""
        return self.changes_light or self.on_at is not None or self.has_price

    @property
    def has_price(self) -> bool:
        """Whether power has another price."""
        return self.price_per_kwh is not None or bool(self.tariff_bands)

    @property
    def asks_for_yield(self) -> bool:
        """Whether light, feed, system or cultivar are others, so that the yield will be too."""
        other_cultivar = self.sets_alone or bool(self.cultivar.strip())
        other_feed = self.feed_strength_percent not in (None, 100)
        return self.changes_light or other_feed or other_cultivar or bool(self.system.strip())

    @property
    def anything(self) -> bool:
        """Whether anything is changed at all."""
        more = (
            self.on_at,
            self.price_per_kwh,
            self.tariff_bands or None,
            self.plants,
            self.lamp_price_minor,
            self.yield_change_percent,
        )
        stated = any(v is not None for v in more)
        return self.asks_for_yield or stated or bool(self.minutes_change) or bool(self.other_costs)

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = list(self._out_of_range())
        if not self.anything:
            found.append(Problem("yield_change_percent", say("Nothing is changed yet.")))
        found += self._price_problems()
        found += [Problem("other_costs", say("Say what it is.")) for o in self.other_costs if not o.label.strip()]
        return found

    def _price_problems(self) -> list[Problem]:
        if self.price_per_kwh is not None and self.tariff_bands:
            return [Problem("price_per_kwh", say("Say one price of a kWh or prices by the time of day, not both."))]
        if not self.tariff_bands:
            return []
        tariff = Tariff("", "?", date.min, self.tariff_bands)
        return [replace(problem, field="tariff_bands") for problem in tariff.problems()]

    def _out_of_range(self) -> Iterator[Problem]:
        for field, label, low, high in _RANGES:
            value = getattr(self, field)
            if value is not None and not low <= value <= high:
                shown = (show_number(float(v), 0) for v in (low, high))
                sentence = say("{label}: {low} to {high}.", label=say(label), low=next(shown), high=next(shown))
                yield Problem(field, sentence)


_RANGES: tuple[tuple[str, str, float, float], ...] = (
    ("lamp_w", mark("Watts of the lamps"), 0, 100_000),
    ("lamp_price_minor", mark("Price of the lamps, in the smallest coin"), 0, 1_000_000_000),
    ("lamp_life_crops", mark("Crops that lamps last"), 1, 1000),
    ("photoperiod_h", mark("Hours of light"), 0, 24),
    ("price_per_kwh", mark("Price of a kWh"), 0, 1000),
    ("feed_strength_percent", mark("Strength of the feed in %"), 0, 500),
    ("plants", mark("Plants"), 1, 1000),
    ("minutes_change", mark("Minutes of work"), -1_000_000, 1_000_000),
    ("yield_change_percent", mark("Change of the yield in %"), -100, 1000),
)
