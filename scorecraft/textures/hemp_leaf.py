"""Hemp leaf: six-pointed stars of slim lozenges."""

from math import pi, sqrt

from scorecraft.arrays import Line
from scorecraft.curves import polar, segment
from scorecraft.textures.lattice import Bounds, copies, nodes
from scorecraft.textures.triangles import triangles


def hemp_leaf(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw triangles of a side (mm), each with three spokes from its middle to its corners.

    At a corner six spokes face each other in pairs, so each pair is one straight stroke; the
    sides are long straight lines (the triakis triangular tiling V3.12.12).
    """
    spoke = size / sqrt(3)
    corners = nodes(bounds, (size / 2, sqrt(3) / 2 * size), (size, 0), spoke)
    lines = triangles(bounds, size=size)
    for turn in (0, pi / 3, -pi / 3):
        tip = polar(spoke, turn)
        lines += copies(segment(-tip, tip), corners)
    return lines
