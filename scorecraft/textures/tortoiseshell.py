"""Tortoiseshell: hexagons."""

from math import ceil, floor, sqrt

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import segment
from scorecraft.textures.lattice import Bounds, copies, nodes


def tortoiseshell(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw hexagons of a side (mm), one at the origin with a corner on +y.

    Zigzag strokes run from side to side; short upright strokes join each to the next.
    """
    left, low, right, high = bounds
    half, rise = sqrt(3) / 2 * size, 1.5 * size
    steps = np.arange(floor(left / half) - 1, ceil(right / half) + 2)
    lines = []
    for row in range(floor(low / rise) - 1, ceil(high / rise) + 1):
        crest = np.where((steps + row) % 2 == 0, size, size / 2)
        lines.append(np.column_stack([steps * half, row * rise + crest]))
    rungs = nodes(bounds, (half, rise), (2 * half, 0), 2 * size)
    return lines + copies(segment((half, -size / 2), (half, size / 2)), rungs)
