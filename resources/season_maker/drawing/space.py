"""Points in space, the camera that sees them, and curves through them. Centimetres; y is up, z towards the camera."""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.floating[Any]]
UP = np.array([0.0, 1.0, 0.0])


@dataclass(frozen=True)
class Camera:
    """Where the camera stands and how it sees this day's light."""

    frame_width_cm: float  # seen at the stem
    aim_height_cm: float
    distance_cm: float = 170.0
    height_cm: float = 62.0  # of the lens above the aim
    shift_x_cm: float = 0.0
    shift_y_cm: float = 0.0
    roll_deg: float = 0.0
    exposure: float = 1.0
    warmth: float = 0.0  # above 0 warmer
    tint: float = 0.0  # above 0 pinker
    noise_seed: int = 0
    width_px: int = 900
    height_px: int = 1200

    @property
    def eye(self) -> Floats:
        """Place of the lens."""
        return np.array([self.shift_x_cm, self.aim_height_cm + self.height_cm + self.shift_y_cm, self.distance_cm])


class Projection:
    """Space to picture, at a whole multiple of the picture's size."""

    def __init__(self, camera: Camera, scale: int) -> None:
        self.size = (camera.width_px * scale, camera.height_px * scale)
        self.eye = camera.eye
        aim = np.array([camera.shift_x_cm, camera.aim_height_cm + camera.shift_y_cm, 0.0])
        forward = aim - self.eye
        reach = float(np.linalg.norm(forward))
        self.forward = forward / reach
        right = np.cross(self.forward, UP)
        self.right = right / np.linalg.norm(right)
        self.above = np.cross(self.right, self.forward)
        self._turn(math.radians(camera.roll_deg))
        self.focal_px = self.size[0] * reach / camera.frame_width_cm
        self.reach_cm = reach

    def _turn(self, roll: float) -> None:
        right, above = self.right, self.above
        self.right = math.cos(roll) * right + math.sin(roll) * above
        self.above = math.cos(roll) * above - math.sin(roll) * right

    def depth(self, points: Floats) -> Floats:
        """Distance along the view, for points in the last axis."""
        return np.asarray((points - self.eye) @ self.forward)

    def pixels(self, points: Floats) -> Floats:
        """Picture coordinates (x right, y down)."""
        rel = points - self.eye
        depth = np.maximum(rel @ self.forward, 1.0)
        x = rel @ self.right * self.focal_px / depth + self.size[0] / 2
        y = self.size[1] / 2 - rel @ self.above * self.focal_px / depth
        return np.stack([x, y], axis=-1)

    def px_per_cm(self, depth: Floats) -> Floats:
        """Scale at a depth."""
        return self.focal_px / np.maximum(depth, 1.0)


def heading(azimuth_deg: float) -> Floats:
    """Horizontal unit vector of an azimuth: 0 to the camera, 90 to the right."""
    turn = math.radians(azimuth_deg)
    return np.array([math.sin(turn), 0.0, math.cos(turn)])


def direction(azimuth_deg: float, rise_deg: float) -> Floats:
    """Unit vector with a rise above the horizontal."""
    rise = math.radians(rise_deg)
    return heading(azimuth_deg) * math.cos(rise) + UP * math.sin(rise)


def unit(vector: Floats) -> Floats:
    """The vector at length 1."""
    return np.asarray(vector / max(float(np.linalg.norm(vector)), 1e-9))


def arc(start: Floats, pull: Floats, end: Floats, pieces: int) -> Floats:
    """A curve from start to end, drawn towards pull (quadratic Bezier)."""
    t = np.linspace(0.0, 1.0, pieces + 1)[:, None]
    return np.asarray((1 - t) ** 2 * start + 2 * t * (1 - t) * pull + t**2 * end)
