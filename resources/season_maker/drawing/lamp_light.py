"""Light on surfaces: lamps above and a little in front, leaves shading what stands below them."""

import numpy as np

from .sheets import Sheet
from .space import Floats, Projection, unit

LAMP = unit(np.array([0.12, 0.92, 0.42]))
CELL_CM = 2.0
HALF_CELLS = 40


class CanopyShade:
    """Looks down on the plant: how many leaves lie above a place."""

    def __init__(self) -> None:
        self._cover = np.zeros((2 * HALF_CELLS, 2 * HALF_CELLS))

    def layers_above(self, points: Floats) -> Floats:
        """Soft count of leaf layers added so far over each point."""
        row, col = self._cells(points)
        return np.asarray(self._cover[row, col])

    def add(self, points: Floats) -> None:
        """Lay one more leaf over the map."""
        row, col = self._cells(points.reshape(-1, 3))
        own = np.zeros_like(self._cover)
        own[row, col] = 1.0
        self._cover += _soften(own)

    @staticmethod
    def _cells(points: Floats) -> tuple[np.ndarray, np.ndarray]:
        lean = points[..., 1] * 0.30  # the lamp stands in front: shade falls back
        row = np.clip((points[..., 2] - lean) / CELL_CM + HALF_CELLS, 1, 2 * HALF_CELLS - 2).astype(int)
        col = np.clip(points[..., 0] / CELL_CM + HALF_CELLS, 1, 2 * HALF_CELLS - 2).astype(int)
        return row, col


def _soften(cover: Floats) -> Floats:
    for _ in range(2):
        padded = np.pad(cover, 1)
        cover = (
            padded[:-2, 1:-1] + padded[2:, 1:-1] + padded[1:-1, :-2] + padded[1:-1, 2:] + 2 * padded[1:-1, 1:-1]
        ) / 6
    return cover


def light_sheets(sheets: list[Sheet], projection: Projection) -> CanopyShade:
    """Set `lit` of every sheet, from the highest down, and hand back the shade they make together."""
    shade = CanopyShade()
    for sheet in sorted(sheets, key=lambda one: -float(one.points[..., 1].mean())):
        layers = shade.layers_above(sheet.points)
        sheet.lit = _lit(sheet, layers, projection)
        if sheet.casts_shade:
            shade.add(sheet.points)
    return shade


def shade_factor(layers: Floats) -> Floats:
    """Light left under this many leaves; never dark, walls throw light back."""
    return np.asarray(0.42 + 0.58 * np.exp(-0.42 * layers))


def _lit(sheet: Sheet, layers: Floats, projection: Projection) -> Floats:
    normal = sheet.normals()
    view = projection.eye - sheet.points
    view /= np.linalg.norm(view, axis=-1, keepdims=True)
    facing = np.sum(normal * view, axis=-1)
    lamp = np.sum(normal * LAMP, axis=-1)
    if sheet.closed:
        flip = np.ones_like(facing)
    else:
        flip = np.where(facing >= 0, 1.0, -1.0)
    seen_side = lamp * flip
    direct = np.maximum(seen_side, 0.0)
    through = np.maximum(-seen_side, 0.0) * sheet.translucency
    open_sky = 0.5 + 0.5 * normal[..., 1] * flip
    factor = shade_factor(layers)
    factor = factor + (1 - factor) * sheet.glow
    ambient = 0.30 + 0.20 * open_sky
    bright = ambient + 0.74 * direct * factor
    bright = bright * (1 - 0.5 * sheet.glow) + 0.5 * sheet.glow
    colour = sheet.colour * bright[..., None] * (0.55 + 0.45 * factor[..., None])
    shine_through = sheet.colour * np.array([1.16, 1.10, 0.62]) * (0.85 * through * factor)[..., None]
    half = view + LAMP
    half /= np.linalg.norm(half, axis=-1, keepdims=True)
    gleam = np.maximum(np.sum(normal * half, axis=-1) * flip, 0.0) ** 14 * sheet.gloss * factor
    return np.asarray(colour + shine_through + 255 * gleam[..., None])
