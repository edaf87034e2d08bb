"""The plainest cut: one stroke of the blade, straight or with the curve of the hand."""

from math import atan2, pi

from scorecraft.curves import arc, segment
from scorecraft.cuts import Stroke


def slash(*, length: float, bend: float) -> list[Stroke]:
    """One stroke of a length (mm) along +y, centred on the origin.

    `bend` is how far its middle bulges toward +x (mm, negative to -x); the ends stay in place.
    """
    half = length / 2
    if abs(bend) < 1e-6:
        return [Stroke("slash", segment((0, -half), (0, half)))]
    radius = (half**2 + bend**2) / (2 * abs(bend))
    reach = 2 * atan2(abs(bend), half)
    line = arc(radius, pi / 2 + reach, pi / 2 - reach, (abs(bend) - radius, 0))
    line[:, 0] *= 1 if bend > 0 else -1
    line[0], line[-1] = (0, -half), (0, half)
    return [Stroke("slash", line)]
