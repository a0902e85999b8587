"""Electricity: what devices draw, for how long, and whose share it is."""

from collections.abc import Sequence
from itertools import pairwise

from growlog.calculations.allowed import require
from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.words import mark, say

# Watts at the wall by watts of the lamp. Sources: the fixture wattage table of a utility's incentive programme
# (metal halide); a lighting vendor's table of system watts (high-pressure sodium).
WALL_WATTS: dict[str, tuple[tuple[float, float], ...]] = {
    "metal-halide": ((100, 128), (150, 190), (175, 215), (400, 458), (750, 850)),
    "hps": ((250, 295), (400, 460), (1000, 1100)),
}
_BALLAST_SOURCES = {
    "metal-halide": mark("the fixture wattage table of a utility's incentive programme"),
    "hps": mark("a lighting vendor's table of lamp and system watts"),
}
USUAL_BALLAST_LOSS_PERCENT = (5.0, 30.0)  # a utility's adviser page on metal halide ballasts


def energy_kwh(power_w: float, hours_a_day: float, days: float = 1) -> float:
    """kWh of a device. power_w: 0 to 1000000 at the wall. hours_a_day: 0 to 24. days: 0 to 4000. ValueError outside.

    By definition: watts times hours, over a thousand.
    """
    require("power_w", power_w, 0, 1_000_000, "W")
    require("hours_a_day", hours_a_day, 0, 24, "h")
    require("days", days, 0, 4000)
    return power_w * hours_a_day * days / 1000


def lamp_hours(hours_a_day: float, days: float) -> float:
    """Hours that lamps were on. hours_a_day: 0 to 24. days: 0 to 4000. ValueError outside."""
    require("hours_a_day", hours_a_day, 0, 24, "h")
    require("days", days, 0, 4000)
    return hours_a_day * days


def days_until_bulb_due(rated_life_h: float, hours_so_far: float, hours_a_day: float) -> float | None:
    """Days until a bulb has its rated life, 0 where it has it already; None where the lamps are never on."""
    require("rated_life_h", rated_life_h, 0, 200_000, "h")
    require("hours_a_day", hours_a_day, 0, 24, "h")
    left = max(0.0, rated_life_h - hours_so_far)
    if left == 0:
        return 0.0
    return left / hours_a_day if hours_a_day else None


def watts_at_the_wall(lamp_w: float, ballast_loss_percent: float) -> float:
    """Watts at the wall of a lamp of 0 to 20000 W whose ballast takes 0 to 60 % of the lamp's watts on top."""
    require("lamp_w", lamp_w, 0, 20_000, "W")
    require("ballast_loss_percent", ballast_loss_percent, 0, 60, "%")
    return lamp_w * (1 + ballast_loss_percent / 100)


def usual_wall_watts(lamp: str, lamp_w: float) -> float:
    """Watts at the wall between the published ratings of a kind of lamp, hps or metal-halide; ValueError outside."""
    if lamp not in WALL_WATTS:
        known = ", ".join(WALL_WATTS)
        raise ValueError(
            say("No table of watts with ballast is known here for {lamp}, only for: {names}.", lamp=lamp, names=known)
        )
    table = WALL_WATTS[lamp]
    require("lamp_w", lamp_w, table[0][0], table[-1][0], "W")
    for (low_w, low_wall), (high_w, high_wall) in pairwise(table):
        if lamp_w <= high_w:
            return low_wall + (high_wall - low_wall) * (lamp_w - low_w) / (high_w - low_w)
    return table[-1][1]


def floor_shares(kwh: float, shares: Sequence[float]) -> list[float]:
    """kWh of each crop by its share of the floor, in per cent. Together at most 100; what is left stood empty.

    ValueError where a share is below 0 or they are over 100 %.
    """
    for share in shares:
        require("floor_share", share, 0, 100, "%")
    require("sum of floor shares", round(sum(shares), 9), 0, 100, "%")
    return [kwh * share / 100 for share in shares]


def difference_percent(estimate_kwh: float, meter_kwh: float) -> float | None:
    """By how many per cent the estimate lies above the meter's reading; None where the meter did not move."""
    return None if meter_kwh == 0 else 100 * (estimate_kwh - meter_kwh) / meter_kwh


def explain_kwh(power_w: float, hours_a_day: float, days: float) -> Figure:
    """The kWh of a device with their explanation; ranges as energy_kwh."""
    given = (Input("watts", power_w, "W"), Input("hours", hours_a_day, "h/d"), Input("days", days, "d"))
    method = say("Watts at the wall times hours a day times days, over a thousand.")
    value = energy_kwh(power_w, hours_a_day, days)
    return Figure("kwh", value, "kWh", given, method, DEFINITION, Sure.PUBLISHED)


def explain_lamp_hours(hours_a_day: float, days: float) -> Figure:
    """The lamp hours with their explanation; ranges as lamp_hours."""
    given = (Input("hours", hours_a_day, "h/d"), Input("days", days, "d"))
    method = say("Hours a day times days.")
    return Figure("lamp-hours", lamp_hours(hours_a_day, days), "h", given, method, DEFINITION, Sure.PUBLISHED)


def explain_wall_watts(lamp_w: float, ballast_loss_percent: float) -> Figure:
    """The watts at the wall by a known ballast loss, with their explanation; ranges as watts_at_the_wall."""
    given = (Input("watts", lamp_w, "W"), Input("loss", ballast_loss_percent, "%"))
    method = say("The lamp's watts and what the ballast takes on top. Watts measured at the wall are better.")
    value = watts_at_the_wall(lamp_w, ballast_loss_percent)
    return Figure("wall-watts", value, "W", given, method, DEFINITION, Sure.ESTIMATE)


def explain_usual_wall_watts(lamp: str, lamp_w: float) -> Figure:
    """The usual watts at the wall of a kind of lamp, with range and explanation; ranges as usual_wall_watts."""
    value = usual_wall_watts(lamp, lamp_w)
    low, high = (watts_at_the_wall(lamp_w, loss) for loss in USUAL_BALLAST_LOSS_PERCENT)
    given = (Input("watts", lamp_w, "W"), Input("lamp", lamp))
    method = say(
        "From the published watts with ballast of lamps like it, on a straight line between two ratings. Ballasts "
        "take 5 to 30 % of the lamp's watts. Watts measured at the wall are better."
    )
    return Figure("wall-watts", value, "W", given, method, _BALLAST_SOURCES[lamp], Sure.ESTIMATE, low, high)
