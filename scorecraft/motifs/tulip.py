"""A tulip: a cup of three petals on a stem with two leaves."""

import numpy as np

from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bend, fitted, halves

OUTER = (
    ((0.05, 0.5), (0.6, 0.49), (1.0, 0.58), (1.0, 0.72)),
    ((1.0, 0.72), (1.0, 0.84), (0.92, 0.9), (0.78, 0.975)),
)
"""Edge of the right outer petal, foot to tip: shares of half the width and of the length."""
FOLD = ((0.75, 0.95), (0.68, 0.9), (0.58, 0.86), (0.47, 0.83))
"""How it comes down again to the middle petal."""
MIDDLE = ((0.0, 1.0), (0.3, 0.9), (0.56, 0.76), (0.3, 0.585))
LEAF = (
    ((0.22, 0.05), (0.58, 0.08), (1.0, 0.22), (0.86, 0.46)),
    ((0.24, 0.07), (0.36, 0.24), (0.62, 0.36), (0.84, 0.44)),
)
STEM = ((0.0, 0.0), (0.1, 0.16), (-0.08, 0.34), (0.0, 0.48))
SHORTER = 0.84
"""Height of the left leaf over that of the right one."""


def tulip(*, length: float, width: float) -> list[Stroke]:
    """Draw a tulip from the foot of its stem at the origin to its tip at (0, length), mm.

    The cup is `width` (mm) wide: two outer petals that fold in, the middle one before them, and
    two leaves of two strokes.
    """
    half = width / 2
    strokes = [Stroke("stem", bend(half, length, *STEM))]
    strokes += halves(half, length, [("petal", *OUTER), ("petal", FOLD), ("petal", MIDDLE)])
    for side in (np.array([1.0, 1.0]), np.array([-1.0, SHORTER])):
        strokes += [Stroke("leaf", bend(half, length, *edge) * side) for edge in LEAF]
    return fitted(strokes, width, length, 0.0)
