"""Collects lit faces of everything in the picture and paints them from the farthest to the nearest.

Alpha of the painted picture carries nearness (1 far to 255 near) where the plant is, and 0 elsewhere.
"""

import numpy as np
from PIL import Image, ImageDraw

from .sheets import Patch, Ribbon, Sheet, sample
from .space import Floats, Projection

NEAR_CM, FAR_CM = 60.0, 62.0  # the range of depths before and behind the aim that alpha can tell apart


class Painter:
    """Faces with their depths and colours."""

    def __init__(self, projection: Projection) -> None:
        self.projection = projection
        self._corners: list[list[float]] = []
        self._depths: list[Floats] = []
        self._sorting: list[Floats] = []
        self._colours: list[Floats] = []

    def add_faces(self, corners_px: Floats, depth: Floats, colour: Floats, own_middle: float | None = None) -> None:
        """Polygons: corners (n, k, 2), depth (n,), colour (n, 3).

        own_middle: mean depth of the surface they belong to. Faces then sort half by it, so that two leaves that
        cross in space stay one before the other, as real leaves push each other aside.
        """
        if len(depth) == 0:
            return
        self._corners.extend(corners_px.reshape(len(depth), -1).tolist())
        self._depths.append(depth)
        self._sorting.append(depth if own_middle is None else 0.45 * depth + 0.55 * own_middle)
        self._colours.append(colour)

    def add_sheet(self, sheet: Sheet) -> None:
        """All faces of a lit sheet, its ribbons and patches."""
        assert sheet.lit is not None
        pixels = self.projection.pixels(sheet.points)
        depth = self.projection.depth(sheet.points)
        corners = np.stack([pixels[:-1, :-1], pixels[:-1, 1:], pixels[1:, 1:], pixels[1:, :-1]], axis=2)
        face_depth = _four(depth)
        colour = _four(sheet.lit)
        flat_corners, flat_depth = corners.reshape(-1, 4, 2), face_depth.reshape(-1)
        flat_colour = colour.reshape(-1, 3)
        if sheet.closed:
            seen = _clockwise(flat_corners)
            flat_corners, flat_depth, flat_colour = flat_corners[seen], flat_depth[seen], flat_colour[seen]
        middle = None if sheet.closed else float(depth.mean())
        self.add_faces(flat_corners, flat_depth, flat_colour, middle)
        for patch in sheet.patches:
            self._add_patch(sheet, patch, middle)
        for ribbon in sheet.ribbons:
            self._add_ribbon(sheet, ribbon, middle)

    def _add_patch(self, sheet: Sheet, patch: Patch, middle: float | None) -> None:
        assert sheet.lit is not None
        place = sample(sheet.points, patch.u, patch.v)
        lit = sample(sheet.lit, patch.u, patch.v).mean(axis=0)
        colour = _tinted(lit[None, :], patch.tone, patch.strength)
        depth = float(self.projection.depth(place).mean()) - 0.35
        self.add_faces(self.projection.pixels(place)[None], np.array([depth]), colour, middle)

    def _add_ribbon(self, sheet: Sheet, ribbon: Ribbon, middle: float | None) -> None:
        assert sheet.lit is not None
        place = sample(sheet.points, ribbon.u, ribbon.v)
        lit = sample(sheet.lit, ribbon.u, ribbon.v)
        widths = np.linspace(*ribbon.width_cm, len(place))
        self.add_band(place, widths, _tinted(lit, ribbon.tone, ribbon.strength), nearer_cm=0.8, own_middle=middle)

    def add_band(
        self, path: Floats, widths_cm: Floats, colour: Floats, nearer_cm: float = 0.0, own_middle: float | None = None
    ) -> None:
        """A flat band along a path, always turned to the camera; colour per point."""
        left, right, depth = self._edges(path, widths_cm, -0.5, 0.5)
        corners = np.stack([left[:-1], left[1:], right[1:], right[:-1]], axis=1)
        self.add_faces(corners, (depth[:-1] + depth[1:]) / 2 - nearer_cm, (colour[:-1] + colour[1:]) / 2, own_middle)

    def add_tube(self, path: Floats, radii_cm: Floats, colour: Floats, nearer_cm: float = 0.0) -> None:
        """A round stalk along a path: strips across its width, lit from above left to right."""
        rims = np.array([-1.0, -0.72, -0.3, 0.2, 0.65, 1.0])
        tones = np.array([0.62, 0.86, 1.08, 1.0, 0.74])
        for low, high, tone in zip(rims[:-1], rims[1:], tones, strict=True):
            left, right, depth = self._edges(path, radii_cm, low, high)
            corners = np.stack([left[:-1], left[1:], right[1:], right[:-1]], axis=1)
            mid = (colour[:-1] + colour[1:]) / 2 * tone
            self.add_faces(corners, (depth[:-1] + depth[1:]) / 2 - nearer_cm, mid)

    def _edges(self, path: Floats, widths_cm: Floats, low: float, high: float) -> tuple[Floats, Floats, Floats]:
        pixels, depth = self.projection.pixels(path), self.projection.depth(path)
        along = np.gradient(pixels, axis=0)
        along /= np.maximum(np.linalg.norm(along, axis=1, keepdims=True), 1e-6)
        across = np.stack([-along[:, 1], along[:, 0]], axis=1)
        across *= np.where(across[:, :1] < 0, -1.0, 1.0)  # from left to right
        reach = (widths_cm * self.projection.px_per_cm(depth))[:, None]
        return pixels + across * reach * low, pixels + across * reach * high, depth

    def paint(self, picture: Image.Image, farther_than: float, nearer_than: float) -> None:
        """Draw the faces whose depth lies in this range onto an RGBA picture."""
        depth = np.concatenate(self._depths) if self._depths else np.zeros(0)
        colour = np.concatenate(self._colours) if self._colours else np.zeros((0, 3))
        sorting = np.concatenate(self._sorting) if self._sorting else depth
        order = np.argsort(-sorting, kind="stable")
        order = order[(sorting[order] > farther_than) & (sorting[order] <= nearer_than)]
        near = 255 - (depth - self.projection.reach_cm + NEAR_CM) * (254 / (NEAR_CM + FAR_CM))
        inks = np.column_stack([np.clip(colour, 0, 255), np.clip(near, 1, 255)]).round().astype(int).tolist()
        polygon = ImageDraw.Draw(picture).polygon
        for index in order.tolist():
            polygon(self._corners[index], fill=tuple(inks[index]))


def _four(grid: Floats) -> Floats:
    return np.asarray((grid[:-1, :-1] + grid[:-1, 1:] + grid[1:, 1:] + grid[1:, :-1]) / 4)


def _clockwise(corners: Floats) -> np.ndarray:
    x, y = corners[..., 0], corners[..., 1]
    area = np.sum(x * np.roll(y, -1, axis=1) - np.roll(x, -1, axis=1) * y, axis=1)
    return np.asarray(area > 0)


def _tinted(lit: Floats, tone: tuple[float, float, float], strength: float) -> Floats:
    brightness = lit.max(axis=1, keepdims=True) / 150.0
    return np.asarray(lit * (1 - strength) + np.array(tone) * np.minimum(brightness, 1.25) * strength)
