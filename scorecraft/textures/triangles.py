"""Triangles."""

from math import pi, sqrt

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, parallels


def triangles(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw equilateral triangles of a side (mm) as three families of long straight lines."""
    pitch = sqrt(3) / 2 * size
    return [
        line
        for turn in (pi / 6, pi / 2, -pi / 6)
        for line in parallels(bounds, angle=turn, spacing=pitch, offset=0)
    ]
