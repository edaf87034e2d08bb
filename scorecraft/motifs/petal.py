"""A petal of two arcs."""

from math import atan2, pi

from scorecraft.curves import arc
from scorecraft.cuts import Stroke


def petal(*, length: float, width: float) -> list[Stroke]:
    """Two circular arcs from the base at the origin to the tip at (0, length), mm.

    Their chord is `length`, and they lie `width` apart in the middle.
    """
    sagitta, half = width / 2, length / 2
    radius = (half**2 + sagitta**2) / (2 * sagitta)
    quarter = 2 * atan2(sagitta, half)
    line = arc(radius, pi / 2 + quarter, pi / 2 - quarter, (sagitta - radius, half))
    line[0], line[-1] = (0, 0), (0, length)
    return [Stroke("petal", line * (side, 1)) for side in (-1, 1)]
