"""Herringbone: columns of strokes that lean left and right by turns."""

from math import tan

from scorecraft.arrays import Line
from scorecraft.curves import segment
from scorecraft.textures.lattice import Bounds, check_angle, copies, nodes


def herringbone(bounds: Bounds, *, size: float, gap: float, lean: float) -> list[Line]:
    """Draw columns of a width (mm); their strokes lie `gap` (mm) apart along the column.

    Strokes lean by `lean` (radians) from the column and stop a quarter gap short of its edge.
    Raises UsageError for a lean too near the column or square to it.
    """
    check_angle("lean", lean, 90)
    half = size / 2 - min(gap, size) / 4
    rise = half / tan(lean)
    places = nodes(bounds, (2 * size, 0), (0, gap), size + rise)
    right, left = segment((-half, -rise), (half, rise)), segment((half, -rise), (-half, rise))
    return copies(right, places) + copies(left, places, (size, 0))
