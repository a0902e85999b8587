"""Light at the canopy."""

from dataclasses import dataclass


def daily_light_integral(ppfd_umol: float, photoperiod_h: float) -> float:
    """DLI in mol/m² a day of constant lamp light: PPFD (µmol/m²/s) times seconds, over a million.

    ppfd_umol: 0 to 3000. photoperiod_h: 0 to 24. ValueError outside. For lamps only, not for sunlight.
    Source: Faust, J., Light management in greenhouses, part I; Runkle, E., Lighting greenhouse vegetables.
    """
    if not 0 <= photoperiod_h <= 24:
        raise ValueError(f"photoperiod_h {photoperiod_h} is outside 0 to 24 h")
    if not 0 <= ppfd_umol <= 3000:
        raise ValueError(f"ppfd_umol {ppfd_umol} is outside 0 to 3000 µmol/m²/s")
    return ppfd_umol * photoperiod_h * 3600 / 1_000_000


def highest_mean_ppfd(wall_w: float, efficacy_umol_per_j: float, dimming_percent: float, floor_m2: float) -> float:
    """The most that lamps can give on a floor, µmol/m²/s: watts times efficacy times output, over the floor.

    wall_w > 0, efficacy 0 to 6 µmol/J, dimming_percent 0 to 100 of full output, floor_m2 > 0. By definition.
    """
    if floor_m2 <= 0:
        raise ValueError(f"floor_m2 {floor_m2} is outside 0 to 10000 m²")
    return wall_w * efficacy_umol_per_j * dimming_percent / 100 / floor_m2


@dataclass(frozen=True)
class LightSpan:
    """The light from a plant age to another, inclusive. dli_mol: mol/m² a day, None without a canopy PPFD.

    is_estimate: the canopy's light was worked out, not read off a sensor or stated.
    """

    start_age: int
    end_age: int
    photoperiod_h: float
    dimming_percent: float | None
    canopy_ppfd_umol: float | None
    dli_mol: float | None
    is_estimate: bool = False
