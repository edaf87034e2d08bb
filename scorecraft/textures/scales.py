"""Fish scales."""

from math import pi

from scorecraft.arrays import Line
from scorecraft.curves import arc
from scorecraft.textures.lattice import Bounds, copies, nodes


def scales(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw rows of half circles of a radius (mm), open upward, each row half a scale aside."""
    scale = arc(size, -pi / 2, -3 * pi / 2)
    return copies(scale, nodes(bounds, (size, size), (2 * size, 0), size))
