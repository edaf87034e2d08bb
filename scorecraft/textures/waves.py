"""Overlapping waves of concentric arcs."""

from math import acos, asin, atan, pi, sqrt

from scorecraft.arrays import Line
from scorecraft.curves import arc
from scorecraft.textures.lattice import Bounds, copies, nodes


def waves(bounds: Bounds, *, size: float, rings: int) -> list[Line]:
    """Draw rows of overlapping discs of a radius (mm), each with `rings` evenly spaced arcs.

    Each row lies half a radius below the one it hides and a radius aside; only what can be seen
    of each circle is drawn.
    """
    places = nodes(bounds, (size, size / 2), (2 * size, 0), size)
    lines = []
    for ring in range(rings, 0, -1):
        share = ring / rings
        hidden = pi / 2 - _horizon(share)
        lines += copies(arc(share * size, -hidden, hidden), places)
    return lines


def _horizon(share: float) -> float:
    """Elevation (radians) above which a circle of a share of the radius shows.

    With the radius 1, the disc in front at (1, -1/2) covers the points at elevation a where
    cos a - sin a / 2 > (share^2 + 1/4) / (2 share); the one at (0, -1) those where
    sin a < -share / 2.
    """
    beside = (share**2 + 0.25) / (2 * share * sqrt(1.25))
    below = -asin(share / 2)
    return max(below, acos(beside) - atan(0.5)) if beside < 1 else below
