"""What a plant is made of before light falls on it: sheets and tubes."""

from dataclasses import dataclass

import numpy as np

from .sheets import Sheet
from .space import UP, Floats, unit

LAMP_SIDE = unit(np.array([0.0, 0.62, 0.78]))  # where leaves turn to: up and to the open front


@dataclass
class Tube:
    """A stalk or stem: path in cm, radii in cm, colour at each point."""

    path: Floats
    radii: Floats
    colour: Floats
    nearer_cm: float = 0.0


class PlantParts:
    """Sheets and tubes of one plant."""

    def __init__(self) -> None:
        self.sheets: list[Sheet] = []
        self.tubes: list[Tube] = []


def stalk(
    path: Floats, thick_cm: tuple[float, float], low: tuple[float, float, float], top: tuple[float, float, float]
) -> Tube:
    """A stalk that changes thickness (radius) and colour evenly along its path."""
    part = np.linspace(0, 1, len(path))
    radii = thick_cm[0] + (thick_cm[1] - thick_cm[0]) * part
    colour = np.array(low) * (1 - part[:, None]) + np.array(top) * part[:, None]
    return Tube(path, radii, colour)


def tie(stem: Floats, cane: Floats) -> Tube:
    """A loop of soft string round stem and cane."""
    turn = np.linspace(0, 2 * np.pi, 13)[:, None]
    reach = (cane - stem) / 2
    across = unit(np.cross(reach, UP)) * 0.9
    path = (stem + cane) / 2 + 1.45 * np.cos(turn) * reach + np.sin(turn) * across + UP * 0.2 * np.sin(2 * turn)
    return Tube(path, np.full(13, 0.11), np.tile([92.0, 116.0, 96.0], (13, 1)))


def across_axes(axis: Floats) -> tuple[Floats, Floats]:
    """Two unit vectors square to an axis."""
    side = np.cross(axis, UP)
    if np.linalg.norm(side) < 0.2:
        side = np.cross(axis, np.array([0.0, 0.0, 1.0]))
    side = unit(side)
    return side, unit(np.cross(side, axis))
