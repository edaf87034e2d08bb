"""A flat body of dough with rounded edges, and its height over any place."""

import math
from functools import cached_property

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.loaf.pieces import bilinear

GRID_MM = 2.0
"""Distances to the edge are measured on a grid so fine; between, by straight lines."""
EDGE_MM = 0.05
"""So closely straight lines follow the edge."""


@dataclass(frozen=True, eq=False)
class Slab:
    """Dough over an area of the plan (mm): how high it is, and how far in its edge is round."""

    area: shapely.Geometry
    height_mm: float
    round_mm: float

    def height_at(self, points: Floats) -> Floats:
        """Height (mm) over plan points, (..., 2) to (...); 0 where there is no dough."""
        inside = np.clip(self._depth(points) / self.round_mm, 0.0, 1.0)
        return np.asarray(self.height_mm * np.sqrt(1.0 - (1.0 - inside) ** 2))

    def grown(self, sideways: float, upward: float) -> "Slab":
        """Give the same body so many times as wide, and as high."""
        area = shapely.affinity.scale(self.area, sideways, sideways, origin=(0.0, 0.0))
        return Slab(area, self.height_mm * upward, self.round_mm * sideways)

    def _depth(self, points: Floats) -> Floats:
        """Distance (mm) of points from the edge of the area, below 0 outside it."""
        low, field = self._field
        held = np.clip((points - low) / GRID_MM, 0.0, np.array(field.shape) - 1.001)
        return bilinear(field, held[..., 0], held[..., 1])

    @cached_property
    def _field(self) -> tuple[Floats, Floats]:
        """The grid's first place, and on it the signed distances from the edge."""
        left, low, right, high = self.area.bounds
        start = np.array([left, low]) - 2 * GRID_MM
        sizes = right - left, high - low
        counts = [math.ceil(size / GRID_MM) + 5 for size in sizes]
        x, y = (at + GRID_MM * np.arange(n) for at, n in zip(start, counts, strict=True))
        grid = np.stack(np.meshgrid(x, y, indexing="ij"), axis=-1)
        spots = shapely.points(grid)
        edge = self.area.simplify(EDGE_MM).boundary
        shapely.prepare(edge)
        away = shapely.distance(spots, edge)
        shapely.prepare(self.area)
        inside = shapely.contains_xy(self.area, grid[..., 0], grid[..., 1])
        return start, np.where(inside, away, -away)
