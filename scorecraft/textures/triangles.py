"""Triangles."""

from math import sqrt

from scorecraft.arrays import Line
from scorecraft.textures.lattice import SIX, Bounds, families


def triangles(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw equilateral triangles of a side (mm) as three families of long straight lines."""
    return families(bounds, *SIX, spacing=sqrt(3) / 2 * size)
