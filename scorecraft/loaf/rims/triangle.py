"""A triangle: one corner away from the baker."""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.loaf.rims.corners import rounded


def triangle() -> Floats:
    """Draw a triangle with equal sides and well rounded corners, its sides a little full."""
    corners = np.pi / 2 + np.arange(3) * 2 * np.pi / 3
    ends = np.column_stack([np.cos(corners), np.sin(corners)])
    share = np.linspace(0, 1, 33)[:-1, None]
    sides = []
    for k in range(3):
        start, end = ends[k], ends[(k + 1) % 3]
        out = (start + end) / 2  # away from the middle
        sides.append(start + share * (end - start) + 0.24 * 4 * share * (1 - share) * out)
    return rounded(np.vstack(sides), 0.24, 0.0)
