"""A feather: a curved shaft and barbs that sweep toward its tip."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import sample
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bend, fitted

QUILL = 0.2
"""The bare quill's share of the length."""
LAST = 0.86
"""Where the last barbs leave the shaft, as a share of the length."""
SHAFT_END = 0.96
BOW = 0.05
"""How far the shaft's middle bows to the left, as a share of the length."""
RISE = 0.17
"""How far a barb rises along the shaft, as a share of the length."""
TAPER = 0.25
"""How much less the topmost barb rises."""
CROWDED = 2.6
"""How many steps along the shaft a barb rises at most: higher ones would run together."""
GAP = 0.07
"""How far beside the shaft a barb begins, as a share of the width."""
PARTED, SHORT = 0.45, 0.62
"""At which share of its height the vane is parted on the right, and how long the barb there is."""


def feather(*, length: float, width: float, barbs: int) -> list[Stroke]:
    """Draw a feather from the end of its quill at the origin to its tip at (0, length), mm.

    `barbs` counts the pairs; together they fill `width` (mm).
    """
    strokes = [Stroke("shaft", sample(lambda t: _shaft(t, length), 0, SHAFT_END))]
    rise = min(RISE * length, CROWDED * (LAST - QUILL) * length / barbs)
    parted = round(PARTED * barbs)
    for k, share in enumerate(((np.arange(barbs) + 0.5) / barbs).tolist()):
        foot = _shaft(np.array([QUILL + (LAST - QUILL) * share]), length)[0]
        half = 0.5 * width * _fullness(share)
        for side in (-1, 1):
            start = foot + np.array([side * GAP * width, 0])
            part = SHORT if side > 0 and k == parted else 1.0
            barb = part * _barb(half, rise * (1 - TAPER * share))
            strokes.append(Stroke("barb", start + barb * (side, 1)))
    return fitted(strokes, width, length, 0.0)


def _shaft(t: Line, length: float) -> Line:
    """Points of the shaft at shares of its length."""
    return np.column_stack([-4 * BOW * length * t * (1 - t), t * length])


def _fullness(share: float) -> float:
    """Width of the vane at a share of its height: full at its foot, drawn out to the tip."""
    return 1 - 0.62 * share**2


def _barb(half: float, rise: float) -> Line:
    """Right barb: it leaves the shaft aslant and bends up along the vane's edge."""
    return bend(half, rise, (0.0, 0.0), (0.42, 0.24), (0.8, 0.58), (1.0, 1.0))
