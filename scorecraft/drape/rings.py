"""True lengths around the crown: how wide the dough is at each distance from it."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from scorecraft.loaf.dome import Loaf

Array = NDArray[np.float64]

RINGS = 160
DIRECTIONS = 1440


@dataclass(frozen=True)
class Rings:
    """The rings of a loaf: all points at one distance (mm) along the dough from the crown.

    `turned` is the true length along a ring, from the direction 0 counter-clockwise, over the
    ring's distance: on flat paper it would be the angle itself, on a dome it is less.
    """

    loaf: Loaf

    def turned(self, distance: ArrayLike, theta: ArrayLike) -> Array:
        """Length around a ring over its distance, at distances (mm) and directions (radians)."""
        turns, within = np.divmod(np.asarray(theta, dtype=np.float64), 2 * np.pi)
        row = np.asarray(distance, dtype=np.float64) / self._step
        row = np.clip(row, 0, RINGS - 1e-9)
        column = np.clip(within / (2 * np.pi) * DIRECTIONS, 0, DIRECTIONS - 1e-9)
        r, c = row.astype(int), column.astype(int)
        u, v = row - r, column - c
        table = self._table
        low = (1 - v) * table[r, c] + v * table[r, c + 1]
        high = (1 - v) * table[r + 1, c] + v * table[r + 1, c + 1]
        whole = (1 - u) * table[r, -1] + u * table[r + 1, -1]
        return np.asarray((1 - u) * low + u * high + turns * whole)

    def length(self, distance: float, start: float, end: float) -> float:
        """Measure the true length (mm) of the ring at a distance between two directions (rad)."""
        return float(distance * (self.turned(distance, end) - self.turned(distance, start)))

    @property
    def farthest(self) -> float:
        """The greatest reach, mm."""
        return self._step * RINGS

    @cached_property
    def _step(self) -> float:
        theta = np.linspace(0, 2 * np.pi, DIRECTIONS, endpoint=False)
        return float(self.loaf.reach(theta).max()) / RINGS

    @cached_property
    def _table(self) -> Array:
        """Length over distance for each ring (RINGS + 1) and direction (DIRECTIONS + 1)."""
        theta = np.linspace(0, 2 * np.pi, DIRECTIONS + 1)
        rays = np.column_stack([np.cos(theta), np.sin(theta)])
        distance = self._step * np.arange(1, RINGS + 1)
        points = self.loaf.surface(self.loaf.sheet_to_plan(distance[:, None, None] * rays))
        chords = np.sqrt((np.diff(points, axis=1) ** 2).sum(axis=2)) / distance[:, None]
        gone = np.concatenate([np.zeros((RINGS, 1)), np.cumsum(chords, axis=1)], axis=1)
        return np.vstack([theta, gone])
