"""The box room round the plant: backdrop under the lamp, table, pot with its medium and label."""

import numpy as np
from PIL import Image, ImageDraw

from resources.season_maker.growth_curves import organ_chance
from resources.season_maker.plant_state import Pot

from .lamp_light import CanopyShade, shade_factor
from .painter import Painter
from .sheets import Patch, Sheet
from .space import Floats, Projection

COIR = np.array([92.0, 68.0, 48.0])
CHARCOAL = np.array([66.0, 69.0, 75.0])
PAPER_LABEL = np.array([226.0, 224.0, 214.0])


def backdrop(projection: Projection, pot: Pot) -> Image.Image:
    """Wall and table, RGBA with alpha 0, at the size of the projection."""
    wide, high = projection.size[0] // 4, projection.size[1] // 4
    x = (np.arange(wide) + 0.5) / wide - 0.5
    y = (np.arange(high) + 0.5) / high
    grid_x, grid_y = np.meshgrid(x, y)
    edge = _table_edge(projection, pot) / projection.size[1]
    centre = float(projection.pixels(np.array([[0.0, 0.0, -40.0]]))[0, 0]) / projection.size[0] - 0.5
    wall = _wall(grid_x - centre, grid_y)
    table = _table(projection, grid_x, grid_y, edge, pot)
    part = np.clip((grid_y - edge) * high / 1.6 + 0.5, 0, 1)[..., None]
    picture = wall * (1 - part) + table * part
    image = Image.fromarray(np.clip(picture, 0, 255).astype(np.uint8))
    image = image.resize(projection.size, Image.Resampling.BICUBIC)
    image.putalpha(0)
    return image


def _table_edge(projection: Projection, pot: Pot) -> float:
    """Where the table meets the wall, in pixels from the top."""
    return float(projection.pixels(np.array([[0.0, -pot.height_cm, -34.0]]))[0, 1])


def _wall(x: Floats, y: Floats) -> Floats:
    pool = np.exp(-((x / 0.42) ** 2) - ((y + 0.04) / 0.36) ** 2)
    wide = np.exp(-((x / 0.95) ** 2) - ((y + 0.10) / 0.85) ** 2)
    light = 0.36 + 0.44 * wide + 0.56 * pool
    tone = np.array([150.0, 143.0, 137.0])
    cloud = 0.012 * np.sin(x * 21 + 3 * y) * np.cos(y * 13 - 4 * x)
    return np.asarray(tone * (light + cloud)[..., None] + np.array([14.0, 12.0, 10.0]) * pool[..., None])


def _table(projection: Projection, x: Floats, y: Floats, edge: float, pot: Pot) -> Floats:
    depth = np.clip((y - edge) / max(1 - edge, 1e-6), 0, 1.5)
    foot = projection.pixels(np.array([[0.0, -pot.height_cm, 0.0], [pot.foot_cm / 2, -pot.height_cm, 0.0]]))
    centre = foot[0] / np.array(projection.size)
    reach = (foot[1, 0] - foot[0, 0]) / projection.size[0]
    grain = 1 + 0.022 * np.sin(y * 190 + 2.2 * np.sin(x * 5)) + 0.026 * np.sin(y * 67 + 3 * np.sin(x * 3 + 1))
    lit = 0.72 + 0.34 * np.exp(-((x / 0.5) ** 2)) - 0.16 * depth
    away = ((x - (centre[0] - 0.5)) / (reach * 1.7)) ** 2 + ((y - centre[1] - 0.012) / (reach * 0.62)) ** 2
    shadow = 1 - 0.68 * np.exp(-(away**1.3))
    return np.asarray(np.array([116.0, 97.0, 80.0]) * (grain * lit * shadow)[..., None])


def paint_pot(picture: Image.Image, projection: Projection, pot: Pot, shade: CanopyShade, crop: str) -> None:
    """Saucer, pot, medium and label, without marking them as plant."""
    for sheet in (
        _saucer_floor(pot),
        _saucer(pot),
        _pot_body(pot),
        _pot_rim(pot),
        _pot_inside(pot),
        _medium(pot, shade, crop),
    ):
        painter = Painter(projection)
        painter.add_sheet(sheet)
        _paint_flat(picture, painter)
    _paint_label(picture, projection, pot)


def _paint_flat(picture: Image.Image, painter: Painter) -> None:
    layer = Image.new("RGBA", picture.size, (0, 0, 0, 0))
    painter.paint(layer, -1e9, 1e9)
    where = layer.getchannel("A").point([0] + [255] * 255)
    layer.putalpha(0)
    picture.paste(layer, (0, 0), where)


def _round(radius_low: float, radius_high: float, low: float, high: float, rows: int = 24) -> Floats:
    """A band of a cone round the pot's axis."""
    turn = np.linspace(-np.pi, np.pi, 181)
    part = np.linspace(0, 1, rows + 1)[:, None]
    radius = radius_high + (radius_low - radius_high) * part
    height = high + (low - high) * part
    x, z = radius * np.sin(turn), radius * np.cos(turn)
    return np.stack([x, height + 0 * turn, z], axis=-1)


def _side_light(points: Floats, base: Floats, rib: float = 0.0) -> Floats:
    """A round dark pot: soft light from the left front, a thin one from the right."""
    turn = np.arctan2(points[..., 0], points[..., 2])
    light = 0.52 + 0.42 * np.exp(-(((turn + 0.55) / 0.55) ** 2)) + 0.13 * np.exp(-(((turn - 1.15) / 0.28) ** 2))
    light = light * (1 + rib * np.cos(turn * 30))
    fall = np.clip((points[..., 1] - points[..., 1].min()) / max(float(np.ptp(points[..., 1])), 1e-6), 0, 1)
    return np.asarray(base * (light * (0.74 + 0.30 * fall))[..., None])


def _own(points: Floats, lit: Floats, closed: bool = True) -> Sheet:
    return Sheet(points, lit, closed=closed, lit=lit)


def _pot_body(pot: Pot) -> Sheet:
    points = _round(pot.foot_cm / 2, pot.rim_cm * 0.482, -pot.height_cm + 0.2, 0.4)
    return _own(points, _side_light(points, CHARCOAL, rib=0.02))


def _pot_rim(pot: Pot) -> Sheet:
    deep = 0.11 * pot.height_cm
    points = _round(pot.rim_cm / 2 - 0.1, pot.rim_cm / 2 + 0.1, 0.048 * pot.rim_cm - deep, 0.048 * pot.rim_cm, rows=3)
    lit = _side_light(points, CHARCOAL * 1.12)
    lit[0] *= 1.7
    lit[-1] *= 0.62
    return _own(points, lit)


def _pot_inside(pot: Pot) -> Sheet:
    points = _round(pot.rim_cm * 0.48, pot.rim_cm / 2, 0.0, 0.048 * pot.rim_cm, rows=2)[:, ::-1]
    return _own(points, _side_light(points, CHARCOAL * 0.55))


def _saucer(pot: Pot) -> Sheet:
    points = _round(
        pot.foot_cm * 0.575, pot.foot_cm * 0.615, -pot.height_cm - 0.3, -pot.height_cm + 0.08 * pot.foot_cm, rows=2
    )
    lit = _side_light(points, CHARCOAL * 0.8)
    lit[0] *= 1.6
    return _own(points, lit)


def _saucer_floor(pot: Pot) -> Sheet:
    points = _round(
        pot.foot_cm / 2 - 0.6,
        pot.foot_cm * 0.612,
        -pot.height_cm + 0.04 * pot.foot_cm,
        -pot.height_cm + 0.075 * pot.foot_cm,
        rows=3,
    )
    return _own(points, np.full(points.shape, 34.0), closed=False)


def _medium(pot: Pot, shade: CanopyShade, crop: str) -> Sheet:
    chance = organ_chance(crop, "medium", pot.volume_l)
    rows, columns = 26, 150
    radius = np.linspace(0.02, pot.rim_cm * 0.488, rows + 1)[:, None]
    turn = np.linspace(0, 2 * np.pi, columns + 1)[None, :]
    bump = np.array(
        [[chance.uniform(-0.005, 0.0065) * pot.rim_cm for _ in range(columns + 1)] for _ in range(rows + 1)]
    )
    points = np.stack([radius * np.sin(turn), bump + 0 * radius, radius * np.cos(turn)], axis=-1)
    speckle = np.array([[chance.uniform(0.72, 1.28) for _ in range(columns + 1)] for _ in range(rows + 1)])
    light = speckle * (0.58 + 0.5 * shade_factor(shade.layers_above(points)))
    rim = np.clip((pot.rim_cm / 2 - radius) / (0.065 * pot.rim_cm), 0.45, 1.0)
    sheet = _own(points, COIR * (light * rim)[..., None], closed=False)
    for _ in range(34):
        u, v = chance.uniform(2, rows - 1), chance.uniform(1, columns - 1)
        wide = chance.uniform(0.12, 0.3)
        around = np.linspace(0, 2 * np.pi, 6)[:-1]
        sheet.patches.append(
            Patch(u + wide * 1.8 * np.cos(around), v + wide * 4.2 * np.sin(around), (196, 186, 168), 0.55)
        )
    return sheet


def _paint_label(picture: Image.Image, projection: Projection, pot: Pot) -> None:
    """A white plastic label stuck into the medium at the right, with pencil strokes that nobody can read."""
    right, wide, high = pot.rim_cm * 0.30, pot.rim_cm * 0.075, pot.rim_cm * 0.30
    near = pot.rim_cm * 0.24
    corners = np.array(
        [
            [right, 0, near],
            [right - wide * 0.3, high, near - 1],
            [right + wide * 0.75, high + 0.2, near - 1],
            [right + wide * 0.9, 0, near],
        ]
    )
    draw = ImageDraw.Draw(picture)
    pixels = projection.pixels(corners)
    draw.polygon([tuple(p) for p in pixels.tolist()], fill=(*PAPER_LABEL.astype(int).tolist(), 0))
    for line in (0.42, 0.58, 0.72):
        left = pixels[0] + (pixels[1] - pixels[0]) * line
        end = pixels[3] + (pixels[2] - pixels[3]) * (line + 0.02)
        start, stop = left + (end - left) * 0.22, left + (end - left) * (0.78 if line != 0.58 else 0.6)
        draw.line(
            [tuple(start.tolist()), tuple(stop.tolist())],
            fill=(120, 122, 128, 0),
            width=max(2, projection.size[0] // 600),
        )
