"""Two families of parallel lines."""

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, check_angle, parallels


def crosshatch(bounds: Bounds, *, size: float, angle: float) -> list[Line]:
    """Draw two families of lines `size` (mm) apart, `angle` (radians) between them.

    The +y axis halves the angle between them. Raises UsageError for an angle too flat.
    """
    check_angle("angle", angle, 180)
    families = (angle / 2, -angle / 2)
    return [
        line for turn in families for line in parallels(bounds, angle=turn, spacing=size, offset=0)
    ]
