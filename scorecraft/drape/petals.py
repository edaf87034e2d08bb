"""One petal of a drape: a sector of the dough sheet, as wide on paper as the dough is there.

Every point keeps its distance from the crown; around the crown each ring keeps its true length,
so what the sheet has too much is cut out in darts between the petals.
"""

import numpy as np

from scorecraft.arrays import Floats, Line
from scorecraft.curves import length
from scorecraft.drape.rings import Rings
from scorecraft.frozen import dataclass

STEP_MM = 1.5


@dataclass(frozen=True, slots=True)
class Petal:
    """The sector from one direction counter-clockwise to another (radians), folded at `middle`."""

    rings: Rings
    start: float
    end: float

    @property
    def middle(self) -> float:
        """Direction of the fold, where the paper lies as it was drawn."""
        return (self.start + self.end) / 2

    def on_paper(self, points: Floats) -> Line:
        """Carry sheet points (N, 2) of this sector to the paper, mm."""
        distance = np.hypot(points[:, 0], points[:, 1])
        theta = np.arctan2(points[:, 1], points[:, 0])
        near = self.middle + np.mod(theta - self.middle + np.pi, 2 * np.pi) - np.pi
        return self._laid(distance, near)

    def edge(self, theta: float, first: float) -> Line:
        """Edge of the petal along one of its directions, from a distance (mm) out to the rim."""
        reach = float(self.rings.loaf.reach(theta))
        count = max(2, int((reach - first) / STEP_MM))
        distance = np.linspace(first, reach, count)
        return self._laid(distance, np.full(count, theta))

    def rim(self) -> Line:
        """Give the petal's outer edge, from start to end."""
        count = max(8, int(np.degrees(self.end - self.start)))
        theta = np.linspace(self.start, self.end, count)
        return self._laid(self.rings.loaf.reach(theta), theta)

    def slack(self, theta: float) -> float:
        """How much longer (mm) the paper's edge is than the dough under it: the error of fit."""
        return length(self.edge(theta, 0.0)) - float(self.rings.loaf.reach(theta))

    def angle(self, distance: Floats, theta: Floats) -> Floats:
        """Direction on the paper (radians) of points of the dough by distance and direction.

        Distances in mm, any shape.
        """
        middle = self.rings.turned(distance, np.full(distance.shape, self.middle))
        return np.asarray(self.middle + self.rings.turned(distance, theta) - middle)

    def _laid(self, distance: Floats, theta: Floats) -> Line:
        angle = self.angle(distance, theta)
        return np.asarray(distance[:, None] * np.column_stack([np.cos(angle), np.sin(angle)]))
