"""The small arrowhead that says which way the blade is pulled."""

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.curves import length
from scorecraft.drawing.picture import BLACK, Shape
from scorecraft.drawing.plan import along

ARROW_MM = 2.8
PARTS = (0.8, 0.7, 0.88, 0.6, 0.5, 0.4, 0.3, 0.2)
"""Where on the line the head may stand, as a part of its length; the first is the best."""
NOTHING = shapely.GeometryCollection()
HEAD = np.array([[0.6, 0.0], [-0.4, 0.36], [-0.4, -0.36]])


def arrow(points: Line, avoid: shapely.Geometry = NOTHING) -> Shape:
    """Draw a filled arrowhead on a line (paper mm), towards its end; smaller on a short line.

    It keeps off the geometry to avoid if any of its usual places does.
    """
    heads = [_head(points, part) for part in PARTS]
    free = (head for head in heads if not shapely.dwithin(shapely.Polygon(head), avoid, 0.5))
    return Shape((next(free, heads[0]),), closed=True, fill=BLACK)


def _head(points: Line, part: float) -> Line:
    size = min(ARROW_MM, length(points) / 3)
    middle, angle = along(points, part)
    c, s = np.cos(angle), np.sin(angle)
    head: Line = HEAD @ np.array([[c, s], [-s, c]]) * size + middle
    return head
