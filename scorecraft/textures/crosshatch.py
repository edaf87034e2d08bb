"""Two families of parallel lines."""

from scorecraft.cuts import Line
from scorecraft.textures.lattice import Bounds, parallels


def crosshatch(bounds: Bounds, *, size: float, angle: float) -> list[Line]:
    """Draw two families of lines `size` (mm) apart, `angle` (radians) between them.

    The +y axis halves the angle between them.
    """
    families = (angle / 2, -angle / 2)
    return [
        line for turn in families for line in parallels(bounds, angle=turn, spacing=size, offset=0)
    ]
