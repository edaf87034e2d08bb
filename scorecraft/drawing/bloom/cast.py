"""A photograph of a loaf: its height field is lit, and seen along parallel lines of sight."""

import math
from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from scipy import ndimage

from scorecraft.arrays import Field, Flags, Floats, Pixels
from scorecraft.drawing.bloom.light import Shades, exposed, lit, shades
from scorecraft.drawing.bloom.noise import Grain, blurred
from scorecraft.drawing.bloom.relief import FINE_MM, Bread, Ground, ground, plan_of, smooth
from scorecraft.frozen import dataclass

STRIP_PIXELS = 1_600_000
"""Strips of columns are made one after the other, each of about so many pixels."""
FOOT_MM = 22.0
"""Below this height the loaf stands so steep that a picture from the side draws it out."""
STEEP_LIP, STEEP_SIDE = (1.6, 3.0), (1.8, 5.0)
"""Slopes toward the eye, from where to where they are blurred."""
STEEP_BLUR_MM = 2.2
MOTTLED = np.array([0.17, 0.27, 0.38], dtype=np.float32)
"""How strongly spots of the foot and the walls dim each channel."""
EDGE_MM = 4.0
"""Neighbouring pixels that show places so far apart lie at an edge."""
SOFT = [(down, right, (2 - abs(down)) * (2 - abs(right)) / 16)
        for down in (-1, 0, 1) for right in (-1, 0, 1)]  # fmt: skip
BEHIND_MM = 30.0
"""So far behind the loaf no shadow is to be seen."""
BESIDE_MM = 10.0
"""A strip knows so much of its neighbours."""
SHADOW_STEP_MM = 0.55
SHADOW_PIXELS = 400
"""Along a side, no more than so many are marched through for the large shadow."""
SIDE_MM = 3.0
"""Straight sides are smooth over so much."""
SIDE_SHADE = np.array([0.92, 0.8, 0.66])
"""They are browner than the rim above them: the tin bakes them."""
ROUGH_MM = 2.0
"""Places so far apart tell how far back the loaf stands."""
LEAST_SINE, LEAST_SINE_NEAR = 0.25, 0.07
"""Lower looks see no more of the table, behind and before the loaf, than these sines show."""


@dataclass(frozen=True, slots=True)
class Frame:
    """What a photograph shows: from x to x and from up to up on the paper (mm), and its step."""

    x: tuple[float, float]
    up: tuple[float, float]
    step: float

    @property
    def columns(self) -> Floats:
        """Middles of the columns, mm."""
        return self._middles(*self.x)

    @property
    def ups(self) -> Floats:
        """Middles of the rows from below, mm."""
        return self._middles(*self.up)

    def _middles(self, low: float, high: float) -> Floats:
        return np.asarray(low + (np.arange(round((high - low) / self.step)) + 0.5) * self.step)


def photograph(bread: Bread, frame: Frame, table: bool = True) -> Pixels:
    """Take the picture of a loaf within a frame; without the table it is see-through there."""
    rows = rows_seen(bread, frame)
    strips = list(_strips(frame.columns, rows, frame.step))
    first = ground(bread, strips[0][0], rows) if len(strips) == 1 else _coarse(bread, frame, rows)
    shadows = _shadows(bread, first)
    parts = []
    for columns, inner in strips:
        land = first if len(strips) == 1 else ground(bread, columns, rows)
        parts.append(_shown(bread, land, shadows, frame.ups, inner, table))
    return np.concatenate(parts, axis=1)[::-1]


def rows_seen(bread: Bread, frame: Frame) -> Floats:
    """Rows of the table that may be seen, from the nearest, mm away from the eye."""
    sine = math.sin(bread.eye.elevation)
    if bread.eye.from_above:
        return frame.ups
    low, high = frame.up
    near, far = low / max(sine, LEAST_SINE_NEAR), high / max(sine, LEAST_SINE)
    rows = np.arange(near, far, frame.step)
    every = max(1, round(ROUGH_MM / frame.step))
    stands = bread.body.height_at(plan_of(bread.eye, frame.columns[::every], rows[::every])) > 0
    return np.asarray(rows[rows < rows[::every][stands.any(axis=1)].max() + BEHIND_MM])


def _strips(columns: Floats, rows: Floats, step: float) -> Iterator[tuple[Floats, slice]]:
    """Yield columns in strips with those beside them, and which of them are the strip's own."""
    count = -(-len(columns) * len(rows) // STRIP_PIXELS)
    beside = math.ceil(BESIDE_MM / step)
    edges = np.linspace(0, len(columns), count + 1).astype(int).tolist()
    for first, last in pairwise(edges):
        start = max(first - beside, 0)
        yield columns[start : last + beside], slice(first - start, last - start)


def _coarse(bread: Bread, frame: Frame, rows: Floats) -> Ground:
    most = max(frame.x[1] - frame.x[0], rows[-1] - rows[0])
    step = max(SHADOW_STEP_MM, most / SHADOW_PIXELS)
    return ground(bread, np.arange(*frame.x, step), np.arange(rows[0], rows[-1], step))


def _shadows(bread: Bread, land: Ground) -> Shades:
    """Find the large shadow on every so many-th pixel."""
    every = max(1, round(SHADOW_STEP_MM / land.step), -(-max(land.dome.shape) // SHADOW_PIXELS))
    height = (land.dome + land.relief)[::every, ::every]
    return shades(height, land.x[::every], land.y[::every], bread.eye.light)


def _shown(
    bread: Bread, land: Ground, shadows: Shades, ups: Floats, inner: slice, table: bool
) -> Pixels:
    """Look at a strip, and keep its own columns."""
    light = lit(bread, land, shadows, table)
    if bread.eye.from_above:
        return exposed(light[:, inner])
    light = _plain_sides(bread, _steep_blurred(light, land), land)
    rows = first_met(bread, land, ups)
    loaf = (land.dome > 0)[rows.astype(np.intp), np.arange(rows.shape[1])]
    seen = _looked_at(light, rows) * _walls(bread, land, ups, rows, loaf)
    return exposed(_softened(seen, rows, loaf, land.step)[:, inner])


def _steep_blurred(light: Floats, land: Ground) -> Floats:
    """Blur what stands steep before the eye along itself: few rows are drawn out over it."""
    lip, side = (
        smooth(*least, np.gradient(height, np.float32(land.step), axis=0))
        for least, height in ((STEEP_LIP, land.relief), (STEEP_SIDE, land.dome))
    )
    steep = np.maximum(lip, side) * (land.dome > 0)
    size = STEEP_BLUR_MM / land.step
    whole = np.maximum(blurred(steep, size), 1e-3)
    even = [blurred(each * steep, size) / whole for each in np.moveaxis(light, -1, 0)]
    return np.asarray(light + steep[..., None] * (np.stack(even, axis=-1) - light))


def first_met(bread: Bread, land: Ground, ups: Floats) -> Field:
    """Cast a ray for every pixel of the picture: the row of the land, with its fraction, it meets.

    A column of an orthographic picture is one of the land, and a ray meets the first row that
    stands as high on the paper. From the table the loaf rises straight up; the last row shows
    what lies behind it, where the table goes on as plain.
    """
    height = np.asarray(land.dome + land.relief, dtype=np.float64)
    high = bread.eye.up(land.y[:, None], height)
    crest = np.maximum.accumulate(high, axis=0)
    rows = np.arange(len(land.y))
    met = [np.interp(ups, column, rows) for column in crest.T]
    found = np.array(met, dtype=np.float32).T
    low, column = found.astype(np.intp), np.arange(found.shape[1])
    bare = land.dome <= 0
    rises = bare[low, column] & ~bare[np.minimum(low + 1, len(bare) - 1), column]
    return np.asarray(np.where(rises, low + 1, found), np.float32)


def _walls(bread: Bread, land: Ground, ups: Floats, rows: Field, loaf: Flags) -> Field:
    """Mottle the foot and the walls, by the height where each ray meets them: shares of light."""
    sine, cosine = math.sin(bread.eye.elevation), math.cos(bread.eye.elevation)
    height = (ups[:, None] - (land.y[0] + rows * land.step) * sine) / cosine
    height = np.asarray(height, np.float32)
    across = np.broadcast_to(land.x.astype(np.float32), height.shape)
    grain = Grain((across, height), FINE_MM, land.step)
    spots = 0.6 * grain.bumps(13, (14.0, 1.2), (4.0, 1.0)) + 0.4 * grain.bumps(14, (1.2, 1.0))
    low = loaf * (1 - smooth(FOOT_MM / 3, 1.5 * FOOT_MM, height - np.float32(bread.loaf.wall_mm)))
    return np.asarray(np.exp((low * spots)[..., None] * (np.float32(bread.share) * MOTTLED)))


def _softened(seen: Floats, rows: Field, loaf: Flags, step: float) -> Floats:
    """Soften edges of the loaf, and those behind which it lies far, as a lens and its pixels do."""
    far = np.float32(EDGE_MM / step)
    edge = np.zeros(rows.shape, dtype=bool)
    for ahead, behind in ((np.s_[1:], np.s_[:-1]), (np.s_[:, 1:], np.s_[:, :-1])):
        jump = (np.abs(rows[ahead] - rows[behind]) > far) | (loaf[ahead] != loaf[behind])
        edge[ahead] |= jump
        edge[behind] |= jump
    row, column = np.nonzero(edge)
    soft = np.zeros((len(row), seen.shape[-1]), dtype=np.float32)
    for down, right, weight in SOFT:
        at = np.clip(row + down, 0, len(seen) - 1), np.clip(column + right, 0, seen.shape[1] - 1)
        soft += np.float32(weight) * seen[at]
    seen[row, column] = soft
    return seen


def _plain_sides(bread: Bread, light: Floats, land: Ground) -> Floats:
    """Smooth what is seen of the straight sides of a loaf from a tin: its first row, spread out.

    A side has no cuts and no flour in it; without this each speck at the rim would run down it.
    """
    if bread.loaf.held is None:
        return light
    bare = land.dome <= 0
    front = np.zeros(light.shape[:2], dtype=bool)
    front[1:] = bare[:-1] & ~bare[1:]
    column = np.flatnonzero(front.any(axis=0))
    row = np.argmax(front[:, column], axis=0)
    spread = ndimage.gaussian_filter1d(light[row, column], SIDE_MM / land.step, axis=0)
    sides = light.copy()
    sides[row, column] = SIDE_SHADE * spread
    return sides


def _looked_at(light: Floats, rows: Field) -> Floats:
    low = np.minimum(rows.astype(np.intp), len(light) - 2)
    part = (rows - low).astype(np.float32)[..., None]
    column = np.arange(light.shape[1])
    return np.asarray(light[low, column] * (1 - part) + light[low + 1, column] * part)
