"""An oak leaf with rounded lobes."""

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, segment, smooth
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import both, fitted

STALK = 0.14
"""The bare stalk's share of the length."""
EDGE = (
    (0.08, 0.15), (0.26, 0.19), (0.42, 0.27), (0.4, 0.34), (0.24, 0.38), (0.3, 0.42),
    (0.62, 0.45), (0.8, 0.53), (0.76, 0.6), (0.4, 0.58), (0.42, 0.63), (0.76, 0.68),
    (1.0, 0.75), (0.94, 0.82), (0.5, 0.78), (0.42, 0.82), (0.56, 0.9), (0.44, 0.97), (0.2, 0.98),
    (0.0, 1.0),
)  # fmt: skip
"""Points of the right edge: across as shares of half the width, along as shares of the length."""
VEINS = (((0.0, 0.2), (0.3, 0.29)), ((0.0, 0.33), (0.6, 0.52)), ((0.0, 0.5), (0.78, 0.74)))


def oak_leaf(*, length: float, width: float) -> list[Stroke]:
    """Draw an oak leaf from its stalk at the origin to its tip at (0, length), `width` (mm) wide.

    Midrib, three pairs of veins, and an edge that goes in and out around the lobes.
    """
    sizes = np.array([width / 2, length])
    edge = smooth(np.array(EDGE) * sizes)
    strokes = [Stroke("midrib", segment((0, 0), (0, 0.86 * length)))]
    strokes += both("outline", edge)
    for start, end in VEINS:
        vein = _vein(np.array(start) * sizes, np.array(end) * sizes)
        strokes += both("vein", vein)
    return fitted(strokes, width, length, 0.0)


def _vein(start: Line, end: Line) -> Line:
    """Draw a vein that leaves the midrib aslant and bends toward the lobe."""
    way = end - start
    return bezier(start, start + way * (0.25, 0.45), start + way * (0.6, 0.8), end)
