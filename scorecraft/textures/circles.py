"""Interlocked circles."""

from math import ceil, floor, pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import arc, join
from scorecraft.textures.lattice import Bounds


def circles(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw circles of a radius (mm), each overlapping its four diagonal neighbours.

    The circles of a row touch each other, so a row is two long strokes that swing over one
    circle and under the next.
    """
    left, low, right, high = bounds
    over = join(arc(size, -pi / 2, 0), arc(size, 0, pi / 2))
    under = over * (1, -1)
    lines = []
    for row in range(floor(low / size) - 1, ceil(high / size) + 2):
        start = floor(left / (2 * size)) * 2 * size - size * (row % 2)
        middles = np.arange(start, right + 2 * size, 2 * size)
        for halves in ((over, under), (under, over)):
            swings = [halves[k % 2] + (x, row * size) for k, x in enumerate(middles)]
            lines.append(join(*swings))
    return lines
