"""Square to a way along the dough: what lies to its left."""

import numpy as np

from scorecraft.arrays import Floats


def aside(normal: Floats, way: Floats) -> Floats:
    """Give the ways (N, 3) to the left of others (N, 3) on a surface with normals (N, 3).

    A cross product, written out: numpy's own is many times as slow for a few rows.

    >>> aside(np.array([[0.0, 0.0, 1.0]]), np.array([[0.0, 2.0, 0.0]])).tolist()
    [[-2.0, 0.0, 0.0]]
    """
    (nx, ny, nz), (x, y, z) = normal.T, way.T
    return np.column_stack([ny * z - nz * y, nz * x - nx * z, nx * y - ny * x])
