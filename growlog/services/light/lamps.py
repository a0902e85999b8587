"""What the lamps of a room draw and give: watts at the wall, measured or estimated, and photons on the floor."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from growlog.calculations.energy import (
    USUAL_BALLAST_LOSS_PERCENT,
    WALL_WATTS,
    usual_wall_watts,
    watts_at_the_wall,
)
from growlog.calculations.light import highest_mean_ppfd
from growlog.calculations.light_programme import CanopyLight, CanopyWay, LightSetting
from growlog.records.room import Lamp


@dataclass(frozen=True)
class LampWatts:
    """Watts at the wall of all lamps of one record at full output. measured: with a meter at the wall.

    low, high: the range of an estimate, None where it has none.
    """

    wall_w: float
    measured: bool
    low: float | None = None
    high: float | None = None


def lamp_watts(lamp: Lamp) -> LampWatts | None:
    """What a lamp draws: as measured, else by its ballast loss, else as ballasts of its kind do; None without watts."""
    n = lamp.lamp_count
    if lamp.wall_w is not None:
        return LampWatts(lamp.wall_w * n, True)
    if lamp.rated_w is None:
        return None
    if lamp.ballast_loss_percent is not None:
        return LampWatts(watts_at_the_wall(lamp.rated_w, lamp.ballast_loss_percent) * n, False)
    table = WALL_WATTS.get(lamp.kind)
    if table is None or not table[0][0] <= lamp.rated_w <= table[-1][0]:
        return LampWatts(lamp.rated_w * n, False)
    low, high = (watts_at_the_wall(lamp.rated_w, loss) * n for loss in USUAL_BALLAST_LOSS_PERCENT)
    return LampWatts(usual_wall_watts(lamp.kind, lamp.rated_w) * n, False, low, high)


def burning(lamps: Iterable[Lamp], setting: LightSetting, day: date) -> list[Lamp]:
    """The lamps that burn under a setting on a day: those that hang there, and of these the ones that it names."""
    return [
        lamp
        for lamp in lamps
        if (lamp.from_day is None or lamp.from_day <= day)
        and (lamp.until_day is None or day <= lamp.until_day)
        and (not setting.lamp_ids or lamp.id in setting.lamp_ids)
    ]


def drawn_w(lamps: Iterable[Lamp], setting: LightSetting, day: date) -> float:
    """Watts at the wall while the lamps are on. Dimmed lamps are taken to draw in proportion (common practice, no
    source)."""
    known = [w for lamp in burning(lamps, setting, day) if (w := lamp_watts(lamp)) is not None]
    return sum(w.wall_w for w in known) * setting.output


def ppfd_of_lamps(lamps: Sequence[Lamp], floor_m2: float | None, output: float) -> CanopyLight | None:
    """The mean light that these lamps can give at most on a floor; None where watts, efficacy or floor are missing."""
    if not lamps or not floor_m2:
        return None
    total = 0.0
    for lamp in lamps:
        watts = lamp_watts(lamp)
        if watts is None or lamp.efficacy_umol_per_j is None:
            return None
        total += highest_mean_ppfd(watts.wall_w, lamp.efficacy_umol_per_j, output * 100, floor_m2)
    return CanopyLight(total, CanopyWay.LAMPS, None, total)
