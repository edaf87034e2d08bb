"""A pumpkin seen from the side: ribs, stalk and a tendril."""

from math import pi

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, join, polar, sample
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bend, both, fitted

DIP = 0.12
"""How far the ribs dip in at the stalk, as a share of the length."""
BODY = 0.8
"""The body's share of the length; the rest is stalk."""


def pumpkin(*, width: float, length: float, ribs: int) -> list[Stroke]:
    """Draw a pumpkin, centred, `width` by `length` (mm) with its stalk.

    `ribs` counts the pairs of curved strokes from stalk to foot, the outermost being its edge.
    """
    low, high = -length / 2, BODY * length
    strokes = []
    for k in range(ribs):
        share = 1 - k / (ribs - 0.35)
        rib = _rib(share, width / 2, high) + np.array([0, low])
        strokes += both("rib", rib)
    top = low + high * (1 - 0.7 * DIP)
    stalk = (
        ((-0.06, 0.0), (-0.05, 0.1), (-0.03, 0.2), (0.06, 0.27)),
        ((0.05, 0.0), (0.05, 0.08), (0.08, 0.15), (0.15, 0.2)),
    )
    for points in stalk:
        strokes.append(Stroke("stalk", bend(width, length, *points) + np.array([0, top])))
    curl = _tendril(0.17 * width) + np.array([0.13 * width, top + 0.09 * length])
    return fitted([*strokes, Stroke("tendril", curl)], width, length, low)


def _rib(share: float, half: float, high: float) -> Line:
    """Right rib at a share of the width, from beside the stalk down to the foot."""
    out = share * half
    start = (0.05 + 0.34 * share) * half, high * (1 - DIP * (1 - 0.9 * share**2))
    end = (0.03 + 0.34 * share) * half, 0.02 * high * (1 - share)
    reach = out + 0.33 * (out - 0.5 * (start[0] + end[0]))
    bend = 0.16 * (1 - share)
    return bezier(start, (reach, high * (1.02 - bend)), (reach, high * (bend - 0.02)), end)


def _tendril(size: float) -> Line:
    """Draw a curl that leaves the stalk to the right."""
    middle = np.array([0.62 * size, 0.3 * size])

    def curl(t: Line) -> Line:
        return middle + polar(size * 0.34 * (1 - 0.75 * t), pi * (-0.1 + 2.3 * t))

    head = sample(curl, 0, 1)
    lead = bezier((0, 0), (0.1 * size, 0.45 * size), (0.3 * size, 0.64 * size), head[0])
    return join(lead, head)
