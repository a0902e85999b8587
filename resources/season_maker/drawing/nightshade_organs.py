"""Flowers of chilli and aubergine, and the chilli's fruit."""

import random

import numpy as np

from resources.season_maker.plant_state import Flower, FlowerStage, Fruit

from .parts import Tube, across_axes
from .sheets import Sheet
from .space import Floats

Tone = tuple[float, float, float]


def star_flower(
    base: Floats, axis: Floats, flower: Flower, full_cm: float, petal: Tone, petal_base: Tone, chance: random.Random
) -> tuple[list[Sheet], list[Tube]]:
    """A calyx, a five-pointed star with a cone of anthers, or the bud before it."""
    across = full_cm * (0.25 + 0.75 * flower.size)
    calyx = _calyx(base, axis, across * 0.20)
    if flower.stage is FlowerStage.BUD:
        bud = _bud(base + axis * across * 0.06, axis, across * 0.34 * (0.4 + 0.6 * flower.size), petal, flower.size)
        return [calyx, bud], []
    shrink = 0.55 if flower.stage is FlowerStage.WITHERED else 1.0
    star = _star(base + axis * across * 0.12, axis, across * shrink, flower.stage, petal, petal_base, chance)
    if flower.stage is FlowerStage.WITHERED:
        return [calyx, star], []
    tip = base + axis * across * 0.16
    path = np.array([tip, tip + axis * across * 0.13, tip + axis * across * 0.25])
    yellow = np.tile([242.0, 204.0, 66.0], (3, 1))
    return [calyx, star], [Tube(path, np.array([0.085, 0.08, 0.03]) * across, yellow, nearer_cm=0.6)]


def _ring(axis: Floats, turn: Floats) -> Floats:
    side, other = across_axes(axis)
    return np.asarray(np.cos(turn)[..., None] * side + np.sin(turn)[..., None] * other)


def _star(
    base: Floats, axis: Floats, across: float, stage: FlowerStage, petal: Tone, petal_base: Tone, chance: random.Random
) -> Sheet:
    turn = np.linspace(0, 2 * np.pi, 51)[None, :]
    x = np.linspace(0.03, 1, 7)[:, None]
    point = np.abs(np.cos(2.5 * turn + chance.uniform(0, 1))) ** 1.1
    reach = x * (0.48 + 0.52 * point)
    flat = 0.5 if stage is FlowerStage.OPEN else 0.22
    height = (0.05 - 0.16 * reach**2) if stage is FlowerStage.OPEN else 0.45 * reach
    points = base + across * (flat * reach[..., None] * _ring(axis, turn) + height[..., None] * axis)
    fade = np.clip(reach * 1.25, 0, 1)[..., None]
    colour = np.array(petal_base) * (1 - fade) + np.array(petal) * fade
    if stage is FlowerStage.WITHERED:
        colour = colour * 0.45 + np.array([150.0, 118.0, 70.0]) * 0.55
    return Sheet(points, colour, translucency=0.4, casts_shade=False, glow=0.7)


def _calyx(base: Floats, axis: Floats, across: float) -> Sheet:
    turn = np.linspace(0, 2 * np.pi, 31)[None, :]
    x = np.linspace(0.05, 1, 5)[:, None]
    point = 0.7 + 0.3 * np.abs(np.cos(2.5 * turn))
    points = base + across * (
        (0.62 * np.sqrt(x) * point)[..., None] * _ring(axis, turn) + (0.9 * x * point)[..., None] * axis
    )
    return Sheet(
        points, np.broadcast_to(np.array([104.0, 134.0, 72.0]), points.shape).copy(), casts_shade=False, glow=0.4
    )


def _bud(base: Floats, axis: Floats, length: float, petal: Tone, ripe: float) -> Sheet:
    down = np.linspace(0.08, np.pi - 0.08, 9)[:, None]
    turn = np.linspace(0, 2 * np.pi, 19)[None, :]
    radius = length * 0.36 * np.sin(down) ** 0.8
    points = (
        base + radius[..., None] * _ring(axis, turn) + (length * (1 - np.cos(down)) / 2 + 0 * turn)[..., None] * axis
    )
    part = np.clip((1 - np.cos(down)) / 2 * ripe, 0, 1)[..., None] + 0 * turn[..., None]
    colour = np.array([116.0, 146.0, 78.0]) * (1 - part) + np.array(petal) * part
    return Sheet(points, colour, closed=True, casts_shade=False, glow=0.5, gloss=0.08)


def chilli_fruit(base: Floats, hang: Floats, fruit: Fruit, chance: random.Random) -> list[Sheet]:
    """A tapering pod, a little bent, with its green cap."""
    length, half = fruit.across_cm * 3.7, fruit.across_cm / 2
    s = np.linspace(0.0, 1.0, 19)[:, None]
    turn = np.linspace(0, 2 * np.pi, 29)[None, :]
    profile = np.clip(1.05 * (1 - s**2.1) ** 0.75, 0.02, None) * np.clip(s * 6 + 0.03, 0, 1) ** 0.5
    side, _ = across_axes(hang)
    bend = chance.uniform(-0.16, 0.16)
    middle = base + hang * length * s + side * bend * length * s**2
    dent = 1 + 0.05 * np.sin(3 * turn + 4 * s)
    points = middle[:, None, :] + (half * profile * dent)[..., None] * _ring(hang, turn)
    cap = _calyx(base - hang * half * 0.35, hang, fruit.across_cm * 0.80)
    return [Sheet(points, _pod_colour(fruit, s, turn), gloss=0.5, closed=True, casts_shade=False, glow=0.6), cap]


def _pod_colour(fruit: Fruit, s: Floats, turn: Floats) -> Floats:
    green, turning, red = np.array([86.0, 140.0, 52.0]), np.array([226.0, 142.0, 40.0]), np.array([212.0, 46.0, 34.0])
    ripe = np.clip(fruit.ripeness * 1.5 - 0.5 * (1 - s) + 0.05 * np.sin(3 * turn), 0, 1)
    first, second = np.clip(ripe * 2, 0, 1)[..., None], np.clip(ripe * 2 - 1, 0, 1)[..., None]
    return np.asarray((green * (1 - first) + turning * first) * (1 - second) + red * second)
