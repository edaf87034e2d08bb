"""A fougasse: a leaf with its tip away from the baker, broad below the middle."""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.loaf.rims.corners import rounded


def fougasse() -> Floats:
    """Draw a leaf 1.35 long for each 1 of width, its tip and foot rounded."""
    share = np.linspace(0, 1, 121)
    half = 0.5 * np.sin(np.pi * share**0.8) ** 0.75
    right = np.column_stack([half, 1.35 * share])
    left = right[::-1] * (-1, 1)
    return rounded(np.vstack([right, left[1:-1]]), 0.12, 0.0)
