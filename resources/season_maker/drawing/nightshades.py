"""Builds a chilli or an aubergine in space from its state: forking stems, leaves, nodding flowers, hanging fruit."""

from dataclasses import dataclass

import numpy as np

from resources.season_maker.growth_curves import organ_chance
from resources.season_maker.plant_state import Flower, FlowerStage, Fruit, Leaf, PlantState, Shoot, Species

from .leaf_shapes import (
    AUBERGINE_FORM,
    CHILLI_FORM,
    NARROW_SEED_LEAF_FORM,
    BladeFrame,
    BladeLook,
    OvateForm,
    ovate_blade,
)
from .nightshade_organs import chilli_fruit, star_flower
from .parts import LAMP_SIDE, PlantParts, Tube, stalk, tie
from .space import UP, Floats, arc, direction, heading, unit

Tone = tuple[float, float, float]


@dataclass(frozen=True)
class Dress:
    """Colours and forms of a species."""

    form: OvateForm
    stem: Tone
    wood: Tone
    leaf: Tone
    fresh: Tone
    vein: Tone
    vein_strength: float
    petal: Tone
    petal_base: Tone
    flower_cm: float


DRESSES = {
    Species.CHILLI: Dress(
        CHILLI_FORM,
        (126, 160, 78),
        (140, 116, 80),
        (66, 122, 54),
        (120, 172, 76),
        (170, 200, 128),
        0.36,
        (244, 243, 234),
        (214, 222, 168),
        2.5,
    ),
    Species.AUBERGINE: Dress(
        AUBERGINE_FORM,
        (112, 98, 112),
        (104, 88, 92),
        (86, 122, 72),
        (136, 164, 98),
        (186, 158, 184),
        0.55,
        (156, 104, 186),
        (118, 70, 152),
        6.4,
    ),
}


def build_nightshade(state: PlantState) -> PlantParts:
    """All parts of one day's plant."""
    parts = PlantParts()
    if state.emergence <= 0:
        return parts
    dress = DRESSES[state.species]
    paths: dict[int, Floats] = {}
    for shoot in state.shoots:
        start = np.array([0.0, -0.4, 0.0]) if shoot.parent < 0 else paths[shoot.parent][-1]
        paths[shoot.number] = _shoot_path(state, shoot, start)
        _add_shoot(parts, dress, shoot, paths)
    _add_seed_leaves(parts, state, paths[0])
    for leaf in state.leaves:
        _add_leaf(parts, state, dress, leaf, paths[leaf.shoot])
    for flower in state.flowers:
        _add_flower(parts, state, dress, flower, paths[flower.shoot][-1])
    for fruit in state.fruits:
        _add_fruit(parts, state, dress, fruit, paths[fruit.shoot][-1])
    if state.cane:
        _add_cane(parts, state, paths[0])
    return parts


def _shoot_path(state: PlantState, shoot: Shoot, start: Floats) -> Floats:
    chance = organ_chance(state.crop, "bend", shoot.number)
    way = direction(shoot.azimuth_deg, shoot.rise_deg)
    end = start + way * shoot.length_cm
    bow = heading(shoot.azimuth_deg + chance.choice((-90, 90))) * 0.07 - UP * (0.05 if shoot.parent >= 0 else 0.0)
    return arc(start, (start + end) / 2 + bow * shoot.length_cm, end, 8 if shoot.parent < 0 else 5)


def _add_shoot(parts: PlantParts, dress: Dress, shoot: Shoot, paths: dict[int, Floats]) -> None:
    wood = 0.8 * shoot.woodiness
    tone = tuple(a * (1 - wood) + b * wood for a, b in zip(dress.stem, dress.wood, strict=True))
    thin = 0.80 if shoot.woodiness > 0 or shoot.length_cm > 12 else 0.5
    path = paths[shoot.number]
    parts.tubes.append(stalk(path, (shoot.radius_cm, shoot.radius_cm * thin), (tone[0], tone[1], tone[2]), dress.stem))


def _add_seed_leaves(parts: PlantParts, state: PlantState, stem: Floats) -> None:
    if state.seed_leaf_yellowing > 1 or state.seed_leaf_cm < 0.3:
        return
    chance = organ_chance(state.crop, "seed leaves")
    part = min(1.0, 2.4 / max(0.4, float(stem[-1][1])))
    base = stem[round(part * (len(stem) - 1))]
    turn = chance.uniform(60, 110)
    for azimuth in (turn, turn + 178):
        rise = 80 - 62 * state.emergence - 25 * max(0.0, state.seed_leaf_yellowing)
        tip = direction(azimuth, rise)
        face = unit(np.cross(np.cross(tip, UP), tip) + 0.5 * LAMP_SIDE)
        face = unit(face - tip * float(face @ tip))
        look = BladeLook((112, 166, 74), max(0.0, state.seed_leaf_yellowing) * 0.9, 0.25, 0.0, (170, 200, 128), 0.4)
        width = state.seed_leaf_cm * 0.36
        parts.sheets.append(
            ovate_blade(BladeFrame(base, tip, face), width, NARROW_SEED_LEAF_FORM, look, chance, fine=False)
        )


def _add_leaf(parts: PlantParts, state: PlantState, dress: Dress, leaf: Leaf, path: Floats) -> None:
    chance = organ_chance(state.crop, "leaf look", leaf.number)
    start = path[min(len(path) - 1, round(leaf.along_shoot * (len(path) - 1)))]
    sink = min(1.0, leaf.age_days / 40)
    rise = 62 - 34 * leaf.expansion - 16 * sink - 16 * leaf.yellowing + chance.gauss(0, 8)
    azimuth = _turned_aside(leaf.azimuth_deg) if state.species is Species.AUBERGINE else leaf.azimuth_deg
    out = heading(azimuth)
    end = start + direction(azimuth, rise) * leaf.stalk_cm
    bend = arc(start, start + direction(azimuth, rise + 20) * leaf.stalk_cm * 0.5, end, 4)
    thick = (0.10 + 0.016 * leaf.blade_cm) * (0.4 + 0.6 * leaf.expansion)
    parts.tubes.append(stalk(bend, (thick, thick * 0.75), dress.stem, _between(dress.stem, dress.leaf, 0.35)))
    tilt = np.radians(16 + 26 * leaf.expansion + 12 * sink + chance.gauss(0, 9))
    face = unit(0.66 * (UP * np.cos(tilt) + out * np.sin(tilt)) + 0.42 * LAMP_SIDE)
    tip = unit(out * 1.0 - UP * 0.15 - face * float((out - UP * 0.15) @ face) + 1e-6)
    roll = np.radians(chance.gauss(0, 18))
    tip = unit(tip * np.cos(roll) + np.cross(face, tip) * np.sin(roll))
    droop = (0.42 if state.species is Species.CHILLI else 0.26) + chance.uniform(-0.1, 0.16)
    look = _leaf_look(dress, leaf, chance.uniform(0.88, 1.10), droop)
    fine = leaf.blade_cm > 2.4
    parts.sheets.append(
        ovate_blade(BladeFrame(end, tip, face), max(leaf.blade_cm, 0.3), dress.form, look, chance, fine)
    )


def _turned_aside(azimuth_deg: float) -> float:
    """A broad leaf straight before the lens would hide the plant: it is led to a side."""
    turn = (azimuth_deg + 180) % 360 - 180
    return float(turn + 38 * np.exp(-((turn / 40) ** 2)) * (1 if turn >= 0 else -1))


def _leaf_look(dress: Dress, leaf: Leaf, light: float, own_droop: float) -> BladeLook:
    young = 0.85 * max(0.0, 1 - leaf.age_days / 20)
    colour = _between((dress.leaf[0] * light, dress.leaf[1] * light, dress.leaf[2] * light), dress.fresh, young)
    droop = own_droop + 0.32 * min(1.0, leaf.age_days / 45) + 0.3 * leaf.yellowing
    return BladeLook(
        colour, leaf.yellowing, droop, max(0.0, 0.8 - leaf.expansion * 1.1), dress.vein, dress.vein_strength
    )


def _between(low: Tone, high: Tone, part: float) -> Tone:
    return (low[0] + (high[0] - low[0]) * part, low[1] + (high[1] - low[1]) * part, low[2] + (high[2] - low[2]) * part)


def _add_flower(parts: PlantParts, state: PlantState, dress: Dress, flower: Flower, fork: Floats) -> None:
    chance = organ_chance(state.crop, "flower look", flower.number)
    big = dress.flower_cm / 2.5
    reach = (0.5 + 1.3 * flower.size) * big
    nod = -12 if flower.stage is FlowerStage.OPEN else 14
    way = direction(flower.azimuth_deg, 24 + chance.gauss(0, 8))
    end = fork + way * reach - UP * 0.25 * reach
    parts.tubes.append(
        stalk(
            arc(fork, fork + (way + UP * 0.4) * reach * 0.6, end, 4), (0.09 * big, 0.11 * big), dress.stem, dress.stem
        )
    )
    axis = unit(direction(flower.azimuth_deg, nod) + 0.55 * LAMP_SIDE * np.array([1, 0.2, 1]))
    sheets, tubes = star_flower(end, axis, flower, dress.flower_cm, dress.petal, dress.petal_base, chance)
    parts.sheets.extend(sheets)
    parts.tubes.extend(tubes)


def _add_fruit(parts: PlantParts, state: PlantState, dress: Dress, fruit: Fruit, fork: Floats) -> None:
    chance = organ_chance(state.crop, "fruit look", fruit.number)
    way = direction(fruit.azimuth_deg, 28)
    length = fruit.across_cm * 1.4
    end = fork + way * (0.9 + 0.5 * length * 0.4) - UP * 0.25
    parts.tubes.append(
        stalk(arc(fork, fork + (way + UP * 0.5) * 0.9, end, 4), (0.13, 0.17), dress.stem, (108, 148, 66))
    )
    hang = unit(-UP + 0.22 * heading(fruit.azimuth_deg) + np.array([chance.uniform(-0.12, 0.12), 0, 0.1]))
    parts.sheets.extend(chilli_fruit(end, hang, fruit, chance))


def _add_cane(parts: PlantParts, state: PlantState, stem: Floats) -> None:
    foot = np.array([1.6, -0.5, -1.4])
    top = foot + np.array([0.5, max(28.0, state.stem_height_cm + 6), -0.4])
    path = np.linspace(foot, top, 14)
    parts.tubes.append(Tube(path, 0.26 + 0.05 * (np.arange(14) % 4 == 0), np.tile([176.0, 150.0, 104.0], (14, 1))))
    for part in (0.55, 0.92):
        place = stem[round(part * (len(stem) - 1))]
        beside = foot + (top - foot) * (place[1] - foot[1]) / (top[1] - foot[1])
        parts.tubes.append(tie(place, beside))
