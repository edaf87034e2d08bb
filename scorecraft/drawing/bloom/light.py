"""Light on a loaf: key from the upper left, its soft shadow, the sky, and hollows it misses."""

import math

import numpy as np
from scipy import ndimage

from scorecraft.arrays import Field, Floats, Pixels
from scorecraft.drawing.bloom.crust import TABLE, colored, linear
from scorecraft.drawing.bloom.noise import blurred, spread
from scorecraft.drawing.bloom.relief import Bread, Ground, Skin, smooth, wideness
from scorecraft.frozen import dataclass

PENUMBRA_DEG = np.linspace(-17.0, 17.0, 7)
CLEAR_MM = 0.35
"""Lower things throw no large shadow."""
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


BRIGHTEST = 4.0
_FALL = 0.52 * np.linspace(0, BRIGHTEST, 32768)
_SHARE = np.minimum(1.25 * _FALL * (1 + _FALL / 4) / (1 + _FALL), 1)  # Reinhard, white at 2
FILM = np.rint(
    255 * np.where(_SHARE <= 0.0031308, 12.92 * _SHARE, 1.055 * _SHARE ** (1 / 2.4) - 0.055)
).astype(np.uint8)
"""Bytes of sRGB for light in equal steps (IEC 61966-2-1, recalled); bright parts roll off."""


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
    seen, least = np.zeros_like(flat), np.zeros_like(flat)
    for number, more in enumerate(PENUMBRA_DEG):
        ray = flat + down * np.float32(math.tan(math.radians(elevation + more)))
        free = ray + np.float32(CLEAR_MM) - np.maximum.accumulate(ray, axis=0)
        if number:  # the way from one angle to the next is seen from where the horizon crosses it
            seen += np.clip(free / np.maximum(free - least, np.float32(1e-6)), 0, 1)
        least = free
    seen = ndimage.gaussian_filter(seen / np.float32(len(PENUMBRA_DEG) - 1), 0.7)
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
    covers = land.covers
    close = key[covers] * _close_by(land, bread.eye.light)
    loaf = _bread(bread, land.skin, close, sky[covers])
    inside = (land.dome > 0).astype(np.float32)
    if bread.eye.from_above:
        inside = ndimage.gaussian_filter(inside, 0.6)
    part = inside[covers]
    light = np.zeros((*covers.shape, 3 if table else 4), dtype=np.float32)
    if not table:
        bright = KEY[1] * bread.eye.light[2]
        dark = 1 - (bright * key + SKY[1] * sky) / (bright + SKY[1])
        light[..., 3] = inside + (1 - inside) * np.clip(SHADOW * dark, 0, 1)
        part = part / np.maximum(light[covers, 3], 1e-3)
        light[covers] = np.stack([*(part * each for each in loaf), light[covers, 3]], axis=-1)
        return light
    for channel, (each, color) in enumerate(zip(loaf, linear(TABLE), strict=True)):
        under = KEY[channel] * bread.eye.light[2] * key + SKY[channel] * sky
        under *= color
        under[covers] += part * (each - under[covers])
        light[..., channel] = under
    return light


def _bread(bread: Bread, skin: Skin, key: Field, sky: Field) -> list[Field]:
    """Light the bread under the parts of the key light and the sky that reach it."""
    x, y, z = skin.tilted
    right, up, near = (np.float32(each) for each in bread.eye.light)
    facing = np.maximum(x * right + y * up + z * near, 0)
    crumb = smooth(0.05, 0.5, -skin.mouth.out)
    crumb = np.asarray(crumb * (0.15 + 0.85 * wideness(skin.mouth)))
    facing += crumb * 0.25 * (0.7 - facing)  # crumb lets light through
    key, sky = (each + crumb * 0.2 * (1 - each) for each in (key, sky))
    furrow = _furrowed(skin) * (0.45 + 0.55 * smooth(0.0, FOOT_SHADE_MM, skin.dome))
    key, sky = key * furrow, np.maximum(sky * furrow, LEAST_SKY)
    level = 0.55 + 0.45 * z
    warm = 1 - z + 3 * (1 - furrow) * (skin.dome > FOOT_SHADE_MM)
    return [
        color * (k * key * facing + sky * (s * level + b * warm))
        for color, k, s, b in zip(colored(bread, skin), KEY, SKY, BOUNCE, strict=True)
    ]


def _close_by(land: Ground, light: tuple[float, float, float]) -> Field:
    """Part of the light that passes lips and ridges close by, too fine for the large shadow."""
    height = land.dome + land.relief
    where = np.flatnonzero(land.covers)
    here = height[land.covers]
    level = math.hypot(light[0], light[1])
    dark = np.zeros_like(here)
    for far in NEAR_MM:
        steps = far / land.step
        down, right = (round(steps * light[way] / level) for way in (1, 0))
        there = where + (down * len(land.x) + right)
        over = height.take(there, mode="wrap") - here - np.float32(far * light[2] / level)
        dark = np.maximum(dark, over / np.float32(0.25 + 0.15 * far))
    return np.asarray(1 - np.clip(dark, 0, 1))


def _furrowed(skin: Skin) -> Field:
    """Part of the light that furrows see: the less, the deeper and narrower, least under ears."""
    deep = (1 - wideness(skin.mouth)) * np.clip(-skin.mouth.out, 0, 1.2) / 1.2
    deep += (
        np.clip(0.3 * skin.rises, 0, 1)
        * np.exp(np.minimum(skin.mouth.out, 0) / 1.3)
        * (skin.mouth.out < 0)
    )
    furrow = np.clip(-skin.groove.out / np.maximum(skin.groove.half, 0.2), 0, 1)
    deep += furrow * (skin.mouth.out > 0)
    return np.asarray(1 - 0.55 * np.minimum(deep, 1))


def exposed(light: Floats) -> Pixels:
    """Write linear light as a photograph does, as sRGB.

    A fourth channel stays as it is.
    """
    at = light[..., :3] * np.float32((len(FILM) - 1) / BRIGHTEST)
    photo = np.empty(light.shape, dtype=np.uint8)
    photo[..., :3] = FILM[np.clip(at, 0, len(FILM) - 1, out=at).astype(np.uint16)]
    photo[..., 3:] = np.rint(255 * light[..., 3:])
    return photo
