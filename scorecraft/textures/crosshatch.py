"""Two families of parallel lines."""

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, check_angle, families


def crosshatch(bounds: Bounds, *, size: float, angle: float) -> list[Line]:
    """Draw two families of lines `size` (mm) apart, `angle` (radians) between them.

    The +y axis halves the angle between them. Raises UsageError for an angle too flat.
    """
    check_angle("angle", angle, 180)
    return families(bounds, angle / 2, -angle / 2, spacing=size)
