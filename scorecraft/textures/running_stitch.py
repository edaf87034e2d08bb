"""Stepped lines of running stitches."""

from math import ceil, floor, pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.errors import UsageError
from scorecraft.textures.chain import chain
from scorecraft.textures.lattice import Bounds


def running_stitch(bounds: Bounds, *, size: float, rows: str, columns: str) -> list[Line]:
    """Draw a grid of running stitches of a length (mm), joined to stepped strokes.

    Each level line of the grid has a stitch, a gap, a stitch ...; a digit of `rows` says whether
    it starts with a stitch (0) or a gap (1), and `columns` the same for the upright lines. The
    digits repeat. Raises UsageError for digits other than 0 and 1.
    """
    for name, digits in (("rows", rows), ("columns", columns)):
        if not digits or set(digits) - {"0", "1"}:
            raise UsageError(f'{name} is made of 0 and 1, like "0110", not "{digits:.20}"')
    left, low, right, high = (edge / size for edge in bounds)
    across, up = (floor(left) - 1, ceil(right) + 1), (floor(low) - 1, ceil(high) + 1)
    level = _stitches(across, up, rows)
    upright = _stitches(up, across, columns)[:, :, ::-1]
    return chain(list(np.concatenate([level, upright]) * size), sharpest=pi / 2)


def _stitches(along: tuple[int, int], across: tuple[int, int], digits: str) -> Line:
    """Stitches of the grid's level lines in steps of the grid, (N, 2, 2)."""
    start = np.array([int(digit) for digit in digits])
    x, y = np.meshgrid(np.arange(along[0], along[1]), np.arange(across[0], across[1] + 1))
    stitched = (x + start[y % len(start)]) % 2 == 0
    x, y = x[stitched].astype(np.float64), y[stitched].astype(np.float64)
    return np.stack([np.column_stack([x, y]), np.column_stack([x + 1, y])], axis=1)
