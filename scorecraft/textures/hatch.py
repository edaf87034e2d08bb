"""Parallel lines."""

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, parallels


def hatch(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw lines along +y, `size` (mm) apart."""
    return parallels(bounds, angle=0, spacing=size, offset=0)
