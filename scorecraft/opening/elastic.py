"""What it takes to open panels against one another, without writing the matrix down.

Ends that are near act pair by pair (`near`), all of them through a grid (`far`). So M panels take
time and memory of about M log M, where their matrix would take M^2 and its factors M^3.

How good it is: what the grid's interpolation misses is a few 1e-4 of a near pair's force, of either
sign. For the grid all ends have the mean core: what that misses, the difference of cores over the
distance squared, cancels but where panels of unlike lengths meet. Together they move an opening by
about 1e-4 of the widest at most, on every pattern of the shelf (4 mm panels, against the whole
matrix). Where a core is so unlike the mean that a stump beyond a crossing would be off by more, up
to 8e-4, the grid carries that difference too, to the first order; a third more time, so only there.
"""

from functools import cached_property

import numpy as np

from scorecraft.arrays import Complexes, Floats, Ints
from scorecraft.frozen import dataclass
from scorecraft.opening.bulge import FLAT, Bed
from scorecraft.opening.far import REACH, Far, Smooth, far
from scorecraft.opening.kernel import (
    STRENGTH,
    UNSTRETCHED,
    Ends,
    along,
    between,
    ends_of,
    stiffness,
)
from scorecraft.opening.near import BLOCK, Near, count, pairs
from scorecraft.opening.panels import Panels
from scorecraft.opening.stretch import Stretch

POINTS = 3.0
"""About so many points of the grid an end: then grid and pairs take about as long."""
UNLIKE = 3e-4
"""Where a core differs from the mean by more, over the reach squared, the grid tells them apart: no
pattern of the shelf comes to it, bars that cross every few panels do."""
FEW = 300
"""So few ends are all near to one another."""
WINDOW = (16, 12)
"""So many panels that follow one another are a window, and so many later the next one starts."""
LEAST_LENGTHS = 5.0
"""Ends within so many mean panels are pairs, since cores count there, unless they are too many."""
MOST_STEPS = 2.0
"""For that the grid's step is made so many times what would be quickest, at most."""


@dataclass(frozen=True, eq=False)
class Elastic:
    """The sheet's stiffness against jumps of M panels; symmetric and positive.

    `windows` (W, m) are panels that follow one another, each with its part of the matrix in
    `blocks` (W, 2m, 2m); they overlap.
    """

    panels: Panels
    stretch: Stretch
    bed: Bed
    first: Ints
    along: Complexes
    near: Near
    far: Far | None
    windows: Ints
    blocks: Floats

    @cached_property
    def whole(self) -> Floats:
        """The matrix itself (2M, 2M), written down once when it is asked for."""
        every = np.arange(len(self.panels))
        ends = ends_of(self.panels)
        whole: Floats = stiffness(self.panels, ends, every, every, self.stretch, self.bed)
        whole.setflags(write=False)
        return whole

    def times(self, jumps: Floats) -> Floats:
        """Give the forces (2M,) that jumps (2M,), gaps then slides in mm, take."""
        gap, slide = np.split(jumps, 2)
        moved = (slide + 1j * gap) * self.along
        acting = np.zeros(self.first[-1] + 2, dtype=np.complex128)
        acting[self.first + 1] = moved
        acting[self.first] -= moved
        force = self.near.times(acting)
        if self.far is not None:
            force += self.far.times(acting)
        own = (force[self.first + 1] - force[self.first]) * self.along.conj()
        own *= STRENGTH / 2 * self.stretch.strength
        return np.concatenate([own.imag, own.real])


def elastic(panels: Panels, stretch: Stretch = UNSTRETCHED, bed: Bed = FLAT) -> Elastic:
    """Set up the stiffness of panels, one at least, in a sheet that is stretched already.

    On a bed it may bulge; its blocks are those of the flat one.
    """
    ends = ends_of(panels)
    every = np.arange(len(panels))
    some = windows(len(panels))
    blocks = stiffness(panels, ends, some, some, stretch)
    near, grid = _split(panels, ends, stretch, bed)
    ways = along(panels, every)
    return Elastic(panels, stretch, bed, ends.first, ways, near, grid, some, blocks)


def pairs_of(panels: Panels) -> int:
    """Count about twice the pairs of near ends that the stiffness of panels is made of."""
    return count(ends_of(panels).place, REACH * _step(panels))


def _step(panels: Panels) -> float:
    """Give a step of the grid (mm) that leaves about as much to the grid as to pairs."""
    across = np.maximum(np.ptp(panels.start, axis=0), np.ptp(panels.end, axis=0))
    points = POINTS * len(panels)
    step = max(float(np.sqrt(across.prod() / points)), float(across.sum()) / points)
    return max(step, min(LEAST_LENGTHS * float(panels.length.mean()) / REACH, MOST_STEPS * step))


def _split(panels: Panels, ends: Ends, stretch: Stretch, bed: Bed) -> tuple[Near, Far | None]:
    """Share out what ends do to one another between pairs and a grid."""
    if len(ends.at) <= FEW:
        return _near(ends, stretch, 2 * float(np.ptp(ends.at, axis=0).max()), bed), None
    step = _step(panels)
    smooth = Smooth(REACH * step, float(ends.core2.mean()), complex(ends.way.mean()), stretch.lean)
    wider = ends.core2 - smooth.core2
    told = wider if np.abs(wider).max() > UNLIKE * smooth.reach**2 else None
    near = _near(ends, stretch, smooth.reach, FLAT, smooth, told)
    return near, far(ends, smooth, step, told, bed, stretch)


def _near(
    ends: Ends,
    stretch: Stretch,
    reach_mm: float,
    bed: Bed,
    smooth: Smooth | None = None,
    wider: Floats | None = None,
) -> Near:
    """Work out what near ends do to one another, less what the grid does."""
    place, way, core2 = ends.place, ends.way, ends.core2
    one, other = pairs(place, reach_mm)
    alike, mirrored = np.empty((2, len(one)), dtype=np.complex128)
    for low in range(0, len(one), BLOCK):
        some = slice(low, low + BLOCK)
        i, j = one[some], other[some]
        apart = place[i] - place[j]
        both = between(apart, core2[i] + core2[j], way[i], way[j], lean=stretch.lean)
        alike[some], mirrored[some] = map(np.add, both, bed.between(apart, stretch))
        if smooth is not None:
            less = smooth.between(apart, 0.0 if wider is None else wider[i] + wider[j])
            alike[some] -= less[0]
            mirrored[some] -= less[1]
    return Near.both_ways(one, other, alike, mirrored)


def windows(count: int) -> Ints:
    """Cut `count` panels into windows (W, m) that overlap and hold every panel."""
    size, step = WINDOW
    last = max(count - size, 0)
    return np.append(np.arange(0, last, step), last)[:, None] + np.arange(min(size, count))
