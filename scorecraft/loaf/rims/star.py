"""A star: five points, one of them away from the baker."""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.loaf.rims.corners import rounded

POINTS = 5
INNER = 0.58
"""Radius where the rim turns in over that of the points."""


def star() -> Floats:
    """Draw a star as dough can hold it: its points round, what turns in rounder."""
    turn = np.pi / 2 + np.arange(2 * POINTS) * np.pi / POINTS
    radius = np.where(np.arange(2 * POINTS) % 2 == 0, 1.0, INNER)[:, None]
    return rounded(radius * np.column_stack([np.cos(turn), np.sin(turn)]), 0.13, 0.2)
