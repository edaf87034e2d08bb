"""Running key frets in rows."""

from math import ceil, floor

import numpy as np

from scorecraft.arrays import Line
from scorecraft.textures.lattice import Bounds, copies

KEY = ((0, 0), (0, 3), (3, 3), (3, 1), (2, 1), (2, 2), (1, 2), (1, 0))
"""Corners of one key, in steps; the next key starts four steps on."""
PERIOD = 4


def key_fret(bounds: Bounds, *, size: float) -> list[Line]:
    """Draw rows of the key, or meander, with steps of a width (mm): one long stroke a row.

    The middle of a key stands at the origin, and the rows are a step apart.
    """
    left, low, right, high = bounds
    pitch = PERIOD * size
    row = _row(floor(left / pitch) - 1, ceil(right / pitch) + 1) * size
    rows = np.arange(floor(low / pitch) - 1, ceil(high / pitch) + 2)
    return copies(row, np.column_stack([np.zeros(len(rows)), rows * pitch]))


def _row(first: int, last: int) -> Line:
    """Corners of the keys numbered first to last, in steps, about the middle of key 0."""
    starts = np.column_stack([np.arange(first, last + 1) * PERIOD, np.zeros(last - first + 1)])
    corners = np.asarray(KEY, dtype=np.float64)[None, :, :] + starts[:, None, :]
    return np.asarray(corners.reshape(-1, 2) - (2, 1.5))
