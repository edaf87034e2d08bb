"""Woven bamboo: hexagons with triangles between them."""

from math import sqrt

from scorecraft.arrays import Line
from scorecraft.textures.lattice import SIX, Bounds, families


def bamboo(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw the edges of hexagons and triangles of a side (mm) as three families of lines.

    A hexagon stands at the origin: each family lies half its pitch away, so that no three lines
    meet (the trihexagonal tiling 3.6.3.6).
    """
    pitch = sqrt(3) * size
    return families(bounds, *SIX, spacing=pitch, offset=pitch / 2)
