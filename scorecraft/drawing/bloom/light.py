"""Light on a loaf: key from the upper left, its soft shadow, the sky, and hollows it misses."""

import math
from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from scorecraft.arrays import Field, Floats, Pixels
from scorecraft.drawing.bloom.crust import TABLE, colored, linear
from scorecraft.drawing.bloom.noise import Grain, blurred, spread
from scorecraft.drawing.bloom.relief import BROAD_MM, Bread, Ground, rough, smooth, wideness

PENUMBRA_DEG = np.linspace(-17.0, 17.0, 21)
NEAR_MM = (0.5, 1.0, 1.6, 2.4, 3.4)
SHADOW = 0.7
"""Without a table the shadow is so much of a full one."""
FADES_MM = 18.0
"""Shadows fade away so far beside the loaf, before the picture ends."""
FOOT_SHADE_MM = 22.0
"""Up to this height the foot of a loaf, which curves in under it, is in its own shade."""
HOLLOWS = ((1.0, 0.35, 0.4), (3.0, 0.22, 0.4), (14.0, 0.035, 0.55))
"""Sizes of hollows that see less of the sky (mm), how much less a mm, and the most."""
LEAST_SKY = 0.45
"""Light goes back and forth in hollows: so much of the sky's reaches every place."""
KEY = (2.15, 2.02, 1.80)
SKY = (0.76, 0.68, 0.58)
BOUNCE = (0.16, 0.12, 0.08)
GLEAM = (2.2, 1.7, 1.1)


_STEPS = np.linspace(0, 1, 4096)
GAMMA = np.rint(
    255 * np.where(_STEPS <= 0.0031308, 12.92 * _STEPS, 1.055 * _STEPS ** (1 / 2.4) - 0.055)
).astype(np.uint8)
"""Bytes of sRGB for shares of light in equal steps (IEC 61966-2-1, recalled)."""


@dataclass(frozen=True, slots=True, eq=False)
class Shades:
    """Parts of the key light (`key`) and of the sky (`sky`) that reach every place of a table."""

    x: Floats
    y: Floats
    key: Field
    sky: Field

    def at(self, values: Field, x: Floats, y: Floats) -> Field:
        """Read values at pixels in rows y and columns x, mm."""
        step = self.x[1] - self.x[0]
        return spread(values, (y - self.y[0]) / step, (x - self.x[0]) / step)


def shades(height: Field, x: Floats, y: Floats, light: tuple[float, float, float]) -> Shades:
    """Find the shadows and the hollows of heights (mm) over rows y and columns x."""
    step = float(x[1] - x[0])
    sky = np.ones_like(height)
    for size, weight, most in HOLLOWS:
        over = blurred(height, size / step) - height
        sky *= 1 - np.clip(weight * over, 0, most)
    beside = ndimage.distance_transform_edt(height <= 0).astype(np.float32)
    fades = np.maximum(1 - (beside * np.float32(step / FADES_MM)) ** 2, 0)
    return Shades(x, y, *(1 - fades * (1 - each) for each in (_lit(height, step, light), sky)))


def _lit(height: Field, step: float, light: tuple[float, float, float]) -> Field:
    """Part of a wide light that every place sees: the horizon toward it, marched along rows."""
    cos, sin = (each / math.hypot(light[0], light[1]) for each in light[:2])
    side = int(math.hypot(*height.shape)) + 2
    turn = np.array([[-sin, cos], [-cos, -sin]])
    middle = (np.array(height.shape) - 1) / 2
    centre = np.array([(side - 1) / 2] * 2)
    flat = ndimage.affine_transform(
        height, turn, middle - (turn * centre).sum(axis=1), (side, side), order=1, cval=0.0
    )
    down = np.arange(side, dtype=np.float32)[:, None] * np.float32(step)
    elevation = math.degrees(math.asin(light[2]))
    seen = np.zeros_like(flat)
    for more in PENUMBRA_DEG:
        slope = np.float32(math.tan(math.radians(elevation + more)))
        ray = flat + down * slope
        seen += np.maximum.accumulate(ray, axis=0) < ray + np.float32(0.35)
    seen = ndimage.gaussian_filter(seen / np.float32(len(PENUMBRA_DEG)), 0.7)
    back = turn.T
    return np.asarray(
        ndimage.affine_transform(
            seen, back, centre - (back * middle).sum(axis=1), height.shape, order=1, cval=1.0
        )
    )


def lit(bread: Bread, land: Ground, shadows: Shades, table: bool = True) -> Floats:
    """Light what stands on the table: linear light of every pixel, (rows, columns, 3).

    Without the table there is a fourth channel, how much of what lies below is hidden.
    """
    key, sky = (shadows.at(each, land.x, land.y) for each in (shadows.key, shadows.sky))
    loaf = _bread(bread, land, key * _close_by(land, bread.eye.light), sky)
    inside = (land.dome > 0).astype(np.float32)
    if bread.eye.from_above:
        inside = ndimage.gaussian_filter(inside, 0.6)
    level = [k * bread.eye.light[2] * key + s * sky for k, s in zip(KEY, SKY, strict=True)]
    if not table:
        dark = 1 - level[1] / (KEY[1] * bread.eye.light[2] + SKY[1])
        shown = inside + (1 - inside) * np.clip(SHADOW * dark, 0, 1)
        loaf = [inside * each / np.maximum(shown, 1e-3) for each in loaf]
        return np.stack([*loaf, shown], axis=-1)
    board = _board(land.x, land.y)
    parts = []
    for each, light, color in zip(loaf, level, linear(TABLE), strict=True):
        under = color * board * light
        parts.append(under + inside * (each - under))
    return np.stack(parts, axis=-1)


def bare_table(x: Floats, y: Floats, light: tuple[float, float, float]) -> Floats:
    """Light the table where no shadow falls: (rows, columns, 3)."""
    full = np.array(KEY) * light[2] + SKY
    return np.asarray(_board(x, y)[..., None] * (full * linear(TABLE)).astype(np.float32))


def _bread(bread: Bread, land: Ground, key: Field, sky: Field) -> list[Field]:
    """Light the bread under the parts of the key light and the sky that reach it."""
    albedo, bare = colored(bread, land)
    normal = _bumpy(land)
    facing = np.maximum(_along(normal, bread.eye.light), 0)
    crumb = smooth(0.05, 0.5, -land.mouth.out)
    crumb = np.asarray(crumb * (0.15 + 0.85 * wideness(land.mouth)))
    facing += crumb * 0.25 * (0.7 - facing)  # crumb lets light through
    key, sky = (each + crumb * 0.2 * (1 - each) for each in (key, sky))
    furrow = _furrowed(land) * (0.45 + 0.55 * smooth(0.0, FOOT_SHADE_MM, land.dome))
    key, sky = key * furrow, np.maximum(sky * furrow, LEAST_SKY)
    gleam = np.clip(_along(normal, _halfway(bread)), 0, 1) ** 22
    gleam *= bare * (1 - crumb) * key * np.float32(0.07)
    up = 0.55 + 0.45 * normal[2]
    warm = 1 - normal[2] + 3 * (1 - furrow) * (land.dome > FOOT_SHADE_MM)
    return [
        color * (k * key * facing + sky * (s * up + b * warm)) + gleam * g
        for color, k, s, b, g in zip(albedo, KEY, SKY, BOUNCE, GLEAM, strict=True)
    ]


def _along(normal: tuple[Field, Field, Field], way: tuple[float, float, float]) -> Field:
    x, y, z = (part * np.float32(far) for part, far in zip(normal, way, strict=True))
    return np.asarray(x + y + z)


def _close_by(land: Ground, light: tuple[float, float, float]) -> Field:
    """Part of the light that passes lips and ridges close by, too fine for the large shadow."""
    height = land.dome + land.relief
    level = math.hypot(light[0], light[1])
    dark = np.zeros_like(height)
    for far in NEAR_MM:
        steps = far / land.step
        shift = round(-steps * light[1] / level), round(-steps * light[0] / level)
        over = np.roll(height, shift, (0, 1)) - height - np.float32(far * light[2] / level)
        dark = np.maximum(dark, over / np.float32(0.25 + 0.15 * far))
    return np.asarray(1 - np.clip(dark, 0, 1))


def _furrowed(land: Ground) -> Field:
    """Part of the light that furrows see: the less, the deeper and narrower, least under ears."""
    deep = (1 - wideness(land.mouth)) * np.clip(-land.mouth.out, 0, 1.2) / 1.2
    deep += (
        np.clip(0.3 * land.rises, 0, 1)
        * np.exp(np.minimum(land.mouth.out, 0) / 1.3)
        * (land.mouth.out < 0)
    )
    furrow = np.clip(-land.groove.out / np.maximum(land.groove.half, 0.2), 0, 1)
    deep += furrow * (land.mouth.out > 0)
    return np.asarray(1 - 0.55 * np.minimum(deep, 1))


def _board(x: Floats, y: Floats) -> Field:
    """Make a pale board: a little uneven."""
    *fewer, to = rough(x, y)
    across, up = np.meshgrid(*(each.astype(np.float32) for each in fewer))
    return 1 + np.float32(0.018) * Grain((across, up), BROAD_MM, 0.0, to).bumps(12, (30.0, 1.0))


def _bumpy(land: Ground) -> tuple[Field, Field, Field]:
    """Tilt the normals of the dome by the slopes of its relief along it (Blinn 1978; recalled)."""
    down, right = np.gradient(land.relief, np.float32(land.step))
    along = land.normal[0] * right + land.normal[1] * down + 1
    x, y, z = (each * along for each in land.normal)
    x, y = x - right, y - down
    size = 1 / np.sqrt(x * x + y * y + z * z)
    return np.multiply(x, size), np.multiply(y, size), np.multiply(z, size)


def _halfway(bread: Bread) -> tuple[float, float, float]:
    """Half way between the light and the eye."""
    eye = 0.0, -math.cos(bread.eye.elevation), math.sin(bread.eye.elevation)
    x, y, z = (a + b for a, b in zip(bread.eye.light, eye, strict=True))
    size = math.hypot(x, y, z)
    return x / size, y / size, z / size


def exposed(light: Floats) -> Pixels:
    """Give linear light as a photograph does: bright parts roll off, and it is written as sRGB.

    A fourth channel stays as it is.
    """
    color = light[..., :3] * np.float32(0.52)
    color = np.clip(1.25 * color * (1 + color / 4) / (1 + color), 0, 1)  # Reinhard, white at 2
    at = (color * np.float32(len(GAMMA) - 1) + np.float32(0.5)).astype(np.uint16)
    hidden = np.rint(255 * light[..., 3:]).astype(np.uint8)
    return np.concatenate([GAMMA[at], hidden], axis=-1)
