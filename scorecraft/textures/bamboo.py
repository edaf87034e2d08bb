"""Woven bamboo: hexagons with triangles between them."""

from math import pi, sqrt

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, parallels


def bamboo(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw the edges of hexagons and triangles of a side (mm) as three families of lines.

    A hexagon stands at the origin: each family lies half its pitch away, so that no three lines
    meet (the trihexagonal tiling 3.6.3.6).
    """
    pitch = sqrt(3) * size
    return [
        line
        for turn in (pi / 6, pi / 2, -pi / 6)
        for line in parallels(bounds, angle=turn, spacing=pitch, offset=pitch / 2)
    ]
