"""Builds a pattypan plant in space from its state: stem, leaves on long stalks, flowers, fruit, cane."""

import random

import numpy as np

from resources.season_maker.growth_curves import organ_chance
from resources.season_maker.plant_state import Flower, FlowerForm, FlowerStage, Fruit, Leaf, PlantState

from .leaf_shapes import SEED_LEAF_FORM, BladeFrame, BladeLook, lobed_blade, ovate_blade
from .parts import LAMP_SIDE, PlantParts, Tube, stalk, tie
from .pattypan_organs import scalloped_fruit, squash_corolla
from .space import UP, Floats, arc, direction, heading, unit

STALK_LOW, STALK_TOP = (150, 178, 102), (122, 164, 82)


def build_pattypan(state: PlantState) -> PlantParts:
    """All parts of one day's plant."""
    parts = PlantParts()
    if state.emergence <= 0:
        return parts
    _add_stem(parts, state)
    _add_seed_leaves(parts, state)
    for leaf in state.leaves:
        _add_leaf(parts, state, leaf)
    for flower in state.flowers:
        _add_flower(parts, state, flower)
    for fruit in state.fruits:
        _add_fruit(parts, state, fruit)
    if state.cane:
        _add_cane(parts, state)
    return parts


def stem_at(state: PlantState, height_cm: float) -> Floats:
    """The middle of the stem at a height: it leans a little and never stands like a rod."""
    chance = organ_chance(state.crop, "lean")
    lean, bow = chance.uniform(-0.09, 0.09), chance.uniform(-0.6, 0.6)
    return np.array([lean * height_cm + bow * np.sin(height_cm / 9.0), height_cm, 0.05 * height_cm])


def _add_stem(parts: PlantParts, state: PlantState) -> None:
    top = max(0.6, state.stem_height_cm * min(1.0, state.emergence * 1.2))
    heights = np.linspace(-0.8, top, max(6, int(top) + 4))
    path = np.array([stem_at(state, float(h)) for h in heights])
    part = np.linspace(0, 1, len(path))
    radii = state.stem_radius_cm * (1.0 - 0.30 * part) * (0.96 + 0.07 * np.sin(heights * 2.1))
    old = min(1.0, state.day / 110) * 0.45
    colour = np.array([146, 176, 98]) * (1 - old * (1 - part[:, None])) + np.array([128, 118, 82]) * old * (
        1 - part[:, None]
    )
    parts.tubes.append(Tube(path, radii, colour))
    for number, height in enumerate(state.stub_heights_cm):
        _add_stub(parts, state, number, height)


def _add_stub(parts: PlantParts, state: PlantState, number: int, height_cm: float) -> None:
    start = stem_at(state, height_cm)
    way = direction(number * 137.5 + 40, 32)
    path = np.array([start, start + way * (state.stem_radius_cm + 0.3), start + way * (state.stem_radius_cm + 0.9)])
    parts.tubes.append(stalk(path, (0.46, 0.36), (146, 156, 98), (178, 172, 122)))


def _add_seed_leaves(parts: PlantParts, state: PlantState) -> None:
    if state.seed_leaf_yellowing > 1 or state.seed_leaf_cm < 0.4:
        return
    chance = organ_chance(state.crop, "seed leaves")
    opening = state.emergence
    base = stem_at(state, min(4.0, max(0.7, state.stem_height_cm * min(1.0, opening * 1.2))))
    turn = chance.uniform(70, 100)
    for azimuth in (turn, turn + 176):
        rise = 78 - 62 * opening - 20 * max(0.0, state.seed_leaf_yellowing)
        tip = direction(azimuth, rise)
        face = unit(np.cross(np.cross(tip, UP), tip) + 0.35 * LAMP_SIDE)
        face = unit(face - tip * float(face @ tip))
        look = BladeLook((118, 168, 72), max(0.0, state.seed_leaf_yellowing) * 0.9, 0.22, 0.0, (186, 210, 140), 0.42)
        width = state.seed_leaf_cm * 0.60
        parts.sheets.append(ovate_blade(BladeFrame(base, tip, face), width, SEED_LEAF_FORM, look, chance, fine=True))


def leaf_lean_deg(leaf: Leaf) -> float:
    """Rise of a leaf stalk: upright when young, lower as it ages."""
    age = leaf.age_days
    return 84 - 26 * min(1.0, age / 22) - 16 * min(1.0, max(0.0, age - 18) / 40) - 9 * leaf.yellowing


def _add_leaf(parts: PlantParts, state: PlantState, leaf: Leaf) -> None:
    chance = organ_chance(state.crop, "leaf look", leaf.number)
    start = stem_at(state, min(leaf.base_height_cm, state.stem_height_cm))
    rise = leaf_lean_deg(leaf) + chance.gauss(0, 6)
    azimuth = _turned_aside(leaf.azimuth_deg)
    out = heading(azimuth)
    low, high = direction(azimuth, min(86, rise + 14)), direction(azimuth, rise)
    end = start + high * leaf.stalk_cm + out * 0.4
    path = arc(start, start + low * leaf.stalk_cm * 0.58, end, 9)
    thick = 0.16 + 0.44 * leaf.expansion * min(1.0, leaf.stalk_cm / 26)
    parts.tubes.append(stalk(path, (thick * 1.35, thick * 0.78), STALK_LOW, _toward_yellow(STALK_TOP, leaf.yellowing)))
    frame = _leaf_frame(path[-1], out, leaf, chance.gauss(0, 16), chance.gauss(0, 8))
    parts.sheets.append(lobed_blade(frame, leaf.blade_cm, _leaf_look(leaf, chance), chance, fine=leaf.blade_cm > 7))


def _turned_aside(azimuth_deg: float) -> float:
    """Leaves that would hang straight into the lens are led to a side, as growers do to see the fruit."""
    turn = (azimuth_deg + 180) % 360 - 180
    return float(turn + 34 * np.exp(-((turn / 38) ** 2)) * (1 if turn >= 0 else -1))


def _leaf_frame(end: Floats, out: Floats, leaf: Leaf, roll_deg: float, tilt_more: float) -> BladeFrame:
    tilt = np.radians(14 + 30 * leaf.expansion + 16 * leaf.yellowing + tilt_more)
    face = unit(0.62 * (UP * np.cos(tilt) + out * np.sin(tilt)) + 0.46 * LAMP_SIDE)
    tip = unit(out - face * float(out @ face) + 1e-6)
    roll = np.radians(roll_deg)
    tip = unit(tip * np.cos(roll) + np.cross(face, tip) * np.sin(roll))
    return BladeFrame(end, tip, face)


def _leaf_look(leaf: Leaf, chance: random.Random) -> BladeLook:
    young = max(0.0, 1 - leaf.age_days / 13)
    hue, light = chance.uniform(-1, 1), chance.uniform(0.88, 1.10)
    grown = np.array([77 + 12 * hue, 126 + 5 * hue, 58 - 8 * hue]) * light
    fresh = np.array([128, 172, 70])
    colour = grown * (1 - 0.75 * young) + fresh * 0.75 * young
    return BladeLook(
        colour=(float(colour[0]), float(colour[1]), float(colour[2])),
        yellowing=leaf.yellowing,
        droop=0.24 + 0.26 * min(1.0, leaf.age_days / 40) + chance.uniform(-0.06, 0.10) + 0.25 * leaf.yellowing,
        fold=max(0.0, 0.85 - leaf.expansion * 1.15),
        vein_strength=0.46,
        mottling=chance.uniform(0.5, 1.0) if leaf.number > 3 else 0.0,
        mildew=leaf.mildew,
    )


def _toward_yellow(colour: tuple[float, float, float], yellowing: float) -> tuple[float, float, float]:
    part = 0.6 * yellowing
    return (
        colour[0] * (1 - part) + 190 * part,
        colour[1] * (1 - part) + 172 * part,
        colour[2] * (1 - part) + 88 * part,
    )


def _add_flower(parts: PlantParts, state: PlantState, flower: Flower) -> None:
    chance = organ_chance(state.crop, flower.form, flower.number)
    start = stem_at(state, min(flower.base_height_cm, state.stem_height_cm))
    azimuth = flower.azimuth_deg
    if flower.form is FlowerForm.FEMALE:
        if flower.stage in (FlowerStage.CLOSED, FlowerStage.WITHERED):
            return  # drawn with the fruit it sits on
        _add_female(parts, state, flower, start)
        return
    length = (4 + 11 * flower.size) * chance.uniform(0.8, 1.15)
    rise = chance.uniform(28, 64)
    bend = -8 if flower.stage is FlowerStage.WITHERED else 10
    end = start + direction(azimuth, rise) * length
    path = arc(start, start + direction(azimuth, rise - 22) * length * 0.5, end, 6)
    parts.tubes.append(stalk(path, (0.26, 0.24), (146, 178, 100), (132, 172, 86)))
    axis = unit(direction(azimuth, rise + bend) + 0.45 * LAMP_SIDE)
    parts.sheets.append(squash_corolla(end, axis, flower, chance))
    if flower.stage is FlowerStage.OPEN:
        _add_column(parts, end, axis, 2.4)


def _add_column(parts: PlantParts, base: Floats, axis: Floats, length_cm: float) -> None:
    path = np.array([base + axis * (0.3 + length_cm * part) for part in (0.0, 0.4, 0.8, 1.0)])
    parts.tubes.append(Tube(path, np.array([0.34, 0.42, 0.44, 0.2]), np.tile([238.0, 168.0, 30.0], (4, 1))))


def fruit_axis(azimuth_deg: float, weight_g: float, turn: float) -> Floats:
    """Where a fruit faces: outward, sinking a little as it grows heavy."""
    return unit(direction(azimuth_deg, 30 - 0.14 * min(weight_g, 130) + turn) + 0.22 * LAMP_SIDE)


def _add_female(parts: PlantParts, state: PlantState, flower: Flower, start: Floats) -> None:
    chance = organ_chance(state.crop, "fruit look", flower.number)
    axis = fruit_axis(flower.azimuth_deg, 4.0, chance.uniform(-8, 14))
    reach = (1.6 + 2.6 * flower.size) * chance.uniform(0.9, 1.2)
    young = Fruit(flower.number, flower.azimuth_deg, flower.base_height_cm, 0.8 + 1.6 * flower.size, 4.0, 0.1)
    middle = start + axis * (reach + young.across_cm * 0.3)
    parts.tubes.append(
        stalk(arc(start, start + axis * reach * 0.5 + UP * 0.4, middle, 4), (0.34, 0.3), STALK_LOW, STALK_TOP)
    )
    parts.sheets.append(scalloped_fruit(middle, axis, young, chance))
    seat = middle + axis * young.across_cm * 0.2
    parts.sheets.append(squash_corolla(seat, unit(axis + 0.3 * LAMP_SIDE), flower, chance))
    if flower.stage is FlowerStage.OPEN:
        _add_column(parts, seat, axis, 1.7)


def _add_fruit(parts: PlantParts, state: PlantState, fruit: Fruit) -> None:
    chance = organ_chance(state.crop, "fruit look", fruit.number)
    start = stem_at(state, min(fruit.base_height_cm, state.stem_height_cm))
    axis = fruit_axis(fruit.azimuth_deg, fruit.weight_g, chance.uniform(-8, 14))
    reach = 5.0 * chance.uniform(0.8, 1.3)
    middle = start + axis * (reach + fruit.across_cm * 0.34)
    middle[1] = max(middle[1], fruit.across_cm * 0.36)
    thick = 0.34 + 0.26 * min(1.0, fruit.weight_g / 80)
    end = middle - axis * fruit.across_cm * 0.24
    parts.tubes.append(
        stalk(
            arc(start, start + axis * reach * 0.5 + UP * 0.5, end, 5), (thick * 1.2, thick), STALK_LOW, (140, 166, 80)
        )
    )
    parts.sheets.append(scalloped_fruit(middle, axis, fruit, chance))
    worn = next((f for f in state.flowers if f.form is FlowerForm.FEMALE and f.number == fruit.number), None)
    if worn is not None:
        seat = middle + axis * fruit.across_cm * 0.20
        parts.sheets.append(squash_corolla(seat, axis, worn, chance))


def _add_cane(parts: PlantParts, state: PlantState) -> None:
    foot = np.array([1.9, -0.5, -1.6])
    top = foot + np.array([0.6, max(30.0, state.stem_height_cm + 20), -0.6])
    path = np.linspace(foot, top, 14)
    knots = 0.34 + 0.07 * (np.arange(14) % 4 == 0)
    parts.tubes.append(Tube(path, knots, np.tile([176.0, 150.0, 104.0], (14, 1))))
    height = max(4.0, state.stem_height_cm * 0.72)
    parts.tubes.append(tie(stem_at(state, height), foot + (top - foot) * (height / (top[1] - foot[1]))))
