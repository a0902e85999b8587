"""Flowers and fruit of the pattypan as sheets and stalks."""

import random

import numpy as np

from resources.season_maker.plant_state import Flower, FlowerForm, FlowerStage, Fruit

from .parts import across_axes
from .sheets import Ribbon, Sheet
from .space import Floats


def squash_corolla(base: Floats, axis: Floats, flower: Flower, chance: random.Random) -> Sheet:
    """The five-tipped trumpet, or the spindle it is before and after."""
    columns, rows = 50, 15
    turn = np.linspace(0, 2 * np.pi, columns + 1)
    x = np.linspace(0.04, 1.0, rows + 1)
    petal = np.abs(np.cos(2.5 * turn + chance.uniform(0, 1))) ** 0.8
    reach = x[:, None] * (0.60 + 0.40 * petal[None, :])
    size, radius, height, colour = _corolla_form(flower, reach, turn, chance)
    side, other = across_axes(axis)
    ring = np.cos(turn)[None, :, None] * side + np.sin(turn)[None, :, None] * other
    points = base + size * (radius[..., None] * ring + height[..., None] * axis)
    sheet = Sheet(points, colour, translucency=0.5, gloss=0.05, casts_shade=False, glow=0.75)
    if flower.stage is FlowerStage.OPEN:
        for number in range(5):
            middle = ((number * 2 * np.pi - chance.uniform(0, 0.1)) / 5) % (2 * np.pi)
            place = np.full(6, middle / (2 * np.pi) * columns)
            sheet.ribbons.append(Ribbon(np.linspace(1, rows - 1, 6), place, (0.22, 0.08), (226, 120, 24), 0.35))
    return sheet


def _corolla_form(
    flower: Flower, reach: Floats, turn: Floats, chance: random.Random
) -> tuple[float, Floats, Floats, Floats]:
    full = 7.4 if flower.form is FlowerForm.MALE else 8.2
    if flower.stage is FlowerStage.OPEN:
        radius = 0.09 + 0.66 * reach**1.75 + 0.02 * np.sin(5 * turn + 1)[None, :] * reach
        height = 0.62 * np.sin(np.minimum(reach * 1.9, np.pi * 0.6)) - 0.10 * reach**3
        colour = _blend((246, 138, 18), (255, 190, 44), reach)
        return full, radius, height, colour
    twist = 0.10 * np.sin(5 * turn[None, :] + 5 * reach)
    spindle = 0.13 * np.sin(np.pi * np.clip(reach * 0.92 + 0.06, 0, 1)) ** 0.7 * (1 + twist) + 0.006
    height = reach * 0.86
    if flower.stage is FlowerStage.BUD:
        ripe = max(0.0, flower.size - 0.55) / 0.45
        low, high = (118, 150, 62), (150 + 96 * ripe, 168 + 8 * ripe, 66 - 14 * ripe)
        return full * (0.18 + 0.72 * flower.size**2), spindle, height, _blend(low, high, reach)
    if flower.stage is FlowerStage.CLOSED:
        return full * 0.86, spindle * 1.15, height, _blend((226, 150, 48), (248, 178, 58), reach)
    shrink = 0.62 + 0.05 * chance.random()
    return full * shrink, spindle * 1.1, height, _blend((200, 148, 78), (186, 134, 74), reach)


def _blend(low: tuple[float, float, float], high: tuple[float, float, float], part: Floats) -> Floats:
    part = np.clip(part, 0, 1)[..., None]
    return np.asarray(np.array(low) * (1 - part) + np.array(high) * part)


def scalloped_fruit(middle: Floats, axis: Floats, fruit: Fruit, chance: random.Random) -> Sheet:
    """A pattypan: a thick disc with a scalloped rim; axis points from the stalk to the blossom end."""
    lobes = 10 if fruit.number % 3 else 9
    rows, columns = 16, lobes * 7
    down = np.linspace(0.05, np.pi - 0.03, rows + 1)[:, None]
    turn = np.linspace(0, 2 * np.pi, columns + 1)[None, :]
    rim = np.sin(down) ** 4
    scallop = np.abs(np.cos(lobes * turn / 2)) ** 0.8
    half = fruit.across_cm / 2 * (1 - 0.25 * fruit.failing)
    radius = half * np.sin(down) ** 0.72 * (0.92 + 0.10 * scallop * (0.35 + 0.65 * rim))
    dome = np.where(np.cos(down) > 0, 0.60, 0.44)
    height = -half * dome * np.cos(down) * (1 - 0.06 * (1 - scallop)) + 0 * turn
    height = height - half * 0.10 * np.exp(-(((np.pi - down) / 0.30) ** 2))
    side, other = across_axes(axis)
    ring = np.cos(turn)[..., None] * side + np.sin(turn)[..., None] * other
    points = middle + radius[..., None] * ring + height[..., None] * axis
    return Sheet(
        points, _fruit_colour(fruit, down, scallop, rim, chance), gloss=0.22, closed=True, glow=0.6, casts_shade=False
    )


def _fruit_colour(fruit: Fruit, down: Floats, scallop: Floats, rim: Floats, chance: random.Random) -> Floats:
    shade = chance.uniform(-6, 6)
    ripe = np.array([244, 196 + shade, 58])
    unripe = np.array([196, 206, 96])
    body = unripe * (1 - fruit.ripeness) + ripe * fruit.ripeness
    groove = (1 - scallop) * (0.25 + 0.75 * rim)
    colour = body * (1 - 0.20 * groove[..., None])
    near_stalk = np.exp(-((down / 0.42) ** 2))[..., None]
    scar = np.exp(-(((np.pi - down) / 0.17) ** 2))[..., None]
    colour = colour * (1 - 0.6 * near_stalk) + np.array([112, 146, 56]) * 0.6 * near_stalk
    colour = colour * (1 - 0.7 * scar) + np.array([150, 126, 62]) * 0.7 * scar
    sick = np.array([158, 134, 74])
    return np.asarray(colour * (1 - fruit.failing * 0.8) + sick * fruit.failing * 0.8)
