"""Cuts right through that are pulled open by hand: where the dough goes, and the holes.

Each cut opens like a lens, as wide in its middle as it is pulled; the dough on either side of it
moves by half of that, less the further away it is. A drawing, not mechanics: dough pulled by hand
goes where the hand wants it.
"""

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.areas import on_plan, rims_of
from scorecraft.loaf.plan import plan_strings
from scorecraft.shaping.slab import Slab

SOFT_MM = 2.5
"""Corners of the pulled dough are round by this radius."""
LENS = 0.75
"""Power of the lens: 1/2 is an ellipse, 1 ends in sharp corners."""
EDGE = 0.9
"""The pulled edges are round over this part of the dough's height."""
WIDER = 1.5
"""The dough beside a cut moves over so many times its length."""
FADES = 1.0
"""At so many lengths of a cut to its side, half of its pull is left."""


@dataclass(frozen=True, eq=False)
class Slit:
    """A cut right through on the plan: its line (N, 2) mm, and how wide it is pulled."""

    line: Line
    pulled_mm: float

    @property
    def chord(self) -> tuple[Floats, Floats, float]:
        """Middle of its ends, the unit way from the first to the last, and the length between."""
        start, end = self.line[0], self.line[-1]
        long = max(float(np.hypot(*(end - start))), 1e-9)
        return (start + end) / 2, (end - start) / long, long

    def half_width(self, along: Floats) -> Floats:
        """Half of how wide it is open (mm), at distances from its middle along its chord."""
        long = self.chord[2]
        inside = np.maximum(1.0 - (2 * along / long) ** 2, 0.0)
        return np.asarray(self.pulled_mm / 2 * inside**LENS)

    def local(self, points: Floats) -> tuple[Floats, Floats]:
        """Distances of points (N, 2) along its chord from the middle, and to its left."""
        middle, way, _ = self.chord
        off = points - middle
        return off @ way, off @ np.array([-way[1], way[0]])

    def moves(self, points: Floats) -> Floats:
        """How far it moves points (N, 2) as it is pulled, mm."""
        _, way, long = self.chord
        along, left = self.local(points)
        own_along, own_left = self.local(self.line)
        beside = left - np.interp(along, own_along, own_left)
        far = 1.0 / (1.0 + (beside / (FADES * long)) ** 2)
        inside = np.maximum(1.0 - (2 * along / (WIDER * long)) ** 2, 0.0) ** 2
        reach = np.sign(beside) * self.pulled_mm / 2 * inside * far
        return np.asarray(reach[:, None] * np.array([-way[1], way[0]]))


@dataclass(frozen=True, eq=False)
class Pulled:
    """Dough with its cuts right through pulled open, on the plan."""

    slits: tuple[Slit, ...]

    def place(self, points: Floats) -> Floats:
        """Carry plan points (N, 2) mm of the dough to where they are pulled."""
        moved = [slit.moves(points) for slit in self.slits]
        return points + np.sum(moved, axis=0) if moved else points

    def holes(self) -> list[shapely.Polygon]:
        """Give the openings, plan mm."""
        return [self._hole(k) for k in range(len(self.slits))]

    def _hole(self, k: int) -> shapely.Polygon:
        slit = self.slits[k]
        others = Pulled(self.slits[:k] + self.slits[k + 1 :])
        _, way, _ = slit.chord
        middle = others.place(slit.line)
        aside = slit.half_width(slit.local(slit.line)[0])[:, None] * np.array([-way[1], way[0]])
        ring = np.vstack([middle + aside, (middle - aside)[::-1]])
        return shapely.Polygon(ring).buffer(0)


def pulled(layout: Layout) -> Pulled:
    """Pull the cuts of a layout open that are to be pulled."""
    cuts = [cut for cut in layout.cuts if cut.through and cut.pulled_mm > 0]
    lines = plan_strings(layout.loaf, [cut.line for cut in cuts])
    dense = [shapely.get_coordinates(shapely.segmentize(line, 2.0)) for line in lines]
    made = zip(dense, cuts, strict=True)
    return Pulled(tuple(Slit(line, cut.pulled_mm) for line, cut in made))


def pulled_slab(layout: Layout) -> Slab:
    """Make the body that a layout's dough is after pulling."""
    found = pulled(layout)
    dough = on_plan(layout.loaf)
    outer, *inner = (found.place(rim) for rim in rims_of(dough))
    body = shapely.Polygon(outer, inner).buffer(0)
    area = shapely.difference(body, shapely.union_all(found.holes()))
    for by in (SOFT_MM, -2 * SOFT_MM, SOFT_MM):  # dough has no sharp corners, in nor out
        area = area.buffer(by, quad_segs=16)
    high = layout.loaf.height_mm
    return Slab(area, high, EDGE * high)
