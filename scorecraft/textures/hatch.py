"""Parallel lines."""

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, families


def hatch(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw lines along +y, `size` (mm) apart."""
    return families(bounds, 0.0, spacing=size)
