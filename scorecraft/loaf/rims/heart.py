"""A heart: two lobes away from the baker, the tip toward them."""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.loaf.rims.corners import rounded


def heart() -> Floats:
    """Draw the heart that sines make, 32 wide, its tip and the notch rounded."""
    turn = np.linspace(0, 2 * np.pi, 361)[:-1]
    across = 16 * np.sin(turn) ** 3
    away = 13 * np.cos(turn) - 5 * np.cos(2 * turn) - 2 * np.cos(3 * turn) - np.cos(4 * turn)
    return rounded(np.column_stack([across, away]), 3.0, 3.0)
