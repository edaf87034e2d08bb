"""A spiral from the centre outward."""

from math import pi

from scorecraft.arrays import Line
from scorecraft.curves import polar, sample
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError


def spiral(*, radius: float, inner: float, turns: float, clockwise: bool) -> list[Stroke]:
    """One stroke whose distance from the origin grows evenly from `inner` to `radius` (mm).

    It makes `turns` turns and ends on the +y axis. Raises UsageError unless `inner` is smaller
    than `radius`.
    """
    if not 0 <= inner < radius:
        raise UsageError(f"a spiral's inner radius ({inner:g} mm) must be below its radius")
    way = 1 if clockwise else -1

    def curve(t: Line) -> Line:
        return polar(inner + (radius - inner) * t, way * 2 * pi * turns * (t - 1))

    return [Stroke("spiral", sample(curve, 0, 1))]
