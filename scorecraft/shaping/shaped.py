"""The dough as it goes into the oven, where hands have changed its form after the cuts."""

from functools import cached_property

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.shaping.laid import laid_slabs
from scorecraft.shaping.pulled import Pulled, pulled, pulled_slab
from scorecraft.shaping.slab import Slab

EDGES = (0.3, 0.6, 0.95)
"""Lines around a body, as shares of its round edge, by which its outline is found."""


@dataclass(frozen=True, eq=False)
class Shaped:
    """Bodies of dough side by side and over one another, on the plan (mm)."""

    slabs: tuple[Slab, ...]
    pull: Pulled | None = None
    wider: float = 1.0

    def place(self, points: Floats) -> Floats:
        """Carry plan points (N, 2) mm of the dough as it was cut to where hands have moved them."""
        if self.pull is None:
            return points
        return self.wider * self.pull.place(points / self.wider)

    @property
    def size_mm(self) -> tuple[float, float]:
        """How wide and how long it is, seen from above."""
        left, low, right, high = self.area.bounds
        return float(right - left), float(high - low)

    @property
    def spans_mm(self) -> float:
        """How far it is from end to end, at most."""
        return float(np.hypot(*self.size_mm))

    @cached_property
    def outlines(self) -> Floats:
        """Points (N, 2) on its edge, and where its edge is no longer round."""
        flats = [slab.area.buffer(-slab.round_mm * share) for slab in self.slabs for share in EDGES]
        return np.asarray(shapely.get_coordinates([slab.area for slab in self.slabs] + flats))

    @cached_property
    def area(self) -> shapely.Geometry:
        """All of the plan that has dough over it."""
        return shapely.union_all([slab.area for slab in self.slabs])

    @property
    def height_mm(self) -> float:
        """How high the highest of them is."""
        return max(slab.height_mm for slab in self.slabs)

    def height_at(self, points: Floats) -> Floats:
        """Height (mm) over plan points, (..., 2) to (...); 0 where there is no dough."""
        plan = np.asarray(points, dtype=np.float64)
        return np.asarray(np.max([slab.height_at(plan) for slab in self.slabs], axis=0))

    def grown(self, sideways: float, upward: float) -> "Shaped":
        """Let it grow by a ratio of level lengths and one of heights."""
        slabs = tuple(slab.grown(sideways, upward) for slab in self.slabs)
        return Shaped(slabs, self.pull, self.wider * sideways)


def shaped(layout: Layout) -> Shaped | None:
    """Shape the dough of a layout as hands do after the cuts; None where they leave it alone."""
    if any(cut.hinge_mm is not None and cut.laid for cut in layout.cuts):
        return Shaped(laid_slabs(layout))
    if any(cut.through and cut.pulled_mm for cut in layout.cuts):
        return Shaped((pulled_slab(layout),), pulled(layout))
    return None
