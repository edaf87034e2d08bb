"""Rounding of corners: dough has none that are sharp."""

import shapely
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats

ROUND = 24


def rounded(points: ArrayLike, outer: float, inner: float) -> Floats:
    """Round a polygon (N, 2): corners that stand out by a radius, those that turn in by another."""
    body = shapely.Polygon(points)
    body = body.buffer(-outer, quad_segs=ROUND).buffer(outer, quad_segs=ROUND)
    body = body.buffer(inner, quad_segs=ROUND).buffer(-inner, quad_segs=ROUND)
    corners: Floats = shapely.get_coordinates(body.exterior)[:-1]
    return corners
