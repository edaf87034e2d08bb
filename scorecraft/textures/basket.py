"""Basket weave: squares of parallel strokes, upright and level by turns."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import segment
from scorecraft.textures.lattice import Bounds, copies, nodes


def basket(bounds: Bounds, *, size: float, strokes: int) -> list[Line]:
    """Draw squares of a side (mm) with so many strokes each, the one at the origin upright.

    Strokes stop short of the square's edge, so that the way to the next square's first stroke
    is the way between two strokes.
    """
    upright = nodes(bounds, (size, size), (2 * size, 0), size)
    step = size / strokes
    half = (size - min(step, size / 2)) / 2
    lines: list[Line] = []
    for across in (np.arange(strokes) + 0.5) * step - size / 2:
        stroke = segment((across, -half), (across, half))
        lines += copies(stroke, upright) + copies(_level(stroke), upright, (size, 0))
    return lines


def _level(line: Line) -> Line:
    """Turn a line by a quarter, clockwise."""
    return np.column_stack([line[:, 1], -line[:, 0]])
