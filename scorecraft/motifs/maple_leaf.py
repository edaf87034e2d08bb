"""A maple leaf of five pointed lobes."""

import numpy as np

from scorecraft.curves import segment
from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import both, halves

FOOT = 0.27
"""Where the ribs meet above the end of the stalk, as a share of the length."""
EDGES = (
    ((0.0, 1.0), (0.06, 0.9), (0.1, 0.88), (0.3, 0.85)),
    ((0.3, 0.85), (0.2, 0.76), (0.16, 0.7), (0.19, 0.61)),
    ((0.19, 0.61), (0.36, 0.72), (0.46, 0.76), (0.56, 0.84)),
    ((0.56, 0.84), (0.6, 0.77), (0.72, 0.73), (1.0, 0.74)),
    ((1.0, 0.74), (0.86, 0.64), (0.82, 0.6), (0.9, 0.5)),
    ((0.9, 0.5), (0.74, 0.5), (0.6, 0.48), (0.5, 0.43)),
    ((0.5, 0.43), (0.6, 0.41), (0.66, 0.36), (0.7, 0.26)),
    ((0.7, 0.26), (0.46, 0.3), (0.26, 0.29), (0.07, 0.24)),
)
"""Right edge, tip to foot: control points, across in half widths, along in lengths."""
RIBS = ((0.72, 0.66), (0.5, 0.35))
"""Where the side ribs end on the right, in the same shares."""


def maple_leaf(*, length: float, width: float) -> list[Stroke]:
    """Draw a maple leaf from its stalk's end at the origin to its tip at (0, length), mm.

    Each side of a lobe is one stroke from its point to the bay beside it, `width` (mm) from side
    to side; five ribs run from the stalk toward the points.
    """
    sizes = np.array([width / 2, length])
    strokes = [Stroke("midrib", segment((0, 0), (0, 0.84 * length)))]
    strokes += halves(width / 2, length, (("outline", edge) for edge in EDGES))
    for end in RIBS:
        rib = segment((0.04 * width, (FOOT + 0.035) * length), np.array(end) * sizes)
        strokes += both("vein", rib)
    return strokes
