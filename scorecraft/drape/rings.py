"""True lengths around the crown: how wide the dough is at each distance from it."""

from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.pieces import bilinear

RINGS = 160
DIRECTIONS = 1440


@dataclass(frozen=True)
class Rings:
    """The rings of a loaf: all points at one distance (mm) along the dough from the crown.

    `turned` is the true length along a ring, from the direction 0 counter-clockwise, over the
    ring's distance: on flat paper it would be the angle itself, on a dome it is less.
    """

    loaf: Loaf

    def turned(self, distance: ArrayLike, theta: ArrayLike) -> Floats:
        """Length around a ring over its distance, at distances (mm) and directions (radians)."""
        turns, within = np.divmod(np.asarray(theta, dtype=np.float64), 2 * np.pi)
        row = np.clip(np.asarray(distance, dtype=np.float64) / self._step, 0, RINGS)
        column = within / (2 * np.pi) * DIRECTIONS
        whole = np.interp(row, np.arange(RINGS + 1), self._table[:, -1])
        return np.asarray(bilinear(self._table, row, column) + turns * whole)

    @cached_property
    def _step(self) -> float:
        theta = np.linspace(0, 2 * np.pi, DIRECTIONS, endpoint=False)
        return float(self.loaf.reach(theta).max()) / RINGS

    @cached_property
    def _table(self) -> Floats:
        """Length over distance for each ring (RINGS + 1) and direction (DIRECTIONS + 1).

        Where a ring has left the loaf, the dough's own width at the rim is carried on.
        """
        theta = np.linspace(0, 2 * np.pi, DIRECTIONS + 1)
        rays = np.column_stack([np.cos(theta), np.sin(theta)])
        reach = self.loaf.reach(theta)
        distance = self._step * np.arange(1, RINGS + 1)[:, None]
        distance = np.minimum(distance, np.minimum(reach[1:], reach[:-1]))[..., None]
        ends = (self._surface(distance * rays[1:]), self._surface(distance * rays[:-1]))
        chords = np.sqrt(((ends[0] - ends[1]) ** 2).sum(axis=2)) / distance[..., 0]
        gone = np.concatenate([np.zeros((RINGS, 1)), np.cumsum(chords, axis=1)], axis=1)
        return np.vstack([theta, gone])

    def _surface(self, sheet: Floats) -> Floats:
        return self.loaf.surface(self.loaf.sheet_to_plan(sheet))
