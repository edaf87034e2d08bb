"""A heart of two strokes."""

from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import bends, both

EDGE = (
    ((0.0, 0.3), (0.14, 0.46), (0.36, 0.5), (0.52, 0.5)),
    ((0.52, 0.5), (0.82, 0.5), (1.0, 0.36), (1.0, 0.17)),
    ((1.0, 0.17), (1.0, -0.08), (0.38, -0.26), (0.0, -0.5)),
)
"""Right edge: notch, shoulder, point; across in half widths, along in lengths."""


def heart(*, width: float, length: float) -> list[Stroke]:
    """Two strokes from the notch over the shoulders down to the point, centred (mm).

    The point lies at (0, -length/2), the shoulders reach to length/2.
    """
    return both("outline", bends(width / 2, length, *EDGE))
