"""Surfaces as grids of points: leaf blades, petals, fruit. Each knows its own colour; light is put on later."""

from dataclasses import dataclass, field

import numpy as np

from .space import Floats


@dataclass
class Ribbon:
    """A thin band lying on a sheet (a vein): path in grid coordinates, widths in cm, how far it is lightened."""

    u: Floats
    v: Floats
    width_cm: tuple[float, float]
    tone: tuple[float, float, float]
    strength: float


@dataclass
class Patch:
    """A small area on a sheet (mottling, a mildew spot, a brown fleck): outline in grid coordinates."""

    u: Floats
    v: Floats
    tone: tuple[float, float, float]
    strength: float


@dataclass
class Sheet:
    """One surface. points: (rows, columns, 3) in cm; colour: the same shape, 0 to 255, as under white light."""

    points: Floats
    colour: Floats
    translucency: float = 0.0  # light that comes through from behind
    gloss: float = 0.0
    closed: bool = False  # a solid body: only its outside is ever seen
    casts_shade: bool = True
    glow: float = 0.0  # keeps its own colour in shade (petals)
    ribbons: list[Ribbon] = field(default_factory=list)
    patches: list[Patch] = field(default_factory=list)
    lit: Floats | None = None

    def normals(self) -> Floats:
        """Unit normals at the grid points."""
        along_u = np.gradient(self.points, axis=0)
        along_v = np.gradient(self.points, axis=1)
        normal = np.cross(along_u, along_v)
        length = np.linalg.norm(normal, axis=-1, keepdims=True)
        return np.asarray(normal / np.maximum(length, 1e-9))


def sample(grid: Floats, u: Floats, v: Floats) -> Floats:
    """The grid between its points (bilinear); u over rows, v over columns."""
    u = np.clip(u, 0, grid.shape[0] - 1.001)
    v = np.clip(v, 0, grid.shape[1] - 1.001)
    row, col = u.astype(int), v.astype(int)
    fu, fv = (u - row)[:, None], (v - col)[:, None]
    top = grid[row, col] * (1 - fv) + grid[row, col + 1] * fv
    low = grid[row + 1, col] * (1 - fv) + grid[row + 1, col + 1] * fv
    return np.asarray(top * (1 - fu) + low * fu)
