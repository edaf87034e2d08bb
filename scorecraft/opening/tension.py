"""Tension in the skin between opened cuts.

The stress of an edge dislocation with jump (bx, by) at distance (x, y) is

    sxx = D (-bx y (r^2 + 2 x^2) + by x (x^2 - y^2)) / r^4
    syy = D ( bx y (x^2 - y^2) + by x (r^2 + 2 y^2)) / r^4       D = E' / 4 pi
    sxy = D ( bx x (x^2 - y^2) + by y (x^2 - y^2)) / r^4

(Hirth & Lothe, Theory of Dislocations, 2nd ed. 1982, ch. 3; recalled). On a stretched sheet
(`stretch`) it is the slope of the kernel, which is not symmetric; of sxy and syx the mean is told.
"""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.opening.kernel import STRENGTH, Ends, ends_of
from scorecraft.opening.load import tensor
from scorecraft.opening.panels import Panels
from scorecraft.opening.stretch import Stretch

BLOCK = 1 << 15
"""Entries worked on at a time."""


def tension_of(
    panels: Panels, gap_mm: Floats, slide_mm: Floats, points: Floats, stretch: Stretch
) -> Floats:
    """Stress that opened panels add at points (N, 2), in units of E: (N, 2, 2)."""
    out = np.zeros((len(points), 3))
    if not len(panels):
        return tensor(out)
    jump = gap_mm[:, None] * panels.normal + slide_mm[:, None] * panels.tangent
    ends = ends_of(panels)
    strength = np.zeros_like(ends.at)
    jump *= STRENGTH * stretch.strength
    np.add.at(strength, ends.first + 1, jump)
    np.add.at(strength, ends.first, -jump)
    step = max(1, BLOCK // len(ends.at))
    for low in range(0, len(points), step):
        out[low : low + step] = _stress(points[low : low + step], ends, strength, stretch.lean)
    return tensor(out)


def _stress(points: Floats, ends: Ends, strength: Floats, lean: float) -> Floats:
    """Stress (N, 3) at points of dislocations of given strength (K, 2) at the panels' ends."""
    x = np.subtract.outer(points[:, 0], ends.at[:, 0])
    y = np.subtract.outer(points[:, 1], ends.at[:, 1])
    inverse = 1 / (x * x + y * y + ends.core2)
    cos2 = lean * (x * x - y * y) * inverse
    x *= inverse
    y *= inverse
    xx, xy = (x @ strength).T
    yx, yy = (y @ strength).T
    x *= cos2
    y *= cos2
    xcx, xcy = (x @ strength).T
    ycx, ycy = (y @ strength).T
    return np.column_stack(
        [
            xcy - ycx - (1 + lean) * yx,
            ycx - xcy + (1 + lean) * xy,
            xcx + ycy + (1 - lean) / 2 * (xx - yy),
        ]
    )
