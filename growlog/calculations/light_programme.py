"""What the lamps do on each day, and how much light arrives: settings and readings followed day by day."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, time, timedelta
from enum import StrEnum
from math import ceil

import numpy as np
from numpy.typing import NDArray

from growlog.calculations.light import LightSpan, daily_light_integral
from growlog.words import mark

DAY_MINUTES = 24 * 60


class CanopyWay(StrEnum):
    """How the light at the canopy is known."""

    SENSOR = "sensor"
    LUX = "lux"
    STATED = "stated"
    SCALED = "scaled"
    LAMPS = "lamps"

    @property
    def label(self) -> str:
        """The way in words, to be translated where shown."""
        return _WAYS[self]

    @property
    def is_estimate(self) -> bool:
        """Whether it was worked out and not read off a sensor or stated."""
        return self in (CanopyWay.LUX, CanopyWay.SCALED, CanopyWay.LAMPS)


_WAYS = {
    CanopyWay.SENSOR: mark("read off a quantum sensor"),
    CanopyWay.LUX: mark("from a lux meter by the factor of the lamp"),
    CanopyWay.STATED: mark("as stated with the change of the light"),
    CanopyWay.SCALED: mark("as read before, by the output of the lamps since"),
    CanopyWay.LAMPS: mark("from the output of the lamps and the floor"),
}


@dataclass(frozen=True)
class CanopyLight:
    """PPFD at the canopy in µmol/m²/s while the lamps are on. low, high: its range. day: when it was read or stated."""

    ppfd_umol: float
    way: CanopyWay
    low: float | None = None
    high: float | None = None
    day: date | None = None

    def times(self, factor: float) -> "CanopyLight":
        """As much of it, as an estimate."""
        low, high = ((None if v is None else v * factor) for v in (self.low, self.high))
        return replace(self, ppfd_umol=self.ppfd_umol * factor, low=low, high=high, way=CanopyWay.SCALED)


@dataclass(frozen=True)
class Statement:
    """What was said of the lamps or read at the canopy on a day; None where nothing was said of it.

    rank: of several on one day the higher comes later and wins in what it says: 0 a step of the plan, 1 an entry,
    2 a reading. lamp_ids: () for all lamps.
    """

    day: date
    rank: int = 1
    photoperiod_h: float | None = None
    on_at: time | None = None
    dimming_percent: float | None = None
    lamp_ids: tuple[str, ...] | None = None
    canopy: CanopyLight | None = None


@dataclass(frozen=True)
class LightSetting:
    """The lamps and the canopy's light as they stand. photoperiod_h: belongs to the day on which the lamps go on."""

    photoperiod_h: float
    on_at: time | None = None
    dimming_percent: float | None = None
    lamp_ids: tuple[str, ...] = ()
    canopy: CanopyLight | None = None

    @property
    def output(self) -> float:
        """The part of their full light that lamps give, 0 to 1; full where nothing was said."""
        return 1.0 if self.dimming_percent is None else self.dimming_percent / 100

    @property
    def on_minutes(self) -> float:
        """Minutes a day, with their fraction."""
        return round(self.photoperiod_h * 60, 6)

    @property
    def on_at_minute(self) -> int | None:
        """Minute of the day at which they go on."""
        return None if self.on_at is None else self.on_at.hour * 60 + self.on_at.minute


@dataclass(frozen=True)
class LightDay:
    """A day's light. dli_mol: mol/m², None where the canopy's light is not known; its range where it has one."""

    day: date
    setting: LightSetting
    dli_mol: float | None
    dli_low_mol: float | None = None
    dli_high_mol: float | None = None


def settings_by_day(statements: Iterable[Statement], first: date, last: date) -> dict[date, LightSetting]:
    """The setting of each day from first to last; days before the first statement of hours are left out.

    What a statement does not say stays as it was. Where the output changes without a word on the canopy's light, that
    light follows the output as an estimate; where other lamps burn, it is no longer known.
    """
    ordered = sorted(statements, key=lambda s: (s.day, s.rank))
    found: dict[date, LightSetting] = {}
    now: LightSetting | None = None
    at = 0
    for day in days_between(first, last):
        while at < len(ordered) and ordered[at].day <= day:
            now = after(now, ordered[at])
            at += 1
        if now is not None:
            found[day] = now
    return found


def after(before: LightSetting | None, said: Statement) -> LightSetting | None:
    """The setting after a statement; None as long as no hours were stated."""
    if before is None:
        if said.photoperiod_h is None:
            return None
        return LightSetting(said.photoperiod_h, said.on_at, said.dimming_percent, said.lamp_ids or (), said.canopy)
    now = LightSetting(
        before.photoperiod_h if said.photoperiod_h is None else said.photoperiod_h,
        said.on_at or before.on_at,
        before.dimming_percent if said.dimming_percent is None else said.dimming_percent,
        before.lamp_ids if said.lamp_ids is None else said.lamp_ids,
        said.canopy,
    )
    return now if said.canopy is not None else replace(now, canopy=_followed(before, now))


def light_day(day: date, setting: LightSetting) -> LightDay:
    """The day's light with its integral; ValueError where the canopy's light is outside 0 to 3000 µmol/m²/s."""
    canopy = setting.canopy
    if canopy is None:
        return LightDay(day, setting, None)
    hours = setting.photoperiod_h
    low, high = (None if p is None else daily_light_integral(min(p, 3000), hours) for p in (canopy.low, canopy.high))
    return LightDay(day, setting, daily_light_integral(min(canopy.ppfd_umol, 3000), hours), low, high)


def light_spans(days: Iterable[LightDay], day_zero: date) -> list[LightSpan]:
    """Days in order as spans by plant age: days that follow each other with the same light are one."""
    spans: list[LightSpan] = []
    for light in days:
        age, setting = (light.day - day_zero).days, light.setting
        canopy = setting.canopy
        ppfd = None if canopy is None else canopy.ppfd_umol
        estimate = canopy is not None and canopy.way.is_estimate
        span = LightSpan(age, age, setting.photoperiod_h, setting.dimming_percent, ppfd, light.dli_mol, estimate)
        if spans and replace(spans[-1], start_age=age, end_age=age) == span and spans[-1].end_age == age - 1:
            spans[-1] = replace(spans[-1], end_age=age)
        else:
            spans.append(span)
    return spans


def watts_by_minute(
    yesterday: tuple[LightSetting, float] | None, today: tuple[LightSetting, float] | None
) -> NDArray[np.float64]:
    """Watts of the lamps at each minute of a calendar day. Each setting comes with the watts that it draws.

    What yesterday's lamps burn past midnight counts at its start, until today's go on. Lamps whose hour is not known
    count evenly over the day.
    """
    watts = np.zeros(DAY_MINUTES)
    if yesterday is not None and yesterday[0].on_at_minute is not None:
        watts = _two_days(*yesterday)[DAY_MINUTES:]
    if today is None:
        return watts
    setting, draws = today
    if (on_at := setting.on_at_minute) is None:
        watts[:] = draws * setting.on_minutes / DAY_MINUTES
    else:
        burning = slice(on_at, on_at + ceil(setting.on_minutes))
        watts[burning] = _two_days(setting, draws)[:DAY_MINUTES][burning]
    return watts


def _two_days(setting: LightSetting, draws: float) -> NDArray[np.float64]:
    """Watts at each minute of the day on which lamps go on and of the next; part of a minute is part of the watts."""
    watts = np.zeros(2 * DAY_MINUTES + 1)
    start, whole = setting.on_at_minute or 0, int(setting.on_minutes)
    watts[start : start + whole] = draws
    watts[start + whole] = draws * (setting.on_minutes - whole)
    return watts[:-1]


def days_between(first: date, last: date) -> list[date]:
    """Each day from first to last, both among them."""
    return [first + timedelta(days=i) for i in range((last - first).days + 1)]


def mean_canopy(readings: Sequence[CanopyLight]) -> CanopyLight:
    """The mean of readings of one day; those of a sensor alone where there is one."""
    best = [r for r in readings if r.way is CanopyWay.SENSOR] or list(readings)
    n = len(best)
    low, high = sum(r.low or r.ppfd_umol for r in best) / n, sum(r.high or r.ppfd_umol for r in best) / n
    mean = sum(r.ppfd_umol for r in best) / n
    ranged = n > 1 or best[0].low is not None
    if n > 1:
        low, high = min([low, *(r.ppfd_umol for r in best)]), max([high, *(r.ppfd_umol for r in best)])
    return CanopyLight(mean, best[0].way, low if ranged else None, high if ranged else None, best[0].day)


def _followed(before: LightSetting, now: LightSetting) -> CanopyLight | None:
    if before.canopy is None or before.lamp_ids != now.lamp_ids:
        return None
    if before.output == now.output:
        return before.canopy
    return before.canopy.times(now.output / before.output) if before.output else None
