"""The height field of a loaf: its dome, and what cuts, lips, ears and blisters add to it."""

from functools import cached_property

import numpy as np
from scipy import ndimage

from scorecraft.arrays import Field, Flags, Floats
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.eye import Eye
from scorecraft.drawing.bloom.lens import Lens, baked_loaf, lenses
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.drawing.bloom.nearest import Place, nearest
from scorecraft.drawing.bloom.noise import Grain, blurred, spread
from scorecraft.frozen import dataclass, field, replace
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.grown import carried
from scorecraft.opening.lip import lift, rising_side, slant_of
from scorecraft.shaping.shaped import Shaped, shaped

LIGHT_MM = 2.6
"""Cuts that open less are grooves in the crust; the others are mouths."""
LIP_MM = 3.0
FLAP = 2.2
"""How far back an ear bends, of how far it lifts."""
GROOVE_REACH_MM = 2.6
COARSE_MM = 1.5
"""Places on the sheet and broad texture are found so far apart, and between by straight lines."""
FINE_MM = 0.25
BROAD_MM = 1.0
"""Steps of the tiles of texture."""
SOFT_MM = 0.5
NEARBY_MM = 0.8, 2.0
"""What is close by a place, and what is about it."""
EDGE = 3
"""So many pixels beside a loaf show something of it."""
FOOT_MM = 9.0
"""Down to the table the relief dies away from this height."""

Normal = tuple[Field, Field, Field]


@dataclass(frozen=True, eq=False)
class Bread:
    """A loaf in the oven, seen by an eye: how far it is baked (0 to 1), brown and floured.

    Raises ValueError for another number of openings than of cuts.
    """

    layout: Layout
    mouths: Mouths
    eye: Eye = field(default_factory=Eye)
    share: float = 1.0
    brown: float = 0.0
    flour: float = 1.0

    def __post_init__(self) -> None:
        if len(self.mouths) != len(self.layout.cuts):
            cuts = len(self.layout.cuts)
            raise ValueError(f"{cuts} cuts need as many openings, not {len(self.mouths)}")

    @cached_property
    def loaf(self) -> Loaf:
        """The loaf, grown so far."""
        return baked_loaf(self.layout, self.share)

    @cached_property
    def shaped(self) -> Shaped | None:
        """The loaf as hands have shaped it, grown so far; None where they left it alone."""
        made, bake = shaped(self.layout), self.layout.bake
        ways = (1 + self.share * (by - 1) for by in (bake.sideways, bake.upward))
        return made and made.grown(*ways)

    @property
    def body(self) -> Loaf | Shaped:
        """What stands on the table."""
        return self.shaped or self.loaf

    @cached_property
    def opened(self) -> list[Lens]:
        """Its cuts, opened so far; those that hands have opened or laid aside are in its form."""
        found = lenses(self.layout, self.mouths, self.loaf, self.share)
        if self.shaped is None:
            return found
        scored = [each for each in found if not self.layout.cuts[each.cut].severs]
        return [replace(each, middle=self.shaped.place(each.middle)) for each in scored]


@dataclass(frozen=True, eq=False)
class Ground:
    """Pixels of the table at x to the right of the eye and y away from it: what stands there.

    `dome` is the height without its relief, 0 on the table, `relief` what stands out of it, mm;
    `covers` tells which pixels show something of the loaf, and `skin` what lies there.
    """

    x: Floats
    y: Floats
    dome: Field
    relief: Field
    covers: Flags
    skin: "Skin"

    @property
    def step(self) -> float:
        """Distance of two pixels, mm."""
        return float(self.x[1] - self.x[0])


@dataclass(frozen=True, eq=False)
class Skin:
    """What lies on the pixels (N,) that a loaf covers, row by row; mm.

    `dome` is the height without relief, `normal` that of the dome, `tilted` with its relief.
    `fine` and `broad` read textures that lie on the dough sheet. `rises` is how far the lip over a
    place has risen, below 0 over from a lip that has. `ridge` and `hollow` are how far a place
    stands out of what is close by, and lies under what is about it.
    """

    dome: Field
    normal: Normal
    tilted: Normal
    fine: Grain
    broad: Grain
    mouth: Place
    groove: Place
    rises: Field
    ridge: Field
    hollow: Field


def ground(bread: Bread, x: Floats, y: Floats) -> Ground:
    """Raise a loaf over pixels in rows y and columns x, mm, both rising evenly."""
    step = float(x[1] - x[0])
    dome = bread.body.height_at(plan_of(bread.eye, x, y)).astype(np.float32)
    covers = ndimage.maximum_filter(dome, 2 * EDGE + 1) > 0
    stands = dome[covers]
    fewer = (np.arange(each[0], each[-1] + 2 * COARSE_MM, COARSE_MM) for each in (x, y))
    to = (y - y[0]) / COARSE_MM, (x - x[0]) / COARSE_MM
    sheet = _sheet(bread, *fewer)
    broad = Grain(sheet, BROAD_MM, 0.0, lambda values: spread(values, *to)[covers])
    fine = Grain((spread(sheet[0], *to)[covers], spread(sheet[1], *to)[covers]), FINE_MM, step)
    opened = [each.turned(bread.eye.level) for each in bread.opened]
    wide = [each for each in opened if each.widest >= LIGHT_MM]
    narrow = [each for each in opened if each.widest < LIGHT_MM]
    reach = np.array([_reach(bread.layout, each) for each in wide])
    mouth = nearest(wide, x, y, reach, covers)
    groove = nearest(narrow, x, y, np.full(len(narrow), GROOVE_REACH_MM), covers)
    rises = _rises(bread.layout, mouth) * np.float32(bread.share)
    flaps = _flaps(mouth, rises, covers, step)
    raised = _relief(bread, fine, broad, mouth, groove, rises, flaps)
    relief = np.zeros_like(dome)
    relief[covers] = raised * smooth(0.0, FOOT_MM, stands)
    normal = _normal(dome, step, bread.body.height_mm, covers)
    tilted = _tilted(normal, *_slopes(relief, step, covers))
    ridge, hollow = (blurred(relief, size / step)[covers] - relief[covers] for size in NEARBY_MM)
    skin = Skin(stands, normal, tilted, fine, broad, mouth, groove, rises, -ridge, hollow)
    return Ground(x, y, dome, relief, covers, skin)


def _reach(layout: Layout, lens: Lens) -> float:
    """How far from its edge an opened cut shapes the crust, mm."""
    cut = layout.cuts[lens.cut]
    flap = FLAP * float(
        lift(np.array(lens.widest), np.array(cut.depth_mm), np.array(slant_of(cut)))
    )
    return max(LIP_MM * (1 + 0.15 * lens.widest), flap)


def plan_of(eye: Eye, x: Floats, y: Floats) -> Floats:
    """Give the plan (rows, columns, 2) of pixels in rows y and columns x."""
    (right_x, right_y), (away_x, away_y) = eye.level
    return np.stack([x * right_x + y[:, None] * away_x, x * right_y + y[:, None] * away_y], axis=-1)


def _sheet(bread: Bread, x: Floats, y: Floats) -> tuple[Field, Field]:
    """Places of the pixels on the proofed dough sheet, mm."""
    plan = carried(bread.loaf, bread.layout.loaf, plan_of(bread.eye, x, y))
    sheet = bread.layout.loaf.plan_to_sheet(plan).astype(np.float32)
    return sheet[..., 0], sheet[..., 1]


def _normal(dome: Field, step: float, height: float, covers: Flags) -> Normal:
    """Take the normals of the dome by its square, which is smooth up to the rim, as it is not."""
    down, right = _slopes(dome * dome, step, covers)
    twice = 2 * np.maximum(dome[covers], np.float32(0.06 * height))
    right, down = -right / twice, -down / twice
    size = np.sqrt(right * right + down * down + 1)
    return right / size, down / size, 1 / size


def _slopes(height: Field, step: float, covers: Flags) -> tuple[Field, Field]:
    """How steep covered pixels rise away from the eye and to the right."""
    down, right = (np.gradient(height, np.float32(step), axis=axis) for axis in (0, 1))
    return np.asarray(down)[covers], np.asarray(right)[covers]


def _tilted(normal: Normal, down: Field, right: Field) -> Normal:
    """Tilt the normals of the dome by the slopes of its relief along it (Blinn 1978; recalled)."""
    along = normal[0] * right + normal[1] * down + 1
    x, y, z = (each * along for each in normal)
    x, y = x - right, y - down
    size = 1 / np.sqrt(x * x + y * y + z * z)
    return x * size, y * size, z * size


def _rises(layout: Layout, mouth: Place) -> Field:
    """How far the lip rises that a pixel belongs to, mm; below 0 over from it, 0 away from cuts.

    Beyond the tip of a cut it dies away with the angle from it.
    """
    raised = np.zeros_like(mouth.out)
    way = np.array([rising_side(cut, layout.bench.way) for cut in layout.cuts], dtype=np.float32)
    where = np.flatnonzero(mouth.cut >= 0)
    number = mouth.cut[where]
    if not way[number].any():
        return raised
    half, across, out = (each[where] for each in (mouth.half, mouth.across, mouth.out))
    reach = layout.depths_mm[number]
    slant = np.array([slant_of(cut) for cut in layout.cuts])[number]
    aside = np.clip(across * way[number] / np.maximum(np.maximum(out, 0) + half, 0.2), -1, 1)
    raised[where] = lift(2 * np.maximum(half, 0), reach, slant) * aside
    return raised


def smooth(low: float, high: float, value: Field) -> Field:
    """Rise smoothly from 0 at `low` to 1 at `high`."""
    part = np.clip((value - np.float32(low)) * np.float32(1 / (high - low)), 0, 1)
    return np.asarray(part * part * (3 - 2 * part))


def _relief(
    bread: Bread,
    fine: Grain,
    broad: Grain,
    mouth: Place,
    groove: Place,
    rises: Field,
    flaps: Field,
) -> Field:
    """Height above the dome, mm."""
    baked = np.float32(bread.share)
    crust = broad.bumps(1, (14.0, 1.0), (6.0, 0.16), even=True) * np.float32(0.35)
    crust += fine.bumps(2, (0.9, 1.0), (0.4, 0.6)) * np.float32(0.01)
    bare = smooth(0.6, 1.6, np.minimum(groove.out, mouth.out))
    crust = (crust + fine.blisters(3) * bare) * baked
    beyond = np.maximum(mouth.out, 0)
    near = np.maximum(1 - beyond / (LIP_MM * (1 + 0.3 * mouth.half)), 0)
    crust += 0.3 * baked * np.sqrt(np.minimum(mouth.half, 6)) * near * near * near
    crust += flaps + _groove(groove)
    inside = mouth.out < SOFT_MM / 2
    floor = _floor(fine, mouth, rises, inside)
    floor = floor * baked - (1 - baked) * 2 * mouth.half[inside]
    crust[inside] += smooth(-SOFT_MM / 2, SOFT_MM / 2, -mouth.out[inside]) * (floor - crust[inside])
    return crust


def _flaps(mouth: Place, rises: Field, covers: Flags, step: float) -> Field:
    """Height of the ears, bent back from the mouths; where two meet they run into each other."""
    ear = np.maximum(rises, 0)
    flap = np.maximum(1 - np.maximum(mouth.out, 0) / np.maximum(FLAP * ear, 1), 0)
    raised = np.zeros(covers.shape, dtype=np.float32)
    raised[covers] = ear * flap * flap
    return np.asarray(ndimage.gaussian_filter(raised, 0.7 / step)[covers])


def _groove(groove: Place) -> Field:
    """Height in and beside light cuts: the skin draws back and curls up a little."""
    inside = np.clip(-groove.out / np.maximum(groove.half, 0.1), 0, 1)
    curl = np.maximum(1 - np.maximum(groove.out, 0) / 1.6, 0)
    curl *= 0.16 * np.minimum(groove.half, 1) * curl
    return np.asarray(curl - (0.3 + 0.7 * groove.half) * inside * (2 - inside))


def _floor(fine: Grain, mouth: Place, rises: Field, inside: Flags) -> Field:
    """Height (N,) of the torn crumb in the mouths: under the lips, in wide ones bulging.

    Narrow cuts are rounded furrows, and pass into it as they widen. It is full of holes, and
    lies in strands across the cut.
    """
    half = np.maximum(mouth.half[inside], 0.3)
    part = np.clip(-mouth.out[inside] / half, 0, 1)
    along, across = mouth.along[inside], mouth.across[inside]
    wide = wideness(mouth)[inside]
    deep = 0.75 * np.minimum(half, 6) ** 0.7
    furrow = 0.2 + np.minimum(half, 2.5) * part * (2 - part)
    floor = wide * deep * (1 - part * wide) ** 1.5 + (1 - wide) * furrow
    floor *= -(1 + np.clip(0.2 * rises[inside], -0.7, 1))
    torn = 0.8 - np.abs(fine.bumps(4, (5.5, 1.0), (2.4, 0.45))[inside])
    torn += 0.5 * fine.bumps(11, (6.0, 1.0), (1.2, 0.08))[inside]
    strands = Grain((along, np.asarray(across / 4, np.float32)), FINE_MM, fine.apart_mm)
    torn += 0.3 * strands.bumps(16, (2.4, 1.0), (1.1, 0.4))
    x, y = (each[inside] for each in fine.places)
    holes = np.zeros_like(floor)
    for larger in (1, 3):
        places = x / np.float32(larger), y / np.float32(larger)
        holes += larger * Grain(places, FINE_MM, fine.apart_mm).blisters(15)
    bumpy = (0.15 + 0.85 * wide) * np.minimum(1, 2 * part)
    return np.asarray(floor + 0.03 + bumpy * (0.36 * torn - 0.9 * holes))


def wideness(mouth: Place) -> Field:
    """Rise from 0 for narrow mouths, which stay furrows, to 1 for wide ones that bulge."""
    return np.clip((mouth.half - np.float32(1.5)) / 3, 0, 1)
