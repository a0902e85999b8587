"""A plant state and a camera in, a photo and its plant mask out."""

from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageFilter

from resources.season_maker.plant_state import PlantState, Species

from .lamp_light import CanopyShade, light_sheets, shade_factor
from .nightshades import build_nightshade
from .painter import Painter
from .parts import PlantParts
from .pattypan import build_pattypan
from .room import backdrop, paint_pot
from .space import Camera, Floats, Projection

SCALE = 2


@dataclass(frozen=True)
class Drawn:
    """The finished photo, upright, and where the plant is in it (255 plant, 0 not)."""

    photo: Image.Image
    mask: Image.Image


def draw_photo(state: PlantState, camera: Camera) -> Drawn:
    """Draw one day's photo."""
    projection = Projection(camera, SCALE)
    parts = build_pattypan(state) if state.species is Species.PATTYPAN else build_nightshade(state)
    shade = light_sheets(parts.sheets, projection)
    painter = Painter(projection)
    for sheet in parts.sheets:
        painter.add_sheet(sheet)
    _add_tubes(painter, parts, shade)
    picture = backdrop(projection, state.pot)
    painter.paint(picture, projection.reach_cm + state.pot.rim_cm * 0.5 + 0.5, 1e9)
    paint_pot(picture, projection, state.pot, shade, state.crop)
    painter.paint(picture, -1e9, projection.reach_cm + state.pot.rim_cm * 0.5 + 0.5)
    return _finish(picture, camera)


def _add_tubes(painter: Painter, parts: PlantParts, shade: CanopyShade) -> None:
    for tube in parts.tubes:
        dim = 0.35 + 0.65 * shade_factor(shade.layers_above(tube.path))
        painter.add_tube(tube.path, tube.radii, tube.colour * dim[:, None], tube.nearer_cm)


def _finish(picture: Image.Image, camera: Camera) -> Drawn:
    size = (camera.width_px, camera.height_px)
    near_image = picture.getchannel("A")
    mask = near_image.point([0] + [255] * 255).resize(size, Image.Resampling.BOX)
    colour_image = picture.convert("RGB").resize(size, Image.Resampling.BOX)
    near = near_image.resize(size, Image.Resampling.BOX)
    colour = np.asarray(colour_image, dtype=np.float32)
    colour = _contact_shade(colour, near, mask)
    colour = _as_the_camera_saw(colour, camera)
    photo = Image.fromarray(np.clip(colour + 0.5, 0, 255).astype(np.uint8))
    return Drawn(photo, mask.point([0] * 128 + [255] * 128))


def _contact_shade(colour: Floats, near: Image.Image, mask: Image.Image) -> Floats:
    """What lies behind something near is darker round its outline (an unsharp mask of nearness)."""
    own = np.asarray(near, dtype=np.float32) / 255
    wide = np.asarray(near.filter(ImageFilter.GaussianBlur(16)), dtype=np.float32) / 255
    tight = np.asarray(near.filter(ImageFilter.GaussianBlur(5)), dtype=np.float32) / 255
    plant = np.asarray(mask, dtype=np.float32) / 255
    on_plant = np.clip(wide - own, 0, 1) * 1.5 + np.clip(tight - own, 0, 1) * 1.3
    cover = np.asarray(mask.filter(ImageFilter.GaussianBlur(34)), dtype=np.float32) / 255
    fallen = np.roll(cover, 34, axis=0)
    fallen[:34] = cover[:34]
    behind = 0.36 * fallen
    dark = plant * on_plant + (1 - plant) * behind
    return np.asarray(colour * (1 - np.clip(dark, 0, 0.62))[..., None])


def _as_the_camera_saw(colour: Floats, camera: Camera) -> Floats:
    high, wide = colour.shape[:2]
    x = (np.arange(wide, dtype=np.float32) / wide - 0.5)[None, :]
    y = (np.arange(high, dtype=np.float32) / high - 0.5)[:, None]
    vignette = 1 - 0.42 * (x**2 + y**2) ** 1.2 * 1.6
    gain = np.array(
        [1 + camera.warmth + 0.5 * camera.tint, 1 - 0.4 * camera.tint, 1 - camera.warmth + 0.5 * camera.tint]
    )
    light = colour / 255 * camera.exposure * vignette[..., None] * gain.astype(np.float32)
    toned = light * 1.13
    toned = np.where(toned > 0.72, 0.72 + (1 - np.exp(-(toned - 0.72) / 0.30)) * 0.30, toned)
    toned = toned * (0.90 + 0.16 * np.clip(toned, 0, 1))
    noise = np.random.default_rng(camera.noise_seed).normal(0, 1.0, (high // 2, wide // 2)).astype(np.float32)
    grain = np.asarray(Image.fromarray(noise).resize((wide, high), Image.Resampling.BILINEAR))
    return np.asarray(toned * 255 + 1.5 * grain[..., None])
