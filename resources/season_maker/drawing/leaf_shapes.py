"""Blades of leaves as sheets: the lobed pattypan leaf on polar spokes, and the ovate leaf along a midrib."""

import math
import random
from dataclasses import dataclass

import numpy as np

from .sheets import Patch, Ribbon, Sheet
from .space import Floats

LOBE_TURNS_DEG = (0, 27, 51, 78, 103, 127, 146, 166, 178)
LOBE_REACH = (1.0, 0.80, 0.93, 0.74, 0.83, 0.68, 0.70, 0.50, 0.13)
MAIN_VEINS_DEG = (-143, -101, -50, 0, 50, 101, 143)
LONGEST = 178.0


@dataclass(frozen=True)
class BladeFrame:
    """Where a blade sits: its attachment, the way its tip points, and its upper side."""

    origin: Floats
    tip: Floats
    face: Floats

    def place(self, p: Floats, q: Floats, lift: Floats) -> Floats:
        """Blade coordinates (along the tip, across, above) to space."""
        across = np.cross(self.tip, self.face)
        return np.asarray(self.origin + p[..., None] * self.tip + q[..., None] * across + lift[..., None] * self.face)


@dataclass(frozen=True)
class BladeLook:
    """What one leaf looks like apart from its place."""

    colour: tuple[float, float, float]
    yellowing: float
    droop: float
    fold: float  # 1 still closed along its midrib, 0 flat
    vein_tone: tuple[float, float, float] = (196, 214, 150)
    vein_strength: float = 0.5
    mottling: float = 0.0
    mildew: float = 0.0


def lobed_blade(frame: BladeFrame, width_cm: float, look: BladeLook, chance: random.Random, fine: bool) -> Sheet:
    """A pattypan leaf; width is across the two side lobes."""
    rows, columns = (12, 96) if fine else (7, 56)
    size = width_cm * 0.62
    turn = np.linspace(-LONGEST, LONGEST, columns + 1)
    rise = np.linspace(0.02, 1.0, rows + 1) ** 0.85
    skew = chance.uniform(-4, 4)
    reach = _lobe_reach(turn + skew * np.cos(np.radians(turn / 2)))
    reach = reach * (1 + 0.035 * np.sin(np.radians(turn) * 2 + chance.uniform(0, 6)))
    r = rise[:, None] * np.ones_like(turn)[None, :]
    radial = r * reach[None, :]
    teeth = 0.024 * np.where(np.arange(columns + 1) % 2 == 0, 1.0, -1.0)
    radial[-1] *= 1 + teeth
    angle = np.radians(turn)[None, :]
    p, q = radial * np.cos(angle), radial * np.sin(angle)
    lift = _lobed_lift(p, q, r, turn, look, chance)
    squeeze = 1 - 0.72 * look.fold
    points = frame.place(p * size, q * size * squeeze, lift * size)
    sheet = Sheet(points, _blade_colour(r, _between(turn), look, chance), translucency=0.62, gloss=0.13)
    _lobed_veins(sheet, size, look, fine)
    if fine:
        _mottle(sheet, look, chance)
    _mildew_spots(sheet, look, chance)
    return sheet


def _lobe_reach(turn_deg: Floats) -> Floats:
    """Smooth between lobes and bays."""
    away = np.clip(np.abs(turn_deg), 0, LONGEST)
    knots, values = np.array(LOBE_TURNS_DEG, dtype=float), np.array(LOBE_REACH)
    index = np.clip(np.searchsorted(knots, away, side="right") - 1, 0, len(knots) - 2)
    part = (away - knots[index]) / (knots[index + 1] - knots[index])
    ease = (1 - np.cos(np.pi * part)) / 2
    return np.asarray(values[index] + (values[index + 1] - values[index]) * ease)


def _between(turn: Floats) -> Floats:
    """0 on a main vein, 1 half-way to the next."""
    veins = np.array((-185, *MAIN_VEINS_DEG, 185), dtype=float)
    index = np.clip(np.searchsorted(veins, turn, side="right") - 1, 0, len(veins) - 2)
    part = (turn - veins[index]) / (veins[index + 1] - veins[index])
    return np.asarray(np.sin(np.pi * part))


def _lobed_lift(p: Floats, q: Floats, r: Floats, turn: Floats, look: BladeLook, chance: random.Random) -> Floats:
    wave = np.radians(turn)[None, :]
    rim = 0.055 * r**3 * np.sin(3 * wave + chance.uniform(0, 6)) + 0.03 * r**4 * np.sin(7 * wave + chance.uniform(0, 6))
    pleat = 0.065 * r * (1 - 0.45 * r) * _between(turn)[None, :]
    bend = -look.droop * (0.55 * np.maximum(p, 0) ** 2 + 0.35 * q**2 + 0.5 * np.minimum(p, 0) ** 2)
    closing = look.fold * 0.95 * np.abs(q)
    cup = 0.10 * np.abs(q) * (1 - look.fold)
    return np.asarray(rim + pleat + bend + closing + cup)


def _blade_colour(r: Floats, between: Floats, look: BladeLook, chance: random.Random) -> Floats:
    base = np.array(look.colour)
    shadow = 1.0 - 0.10 * between[None, :] * (1 - 0.4 * r)
    colour = base * shadow[..., None]
    spread = np.clip(look.yellowing * 1.9 - (1 - r) * 0.9 - 0.25 * (1 - between[None, :]), 0, 1)
    yellow = np.array([206, 184, 70]) + chance.uniform(-8, 8)
    colour = colour * (1 - spread[..., None]) + yellow * spread[..., None]
    dry = np.clip((look.yellowing - 0.75) * 4, 0, 1) * np.clip((r - 0.86) * 9, 0, 1)
    return np.asarray(colour * (1 - dry[..., None]) + np.array([150, 112, 62]) * dry[..., None])


def _grid_places(sheet: Sheet, r: Floats, turn_deg: Floats) -> tuple[Floats, Floats]:
    rows, columns = sheet.points.shape[0] - 1, sheet.points.shape[1] - 1
    u = (np.clip((np.clip(r, 0.02, 1.0) ** (1 / 0.85) - 0.02) / 0.98, 0, 1)) * rows
    return u, (turn_deg + LONGEST) / (2 * LONGEST) * columns


def _lobed_veins(sheet: Sheet, size: float, look: BladeLook, fine: bool) -> None:
    thick = 0.030 * size
    for vein in MAIN_VEINS_DEG:
        r = np.linspace(0.0, 0.93, 9)
        u, v = _grid_places(sheet, r, np.full(9, float(vein)))
        sheet.ribbons.append(Ribbon(u, v, (thick, thick * 0.28), look.vein_tone, look.vein_strength))
        if not fine:
            continue
        for place, side in ((0.24, 1), (0.34, -1), (0.48, 1), (0.58, -1), (0.7, 1), (0.78, -1)):
            _side_vein(sheet, size, look, vein, place, side)


def _side_vein(sheet: Sheet, size: float, look: BladeLook, vein: float, place: float, side: int) -> None:
    reach = float(_lobe_reach(np.array([float(vein)]))[0])
    start = place * reach
    step = np.linspace(0, 0.34 * (1.12 - place) + 0.06, 4)
    lean = math.radians(vein + side * 40)
    p = start * math.cos(math.radians(vein)) + step * math.cos(lean)
    q = start * math.sin(math.radians(vein)) + step * math.sin(lean)
    turn = np.degrees(np.arctan2(q, p))
    if np.any(np.abs(turn) > 172):
        return
    r = np.hypot(p, q) / _lobe_reach(turn)
    if r[-1] > 0.97:
        return
    u, v = _grid_places(sheet, r, turn)
    sheet.ribbons.append(Ribbon(u, v, (0.013 * size, 0.006 * size), look.vein_tone, look.vein_strength * 0.62))


def _mottle(sheet: Sheet, look: BladeLook, chance: random.Random) -> None:
    """Silvery flecks in the angles of the veins, as many squashes have."""
    if look.mottling <= 0:
        return
    for vein in MAIN_VEINS_DEG[1:-1]:
        for _ in range(4):
            turn = vein + chance.choice((-1, 1)) * chance.uniform(5, 15)
            _fleck(
                sheet,
                chance,
                chance.uniform(0.22, 0.74),
                turn,
                chance.uniform(0.028, 0.052),
                (176, 198, 172),
                0.30 * look.mottling,
            )


def _mildew_spots(sheet: Sheet, look: BladeLook, chance: random.Random) -> None:
    for _ in range(round(16 * look.mildew)):
        turn, r = chance.uniform(-150, 150), chance.uniform(0.25, 0.9)
        _fleck(sheet, chance, r, turn, chance.uniform(0.04, 0.085), (222, 224, 214), 0.62)


def _fleck(
    sheet: Sheet,
    chance: random.Random,
    r: float,
    turn: float,
    wide: float,
    tone: tuple[float, float, float],
    strength: float,
) -> None:
    around = np.linspace(0, 2 * np.pi, 8)[:-1]
    out = wide * np.array([chance.uniform(0.6, 1.25) for _ in around])
    outline_r = np.clip(r + out * np.cos(around) * 1.3, 0.05, 0.96)
    outline_turn = np.clip(turn + np.degrees(out * np.sin(around) / max(r, 0.2)) * 0.8, -170, 170)
    u, v = _grid_places(sheet, outline_r, outline_turn)
    sheet.patches.append(Patch(u, v, tone, strength))


@dataclass(frozen=True)
class OvateForm:
    """Outline of a nightshade leaf."""

    length_to_width: float
    widest_at: float  # share of the length
    rim_waves: float
    rim_wave_depth: float
    side_veins: int


CHILLI_FORM = OvateForm(2.1, 0.40, 0.0, 0.0, 6)
AUBERGINE_FORM = OvateForm(1.45, 0.38, 3.5, 0.07, 5)
SEED_LEAF_FORM = OvateForm(1.75, 0.52, 0.0, 0.0, 3)
NARROW_SEED_LEAF_FORM = OvateForm(2.9, 0.42, 0.0, 0.0, 0)
PETAL_FORM = OvateForm(1.5, 0.5, 0.0, 0.0, 0)


def ovate_blade(
    frame: BladeFrame, width_cm: float, form: OvateForm, look: BladeLook, chance: random.Random, fine: bool
) -> Sheet:
    """A leaf along a midrib; the origin is where the stalk meets the blade."""
    rows, columns = (22, 12) if fine else (10, 6)
    if form.rim_waves and width_cm > 1.5:  # broad, waved leaves show coarse faces
        rows, columns = 64, 36
    length = width_cm * form.length_to_width
    s = np.linspace(0.0, 1.0, rows + 1)
    t = np.linspace(-1.0, 1.0, columns + 1)
    half = _ovate_half_width(s, form) * width_cm / 2
    phase = chance.uniform(0, 6)
    wavy = 1 + form.rim_wave_depth * np.sin(2 * np.pi * form.rim_waves * s[:, None] + phase + np.sign(t)[None, :])
    squeeze = 1 - 0.7 * look.fold
    q = half[:, None] * t[None, :] * np.where(np.abs(t) > 0.5, wavy, 1.0) * squeeze
    side = np.abs(t)[None, :]
    ripple = 0.05 * width_cm * side**2 * np.sin(2 * np.pi * (form.rim_waves or 2.5) * s[:, None] + phase)
    pleat = 0.011 * width_cm * side * (1 - side) * 4 * np.cos(2 * np.pi * form.side_veins * (s[:, None] - 0.25 * side))
    p = length * (s - 0.10 * look.droop * s**2)[:, None] * np.ones_like(t)[None, :]
    lift = -look.droop * 0.34 * length * (s**2)[:, None] + (0.16 + look.fold) * half[:, None] * side + ripple + pleat
    points = frame.place(p, q, lift)
    r = np.maximum(side * np.ones_like(s)[:, None], (np.abs(s - 0.45) * 1.8)[:, None] ** 3)
    sheet = Sheet(points, _blade_colour(np.clip(r, 0, 1), np.full(columns + 1, 0.5), look, chance), 0.55, 0.16)
    _ovate_veins(sheet, width_cm, form, look)
    return sheet


def _ovate_half_width(s: Floats, form: OvateForm) -> Floats:
    """1 at the widest place, 0 at both ends, a drawn-out tip."""
    bent = s ** (math.log(0.5) / math.log(form.widest_at))
    return np.asarray(np.maximum(np.sin(np.pi * bent), 0.0) ** 0.85 * (1 - 0.10 * s) + 0.012)


def _ovate_veins(sheet: Sheet, width_cm: float, form: OvateForm, look: BladeLook) -> None:
    rows, columns = sheet.points.shape[0] - 1, sheet.points.shape[1] - 1
    s = np.linspace(0.0, 0.95, 10)
    middle = np.full(10, columns / 2)
    sheet.ribbons.append(
        Ribbon(s * rows, middle, (0.050 * width_cm, 0.012 * width_cm), look.vein_tone, look.vein_strength)
    )
    for number in range(form.side_veins):
        for way in (-1.0, 1.0):
            start = 0.08 + 0.74 * number / form.side_veins + (0.03 if way > 0 else 0.0)
            t = np.linspace(0.0, 0.86, 5)
            u = (start + 0.17 * t**1.4) * rows
            v = (way * t + 1) / 2 * columns
            sheet.ribbons.append(
                Ribbon(u, v, (0.020 * width_cm, 0.007 * width_cm), look.vein_tone, look.vein_strength * 0.66)
            )
