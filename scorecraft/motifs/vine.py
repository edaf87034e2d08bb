"""A vine: a stem that winds from side to side, a leaf in each bend, and tendrils."""

from math import pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, join, polar, sample, turned
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bend, fitted

SWING = 0.15
"""How far the stem swings to either side, as a share of the width."""
LEAN_RAD = 0.85
"""How far a leaf leans from the vine's way."""
OFF = 0.07
"""How far beside the stem leaves and tendrils begin, as a share of the width."""


def vine(*, length: float, width: float, leaves: int) -> list[Stroke]:
    """Draw a vine from the origin to (0, length), mm: half a swing for each of its leaves.

    Leaves stand outside the bends, tendrils inside, together `width` (mm) across.
    """
    step = length / leaves

    def stem(t: Line) -> Line:
        return np.column_stack([SWING * width * np.sin(pi * leaves * t), t * length])

    strokes = [Stroke("stem", sample(stem, 0, 1))]
    size = min(0.42 * width, 0.95 * step)
    for k in range(leaves):
        side, y = (1 if k % 2 == 0 else -1), (k + 0.5) * step
        crest = np.array([side * (SWING + OFF) * width, y - 0.02 * step])
        for edge in (1, -1):
            line = turned(_leaf(size) * (edge, 1), side * LEAN_RAD)
            strokes.append(Stroke("leaf", crest + line))
        hollow = np.array([side * (SWING - OFF) * width, y - 0.12 * step])
        strokes.append(Stroke("tendril", hollow + _tendril(min(0.34 * width, 0.6 * step), side)))
    return fitted(strokes, width, length, 0.0)


def _leaf(size: float) -> Line:
    """Right edge of a broad leaf with a drawn-out tip."""
    half = 0.3 * size
    return bend(half, size, (0.0, 0.0), (1.7, 0.1), (0.9, 0.66), (0.0, 1.0))


def _tendril(size: float, side: int) -> Line:
    """Draw a curl that leaves the stem into the hollow of the bend, away from a side."""
    middle = np.array([0.62 * size, 0.3 * size])

    def curl(t: Line) -> Line:
        return middle + polar(size * (0.3 - 0.22 * t), -pi * (0.3 - 2.1 * t))

    head = sample(curl, 0, 1)
    lead = bezier((0, 0), (0.16 * size, 0.06 * size), (0.3 * size, 0.3 * size), head[0])
    return join(lead, head) * (-side, 1)
