"""Arrays by what they hold: one name each, for the whole house."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
"""Indexes and counts."""
Flags = NDArray[np.bool_]
Shapes = NDArray[np.object_]
"""shapely geometries, one an item."""
Line = Floats
"""Points along a line, shape (N, 2), in mm."""
Field = NDArray[np.float32]
"""A value a pixel, shape (rows, columns)."""
Pixels = NDArray[np.uint8]
"""A photograph: (rows from the top, columns, 3 or, see-through, 4)."""
Complexes = NDArray[np.complex128]
"""Vectors in the plane, x + iy."""
