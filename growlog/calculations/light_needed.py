"""The daily light integral explained, and the canopy light that gives a wanted one."""

from collections.abc import Iterable

from growlog.calculations.allowed import require, require_above
from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.calculations.light import daily_light_integral, highest_mean_ppfd
from growlog.words import say

_SOURCE = "Faust, J., Light management in greenhouses, part I; Runkle, E., Lighting greenhouse vegetables"
MOL_PER_KWH_OF_SUN = 7.058
DAY_S = 86_400


def ppfd_needed(dli_mol: float, photoperiod_h: float) -> float:
    """PPFD in µmol/m²/s that gives a DLI in so many hours of constant lamp light.

    dli_mol: 0 to 80 mol/m² a day. photoperiod_h: above 0 to 24. ValueError outside. Source: Runkle, E., Lighting
    greenhouse vegetables, Technically speaking.
    """
    require("dli_mol", dli_mol, 0, 80, "mol/m² a day")
    require_above("photoperiod_h", photoperiod_h, 0, 24, "h")
    return dli_mol * 1_000_000 / (photoperiod_h * 3600)


def dli_of_readings(readings: Iterable[tuple[float, float]]) -> float:
    """DLI in mol/m² of a day from readings (seconds that each stands for, PPFD in µmol/m²/s), sun and lamps alike.

    Seconds 0 to 86400 each and together, PPFD 0 to 3000; ValueError outside. Source: LI-COR, Calculating the daily
    light integral.
    """
    micromoles, day_s = 0.0, 0.0
    for seconds, ppfd_umol in readings:
        require("seconds", seconds, 0, DAY_S, "s")
        require("ppfd_umol", ppfd_umol, 0, 3000, "µmol/m²/s")
        micromoles += seconds * ppfd_umol
        day_s += seconds
    require("seconds of the day", day_s, 0, DAY_S, "s")
    return micromoles / 1_000_000


def more_than_lamps_give(ppfd_umol: float, most_ppfd_umol: float, lit_part_of_floor: float = 1) -> bool:
    """Whether a canopy PPFD is more than the lamps can give, to be asked about, not refused.

    most_ppfd_umol: as highest_mean_ppfd over the whole floor. lit_part_of_floor: above 0 to 1; lamps that light only
    a part of the floor give more there. A tenth over is let pass: sensors and ratings differ by as much (common
    practice, no source).
    """
    require_above("lit_part_of_floor", lit_part_of_floor, 0, 1)
    return ppfd_umol > 1.1 * most_ppfd_umol / lit_part_of_floor


def dli_of_sun(global_radiation_kwh: float) -> float:
    """DLI in mol/m² a day of sunlight from its energy, 0 to 12 kWh/m² a day; ValueError outside. Not for lamps.

    Source: Logan, J., Sams, C. and Faust, J. (2016) Mapping daily light integrals for greenhouse production.
    """
    require("global_radiation_kwh", global_radiation_kwh, 0, 12, "kWh/m² a day")
    return global_radiation_kwh * MOL_PER_KWH_OF_SUN


def explain_dli(ppfd_umol: float, photoperiod_h: float) -> Figure:
    """The DLI of constant lamp light with its explanation; ranges as daily_light_integral."""
    return Figure(
        "dli",
        daily_light_integral(ppfd_umol, photoperiod_h),
        "mol/m²/d",
        (Input("ppfd_umol", ppfd_umol, "µmol/m²/s"), Input("hours", photoperiod_h, "h")),
        say("The light at the canopy times the seconds that the lamps are on, over a million. For lamps, not for sun."),
        _SOURCE,
        Sure.PUBLISHED,
    )


def explain_ppfd_needed(dli_mol: float, photoperiod_h: float) -> Figure:
    """The PPFD for a DLI with its explanation; ranges as ppfd_needed."""
    return Figure(
        "ppfd-needed",
        ppfd_needed(dli_mol, photoperiod_h),
        "µmol/m²/s",
        (Input("dli_mol", dli_mol, "mol/m²/d"), Input("hours", photoperiod_h, "h")),
        say("The daily light integral times a million, over the seconds that the lamps are on."),
        _SOURCE,
        Sure.PUBLISHED,
    )


def explain_ppfd_from_lamps(
    wall_w: float, efficacy_umol_per_j: float, dimming_percent: float, floor_m2: float
) -> Figure:
    """The mean PPFD that lamps can give at most, with its explanation.

    wall_w: 0 to 100000 W. efficacy: 0 to 6 µmol/J. dimming_percent: 0 to 100 of full output. floor_m2: above 0 to
    10000. ValueError outside.
    """
    require("wall_w", wall_w, 0, 100_000, "W")
    require("efficacy_umol_per_j", efficacy_umol_per_j, 0, 6, "µmol/J")
    require("dimming_percent", dimming_percent, 0, 100, "%")
    require_above("floor_m2", floor_m2, 0, 10_000, "m²")
    most = highest_mean_ppfd(wall_w, efficacy_umol_per_j, dimming_percent, floor_m2)
    return Figure(
        "ppfd-from-lamps",
        most,
        "µmol/m²/s",
        (
            Input("watts", wall_w, "W"),
            Input("efficacy", efficacy_umol_per_j, "µmol/J"),
            Input("dimming", dimming_percent, "%"),
            Input("floor_m2", floor_m2, "m²"),
        ),
        say(
            "Watts at the wall times photons per joule times the output of the lamps, over the lit floor: the most "
            "that can arrive on average. Walls and paths take some of it."
        ),
        DEFINITION,
        Sure.ESTIMATE,
        high=most,
    )
